"""Where the pad's travel goes: dead stroke, lift, hoses, structure."""

from collections.abc import Callable

import numpy as np

from pedalwright.brakes.formulas import DESIGN_PUSH
from pedalwright.brakes.parts import Budget, Curve, Plumbing, TakeUp, WheelBrake
from pedalwright.brakes.solve import lifts
from pedalwright.core.units import mm, mm_N
from pedalwright.core.working import unrecorded
from pedalwright.hydraulics import Masters, rod_travel

#: Pushes of the curve, N.
PUSHES = np.linspace(0.0, 750.0, 31)


def take_up(masters: Masters, front: WheelBrake, rear: WheelBrake, plumbing: Plumbing) -> TakeUp:
    """Rod travel by cause."""
    with unrecorded():
        front_lift, rear_lift = lifts(front, rear)
        half = plumbing.hoses / 2
        return TakeUp(
            dead_stroke=plumbing.dead_stroke,
            front_lift=rod_travel(masters, front_lift, 0.0),
            rear_lift=rod_travel(masters, 0.0, rear_lift),
            hoses=rod_travel(masters, half, half),
        )


def budget(taken: TakeUp, give: mm, pad: Callable[[mm], mm]) -> Budget:
    """Pad travel by cause at the design push, in the order in which the foot meets them.

    `pad` is the pad's arc for a rod travel: each cause is the difference of two arcs, so the
    sum is exact although the pedal's ratio changes. `give` is the structure's, at the pad.
    """
    rod = taken.dead_stroke
    arcs = [pad(rod)]
    for step in (taken.front_lift, taken.rear_lift, taken.hoses):
        rod = rod + step
        arcs.append(pad(rod))
    return Budget(
        dead_stroke=arcs[0],
        front_lift=arcs[1] - arcs[0],
        rear_lift=arcs[2] - arcs[1],
        hoses=arcs[3] - arcs[2],
        structure=give,
        total=arcs[3] + give,
    )


def force_travel(taken: TakeUp, give_per_newton: mm_N, pad: Callable[[mm], mm]) -> Curve:
    """Pad travel over push, from where the linings touch.

    The hoses' swelling is given at the hard stop; it grows with the push and reaches that at the
    design push. Shapes (pushes,) or (pushes, variants).
    """
    lift = taken.dead_stroke + taken.front_lift + taken.rear_lift
    level = np.zeros_like(lift + taken.hoses + give_per_newton)
    push = np.expand_dims(PUSHES, tuple(range(1, 1 + level.ndim))) + level
    travel = pad(lift + taken.hoses * push / DESIGN_PUSH) + give_per_newton * push
    return Curve(push=push, travel=travel)
