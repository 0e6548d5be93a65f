"""All three pedals, and everybody's feet on them, to be looked at from any side."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.assess import Assessment, Placed
from pedalwright.assess.cabin import row, treads
from pedalwright.assess.slides import foremost, place_of, slid
from pedalwright.core.points import REARWARD, Plane, Point
from pedalwright.core.units import mm
from pedalwright.design import Design
from pedalwright.documents.pictures.places import pad_halves
from pedalwright.documents.pictures.stroke import heel_level
from pedalwright.documents.pictures.views import View, block, hull, tube
from pedalwright.drawing import XY, Circle, Fill, Group, Item, Line, Polyline, Tone
from pedalwright.driver import Row, Seated
from pedalwright.driver.clearances import OUTLINE, SHOE_HEIGHT, TOE_HEIGHT, Shoe
from pedalwright.linkage import Lever, Pedal
from pedalwright.survey import Line as Tube

#: Of the heel of a shoe: share of its length, half its width (ours).
HEEL = (0.0, 0.35)
#: Of an accelerator only the axis is known; so much of it is drawn, mm.
AXIS = 60.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Built:
    """A pedal at rest, its pad at the end of the stroke, the tube it turns on."""

    name: str
    pedal: Pedal
    lever: Lever
    pad_full: Point
    tube: Tube


@dataclass(frozen=True, kw_only=True, slots=True)
class Scene:
    """What a drawing of the whole footwell shows; a box that slides is in its foremost place."""

    design: Design
    pedals: tuple[Built, ...]
    drivers: tuple[Placed, ...]
    #: How far aft of the foremost place each driver has the box.
    aft: tuple[float, ...]
    #: Level of the heel rest.
    heel: float
    #: Pads and walls across the car, counted from the clutch's side, and where that is: 1 left.
    row: Row
    hand: float

    def at_pad(self, plane: Plane) -> Point:
        """Where the views cut a face: at the pad that stands nearest to it."""
        pads = [built.lever.pad for built in self.pedals]
        return min(pads, key=lambda pad: abs(float(plane.height(pad))))


def scene(design: Design, assessment: Assessment) -> Scene:
    """Everything there is on the three pedals of an assessed design."""
    ahead = foremost(design)
    there = slid(design, ahead)
    pedals = assessment.brake, assessment.clutch, assessment.throttle
    feet = treads(there, *pedals)
    brake, clutch, throttle = pedals
    return Scene(
        design=there,
        pedals=(
            _built("clutch", there.clutch.pedal, clutch.lever, clutch.full.pad,
                   there.clutch.carrier.pivot.span, there.clutch.carrier.pivot.tube_outside),
            _built("brake", there.brake.pedal, brake.lever, brake.hard_stop.pad,
                   there.brake.carrier.pivot.span, there.brake.carrier.pivot.tube_outside),
            _built("accelerator", there.throttle.pedal, throttle.lever, throttle.pad_full,
                   AXIS, 0.0),
        ),
        drivers=assessment.drivers,
        aft=tuple(float(place_of(design, one) - ahead) for one in design.drivers),
        heel=heel_level(design),
        row=row(there, feet),
        hand=feet.hand,
    )  # fmt: skip


def pads(view: View, shown: Scene) -> Iterator[Item]:
    """Arms, pads and tubes: at rest, at the end of the stroke, and for those who slide the box."""
    for built in shown.pedals:
        for name, aft in zip((one.name for one in shown.drivers), shown.aft, strict=True):
            if aft > 0.0:
                yield _pad(view, built, built.lever.pad, Line.HIDDEN, aft, f" for {name}")
        yield _pad(view, built, built.pad_full, Line.OTHER_POSITION)
        yield from tube(view, built.tube, tone=Tone.INK)
        yield _arm(view, built)
        yield _pad(view, built, built.lever.pad, Line.VISIBLE)


def legs(view: View, shown: Scene) -> Iterator[Item]:
    """Everybody's at rest, the last driver's first; feet on the accelerator as another position."""
    for i, one in reversed(list(enumerate(shown.drivers))):
        line = Line.HIDDEN if i else Line.VISIBLE
        shapes = (
            *_leg(view, one.throttle, Line.OTHER_POSITION, one.name),
            *_leg(view, one.brake, line, one.name),
            *_leg(view, one.clutch, line, one.name),
        )
        yield Group(shapes, part=f"driver-{one.name}", title=f"legs of {one.name}")


def shoe_outline(view: View, seat: Seated) -> tuple[XY, ...]:
    """A shoe with the pedal at rest, sole and upper."""
    worn = Shoe.of(seat.body, seat.rest)
    tops = (SHOE_HEIGHT, SHOE_HEIGHT, SHOE_HEIGHT, TOE_HEIGHT)
    corners = (
        worn.heel
        + worn.along * (share * worn.length)
        + worn.across * (side * half * worn.width)
        + worn.up * up
        for (share, half), top in zip((HEEL, *OUTLINE), tops, strict=True)
        for side in (1.0, -1.0)
        for up in (0.0, top)
    )
    places = [view(Point(*(float(number) for number in corner))) for corner in corners]
    return hull(places) if np.all(np.isfinite(places)) else ()


def pad_corners(built: Built, pad: Point) -> list[Point]:
    """A pad as a block, wherever its centre has come to."""
    halves = pad_halves(built.pedal, built.lever, pad)
    return block(pad, (*halves, built.lever.axis * (built.pedal.pad_width / 2.0)))


def _built(name: str, pedal: Pedal, lever: Lever, full: Point, span: mm, outside: mm) -> Built:
    along = lever.axis * (span / 2.0)
    turns_on = Tube(
        name=f"{name}-pivot",
        start=lever.pivot - along,
        end=lever.pivot + along,
        diameter=outside,
    )
    return Built(name=name, pedal=pedal, lever=lever, pad_full=full, tube=turns_on)


def _pad(
    view: View, built: Built, at: Point, line: Line, aft: float = 0.0, whose: str = ""
) -> Item:
    tone = Tone.ACCENT if line is Line.VISIBLE else Tone.QUIET
    corners = [view(corner + REARWARD * aft) for corner in pad_corners(built, at)]
    outline = hull(corners) if np.all(np.isfinite(corners)) else ()
    return Polyline(
        outline,
        closed=True,
        fill=Fill.PAPER if line is Line.VISIBLE else Fill.NONE,
        line=line,
        tone=tone,
        part=f"{built.name}-pad",
        title=f"{built.name} pad{whose}",
    )


def _arm(view: View, built: Built) -> Item:
    """In its own plane from the tube, then across to the pad where there is a joggle."""
    lever = built.lever
    foot = lever.pad - lever.axis * built.pedal.pad_offset
    return Polyline(
        tuple(view(point) for point in (lever.pivot, foot, lever.pad)),
        tone=Tone.ACCENT,
        part=f"{built.name}-arm",
        title=f"{built.name} pedal's arm",
    )


def _leg(view: View, seat: Seated, line: Line, name: str) -> Iterator[Item]:
    tone = Tone.INK if line is Line.VISIBLE else Tone.QUIET
    rest = seat.rest
    bones = tuple(view(point) for point in (rest.hip, rest.knee, rest.ankle))
    yield Polyline(
        shoe_outline(view, seat), closed=True, line=line, tone=tone, part=f"shoe-{name}",
        title=f"shoe of {name}",
    )  # fmt: skip
    yield Polyline(bones, line=line, tone=tone, part=f"leg-{name}")
    for at in bones:
        yield Circle(at, 6.0, line=Line.THIN, fill=Fill.PAPER, tone=tone)
    yield Circle(
        view(rest.ball), 4.0, line=Line.THIN, fill=Fill.PAPER, tone=tone, title="ball of the foot"
    )
