"""What cannot be as it is said, found before anything is meshed, and all of it at once."""

from collections import Counter
from collections.abc import Iterator
from itertools import combinations, pairwise

import numpy as np

from pedalwright.core.faults import Fault
from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.build.sheets import covers
from pedalwright.shell.meshing.features import SAME, dropped, lifted
from pedalwright.shell.parts import Bench, Sheet

#: How far off its middle, beside half its thickness, a point may be said to be on a sheet.
OFF = 1.0
#: Sheets lie on one another if their middles are apart by no more than this beyond touching.
GAP = 2.0


def faults(bench: Bench) -> tuple[Fault, ...]:
    """Everything that cannot be as it is said."""
    wrong = (*_names(bench), *_sheets(bench), *_unknown(bench))
    # Places can only be judged where every name is known.
    return wrong or (
        *_seams(bench),
        *_places(bench),
        *_feet(bench),
        *_stacks(bench),
        *_bonds(bench),
    )


def _names(bench: Bench) -> Iterator[Fault]:
    kinds = {
        "sheet": [sheet.name for sheet in bench.sheets],
        "fastener": [fastener.name for fastener in bench.fasteners],
        "spot or patch": [*(s.name for s in bench.spots), *(p.name for p in bench.patches)],
        "bar": [bar.name for bar in bench.bars],
    }
    for kind, names in kinds.items():
        for name, times in Counter(names).items():
            if times > 1:
                yield Fault(where=kind, read=name, accepts="Each has a name of its own.")


def _sheets(bench: Bench) -> Iterator[Fault]:
    for sheet in bench.sheets:
        x, y = np.array(sheet.outline, dtype=np.float64).reshape(-1, 2).T
        area = 0.5 * abs(float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y)))
        if len(x) < 3 or not area > 0.0:
            yield Fault(
                where=f"sheet {sheet.name}, outline",
                read=f"{len(x)} corners round {area:.1f} mm²",
                accepts="At least three corners round an area.",
            )
        if not sheet.thickness > 0.0:
            yield Fault(
                where=f"sheet {sheet.name}, thickness",
                read=f"{sheet.thickness}",
                accepts="A thickness in mm, more than nothing.",
            )


def _unknown(bench: Bench) -> Iterator[Fault]:
    sheets = {sheet.name for sheet in bench.sheets}
    ends = {f"{bar.name}.{which}" for bar in bench.bars for which in ("start", "end")}
    points = ends | {spot.name for spot in bench.spots} | {patch.name for patch in bench.patches}
    said: list[tuple[str, str, set[str]]] = []
    for seam in bench.seams:
        said += [(f"seam {seam.name}", name, sheets) for name in seam.sheets]
    for fastener in bench.fasteners:
        said += [(f"fastener {fastener.name}", name, sheets) for name in fastener.sheets]
    said += [(f"spot {spot.name}", spot.sheet, sheets) for spot in bench.spots]
    said += [(f"patch {patch.name}", patch.sheet, sheets) for patch in bench.patches]
    for kind, layer, base in _pairs(bench):
        said += [(kind, name, sheets) for name in (layer, base)]
    for bar in bench.bars:
        said += [(f"bar {bar.name}", end.to, points) for end in (bar.start, bar.end) if end.to]
    for support in bench.supports:
        if isinstance(support.at, str):
            said.append((f"support {support.name}", support.at, points))
    for where, name, known in said:
        if name not in known:
            yield Fault(
                where=where, read=name, accepts=f"One of: {', '.join(sorted(known)) or 'none'}."
            )


def _seams(bench: Bench) -> Iterator[Fault]:
    layers = {bond.layer for bond in bench.bonds}
    for seam in bench.seams:
        for name in seam.sheets:
            sheet = _sheet(bench, name)
            ends = np.array([xyz(seam.start), xyz(seam.end)])
            off = np.abs(lifted(sheet, dropped(sheet, ends)) - ends).max()
            if off > SAME or name in layers:
                yield Fault(
                    where=f"seam {seam.name}",
                    read=f"sheet {name}, {off:.2f} mm off" if off > SAME else f"layer {name}",
                    accepts="A seam lies in the middle of each of its sheets; none of them bonded.",
                )


def _places(bench: Bench) -> Iterator[Fault]:
    said = [(f"spot {spot.name}", spot.at, spot.sheet, (0.0, 0.0)) for spot in bench.spots]
    said += [
        (f"patch {p.name}", p.centre, p.sheet, (p.width / 2, p.height / 2)) for p in bench.patches
    ]
    for one in bench.fasteners:
        foot = (one.head / 2, 0.0)
        said += [(f"fastener {one.name}", one.at, name, foot) for name in one.sheets]
    for where, at, name, reach in said:
        sheet = _sheet(bench, name)
        far = abs(sheet.plane.height(at))
        stack = OFF + sheet.thickness / 2 if not where.startswith("fastener") else np.inf
        if far > stack or not _covered(sheet, at, reach):
            yield Fault(
                where=where,
                read=f"{float(at.x):.1f}, {float(at.y):.1f}, {float(at.z):.1f} on sheet {name}",
                accepts="It lies on the metal of its sheet, its whole head or foot too.",
            )


def _feet(bench: Bench) -> Iterator[Fault]:
    """Patches and heads of one sheet that overlap."""
    base = {bond.layer: bond.base for bond in bench.bonds}
    said = [
        (f"patch {p.name}", p.sheet, xyz(p.centre), np.array([p.width, p.height]) / 2)
        for p in bench.patches
    ]
    for one in bench.fasteners:
        half = np.array([one.head, 0.0]) / 2
        said += [(f"fastener {one.name}", name, xyz(one.at), half) for name in one.sheets]
    for (where, on, at, half), (other, too, there, reach) in combinations(said, 2):
        if base.get(on, on) != base.get(too, too) or where == other:
            continue
        apart = np.abs(np.diff(dropped(_sheet(bench, on), np.stack([at, there])), axis=0)[0])
        if _overlap(apart, half, reach):
            yield Fault(where=where, read=f"overlaps {other}", accepts="They must be made one.")


def _overlap(apart: Array, half: Array, other: Array) -> bool:
    """Whether two feet meet; the second half size is nil for a round one."""
    if half[1] == other[1] == 0.0:
        return bool(np.hypot(*apart) < half[0] + other[0])
    wide = half + half[0] * (half[1] == 0.0) * np.array([0.0, 1.0])
    far = other + other[0] * (other[1] == 0.0) * np.array([0.0, 1.0])
    return bool(np.all(apart < wide + far))


def _covered(sheet: Sheet, at: Point, foot: tuple[float, float]) -> bool:
    """Whether a sheet covers a point and what is round it; on the rim counts.

    A foot is half as wide and half as high; no height: round.
    """
    turn = np.arange(8) * np.pi / 4
    place = np.array(sheet.plane.place(at))
    centre = np.mean(np.array(sheet.outline), axis=0)
    around = np.stack([np.cos(turn), np.sin(turn)], axis=-1)
    if foot[1]:
        around = np.sign(np.round(around, 9))  # the corners, and the middles of the sides
    if foot[0]:
        half = np.array([foot[0], foot[1] or foot[0]]) - 10 * SAME
        return bool(covers(sheet, place + half * around).all())
    inward = (centre - place) / max(float(np.linalg.norm(centre - place)), SAME)
    return bool(covers(sheet, np.stack([place, place + 10 * SAME * inward])).any())


def _stacks(bench: Bench) -> Iterator[Fault]:
    for one in bench.fasteners:
        for near, far in pairwise(_sheet(bench, name) for name in one.sheets):
            if not _on_one_another(near, far, one.at):
                yield Fault(
                    where=f"fastener {one.name}",
                    read=f"sheets {near.name} and {far.name}",
                    accepts="Sheets that lie on one another, in the order of the stack.",
                )


def _bonds(bench: Bench) -> Iterator[Fault]:
    for kind, upper, lower in _pairs(bench):
        layer, base = _sheet(bench, upper), _sheet(bench, lower)
        if not _on_one_another(layer, base, layer.plane.point(layer.outline[0])):
            yield Fault(
                where=kind,
                read=f"sheets {layer.name} and {base.name}",
                accepts="Two sheets that lie flat on one another.",
            )


def _pairs(bench: Bench) -> Iterator[tuple[str, str, str]]:
    for bond in bench.bonds:
        yield "bond", bond.layer, bond.base
    for contact in bench.contacts:
        yield f"contact {contact.name}", contact.layer, contact.base


def _on_one_another(near: Sheet, far: Sheet, at: Point) -> bool:
    level = 1.0 - abs(float(near.plane.normal.dot(far.plane.normal))) < 1e-6
    apart = abs(near.plane.height(far.plane.point(far.plane.place(at))))
    return level and abs(apart - (near.thickness + far.thickness) / 2) < GAP


def _sheet(bench: Bench, name: str) -> Sheet:
    return next(sheet for sheet in bench.sheets if sheet.name == name)
