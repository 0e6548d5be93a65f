"""The box with its pivots, rods and cylinders in space, hidden lines left out: for the dossier.

Looked at from the driver's shoulder, in a parallel view: what is as long in the same direction is
as long on the paper.
"""

from collections.abc import Iterator, Sequence
from math import cos, isfinite, pi, sin

from pedalwright.assess import Assessment
from pedalwright.assess.box import seats_of, walls_and_tubes
from pedalwright.assess.slides import foremost, slid
from pedalwright.core.faults import InputError
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.documents.pictures.hidden import Edge, Solid, seen_of
from pedalwright.documents.pictures.places import pad_halves
from pedalwright.documents.pictures.shown import PEDALS, Which, shown
from pedalwright.documents.pictures.space import from_there
from pedalwright.documents.pictures.views import View, words
from pedalwright.drawing import XY, Box, Drawing, Leader, Line, Tone
from pedalwright.panels import box as panels
from pedalwright.panels.made import Made, Panel, Tube
from pedalwright.structure.box.ways import in_use
from pedalwright.survey import Line as Surveyed

#: Steps of 15 degrees round the car from behind, to the side where the tunnel is not; and upwards.
ROUND, UP = 2, 1
#: Corners of something round, and of a fastener's head.
CORNERS, SIX = 12, 6
#: A cylinder's body and a rod, across and along, mm.
CYLINDER, ROD = (30.0, 90.0), 8.0
#: A tube that is longer than this beyond the pedals is cut there, mm.
BEYOND = 110.0


def box_picture(design: Design, assessment: Assessment) -> Drawing:
    """Sheets, tubes, pivots, pedals, rods and cylinders, with the names of the parts."""
    there = slid(design, foremost(design))
    view = box_view(there)
    made = made_of(there)
    pedals = [solid for which in PEDALS for solid in _pedal(there, assessment, which, view)]
    solids = (*_sheets(made), *_tubes(there, made, assessment, view), *pedals)
    return Drawing(
        name="box-space",
        title="The pedal box in space" if made.panels else "Pedals, rods and cylinders in space",
        description=(
            "The parts that carry the pedals, their pivots, rods and cylinders in a parallel view "
            "from the driver's shoulder, without the lines that a part hides."
        ),
        shapes=(*seen_of(solids, view), *_names(made, view, _reach(assessment))),
    )


def box_view(design: Design) -> View:
    """From behind and above, turned to the side on which the brake stands of the clutch."""
    right = float(design.brake.pedal.pivot.y) >= float(design.clutch.pedal.pivot.y)
    return from_there(ROUND if right else -ROUND, UP)


def made_of(design: Design) -> Made:
    """What of the box the pedals' forces can reach; nothing where no pedal hangs on one."""
    try:
        return in_use(panels.made(design.box, walls_and_tubes(design)), seats_of(design))
    except (InputError, TypeError):
        return Made()


def _sheets(made: Made) -> Iterator[Solid]:
    for panel in made.panels:
        for flat in panel.flats():
            corners = tuple(flat.plane.point(place) for place in flat.outline)
            line = Line.VISIBLE if panel.name not in _walls(made) else Line.THIN
            edge = Edge(
                points=(*corners, corners[0]), line=line, part="box-sheet",
                title=words(panel.name),
            )  # fmt: skip
            rims = tuple(
                Edge(
                    points=tuple(flat.plane.point(place) for place in _round(*hole)),
                    part="box-sheet",
                )
                for hole in _openings(panel, flat.face.name)
            )
            yield Solid((corners,), (edge, *rims))
    for row in made.rows:
        part, _, face = row.through[-1].rpartition(".")
        on = made.panel(part)
        if on is None:
            continue
        flat = on.flat(face)
        size = float(row.joining.diameter)
        for at in row.places:
            place = flat.plane.place(at)
            ring = tuple(flat.plane.point(one) for one in _round(place, size, SIX))
            yield Solid((), (Edge(points=ring, part="box-fastener", title=words(row.name)),))


def _walls(made: Made) -> set[str]:
    return {held.part for held in made.held}


def _openings(panel: Panel, face: str) -> Iterator[tuple[XY, float]]:
    for hole in panel.flat(face).face.holes:
        yield hole.centre, hole.diameter


def _round(middle: XY, diameter: float, corners: int = CORNERS) -> Iterator[XY]:
    for step in range(corners + 1):
        turn = 2.0 * pi * step / corners
        yield middle[0] + diameter / 2 * cos(turn), middle[1] + diameter / 2 * sin(turn)


def _tubes(design: Design, made: Made, assessment: Assessment, view: View) -> Iterator[Solid]:
    """Tubes of the box, cut off beyond the pedals; shafts between their clamps."""
    reach = _reach(assessment)
    for tube in made.tubes:
        yield from _tube(tube, reach, view)
    if not made.tubes:
        for line in design.survey.lines:
            if _square(line):
                ends = _cut(line.start, line.end, reach)
                yield round_bar(view, *ends, float(line.diameter), title=words(line.name))
    for shaft in made.shafts:
        seat = next((one for one in seats_of(design) if one.pivot_on == shaft.name), None)
        if seat is not None:
            yield round_bar(
                view, shaft.one.centre, shaft.other.centre, float(seat.tube_outside),
                tone=Tone.ACCENT, title="pivot",
            )  # fmt: skip


def _reach(assessment: Assessment) -> tuple[float, float]:
    """How far to either side tubes across the car are drawn."""
    sides = [float(p.lever.pivot.y) for p in (assessment.brake, assessment.clutch)]
    return min(sides) - BEYOND, max(sides) + BEYOND


def _square(line: Surveyed) -> bool:
    way = (line.end - line.start).unit()
    return abs(float(way.y)) > 0.9


def _tube(tube: Tube, reach: tuple[float, float], view: View) -> Iterator[Solid]:
    start, end = _cut(tube.start, tube.end, reach)
    if not tube.depth:
        yield round_bar(view, start, end, tube.width, title=words(tube.name))
        return
    way = (end - start).unit()
    aside = Point(0.0, 0.0, 1.0) if abs(float(way.z)) < 0.9 else Point(1.0, 0.0, 0.0)
    one = (aside - way * way.dot(aside)).unit()
    other = way.cross(one)
    halves = ((1, 1), (1, -1), (-1, -1), (-1, 1))
    ring = tuple(one * (a * tube.depth / 2) + other * (b * tube.width / 2) for a, b in halves)
    yield _prism(start, end, ring, Line.VISIBLE, Tone.INK, words(tube.name), every=True)


def _cut(start: Point, end: Point, reach: tuple[float, float]) -> tuple[Point, Point]:
    """A tube across the car, no further than is of interest."""
    way = end - start
    if not abs(float(way.unit().y)) > 0.9:
        return start, end
    shares = sorted((y - float(start.y)) / float(way.y) for y in reach)
    return start + way * max(0.0, shares[0]), start + way * min(1.0, shares[1])


def _pedal(design: Design, assessment: Assessment, which: Which, view: View) -> Iterator[Solid]:
    """Arm, pad, rod and cylinder at rest."""
    drawn = shown(design, assessment, which)
    lever, rod, arm = drawn.lever, drawn.rod, drawn.part.carrier.arm
    thick, deep = float(arm.thickness), float(arm.depth_at_pivot)
    across = lever.axis
    foot = lever.pad - across * across.dot(lever.pad - lever.pivot)
    foot += (lever.pivot - foot).unit() * (float(drawn.part.pedal.pad_height) / 2.0)
    for start, end in ((lever.pivot, foot), (lever.pivot, lever.pin)):
        yield _bar(start, end, across, thick, deep, f"{which} arm")
    up, back = pad_halves(drawn.part.pedal, lever, lever.pad)
    half = across * (float(drawn.part.pedal.pad_width) / 2.0)
    ring = tuple(up * a + half * b for a, b in ((1, 1), (1, -1), (-1, -1), (-1, 1)))
    yield _prism(
        lever.pad - back, lever.pad + back, ring, Line.VISIBLE, Tone.ACCENT, f"{which} pad",
        every=True,
    )  # fmt: skip
    ways = [(lever.pin, rod.socket)]
    if rod.relay is not None:
        relay = rod.relay
        ways = [(lever.pin, relay.driven_pin), (relay.driving_pin, rod.socket)]
        ways += [(relay.pivot, pin) for pin in (relay.driven_pin, relay.driving_pin)]
    for one, other in ways:
        yield round_bar(view, one, other, ROD, tone=Tone.ACCENT, title="push rod")
    width, length = CYLINDER
    end = rod.socket + rod.direction * length
    yield round_bar(view, rod.socket, end, width, title=f"{which} cylinder")


def _bar(start: Point, end: Point, across: Point, thick: float, deep: float, title: str) -> Solid:
    way = (end - start).unit()
    side = way.cross(across).unit()
    halves = ((1, 1), (1, -1), (-1, -1), (-1, 1))
    ring = tuple(across * (a * thick / 2) + side * (b * deep / 2) for a, b in halves)
    return _prism(start, end, ring, Line.VISIBLE, Tone.ACCENT, title, every=True)


def round_bar(
    view: View, start: Point, end: Point, width: float, *, tone: Tone = Tone.INK, title: str = ""
) -> Solid:
    """Something round and long, with the two lines along which it turns away from the reader."""
    way = (end - start).unit()
    aside = Point(0.0, 0.0, 1.0) if abs(float(way.z)) < 0.9 else Point(1.0, 0.0, 0.0)
    one = way.cross(aside).unit()
    other = way.cross(one)
    turns = [2.0 * pi * step / CORNERS for step in range(CORNERS)]
    ring = tuple(one * (width / 2 * cos(t)) + other * (width / 2 * sin(t)) for t in turns)
    whole = _prism(start, end, ring, Line.VISIBLE, tone, title, every=False)
    side = way.cross(view.towards)
    if not float(side.length()) > 1e-6:
        return whole
    half = side.unit() * (width / 2.0)
    sides = (
        Edge(points=(start + by, end + by), line=Line.VISIBLE, tone=tone, title=title)
        for by in (half, -half)
    )
    return Solid(whole.faces, (*whole.edges, *sides))


def _prism(
    start: Point,
    end: Point,
    ring: Sequence[Point],
    line: Line,
    tone: Tone,
    title: str,
    *,
    every: bool,
) -> Solid:
    """Two ends alike and the sides between them; of something round the sides have no edges."""
    low, high = (tuple(at + corner for corner in ring) for at in (start, end))
    count = len(ring)
    sides = tuple((low[i - 1], low[i], high[i], high[i - 1]) for i in range(count))
    rims = ((*low, low[0]), (*high, high[0]))
    along = tuple(zip(low, high, strict=True)) if every else ()
    edges = tuple(
        Edge(points=points, line=line, tone=tone, title=title) for points in (*rims, *along)
    )
    return Solid((low, high, *sides), edges)


def _names(made: Made, view: View, reach: tuple[float, float]) -> Iterator[Leader]:
    """Each part at its corner that is nearest to the edge of the drawing."""
    corners = {
        panel.name: [flat.plane.point(p) for flat in panel.flats() for p in flat.outline]
        for panel in made.panels
    }
    corners |= {tube.name: [_cut(tube.start, tube.end, reach)[1]] for tube in made.tubes}
    places = [view(at) for own in corners.values() for at in own]
    around = Box.around(at for at in places if isfinite(sum(at)))
    if around is None:
        return
    middle = ((around.left + around.right) / 2.0, (around.bottom + around.top) / 2.0)
    for name, own in corners.items():
        tip = max((view(at) for at in own), key=lambda at: _off(at, middle))
        way = (-5.0 if tip[0] < middle[0] else 5.0, -5.0 if tip[1] < middle[1] else 5.0)
        yield Leader(tip, words(name), to=way, tone=Tone.QUIET)


def _off(at: XY, middle: XY) -> float:
    return (at[0] - middle[0]) ** 2 + (at[1] - middle[1]) ** 2
