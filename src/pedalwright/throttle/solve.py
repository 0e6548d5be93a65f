"""From pad travel to spindle opening, and what closes it again."""

import numpy as np

from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Nmm, Num, Ratio, mm, rad
from pedalwright.core.working import subject, unrecorded
from pedalwright.throttle.formulas import pad_force, pedal_turn, return_force, spring_torque
from pedalwright.throttle.parts import Opening, Throttle, Turn
from pedalwright.throttle.stages import turned

#: Stations of the stroke.
STATIONS = 41


@no_answer_is_nan
def respond(throttle: Throttle, pad_radius: mm) -> Opening:
    """All that can be said about the accelerator's chain."""
    full = pedal_turn(throttle.pad_room, pad_radius)
    with unrecorded():
        pedal = np.linspace(0.0 * full, full, STATIONS)
        chain = _chained(throttle, pedal, full / 2)
        opened = np.minimum(chain.angle, throttle.full_opening)
        lost = _one_spring_lost(throttle, opened)
    with subject("pedal at its stop"):
        at_stop = _chained(throttle, full, full / 2)
        springs = _springs(throttle, np.minimum(at_stop.angle, throttle.full_opening))
        effort = pad_force(springs, throttle.friction, at_stop.gearing, pad_radius)
    with subject("closed"):
        closed = _springs(throttle, 0.0 * at_stop.angle)
        back = return_force(closed, throttle.friction, np.asarray(chain.gearing)[0], pad_radius)
    return Opening(
        pad_travel=pedal * pad_radius,
        spindle_angle=chain.angle,
        gearing=chain.gearing,
        at_stop=at_stop.angle,
        full_opening=throttle.full_opening,
        rod_to_lever=np.min(chain.rod_to_lever, axis=0),
        one_spring_lost=lost,
        friction=throttle.friction,
        effort=effort,
        return_force=back,
    )


def _chained(throttle: Throttle, angle: rad, middle: rad) -> Turn:
    """All stages one after the other; gearings multiply, the worst rod angle stays."""
    gearing: Ratio = 1.0 + 0.0 * angle
    worst: rad = np.pi / 2 + 0.0 * angle
    for number, stage in enumerate(throttle.stages, start=1):
        with subject(f"stage {number}"):
            turn = turned(stage, angle, middle)
            with unrecorded():
                middle = turned(stage, middle, middle).angle
        angle = turn.angle
        gearing = gearing * turn.gearing
        worst = np.minimum(worst, turn.rod_to_lever)
    return Turn(angle=angle, gearing=gearing, rod_to_lever=worst)


def _springs(throttle: Throttle, opened: rad) -> Nmm:
    return _sum([spring_torque(s.torque_closed, s.rate, opened) for s in throttle.springs])


def _one_spring_lost(throttle: Throttle, opened: rad) -> Nmm:
    """Least torque of the others over the stroke, whichever spring is lost; 0 with a single one."""
    torques = [spring_torque(s.torque_closed, s.rate, opened) for s in throttle.springs]
    zero = 0.0 * opened
    left = [_sum([zero, *torques[:lost], *torques[lost + 1 :]]) for lost in range(len(torques))]
    least: Nmm = np.min(np.stack(left or [zero]), axis=(0, 1))
    return least


def _sum(torques: list[Num]) -> Num:
    total: Num = torques[0] if torques else 0.0
    for torque in torques[1:]:
        total = total + torque
    return total
