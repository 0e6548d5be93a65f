"""Where the pad's travel goes: play, dead stroke, lift, what pressure takes up, structure."""

from collections.abc import Callable

import numpy as np

from pedalwright.brakes.formulas import DESIGN_PUSH
from pedalwright.brakes.parts import Budget, Curve, Plumbing, TakeUp
from pedalwright.brakes.volumes import Pressed, lifts
from pedalwright.brakes.wheels import WheelBrake
from pedalwright.core.units import N, Ratio, mm, mm_N
from pedalwright.core.working import unrecorded
from pedalwright.hydraulics import Masters, helped, rod_travel, servo_of

#: Pushes of the curve, N.
PUSHES = np.linspace(0.0, 750.0, 31)


def take_up(
    masters: Masters,
    front: WheelBrake,
    rear: WheelBrake,
    plumbing: Plumbing,
    taken: Pressed | None = None,
) -> TakeUp:
    """Rod travel by cause; `taken` is what pressure takes up besides the hoses."""
    with unrecorded():
        front_lift, rear_lift = lifts(front, rear)
        half = plumbing.hoses / 2
        play = 0.0 if plumbing.rod_gap is None else plumbing.rod_gap
        return TakeUp(
            free_play=play,
            dead_stroke=plumbing.dead_stroke - play,
            front_lift=rod_travel(masters, front_lift, 0.0),
            rear_lift=rod_travel(masters, 0.0, rear_lift),
            hoses=rod_travel(masters, half, half),
            linings=0.0 if taken is None else rod_travel(masters, *taken.linings),
            callipers=0.0 if taken is None else rod_travel(masters, *taken.callipers),
            fluid=0.0 if taken is None else rod_travel(masters, *taken.fluid),
        )


def budget(taken: TakeUp, give: mm, pad: Callable[[mm], mm]) -> Budget:
    """Pad travel by cause at the design push, in the order in which the foot meets them.

    `pad` is the pad's arc for a rod travel: each cause is the difference of two arcs, so the
    sum is exact although the pedal's ratio changes. `give` is the structure's, at the pad.
    """
    steps = {
        "free_play": taken.free_play,
        "dead_stroke": taken.dead_stroke,
        "front_lift": taken.front_lift,
        "rear_lift": taken.rear_lift,
        "linings": taken.linings,
        "callipers": taken.callipers,
        "hoses": taken.hoses,
        "fluid": taken.fluid,
    }
    rod, reached, arcs = 0.0 * taken.dead_stroke, 0.0 * taken.dead_stroke, dict[str, mm]()
    for cause, step in steps.items():
        if cause in _OPTIONAL and not np.any(step):
            arcs[cause] = 0.0
            continue
        rod = rod + step
        arc = pad(rod)
        arcs[cause], reached = arc - reached, arc
    return Budget(**arcs, structure=give, total=reached + give)


#: Causes that need no arc of their own where nothing was given.
_OPTIONAL = {"free_play", "linings", "callipers", "fluid"}


def pressure_share(masters: Masters, ratio: Ratio) -> Callable[[N], Ratio]:
    """Pressure at a push over that at the design push; a servo makes it bend."""
    servo = servo_of(masters)
    full = helped(servo, DESIGN_PUSH * ratio)
    return lambda push: helped(servo, push * ratio) / full


def _in_proportion(push: N) -> Ratio:
    return push / DESIGN_PUSH


def force_travel(
    taken: TakeUp,
    give_per_newton: mm_N,
    pad: Callable[[mm], mm],
    share: Callable[[N], Ratio] = _in_proportion,
) -> Curve:
    """Pad travel over push, from where the linings touch.

    What pressure takes up is known at the design push; it follows `share`, the pressure over
    that at the design push. Shapes (pushes,) or (pushes, variants).
    """
    lift = taken.free_play + taken.dead_stroke + taken.front_lift + taken.rear_lift
    elastic = taken.hoses + taken.linings + taken.callipers + taken.fluid
    level = np.zeros_like(lift + elastic + give_per_newton)
    push = np.expand_dims(PUSHES, tuple(range(1, 1 + level.ndim))) + level
    travel = pad(lift + elastic * share(push)) + give_per_newton * push
    return Curve(push=push, travel=travel)
