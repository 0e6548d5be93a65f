"""From a drum's shoes to its factor, how it follows friction, and where it would grab."""

import numpy as np

from pedalwright.brakes.drums.formulas import (
    duo_servo_factor,
    duplex_factor,
    friction_moment,
    friction_power,
    grabbing_friction,
    leading_factor,
    leading_force,
    long_grabbing_friction,
    passed_on,
    pressure_moment,
    shoe_factor,
    shoe_torque,
    simplex_factor,
    trailing_factor,
    trailing_force,
)
from pedalwright.brakes.wheels import Disc, Drum, Lining, ShoeDrum, WheelBrake
from pedalwright.core.units import Nmm, Ratio

#: Highest pressure and lining width that a shoe's factor does not depend on, MPa and mm.
UNIT = 1.0


def drum_factor(brake: ShoeDrum, mu: Ratio) -> Ratio:
    """Brake factor at a friction of the linings."""
    lead, trail = _shoes(brake, mu)
    if brake.shoes == "leading-trailing":
        return simplex_factor(lead, trail)
    if brake.shoes == "two-leading":
        return duplex_factor(lead)
    arm, pivot = brake.push_arm, brake.pivot_distance
    second = leading_factor(mu, arm, arm - pivot, brake.drum_radius)
    return duo_servo_factor(lead, passed_on(lead, mu), second)


def sensitivity(brake: WheelBrake) -> Ratio | None:
    """How torque follows friction; None where a drum's factors stand without their frictions."""
    if isinstance(brake, Disc):
        return 1.0
    if isinstance(brake, Drum):
        low, high = brake.friction_low, brake.friction_high
        if low is None or high is None:
            return None
        return friction_power(brake.factor_low, brake.factor_high, low, high)
    low, high = brake.friction_low, brake.friction_high
    return friction_power(drum_factor(brake, low), drum_factor(brake, high), low, high)


def grab_share(brake: WheelBrake) -> Ratio | None:
    """Highest friction over the friction at which a shoe grabs; None without a shoe's measures."""
    if not isinstance(brake, ShoeDrum):
        return None
    arm, pivot, radius = brake.push_arm, brake.pivot_distance, brake.drum_radius
    if brake.shoes == "duo-servo":
        grabs = grabbing_friction(np.minimum(pivot, arm - pivot), radius)
    elif brake.lining is None:
        grabs = grabbing_friction(pivot, radius)
    else:
        grabs = long_grabbing_friction(
            brake.friction, *_moments(brake, brake.lining, brake.friction)
        )
    return brake.friction_high / grabs


def _shoes(brake: ShoeDrum, mu: Ratio) -> tuple[Ratio, Ratio]:
    """Factor of a leading and of a trailing shoe."""
    arm, pivot, radius = brake.push_arm, brake.pivot_distance, brake.drum_radius
    lining = brake.lining
    if lining is None or brake.shoes == "duo-servo":
        return leading_factor(mu, arm, pivot, radius), trailing_factor(mu, arm, pivot, radius)
    moments = _moments(brake, lining, mu)
    peak = np.minimum(lining.end, np.pi / 2)
    torque = shoe_torque(mu, UNIT, UNIT, radius, lining.start, lining.end, peak)
    return (
        shoe_factor(torque, leading_force(*moments, arm), radius),
        shoe_factor(torque, trailing_force(*moments, arm), radius),
    )


def _moments(brake: ShoeDrum, lining: Lining, mu: Ratio) -> tuple[Nmm, Nmm]:
    """Moments of pressure and of friction about a shoe's pivot."""
    peak = np.minimum(lining.end, np.pi / 2)
    shoe = (UNIT, UNIT, brake.drum_radius, brake.pivot_distance, lining.start, lining.end, peak)
    return pressure_moment(*shoe), friction_moment(mu, *shoe)
