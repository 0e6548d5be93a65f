"""All three pedals, and everybody's feet on them, to be looked at from any side."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType

import numpy as np

from pedalwright.assess import Assessment, Placed
from pedalwright.assess.cabin import row, treads
from pedalwright.assess.slides import foremost, place_of, slid
from pedalwright.assess.stroke import PedalName, Pressed
from pedalwright.core.points import REARWARD, Plane, Point
from pedalwright.core.units import mm
from pedalwright.design import Design
from pedalwright.documents.pictures.places import pad_halves
from pedalwright.documents.pictures.stroke import heel_level
from pedalwright.documents.pictures.views import View, block, hull, tube
from pedalwright.drawing import XY, Circle, Fill, Group, Item, Line, Polyline, Tone
from pedalwright.driver import Body, Posture, Row, Seated
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

    which: PedalName
    #: What a reader calls it.
    name: str
    pedal: Pedal
    lever: Lever
    pad_full: Point
    tube: Tube

    def joggle_from(self, pad: Point) -> Point:
        """Where the arm, in its own plane, comes level with its pad."""
        across = self.lever.axis if self.pedal.hinge == "hanging" else -self.lever.axis
        return pad - across * self.pedal.pad_offset


@dataclass(frozen=True, kw_only=True, slots=True)
class Scene:
    """What a drawing of the whole footwell shows; a box that slides is in its foremost place."""

    #: The pedal somebody has his foot on, as `throttle`; empty with all of them at rest.
    on: str = ""
    #: Where its pad has come to.
    pad_here: Point | None = None
    #: Legs on it, by their driver.
    pressing: Mapping[str, Posture] = field(default_factory=lambda: MappingProxyType({}))

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

    def posture(self, one: Placed, which: PedalName) -> Posture:
        """One driver's leg on a pedal, at rest or wherever the pedal has come to."""
        if which == self.on and one.name in self.pressing:
            return self.pressing[one.name]
        return seat_of(one, which).rest

    def pad(self, built: Built) -> Point:
        """Where a pad stands."""
        pressed = self.pad_here is not None and built.which == self.on
        return self.pad_here if pressed and self.pad_here is not None else built.lever.pad

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
            _built("clutch", "clutch", there.clutch.pedal, clutch.lever, clutch.full.pad,
                   there.clutch.carrier.pivot.span, there.clutch.carrier.pivot.tube_outside),
            _built("brake", "brake", there.brake.pedal, brake.lever, brake.hard_stop.pad,
                   there.brake.carrier.pivot.span, there.brake.carrier.pivot.tube_outside),
            _built("throttle", "accelerator", there.throttle.pedal, throttle.lever,
                   throttle.pad_full, AXIS, 0.0),
        ),
        drivers=assessment.drivers,
        aft=tuple(float(place_of(design, one) - ahead) for one in design.drivers),
        heel=heel_level(design),
        row=row(there, feet),
        hand=feet.hand,
    )  # fmt: skip


def pressed_scene(
    design: Design, assessment: Assessment, which: PedalName, now: Pressed, names: tuple[str, ...]
) -> Scene:
    """The same with one pedal down, the box where the first driver has it, and some legs only."""
    still = scene(design, assessment)
    ahead = foremost(design)
    by = REARWARD * (now.slide - ahead)
    return replace(
        still,
        design=slid(design, now.slide),
        pedals=tuple(_slid(built, by) for built in still.pedals),
        drivers=tuple(one for one in still.drivers if one.name in names),
        aft=(),
        on=which,
        pad_here=now.pad,
        pressing={leg.name: leg.posture for leg in now.legs},
    )


def _slid(built: Built, by: Point) -> Built:
    lever, tube_at = built.lever, built.tube
    return replace(
        built,
        lever=replace(lever, pivot=lever.pivot + by, pad=lever.pad + by, pin=lever.pin + by),
        pad_full=built.pad_full + by,
        tube=replace(tube_at, start=tube_at.start + by, end=tube_at.end + by),
    )


def seat_of(one: Placed, which: PedalName) -> Seated:
    """One driver on one pedal."""
    return {"brake": one.brake, "clutch": one.clutch, "throttle": one.throttle}[which]


def pads(view: View, shown: Scene) -> Iterator[Item]:
    """Arms, pads and tubes: at rest, at the end of the stroke, and for those who slide the box."""
    for built in shown.pedals:
        for one, aft in zip(shown.drivers, shown.aft, strict=False):
            if aft > 0.0:
                yield _pad(view, built, built.lever.pad, Line.HIDDEN, aft, f" for {one.name}")
        at = shown.pad(built)
        if at is not built.lever.pad:
            yield _pad(view, built, built.lever.pad, Line.OTHER_POSITION)
        yield _pad(view, built, built.pad_full, Line.OTHER_POSITION)
        yield from tube(view, built.tube, tone=Tone.INK)
        yield _arm(view, built, at)
        yield _pad(view, built, at, Line.VISIBLE)


def legs(view: View, shown: Scene) -> Iterator[Item]:
    """The last driver's first; the right foot where it is not, as another position."""
    right: tuple[PedalName, PedalName] = (
        ("brake", "throttle") if shown.on == "throttle" else ("throttle", "brake")
    )
    for i, one in reversed(list(enumerate(shown.drivers))):
        line = Line.HIDDEN if i else Line.VISIBLE
        away, here = right
        shapes = (
            *_leg(view, shown, one, away, Line.OTHER_POSITION),
            *_leg(view, shown, one, here, line),
            *_leg(view, shown, one, "clutch", line),
        )
        yield Group(shapes, part=f"driver-{one.name}", title=f"legs of {one.name}")


def shoe_outline(view: View, body: Body, posture: Posture) -> tuple[XY, ...]:
    """A shoe, sole and upper."""
    places = [view(corner) for end in shoe_corners(body, posture) for corner in end]
    return hull(places) if np.all(np.isfinite(places)) else ()


def shoe_corners(body: Body, posture: Posture) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """A shoe as its sole and its upper, each from the heel round by the right."""
    worn = Shoe.of(body, posture)
    tops = (SHOE_HEIGHT, SHOE_HEIGHT, SHOE_HEIGHT, TOE_HEIGHT)
    outline = list(zip((HEEL, *OUTLINE), tops, strict=True))
    round_by = [(1.0, *one) for one in outline] + [(-1.0, *one) for one in reversed(outline)]

    def corner(side: float, place: tuple[float, float], up: float) -> Point:
        share, half = place
        at = (
            worn.heel
            + worn.along * (share * worn.length)
            + worn.across * (side * half * worn.width)
            + worn.up * up
        )
        return Point(*(float(number) for number in at))

    sole = tuple(corner(side, place, 0.0) for side, place, _ in round_by)
    return sole, tuple(corner(side, place, top) for side, place, top in round_by)


def pad_corners(built: Built, pad: Point) -> list[Point]:
    """A pad as a block, wherever its centre has come to."""
    return block(pad, pad_halves_of(built, pad))


def pad_halves_of(built: Built, pad: Point) -> tuple[Point, Point, Point]:
    """From a pad's centre to its upper edge, its far side, and one end of its width."""
    up, back = pad_halves(built.pedal, built.lever, pad)
    return up, back, built.lever.axis * (built.pedal.pad_width / 2.0)


def _built(
    which: PedalName, name: str, pedal: Pedal, lever: Lever, full: Point, span: mm, outside: mm
) -> Built:
    along = lever.axis * (span / 2.0)
    turns_on = Tube(
        name=f"{name}-pivot",
        start=lever.pivot - along,
        end=lever.pivot + along,
        diameter=outside,
    )
    return Built(which=which, name=name, pedal=pedal, lever=lever, pad_full=full, tube=turns_on)


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


def _arm(view: View, built: Built, pad: Point) -> Item:
    """In its own plane from the tube, then across to the pad where there is a joggle."""
    return Polyline(
        tuple(view(point) for point in (built.lever.pivot, built.joggle_from(pad), pad)),
        tone=Tone.ACCENT,
        part=f"{built.name}-arm",
        title=f"{built.name} pedal's arm",
    )


def _leg(view: View, shown: Scene, one: Placed, which: PedalName, line: Line) -> Iterator[Item]:
    tone = Tone.INK if line is Line.VISIBLE else Tone.QUIET
    body, rest, name = seat_of(one, which).body, shown.posture(one, which), one.name
    bones = tuple(view(point) for point in (rest.hip, rest.knee, rest.ankle))
    yield Polyline(
        shoe_outline(view, body, rest), closed=True, line=line, tone=tone, part=f"shoe-{name}",
        title=f"shoe of {name}",
    )  # fmt: skip
    yield Polyline(bones, line=line, tone=tone, part=f"leg-{name}")
    for at in bones:
        yield Circle(at, 6.0, line=Line.THIN, fill=Fill.PAPER, tone=tone)
    yield Circle(
        view(rest.ball), 4.0, line=Line.THIN, fill=Fill.PAPER, tone=tone, title="ball of the foot"
    )
