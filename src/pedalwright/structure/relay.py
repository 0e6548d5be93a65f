"""A relay lever under the push that passes through it: how hard it works, how far it gives."""

import numpy as np

from pedalwright.core.units import N, mm
from pedalwright.core.working import subject
from pedalwright.structure.formulas.arm import bending_stress, equivalent_stress
from pedalwright.structure.formulas.relay import (
    relay_bending_give,
    relay_torque,
    relay_twist_give,
    tube_shear,
)
from pedalwright.structure.formulas.rods import buckling_load, slenderness
from pedalwright.structure.formulas.sections import (
    bar_inertia,
    net_modulus,
    round_area,
    round_inertia,
)
from pedalwright.structure.formulas.stiffness import (
    pin_rod_force,
    rod_stiffness,
    shear_modulus,
    spring_give,
)
from pedalwright.structure.parts import Relaying, RelayStrength, Stress

#: Where nobody said what the relay lever is made of.
UNKNOWN = RelayStrength(
    arm=Stress(size=np.nan, bears=np.nan),
    tube=Stress(size=np.nan, bears=np.nan),
    rod_force=np.nan,
    buckling_load=np.nan,
)


def relay_strength(relay: Relaying, push: N) -> RelayStrength:
    """Stress in arms and tube, and the rod to the cylinder, under one push on the pad."""
    arms = relay.arms
    if arms is None:
        return UNKNOWN
    with subject("relay lever"):
        torque = relay_torque(push, relay.ratio, relay.driven_radius)
        driven, driving = (
            bending_stress(torque, net_modulus(arms.thickness, depth, 0.0))
            for depth in (arms.driven_depth, arms.driving_depth)
        )
        twisted = tube_shear(torque, arms.tube_outside, arms.tube_inside)
        rod = arms.push_rod
        area = round_area(rod.outside, rod.inside)
        slim = slenderness(1.0, relay.rod_length, round_inertia(rod.outside, rod.inside), area)
        return RelayStrength(
            arm=Stress(size=np.maximum(driven, driving), bears=arms.yield_strength),
            tube=Stress(
                size=np.where(arms.spacing > 0.0, equivalent_stress(0.0, twisted), 0.0),
                bears=arms.yield_strength,
            ),
            rod_force=pin_rod_force(push, relay.rod_share),
            buckling_load=buckling_load(area, rod.elastic, rod.yield_strength, slim),
        )


def relay_gives(relay: Relaying, push: N) -> mm:
    """How far the pad moves because of the relay lever; 0 where nobody said what it is made of."""
    arms = relay.arms
    if arms is None:
        return 0.0
    with subject("relay lever"):
        torque = relay_torque(push, relay.ratio, relay.driven_radius)
        bent = relay_bending_give(
            torque,
            push,
            relay.driven_radius,
            relay.driving_radius,
            arms.elastic,
            bar_inertia(arms.thickness, arms.driven_depth),
            bar_inertia(arms.thickness, arms.driving_depth),
        )
        twisted = relay_twist_give(
            torque,
            push,
            arms.spacing,
            shear_modulus(arms.elastic, arms.poisson),
            2.0 * round_inertia(arms.tube_outside, arms.tube_inside),
        )
        rod = arms.push_rod
        stiffness = rod_stiffness(
            rod.elastic, round_area(rod.outside, rod.inside), relay.rod_length
        )
        in_rod = spring_give(push, relay.rod_share, stiffness)
        in_bracket = spring_give(push, relay.tube_share, arms.bracket_stiffness)
    return bent + twisted + in_rod + in_bracket
