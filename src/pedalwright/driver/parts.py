"""The people who drive the car, where they sit, and how their legs come to stand.

Angles of a posture: knee 180 degrees is a straight leg; ankle is shin to sole; hip is trunk to
thigh; sole is heel to toe above the horizontal. Legs are seen from the side: each lies in
the upright plane of the pad it works.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Nmm, Truth, mm, rad


@dataclass(frozen=True, kw_only=True, slots=True)
class Person:
    """A driver as measured; what was not measured is nan and is estimated from the stature."""

    #: Standing, barefoot.
    stature: mm
    #: Floor to crotch, standing, barefoot.
    inside_leg: mm = np.nan
    #: Of the shoe that is worn for driving.
    shoe_length: mm = np.nan
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

    @property
    def shortfall(self) -> mm:
        """How far the straight leg is too short; 0 where it reaches."""
        return np.maximum(self.needed - self.reach, 0.0)


@dataclass(frozen=True, kw_only=True, slots=True)
class OnPad:
    """A posture whose sole touches the pad elsewhere than at the ball of the foot."""

    posture: Posture
    contact: Point
    #: Heel to contact, along the sole.
    along_sole: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Seated:
    """One driver's leg on one pedal, at rest and at full travel."""

    body: Body
    heel_height: mm
    rest: Posture
    full: Posture
    #: How far the heel is off its rest.
    lift_rest: mm
    lift_full: mm
    #: Pad above the heel's rest, at its highest.
    pad_above_heel: mm
    #: How far the pad slides along the sole from rest to full travel.
    slide: mm
    #: True for a pedal that may be worked with the whole leg, heel off the floor.
    heel_may_lift: bool

    @property
    def lifts(self) -> Truth:
        """True where the heel cannot stay on its rest."""
        return np.maximum(self.lift_rest, self.lift_full) > 0.0


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
    """The pads side by side between two walls; left to right on either hand of drive."""

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


@dataclass(frozen=True, kw_only=True, slots=True)
class ShoeRoom:
    """What is left beside shoes that stand on the middle of their pads."""

    #: Between a shoe on the clutch and one on the brake; negative: they overlap.
    between_shoes: mm
    left_wall: mm
    right_wall: mm
