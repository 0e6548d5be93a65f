"""Relief holes where two bends run into each other, so that the corner does not tear."""

from collections.abc import Iterator
from itertools import combinations

from pedalwright.making.bending.formulas import relief_hole
from pedalwright.making.bending.parts import FlatBend, FlatHole, FlatPattern
from pedalwright.panels.plane import apart, crossing, direction

#: Least hole in sheet up to 1.6 mm, and in thicker sheet (1/8 and 3/16 in).
THIN, THIN_HOLE, THICK_HOLE = 1.63, 3.2, 4.8
#: Bends whose ends come nearer to their crossing than this run into each other, mm.
NEAR = 1.0


def reliefs(pattern: FlatPattern) -> Iterator[FlatHole]:
    """A hole where the inner edges of two bends of one face cross; drilled before bending."""
    least = THIN_HOLE if pattern.sheet.thickness <= THIN else THICK_HOLE
    for one, other in combinations(pattern.bends, 2):
        if one.from_face != other.from_face:
            continue
        met = crossing(one.near[0], direction(*one.near), other.near[0], direction(*other.near))
        if met is not None and _ends_at(one, met) and _ends_at(other, met):
            yield FlatHole(
                name=f"relief {one.name} {other.name}",
                face=one.from_face,
                centre=met,
                diameter=float(relief_hole(max(one.radius, other.radius), least)),
            )


def _ends_at(bend: FlatBend, place: tuple[float, float]) -> bool:
    return min(apart(end, place) for end in bend.near) < NEAR
