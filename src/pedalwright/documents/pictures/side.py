"""Side elevation of the footwell: a pedal at rest and at full stroke, the legs, dimensions.

Seen from the car's left, front to the left: the paper's x is the car's x, its y the car's z.
Visible lines show the pedal and the first driver at rest; long-dash double-dot lines show the
same parts at full stroke (ISO 128-2); dimensions after ISO 129-1.
"""

from collections.abc import Iterator
from functools import partial
from math import dist, isfinite

from pedalwright.assess import Assessment
from pedalwright.core.lengths import Written
from pedalwright.core.points import REARWARD, Point
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.places import pad_outline, seen, swing
from pedalwright.documents.pictures.shown import Chain, Shown, Which, shown
from pedalwright.drawing import (
    XY,
    Angular,
    CentreCross,
    Circle,
    Drawing,
    Fill,
    Group,
    Hatch,
    Item,
    Leader,
    Line,
    Linear,
    Polyline,
    Stack,
    Tone,
)
from pedalwright.driver import Posture, Seated
from pedalwright.survey import Survey

#: Thickness of what was measured as a face, length of the heel mat, mm.
SKIN, MAT = 14.0, 620.0


def side_elevation(design: Design, assessment: Assessment, which: Which, units: Units) -> Drawing:
    """The footwell with one pedal and every driver's leg on it."""
    drawn = shown(design, assessment, which)
    heel = _heel(drawn)
    names = " and ".join(name for name, _ in drawn.seats)
    legs = [_leg(name, seat, first=i == 0) for i, (name, seat) in enumerate(drawn.seats)]
    return Drawing(
        name=f"{which}-side",
        title=f"Side elevation, {which} pedal at rest and at full stroke",
        description=(
            f"Footwell from the car's left, front to the left: {which} pedal at rest and at "
            f"full stroke, with the legs of {names}."
        ),
        shapes=(
            *_footwell(design.survey, drawn, heel),
            *(item for leg in legs for item in leg),
            *_pedal(drawn),
            *_dimensions(design.survey, drawn, heel, units.lengths),
        ),
    )


def _heel(drawn: Shown) -> float:
    return float(drawn.seats[0][1].heel_height) if drawn.seats else float("nan")


def _footwell(survey: Survey, drawn: Shown, heel: float) -> Iterator[Item]:
    """Front wall, floor and heel mat, what pedals hang from, column, lowest point of the rim."""
    wall, floor = float(survey.face("front_wall").offset), float(survey.face("floor").offset)
    rail = survey.line("cowl_rail")
    rail_at, half = seen(rail.start), float(rail.diameter) / 2
    top = rail_at[1] + 30.0 if isfinite(rail_at[1]) else floor + 450.0
    yield from _solid((wall - SKIN, heel - SKIN), (wall, top), "front-wall", "front wall")
    yield from _solid((wall, heel - SKIN), (wall + MAT, heel), "heel-mat", "heel rest")
    end = max([wall + 1.6 * MAT, *(float(seat.rest.hip.x) for _, seat in drawn.seats)])
    yield Polyline(
        ((wall, floor), (end, floor)), line=Line.HIDDEN, part="floor", title="floor of the car"
    )
    yield Leader((wall + 1.3 * MAT, floor), "floor", to=(4.0, 5.0))
    yield Leader((wall + 0.85 * MAT, heel), "heel rest", to=(4.0, 5.0))
    x, z = rail_at
    yield Polyline(
        ((x - half, z - half), (x + half, z - half), (x + half, z + half), (x - half, z + half)),
        closed=True,
        part="cowl-rail",
        title="cowl rail",
    )
    yield Leader((x + half, z + half), "cowl rail", to=(5.0, 4.0))
    column = survey.line("column")
    ends = (seen(column.start), seen(column.end))
    yield Polyline(ends, line=Line.CENTRE, part="column", title="steering column")
    yield Leader(ends[1], "column", to=(6.0, 4.0))
    rim = seen(survey.mark("rim_bottom"))
    yield Circle(rim, 14.0, line=Line.THIN, part="rim", title="steering wheel rim, lowest point")
    yield Leader(rim, "wheel rim", to=(-7.0, 9.0))


def _solid(low: XY, high: XY, part: str, title: str) -> Iterator[Item]:
    outline = (low, (high[0], low[1]), high, (low[0], high[1]))
    yield Hatch(outline, part=part)
    yield Polyline(outline, closed=True, part=part, title=title)


def _leg(name: str, seat: Seated, *, first: bool) -> Iterator[Item]:
    """Rest in visible lines for the first driver, hidden ones for others; full stroke over it."""
    yield _posture(seat.full, Line.OTHER_POSITION, name)
    yield _posture(seat.rest, Line.VISIBLE if first else Line.HIDDEN, name)
    hip = seen(seat.rest.hip)
    yield Leader(hip, f"{name}, hip", to=(-4.0, -9.0) if first else (-5.0, 10.0))


def _posture(posture: Posture, line: Line, name: str) -> Item:
    hip, knee, ankle = seen(posture.hip), seen(posture.knee), seen(posture.ankle)
    heel, ball, toe = seen(posture.heel), seen(posture.ball), seen(posture.toe)
    tone = Tone.INK if line is Line.VISIBLE else Tone.QUIET
    joints = (
        Circle(at, 6.0, line=Line.THIN, fill=Fill.PAPER, tone=tone) for at in (hip, knee, ankle)
    )
    return Group(
        (
            Polyline((hip, knee, ankle), line=line, tone=tone, part=f"leg-{name}"),
            Polyline((ankle, heel, toe), closed=True, line=line, tone=tone, part=f"foot-{name}"),
            Circle(ball, 4.0, line=Line.THIN, fill=Fill.PAPER, tone=tone, title="ball of the foot"),
            *joints,
        ),
        part=f"driver-{name}",
        title=f"leg of {name}",
    )


def _pedal(drawn: Shown) -> Iterator[Item]:
    lever, full, rod = drawn.lever, drawn.full, drawn.rod
    pivot, tube = seen(lever.pivot), float(drawn.part.carrier.pivot.tube_outside) / 2
    for name, aft in drawn.aft:
        yield _arm(drawn, lever.pad, drawn.at_rest, Line.HIDDEN, aft)
        yield Leader(seen(lever.pivot + REARWARD * aft), f"pedals for {name}", to=(9.0, 7.0))
    yield _arm(drawn, full.pad, drawn.pressed, Line.OTHER_POSITION)
    yield _arm(drawn, lever.pad, drawn.at_rest, Line.VISIBLE)
    yield Circle(pivot, tube, tone=Tone.ACCENT, part="pivot", title="pivot tube")
    yield CentreCross(pivot, tube, part="pivot")
    yield Leader(seen(rod.socket), "rod\nsocket", to=(3.5, -9.0))


def _arm(drawn: Shown, pad_at: Point, chain: Chain, line: Line, aft: float = 0.0) -> Item:
    def there(*places: XY) -> tuple[XY, ...]:
        return tuple((x + aft, z) for x, z in places)

    tone = Tone.QUIET if line is Line.HIDDEN else Tone.ACCENT
    pivot, pad, pin = there(seen(drawn.lever.pivot), seen(pad_at), chain.rods[0][0])
    face = there(*pad_outline(drawn.part.pedal, drawn.lever, pad_at))
    relay = there(*(chain.relay or ()))
    return Group(
        (
            Polyline((pivot, pad), line=line, tone=tone, part="arm", title="pedal arm"),
            Polyline((pivot, pin), line=line, tone=tone, part="arm"),
            Polyline(relay, line=line, tone=tone, part="relay", title="relay lever"),
            *(
                Polyline(there(*rod), line=line, tone=tone, part="push-rod", title="push rod")
                for rod in chain.rods
            ),
            *(
                Circle(at, 6.0, line=Line.THIN, fill=Fill.PAPER, tone=tone, part="rod-pin")
                for at in (pin, *relay[::2])
            ),
            *(Circle(at, 9.0, tone=tone, part="relay", title="relay's tube") for at in relay[1:2]),
            Polyline(face, closed=True, line=line, tone=tone, part="pad", title="pad"),
        ),
        part="pedal",
        title="pedal at full stroke" if line is Line.OTHER_POSITION else "pedal at rest",
    )


def _dimensions(survey: Survey, drawn: Shown, heel: float, written: Written) -> Iterator[Item]:
    lever = drawn.lever
    pivot, pad, pin = seen(lever.pivot), seen(lever.pad), seen(lever.pin)
    wall = float(survey.face("front_wall").offset)
    ground = (wall, heel)
    size = partial(Linear, written=written)
    yield size(pivot, pad, "aligned", offset=17.0)
    yield size(pivot, pin, "aligned", offset=9.0)
    yield Stack(
        (size(ground, pad, "vertical"), size(ground, pivot, "vertical")),
        side=-1.0,
        base=wall - SKIN,
    )
    yield Stack(
        (size(ground, pivot, "horizontal"), size(ground, pad, "horizontal")),
        side=-1.0,
        base=heel - SKIN,
    )
    turn = swing(pivot, pad, seen(drawn.full.pad))
    yield Angular(pivot, *turn, radius=0.5 * dist(pivot, pad), sides=False)
