"""How warm a stop makes discs and drums."""

from dataclasses import replace

from pedalwright.brakes.parts import Car, Rise
from pedalwright.brakes.stop.formulas import (
    brake_heat,
    disc_rise,
    drum_growth,
    hot_follow,
    moving_energy,
)
from pedalwright.brakes.wheels import Disc, ShoeDrum, WheelBrake
from pedalwright.core.units import K, Num, Ratio, kg, m_s
from pedalwright.core.working import subject

#: What turning parts add to the car's energy, and what goes into the disc and not the pad.
ROTATING, INTO_DISC = 1.05, 0.95
#: J/(kg K), cast iron: 460 to 550 (from memory).
SPECIFIC_HEAT = 480.0
#: Growth of cast iron for each degree, 1/K: 10.4 to 11.5e-6 (from memory).
IRON_GROWS = 11e-6
#: The speed of the cold service-brake test, m/s.
TEST_SPEED = 100.0 / 3.6


def rise(car: Car, brake: WheelBrake, share: Ratio) -> Rise | None:
    """Rise at one wheel of an axle with this share of the braking; None where no mass is known.

    Nothing cools between stops: five in a row come out hotter than on a road.
    """
    if brake.rotor is None:
        return None
    with subject("stop from 100 km/h"):
        once = _rise(car, share, TEST_SPEED, brake.rotor.mass)
    if car.top_speed is None:
        return Rise(one_stop=once, five_stops=5.0 * once)
    with subject("stop from top speed"):
        fast = _rise(car, share, car.top_speed, brake.rotor.mass)
    return Rise(one_stop=once, five_stops=5.0 * once, top_speed=fast)


def hot(brake: WheelBrake, rise: Rise | None) -> WheelBrake:
    """The brake after five stops: a drum has grown away from its shoes, a disc has not.

    Where a drum's shoes were not measured its cylinder is taken to stand as far from the drum's
    middle as the pivot does, on the other side: the piston goes twice as far as the shoe.
    """
    if rise is None or isinstance(brake, Disc):
        return brake
    growth = drum_growth(IRON_GROWS, brake.drum_radius, rise.five_stops)
    push_arm: Num = 2.0
    pivot: Num = 1.0
    if isinstance(brake, ShoeDrum):
        push_arm, pivot = brake.push_arm, brake.pivot_distance
    return replace(brake, lift=brake.lift + hot_follow(growth, push_arm, pivot))


def _rise(car: Car, share: Ratio, speed: m_s, heated: kg) -> K:
    energy = moving_energy(car.mass, speed)
    heat = brake_heat(energy, ROTATING, share, INTO_DISC, 2.0)
    return disc_rise(heat, heated, SPECIFIC_HEAT)
