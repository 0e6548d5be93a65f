"""The people who drive the car, where they sit, and how their legs come to stand.

Angles of a posture: knee 180 degrees is a straight leg; ankle is shin to sole; hip is trunk to
thigh; sole is heel to toe above the horizontal. Each leg lies in an upright plane through its
hip joint and the ball of the foot, and its angles are seen square to that plane.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from pedalwright.core.points import Plane, Point, at
from pedalwright.core.units import Nmm, Truth, mm, rad
from pedalwright.survey.parts import Line, Obstacle

#: Whose survey the lengths are taken from that nobody measured.
People = Literal["men", "women", "mixed"]
ShoeKind = Literal["slipper", "driving shoe", "trainer", "boot"]
#: What a heel does while the pad moves.
Heel = Literal["slides", "may lift", "stays"]
#: What may be lost of a height in the arithmetic, mm.
_TOUCHES = 1e-9


@dataclass(frozen=True, kw_only=True, slots=True)
class Person:
    """A driver as measured; what was not measured is nan and is estimated from the stature."""

    #: Standing, barefoot.
    stature: mm
    #: Floor to crotch, standing, barefoot.
    inside_leg: mm = np.nan
    #: Whose survey the other lengths are taken from; left out, plain shares of the stature.
    people: People | None = None
    #: Sitting upright, barefoot, shins upright: floor to the top of the knee. Two boards and a
    #: tape; with the next one it says more of a leg than stature can.
    knee_height: mm = np.nan
    #: Sitting the same way: a board at the back of the buttock to the front of the knee.
    buttock_knee: mm = np.nan
    #: Barefoot, heel to the tip of the longest toe.
    foot_length: mm = np.nan
    #: Barefoot, across the ball.
    foot_width: mm = np.nan
    #: What is worn for driving, where the shoe itself is not measured.
    shoe: ShoeKind = "driving shoe"
    #: Of the shoe that is worn for driving.
    shoe_length: mm = np.nan
    #: At its widest, between two books.
    shoe_width: mm = np.nan
    #: Hip joint to knee joint. From the bump of the hip bone add about 5 in 100.
    thigh: mm = np.nan
    #: Knee joint to ankle joint, bump to bump on the outside.
    shank: mm = np.nan
    #: Heel point to ball of the foot, along the sole.
    heel_to_ball: mm = np.nan
    #: Ankle joint ahead of the heel point, along the sole.
    ankle_forward: mm = np.nan
    #: Ankle joint above the ground in the shoe, square to the sole.
    ankle_height: mm = np.nan


@dataclass(frozen=True, kw_only=True, slots=True)
class Driver:
    """A person in the seat."""

    name: str
    person: Person
    #: Middle of the two hip joints.
    hip: Point
    #: Trunk behind the vertical.
    trunk: rad
    #: How far the knees are turned out, about the lines from hips to ankles.
    knees_out: rad = 0.0
    #: How far the seat goes back from there; left out, it is fixed.
    seat_back: mm | None = None
    #: Where he has a pedal box that slides, rearward of where it was measured; left out, where
    #: the design has it.
    slide: mm | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class HeelRest:
    """What was done to the floor under the heels."""

    #: Depth of the foot-tub below the floor.
    drop: mm
    #: Thickness of the heel plate, mats and packing on top of it.
    plate: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Body:
    """The lengths a posture is drawn with, or the uncertainty (1 SD) of each of them."""

    thigh: mm
    shank: mm
    heel_to_ball: mm
    ankle_forward: mm
    ankle_height: mm
    shoe_length: mm
    shoe_width: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Posture:
    """One leg at one position of a pedal; nan where the leg cannot get there."""

    hip: Point
    knee: Point
    ankle: Point
    #: Where the heel touches the ground, or would.
    heel: Point
    ball: Point
    #: Tip of the shoe.
    toe: Point
    knee_angle: rad
    ankle_angle: rad
    hip_angle: rad
    sole_angle: rad
    #: Distance the leg has to span.
    needed: mm
    #: Distance it spans when straight.
    reach: mm

    def at(self, place: int | slice) -> "Posture":
        """One place of the stroke, or some, of many on an axis in front."""
        return Posture(
            hip=self.hip.at(place),
            knee=self.knee.at(place),
            ankle=self.ankle.at(place),
            heel=self.heel.at(place),
            ball=self.ball.at(place),
            toe=self.toe.at(place),
            knee_angle=at(self.knee_angle, place),
            ankle_angle=at(self.ankle_angle, place),
            hip_angle=at(self.hip_angle, place),
            sole_angle=at(self.sole_angle, place),
            needed=at(self.needed, place),
            reach=at(self.reach, place),
        )

    @property
    def shortfall(self) -> mm:
        """How far the straight leg is too short; 0 where it reaches."""
        return np.maximum(self.needed - self.reach, 0.0)

    @property
    def across(self) -> Point:
        """Level, square to leg and foot, towards the car's right."""
        x, y = self.heel.x - self.hip.x, self.heel.y - self.hip.y
        run = np.hypot(x, y)
        return Point(y / run, -x / run, 0.0)

    @property
    def splay(self) -> rad:
        """How far the thigh points to the car's right of straight ahead."""
        thigh = self.knee - self.hip
        return np.arctan2(thigh.y, -thigh.x)


@dataclass(frozen=True, kw_only=True, slots=True)
class OnPad:
    """A posture whose sole touches the pad elsewhere than at the ball of the foot."""

    posture: Posture
    contact: Point
    #: Heel to contact, along the sole.
    along_sole: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Tread:
    """A pedal as a foot meets it, at the places of its stroke that are looked at."""

    name: str
    #: What each place is called: `rest` first, `full` among them.
    places: tuple[str, ...]
    #: Pad centres; (places,) or (places, variants).
    pads: Point
    #: The pad's face above straight ahead, at each place.
    faces: rad
    #: `slides`: the ball stays on the pad and the heel slides on its rest. `may lift`: or it comes
    #: off where the ankle would bend too far. `stays`: the heel is still and the sole slides.
    heel: Heel
    #: Which foot: +1 the right hip's, -1 the left one's.
    side: float
    #: Of a round pad, about its centre.
    rounding: mm = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Footwell:
    """What legs and shoes may meet."""

    #: Lowest point of the steering wheel.
    rim: Point
    column: Line
    #: Ahead of the toes.
    wall: Plane
    #: Walls beside, and what covers the footwell from above.
    sides: tuple[Plane, ...] = ()
    covers: tuple[Plane, ...] = ()
    #: Tubes the pedals turn on.
    pivots: tuple[Line, ...] = ()
    boxes: tuple[Obstacle, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Near:
    """The least that is left around one leg over a stroke; None where nothing is there."""

    #: Knee or thigh to the steering wheel.
    knee_rim: mm
    shin_column: mm
    #: Tip of the shoe to the wall ahead, at each place; (places,) or (places, variants).
    toe_wall: mm
    #: Top of the shoe to pivot tubes and to boxes in the way.
    instep: mm | None
    #: Tip of the shoe to what covers the footwell.
    toe_cover: mm | None
    #: Shoe to the nearest wall beside it.
    shoe_side: mm | None
    #: Outermost edges of the fore part of the shoe, across the car.
    shoe_left: mm
    shoe_right: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Seated:
    """One driver's leg on one pedal, at rest, at full travel and between."""

    body: Body
    heel_height: mm
    places: tuple[str, ...]
    #: The leg at every place; (places,) or (places, variants).
    stroke: Posture
    near: Near
    #: Pad above the heel's rest, at its highest.
    pad_above_heel: mm
    #: How far the pad slides along the sole from rest to full travel.
    slide: mm
    #: Heel above its rest, at its lowest, if the sole lay on the pad's face all the way: where that
    #: is negative the heel is pressed on its rest, and the sole has to leave the face.
    heel_if_flush: mm
    #: Largest angle between sole and pad's face.
    tilt: rad
    #: Distance to span at full travel with the seat slid back; None for a seat that is fixed.
    reach_back: mm | None
    heel: Heel

    def at(self, name: str) -> Posture:
        """The leg at one of the places."""
        return self.stroke.at(self.places.index(name))

    @property
    def rest(self) -> Posture:
        """The leg with the pedal at rest."""
        return self.stroke.at(0)

    @property
    def full(self) -> Posture:
        """The leg at full travel."""
        return self.at("full")

    @property
    def lift_rest(self) -> mm:
        """How far the heel is off its rest, pedal at rest."""
        return self.rest.heel.z - self.heel_height

    @property
    def lift_full(self) -> mm:
        """How far the heel is off its rest at full travel."""
        return self.full.heel.z - self.heel_height

    @property
    def lifts(self) -> Truth:
        """True where the heel cannot stay on its rest."""
        return np.maximum(self.lift_rest, self.lift_full) > _TOUCHES


@dataclass(frozen=True, kw_only=True, slots=True)
class JointMoments:
    """What a push of the pad on the foot asks of each joint, and its lever arm there.

    Positive turns the joint's far part up and rearward; the weight of the leg is left out.
    """

    hip: Nmm
    knee: Nmm
    ankle: Nmm
    hip_arm: mm
    knee_arm: mm
    ankle_arm: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Pad:
    """A pad as seen from behind: middle and width across the car."""

    middle: mm
    width: mm

    @property
    def left(self) -> mm:
        """Edge on the car's left."""
        return self.middle - self.width / 2

    @property
    def right(self) -> mm:
        """Edge on the car's right."""
        return self.middle + self.width / 2


@dataclass(frozen=True, kw_only=True, slots=True)
class Row:
    """The pads side by side between two walls, counted from the clutch's side."""

    left_wall: mm
    clutch: Pad
    brake: Pad
    accelerator: Pad
    right_wall: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Spacing:
    """Gaps across the car."""

    accelerator_brake: mm
    brake_clutch: mm
    clutch_wall: mm
    #: Far edges of the brake pad to the walls.
    brake_left_wall: mm
    brake_right_wall: mm
