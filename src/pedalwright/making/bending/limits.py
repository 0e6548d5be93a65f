"""What is asked of bends and of holes near them, and the cure where it is not met."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from math import cos, isnan, nan, pi, sin

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.drawing import XY
from pedalwright.making.bending.formulas import hole_off_bend, least_flange, radius_along_grain
from pedalwright.making.bending.neutral import neutral_of_strip
from pedalwright.making.bending.parts import FlatBend, FlatHole, FlatPattern, TestStrip
from pedalwright.panels.plane import (
    apart,
    direction,
    from_outline,
    from_segment,
    inside,
    overlap,
)
from pedalwright.panels.plane import reach as ray
from pedalwright.shelf.bends import bend_radius

_PRACTICE = Source("common practice", "no source: what tools hold and metal stands", "trade")

FLANGE = Limit(
    "making.flange_length",
    "Each side of a bend is long enough for the folder to hold and to turn.",
    "at least",
    "mm",
    _PRACTICE,
)
FOLDER_WIDTH = Limit(
    "making.folder_width",
    "No bend is longer than the folder.",
    "at most",
    "mm",
    Source("common practice", "the builder's own folder", "trade"),
)
BEND_RADIUS = Limit(
    "making.bend_radius",
    "The bend is not so sharp that the metal cracks.",
    "at least",
    "mm",
    Source("sheet makers' tables", "least radius by metal, half a thickness at least", "trade"),
)
HOLE_TO_BEND = Limit(
    "making.hole_to_bend",
    "Holes keep so far from bends that they stay round.",
    "at least",
    "mm",
    _PRACTICE,
)
HOLE_TO_EDGE = Limit(
    "making.hole_to_edge",
    "Holes keep two diameters from the edge, large ones a rim of 15 mm.",
    "at least",
    "mm",
    Source("AC 43.13-1B", "ch. 4: rivets two diameters from the edge", "handbook"),
    "should",
)
HOLES_APART = Limit(
    "making.holes_apart",
    "Between two holes there is metal: a thickness, and 2 mm.",
    "at least",
    "mm",
    Source("pedalwright", "a drill wanders into a hole beside it", "ours"),
)
OVERLAP = Limit(
    "making.pattern_overlap",
    "The flat piece does not lie over itself, so it can be cut from one sheet.",
    "at most",
    "mm",
    Source("geometry", "a twentieth of a millimetre is rounding", "ours"),
)
STRIP_HIGH = Limit(
    "making.strip_high",
    "The test strip's neutral line lies within the inner half of the sheet.",
    "at most",
    "1",
    Source("pedalwright", "beyond the middle it was measured wrong", "ours"),
)
STRIP_LOW = Limit(
    "making.strip_low",
    "The test strip's neutral line lies at least a fifth of the sheet from the inside.",
    "at least",
    "1",
    Source("pedalwright", "nearer it was measured wrong", "ours"),
)
STRIP_LIKE = Limit(
    "making.strip_like_part",
    "The strip was bent about as sharply as the part will be.",
    "at most",
    "1",
    Source("pedalwright", "radius over thickness of both within a third", "ours"),
    "should",
)

#: Bends nearer to the rolling direction than this count as along it.
_ALONG = pi / 6

#: What to do where a demand is not met.
CURES: Mapping[str, str] = {
    FLANGE.code: "make the flange longer and trim it after bending, or fold it over a hard-wood "
    "former",
    FOLDER_WIDTH.code: "bend it in two clamps over an angle iron, or make the part in two pieces",
    BEND_RADIUS.code: "use a larger radius, turn the part so that the bend runs across the grain, "
    "or anneal",
    HOLE_TO_BEND.code: "drill this hole after bending, or move it away from the bend",
    HOLE_TO_EDGE.code: "move the hole inward or widen the flange",
    HOLES_APART.code: "move one of the holes, or use one for both",
    OVERLAP.code: "cut the flange ends back, or make the flange a piece of its own, riveted on",
    STRIP_HIGH.code: "measure the strip and its inside radius again, or bend another",
    STRIP_LOW.code: "measure the strip and its inside radius again, or bend another",
    STRIP_LIKE.code: "bend a strip over the same edge and in the same sheet as the part",
}


def check(
    pattern: FlatPattern,
    *,
    folder_least: float = float("nan"),
    folder_width: float = float("nan"),
) -> Iterator[Finding]:
    """Judge a flat piece; `folder_least` is the shortest flange the builder's folder turns.

    Unknown, it is taken by rule; an unknown width is not judged.
    """
    for bend in pattern.bends:
        yield from _bend(pattern, bend, folder_least, folder_width)
    yield from _worth_telling([_hole_to_bend(pattern, hole) for hole in pattern.holes])
    yield from _worth_telling([_hole_to_edge(pattern, hole) for hole in pattern.holes])
    pairs = combinations(pattern.holes, 2)
    yield from _worth_telling([_holes_apart(pattern, *pair) for pair in pairs])
    if pattern.bends:
        yield OVERLAP.check(_overlap(pattern), 0.05, pattern.name)


def check_strip(strip: TestStrip, *, radius: float, thickness: float) -> Iterator[Finding]:
    """Judge a test strip for a part with this inside radius and thickness."""
    share = neutral_of_strip(strip).share
    yield STRIP_HIGH.check(share, 0.5, "test strip")
    yield STRIP_LOW.check(share, 0.2, "test strip")
    yield STRIP_LIKE.check(
        _unlike(strip.radius / strip.thickness, radius / thickness), 1.34, "test strip"
    )


def _unlike(one: float, other: float) -> float:
    return max(one / other, other / one)


def _bend(
    pattern: FlatPattern, bend: FlatBend, folder_least: float, folder_width: float
) -> Iterator[Finding]:
    about = f"{pattern.name}: {bend.name}"
    sheet = pattern.sheet
    rule = least_flange(bend.radius, sheet.thickness)
    least = rule if isnan(folder_least) else folder_least
    yield FLANGE.check(_shorter_side(pattern, bend), least, about)
    if not isnan(folder_width):
        yield FOLDER_WIDTH.check(apart(*bend.near), folder_width, about)
    row = bend_radius(sheet.metal, float(sheet.thickness))
    across = nan if row is None else max(row.thicknesses, 0.5) * sheet.thickness
    bound = radius_along_grain(across) if _with_grain(pattern, bend) else across
    yield BEND_RADIUS.check(bend.radius, bound, about)


def _shorter_side(pattern: FlatPattern, bend: FlatBend) -> float:
    """Length of the shorter leg at its shortest, measured outside."""
    faces = {face.name: face for face in pattern.faces}
    along = direction(*bend.near)
    outward = -along[1], along[0]
    back = (bend.deduction + bend.allowance) / 2
    legs = [
        ray(place, way, faces[name].outline)
        for name, line, way in (
            (bend.from_face, bend.near, (-outward[0], -outward[1])),
            (bend.to_face, bend.far, outward),
        )
        for place in _points(line)
    ]
    return back + min(legs)


def _points(line: tuple[XY, XY]) -> Iterator[XY]:
    """Places along a line, not quite at its ends."""
    (ax, ay), (bx, by) = line
    for share in (0.02, 0.25, 0.5, 0.75, 0.98):
        yield ax + share * (bx - ax), ay + share * (by - ay)


def _with_grain(pattern: FlatPattern, bend: FlatBend) -> bool:
    """Whether a bend runs with the grain; nobody knows where nobody looked, then it is across."""
    grain = pattern.sheet.grain
    if grain is None:
        return False
    c, s = direction(*bend.near)
    return abs(c * cos(grain) + s * sin(grain)) > cos(_ALONG)


def _worth_telling(findings: Sequence[Finding | None]) -> list[Finding]:
    """Those that fail, or else the tightest: nobody reads the same sentence for sixty rivets."""
    told = [finding for finding in findings if finding is not None]
    failed = [finding for finding in told if not finding.ok]
    return failed or sorted(told, key=lambda finding: float(finding.margin))[:1]


def land_to_bend(pattern: FlatPattern, hole: FlatHole) -> float:
    """Flat metal between a hole's edge and the nearest bend of its face; nan without a bend."""
    beside = [
        _off(hole.centre, bend, from_near=bend.from_face == hole.face)
        for bend in pattern.bends
        if hole.face in (bend.from_face, bend.to_face)
    ]
    return min(beside) - hole.diameter / 2 if beside else nan


def drawn_oval(pattern: FlatPattern, hole: FlatHole) -> bool:
    """Whether bending would draw a hole oval, so that it has to wait."""
    return land_to_bend(pattern, hole) < float(hole_off_bend(pattern.sheet.thickness))


def _hole_to_bend(pattern: FlatPattern, hole: FlatHole) -> Finding | None:
    land = land_to_bend(pattern, hole)
    if isnan(land):
        return None
    return HOLE_TO_BEND.check(land, hole_off_bend(pattern.sheet.thickness), _name(pattern, hole))


def _off(place: XY, bend: FlatBend, *, from_near: bool) -> float:
    """How far a place keeps from where a bend begins; below nought inside it."""
    start, end = bend.near if from_near else bend.far
    c, s = direction(start, end)
    x, y = place[0] - start[0], place[1] - start[1]
    along, across = c * x + s * y, c * y - s * x
    if 0.0 <= along <= apart(start, end):
        return -across if from_near else across
    return from_segment(place, start, end)


def _hole_to_edge(pattern: FlatPattern, hole: FlatHole) -> Finding:
    bound = min(2 * hole.diameter, hole.diameter / 2 + 15.0)
    within = 1.0 if inside(hole.centre, pattern.outline) else -1.0
    room = within * from_outline(hole.centre, pattern.outline)
    return HOLE_TO_EDGE.check(room, bound, _name(pattern, hole))


def _holes_apart(pattern: FlatPattern, one: FlatHole, other: FlatHole) -> Finding:
    land = apart(one.centre, other.centre) - (one.diameter + other.diameter) / 2
    bound = max(2.0, float(pattern.sheet.thickness))
    return HOLES_APART.check(land, bound, f"{_name(pattern, one)} and {other.name}")


def _overlap(pattern: FlatPattern) -> float:
    """How deep any two parts of the flat piece lie in each other."""
    parts = [face.outline for face in pattern.faces]
    parts += [(*bend.near, *reversed(bend.far)) for bend in pattern.bends]
    return max((overlap(one, other) for one, other in combinations(parts, 2)), default=0.0)


def _name(pattern: FlatPattern, hole: FlatHole) -> str:
    return f"{pattern.name}: {hole.name}"
