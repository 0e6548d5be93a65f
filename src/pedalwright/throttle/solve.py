"""From pad travel to spindle opening, and what closes it again."""

import numpy as np

from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import N, Nmm, Num, Ratio, mm, rad
from pedalwright.core.working import subject, unrecorded
from pedalwright.linkage.formulas import pad_arc
from pedalwright.throttle.carburettors import follower_angle, open_share, unequal
from pedalwright.throttle.cuts import cut_rods
from pedalwright.throttle.formulas import (
    pad_force,
    pedal_turn,
    return_force,
    spring_torque,
    stop_torque,
)
from pedalwright.throttle.parts import Opening, Throttle, Turn
from pedalwright.throttle.rock import rock_turn
from pedalwright.throttle.stages import Fitted, fitted

#: Stations of the stroke.
STATIONS = 25
#: A frightened foot on the accelerator, N (common practice, no source).
PANIC_PUSH = 300.0


@no_answer_is_nan
def respond(throttle: Throttle, pad_radius: mm) -> Opening:
    """All that can be said about the accelerator's chain."""
    full = pedal_turn(throttle.pad_room, pad_radius)
    with unrecorded():
        stages = _fitted(throttle, full / 2)
    with subject("pedal at its stop"):
        at_stop = _chained(stages, full)
    with unrecorded():
        pedal = _stations(throttle, full, at_stop.angle)
        chain = _until_it_locks(_chained(stages, pedal))
        needed = _pedal_for(stages, throttle.full_opening)
        needed = np.where(needed < 0.0, np.nan, needed)  # it would turn the spindle the wrong way
        locked = np.any(np.isnan(chain.angle), axis=0)
        end = _chained(stages, np.fmin(needed, full))
        opened = np.minimum(chain.angle, throttle.full_opening)
        lost = _one_spring_lost(throttle, opened)
        followers = _followers(throttle, stages, pedal, full)
        rocked = _rocked(throttle, stages, pedal)
        share = None if throttle.barrel is None else open_share(throttle.barrel, opened)
    with subject("full opening"):
        held = _springs(throttle, np.minimum(end.angle, throttle.full_opening))
        effort = pad_force(held, throttle.friction, end.gearing, pad_radius)
        pad_travel_full = pad_arc(pad_radius, needed)
        on_stop = stop_torque(PANIC_PUSH, pad_radius, end.gearing)
    return Opening(
        pad_travel=pedal * pad_radius,
        spindle_angle=chain.angle,
        gearing=chain.gearing,
        at_stop=np.where(locked, np.nan, at_stop.angle),
        full_opening=throttle.full_opening,
        pad_travel_full=pad_travel_full,
        rod_to_lever=np.min(chain.rod_to_lever, axis=0),
        one_spring_lost=lost,
        friction=throttle.friction,
        effort=effort,
        return_force=_least_return(throttle, chain.gearing, opened, pad_radius),
        stop_torque=on_stop,
        follower_angles=followers,
        unequal=unequal(chain.angle, followers, throttle.full_opening),
        rock_turn=rocked,
        open_share=share,
        open_at_half=None if share is None else np.asarray(share)[STATIONS // 2],
        rods=tuple(cut_rods(throttle)),
    )


def _followers(throttle: Throttle, stages: list[Fitted], pedal: rad, full: rad) -> tuple[rad, ...]:
    """Turns of the further spindles over the stroke."""
    if not throttle.followers:
        return ()
    shaft, spindle = _shaft_and_spindle(stages, pedal)
    middles = _shaft_and_spindle(stages, full / 2)
    return tuple(follower_angle(f, shaft, spindle, middles) for f in throttle.followers)


def _shaft_and_spindle(stages: list[Fitted], pedal: rad) -> tuple[rad, rad]:
    """Turn of the shaft that drives the first spindle, and of that spindle."""
    shaft = _chained(stages[:-1], pedal).angle
    return shaft, stages[-1].turned(shaft).angle


def _rocked(throttle: Throttle, stages: list[Fitted], pedal: rad) -> rad | None:
    if throttle.rock is None:
        return None
    shaft, _ = _shaft_and_spindle(stages, pedal)
    return rock_turn(throttle.rock, stages[-1], shaft)


def _fitted(throttle: Throttle, middle: rad) -> list[Fitted]:
    """Each stage as it stands when the pedal is at mid-travel."""
    stages: list[Fitted] = []
    for stage in throttle.stages:
        stages.append(fitted(stage, middle))
        middle = stages[-1].turned(middle).angle
    return stages


def _chained(stages: list[Fitted], angle: rad) -> Turn:
    """All stages one after the other; gearings multiply, the worst rod angle stays."""
    gearing: Ratio = 1.0 + 0.0 * angle
    worst: rad = np.pi / 2 + 0.0 * angle
    for number, stage in enumerate(stages, start=1):
        with subject(f"stage {number}"):
            turn = stage.turned(angle)
        locked = np.isnan(angle)  # an earlier rod is at its dead point, this one is not asked
        worst = np.where(locked, worst, np.minimum(worst, turn.rod_to_lever))
        angle = turn.angle
        gearing = gearing * turn.gearing
    return Turn(angle=angle, gearing=gearing, rod_to_lever=worst)


def _until_it_locks(turn: Turn) -> Turn:
    """The curves without what a lever turned right round would do past its dead points."""
    alive = np.logical_and.accumulate(np.isfinite(turn.angle), axis=0)
    return Turn(
        angle=np.where(alive, turn.angle, np.nan),
        gearing=np.where(alive, turn.gearing, np.nan),
        rod_to_lever=turn.rod_to_lever,
    )


def _pedal_for(stages: list[Fitted], angle: rad) -> rad:
    """Turn of the pedal that opens the spindle by `angle`: the stages read backwards."""
    for stage in reversed(stages):
        angle = stage.turned_back(angle)
    return angle


def _stations(throttle: Throttle, full: rad, at_stop: rad) -> rad:
    """Pedal turns of the stroke on axis 0, with room for every variant behind it."""
    springs = _springs(throttle, at_stop) + throttle.friction + throttle.full_opening
    whole = np.broadcast_to(full, np.broadcast_shapes(np.shape(full), np.shape(springs)))
    return np.linspace(0.0 * whole, whole, STATIONS)


def _springs(throttle: Throttle, opened: rad) -> Nmm:
    return _sum([spring_torque(s.torque_closed, s.rate, opened) for s in throttle.springs])


def _one_spring_lost(throttle: Throttle, opened: rad) -> Nmm:
    """Least torque of the others over the stroke, whichever spring is lost; 0 with a single one."""
    torques = [spring_torque(s.torque_closed, s.rate, opened) for s in throttle.springs]
    zero = 0.0 * opened
    left = [_sum([zero, *torques[:lost], *torques[lost + 1 :]]) for lost in range(len(torques))]
    least: Nmm = np.min(np.stack(left or [zero]), axis=(0, 1))
    return least


def _least_return(throttle: Throttle, gearing: Ratio, opened: rad, pad_radius: mm) -> N:
    """Least force that brings the pad back, over the stroke; the working shows where it is."""
    with unrecorded():
        springs = np.broadcast_to(_springs(throttle, opened), np.shape(opened))
        force = np.asarray(return_force(springs, throttle.friction, gearing, pad_radius))
        place = np.argmin(force, axis=0, keepdims=True)
    with subject("least return"):
        return return_force(
            np.take_along_axis(springs, place, axis=0)[0],
            throttle.friction,
            np.take_along_axis(np.broadcast_to(gearing, force.shape), place, axis=0)[0],
            pad_radius,
        )


def _sum(torques: list[Num]) -> Num:
    total: Num = torques[0] if torques else 0.0
    for torque in torques[1:]:
        total = total + torque
    return total
