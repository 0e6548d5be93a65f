"""The brakes at the wheels, as the builder measures them."""

from dataclasses import dataclass
from typing import Annotated, Literal, TypeAlias

from pedalwright.core.units import Num, Ratio, kg, mm, mm3_MPa, rad

Shoes: TypeAlias = Literal["leading-trailing", "two-leading", "duo-servo"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Wear:
    """Piston movement from new linings to worn ones.

    Behind a fixed calliper that is one lining and one face of the disc; under a sliding one the
    single piston follows both sides.
    """

    lining: mm
    #: What disc or drum lose themselves.
    face: mm = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Elasticity:
    """What one wheel's brake takes up with pressure, in straight lines."""

    #: Calliper spreading and swelling; drum and shoes bending.
    calliper: mm3_MPa
    #: Lining under one piston squeezed by each unit of line pressure.
    squeeze: Annotated[Num, "mm/MPa"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Rotor:
    """What one wheel's brake heats: the rubbed ring of a disc, the drum without its hub."""

    mass: kg


@dataclass(frozen=True, kw_only=True, slots=True)
class Lining:
    """Ends of a shoe's lining, as angles from the line drum centre to pivot."""

    start: rad
    end: rad


@dataclass(frozen=True, kw_only=True, slots=True)
class Disc:
    """A disc brake at one wheel of an axle; the other wheel has the same."""

    piston_bore: mm
    #: Pistons on ONE side of the disc: these press, the other side answers.
    pistons_one_side: Ratio
    #: Pistons that must be moved by fluid, all sides.
    pistons_moved: Ratio
    effective_radius: mm
    #: Lining friction: worst, usual, best.
    friction_low: Ratio
    friction: Ratio
    friction_high: Ratio
    #: Piston movement from rest until the linings press.
    lift: mm
    #: The same with pads worn to a taper, or a disc that knocks them back.
    lift_worn: mm | None = None
    elasticity: Elasticity | None = None
    wear: Wear | None = None
    rotor: Rotor | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Drum:
    """A drum brake at one wheel of an axle, its factor known; the other wheel has the same."""

    cylinder_bore: mm
    #: Wheel-cylinder pistons at this wheel: two for one double-ended or two single cylinders.
    pistons_moved: Ratio
    drum_radius: mm
    #: Brake factor (self-help): drag force at the drum over the force of one piston.
    factor_low: Ratio
    factor: Ratio
    factor_high: Ratio
    #: Movement of each wheel-cylinder piston until the shoes press.
    lift: mm
    #: Lining friction that the low and the high factor belong to.
    friction_low: Ratio | None = None
    friction_high: Ratio | None = None
    #: What kind it is; the factor tells what it does.
    shoes: Shoes | None = None
    #: Lift when the shoes are due to be adjusted.
    lift_worn: mm | None = None
    elasticity: Elasticity | None = None
    wear: Wear | None = None
    rotor: Rotor | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class ShoeDrum:
    """A drum brake at one wheel of an axle, its factor worked out from its shoes.

    Both shoes are alike and pushed by equal pistons; in a duo-servo drum the first one floats.
    """

    cylinder_bore: mm
    pistons_moved: Ratio
    drum_radius: mm
    shoes: Shoes
    #: Arm of the piston's force about the shoe's pivot.
    push_arm: mm
    #: Drum centre to the shoe's pivot (or to the adjuster of a duo-servo drum).
    pivot_distance: mm
    friction_low: Ratio
    friction: Ratio
    friction_high: Ratio
    lift: mm
    #: With it the pressure is spread over the lining; left out, it acts at the shoe's middle.
    #: Not used in a duo-servo drum.
    lining: Lining | None = None
    lift_worn: mm | None = None
    elasticity: Elasticity | None = None
    wear: Wear | None = None
    rotor: Rotor | None = None


WheelBrake: TypeAlias = Disc | Drum | ShoeDrum
