"""Side elevation of the footwell: a pedal at rest and at full stroke, the legs, dimensions.

Seen from the car's right, front to the left: the paper's x is the car's x, its y the car's z.
Visible lines show the pedal and the first driver at rest; long-dash double-dot lines show the
same parts at full stroke (ISO 128-2); dimensions after ISO 129-1.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, hypot, isfinite
from typing import Literal

from pedalwright.assess import Assessment
from pedalwright.core.points import Point
from pedalwright.design import Design
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
from pedalwright.linkage import Lever, Position, Rod
from pedalwright.survey import Survey

Which = Literal["brake", "clutch"]
PEDALS: tuple[Which, ...] = ("brake", "clutch")

#: Drawn height of a pad, thickness of what was measured as a face, length of the heel mat, mm.
PAD_HEIGHT, SKIN, MAT = 60.0, 14.0, 620.0


@dataclass(frozen=True, slots=True)
class _Shown:
    """What one elevation shows."""

    which: Which
    lever: Lever
    rod: Rod
    full: Position
    pivot_tube: float
    seats: tuple[tuple[str, Seated], ...]
    heel: float


def side_elevation(design: Design, assessment: Assessment, which: Which) -> Drawing:
    """The footwell with one pedal and every driver's leg on it."""
    shown = _shown(design, assessment, which)
    names = " and ".join(name for name, _ in shown.seats)
    legs = [_leg(name, seat, first=i == 0) for i, (name, seat) in enumerate(shown.seats)]
    return Drawing(
        name=f"{which}-side",
        title=f"Side elevation, {which} pedal at rest and at full stroke",
        description=(
            f"Footwell from the car's right, front to the left: {which} pedal at rest and at "
            f"full stroke, with the legs of {names}."
        ),
        shapes=(
            *_footwell(design.survey, shown),
            *(item for leg in legs for item in leg),
            *_pedal(shown),
            *_dimensions(design.survey, shown),
        ),
    )


def _shown(design: Design, assessment: Assessment, which: Which) -> _Shown:
    placed = assessment.drivers
    if which == "brake":
        part, motion, full = design.brake, assessment.brake, assessment.brake.hard_stop
        seats = tuple((p.name, p.brake) for p in placed)
        return _Shown(
            which,
            motion.lever,
            part.rod,
            full,
            float(part.carrier.pivot.tube_outside),
            seats,
            _heel(seats),
        )
    seats = tuple((p.name, p.clutch) for p in placed)
    return _Shown(
        which,
        assessment.clutch.lever,
        design.clutch.rod,
        assessment.clutch.full,
        float(design.clutch.carrier.pivot.tube_outside),
        seats,
        _heel(seats),
    )


def _heel(seats: tuple[tuple[str, Seated], ...]) -> float:
    return float(seats[0][1].heel_height) if seats else float("nan")


def _xz(point: Point) -> XY:
    return float(point.x), float(point.z)


def _footwell(survey: Survey, shown: _Shown) -> Iterator[Item]:
    """Front wall, floor and heel mat, what pedals hang from, column, lowest point of the rim."""
    heel = shown.heel
    wall, floor = float(survey.face("front_wall").offset), float(survey.face("floor").offset)
    rail = survey.line("cowl_rail")
    rail_at, half = _xz(rail.start), float(rail.diameter) / 2
    top = rail_at[1] + 30.0 if isfinite(rail_at[1]) else floor + 450.0
    yield from _solid((wall - SKIN, heel - SKIN), (wall, top), "front-wall", "front wall")
    yield from _solid((wall, heel - SKIN), (wall + MAT, heel), "heel-mat", "heel rest")
    end = max([wall + 1.6 * MAT, *(float(seat.rest.hip.x) for _, seat in shown.seats)])
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
    ends = (_xz(column.start), _xz(column.end))
    yield Polyline(ends, line=Line.CENTRE, part="column", title="steering column")
    yield Leader(ends[1], "column", to=(6.0, 4.0))
    rim = _xz(survey.mark("rim_bottom"))
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
    hip = _xz(seat.rest.hip)
    yield Leader(hip, f"{name}, hip", to=(-4.0, -9.0) if first else (-5.0, 10.0))


def _posture(posture: Posture, line: Line, name: str) -> Item:
    hip, knee, ankle = _xz(posture.hip), _xz(posture.knee), _xz(posture.ankle)
    heel, ball, toe = _xz(posture.heel), _xz(posture.ball), _xz(posture.toe)
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


def _pedal(shown: _Shown) -> Iterator[Item]:
    lever, full = shown.lever, shown.full
    pivot = _xz(lever.pivot)
    yield _arm(pivot, full.pad, full.pin, full.socket, Line.OTHER_POSITION)
    yield _arm(pivot, lever.pad, lever.pin, shown.rod.socket, Line.VISIBLE)
    yield Circle(pivot, shown.pivot_tube / 2, tone=Tone.ACCENT, part="pivot", title="pivot tube")
    yield CentreCross(pivot, shown.pivot_tube / 2, part="pivot")
    yield Leader(_xz(shown.rod.socket), "rod\nsocket", to=(3.5, -9.0))


def _arm(pivot: XY, pad_at: Point, pin_at: Point, socket_at: Point, line: Line) -> Item:
    pad, pin, socket = _xz(pad_at), _xz(pin_at), _xz(socket_at)
    tone = Tone.ACCENT
    length = hypot(pad[0] - pivot[0], pad[1] - pivot[1])
    ux = (pad[0] - pivot[0]) / length * PAD_HEIGHT / 2
    uz = (pad[1] - pivot[1]) / length * PAD_HEIGHT / 2
    face = ((pad[0] - ux, pad[1] - uz), (pad[0] + ux, pad[1] + uz))
    return Group(
        (
            Polyline((pivot, pad), line=line, tone=tone, part="arm", title="pedal arm"),
            Polyline((pivot, pin), line=line, tone=tone, part="arm"),
            Polyline((pin, socket), line=line, tone=tone, part="push-rod", title="push rod"),
            Circle(pin, 6.0, line=Line.THIN, fill=Fill.PAPER, tone=tone, part="rod-pin"),
            Polyline(face, line=line, tone=tone, part="pad", title="pad"),
        ),
        part="pedal",
        title="pedal at rest" if line is Line.VISIBLE else "pedal at full stroke",
    )


def _dimensions(survey: Survey, shown: _Shown) -> Iterator[Item]:
    lever, heel = shown.lever, shown.heel
    pivot, pad, pin = _xz(lever.pivot), _xz(lever.pad), _xz(lever.pin)
    wall = float(survey.face("front_wall").offset)
    yield Linear(pivot, pad, "aligned", offset=17.0)
    yield Linear(pivot, pin, "aligned", offset=9.0)
    ground = (wall, heel)
    yield Stack(
        (Linear(ground, pad, "vertical"), Linear(ground, pivot, "vertical")),
        side=-1.0,
        base=wall - SKIN,
    )
    yield Stack(
        (
            Linear((wall, heel), pivot, "horizontal"),
            Linear((wall, heel), pad, "horizontal"),
        ),
        side=-1.0,
        base=heel - SKIN,
    )
    now, then = (atan2(at[1] - pivot[1], at[0] - pivot[0]) for at in (pad, _xz(shown.full.pad)))
    swing = 0.5 * hypot(pad[0] - pivot[0], pad[1] - pivot[1])
    yield Angular(pivot, min(now, then), max(now, then), radius=swing, sides=False)
