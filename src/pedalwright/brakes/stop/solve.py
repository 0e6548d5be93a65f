"""How warm a stop makes discs and drums."""

from pedalwright.brakes.parts import Car, Rise
from pedalwright.brakes.stop.formulas import brake_heat, disc_rise, moving_energy
from pedalwright.brakes.wheels import WheelBrake
from pedalwright.core.units import K, Ratio, kg, m_s
from pedalwright.core.working import subject

#: What turning parts add to the car's energy, and what goes into the disc and not the pad.
ROTATING, INTO_DISC = 1.05, 0.95
#: J/(kg K), cast iron: 460 to 550 (from memory).
SPECIFIC_HEAT = 480.0
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


def _rise(car: Car, share: Ratio, speed: m_s, heated: kg) -> K:
    energy = moving_energy(car.mass, speed)
    heat = brake_heat(energy, ROTATING, share, INTO_DISC, 2.0)
    return disc_rise(heat, heated, SPECIFIC_HEAT)
