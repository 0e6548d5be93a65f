"""Headlines of the levers: ratio, rod angle, forces, dead points."""

from collections.abc import Iterator

import numpy as np

from pedalwright.assess.headlines.headline import Headline
from pedalwright.assess.parts import BrakePedal, ClutchPedal


def turning(brake: BrakePedal, clutch: ClutchPedal) -> Iterator[Headline]:
    """How the levers turn."""
    yield Headline(
        "linkage.brake.ratio",
        brake.hard_stop.ratio,
        "1",
        "Pad movement over piston movement at the hard stop.",
    )
    yield Headline(
        "linkage.brake.rod_angle_max",
        np.max(brake.stroke.rod_angle, axis=0),
        "rad",
        "Largest angle of the push rod to the cylinder between rest and the hard stop.",
    )
    yield Headline(
        "linkage.brake.rod_angle_hard_stop",
        brake.hard_stop.rod_angle,
        "rad",
        "Angle of the push rod to the cylinder at the hard stop.",
    )
    yield Headline(
        "linkage.brake.piston_travel",
        brake.hard_stop.piston_travel,
        "mm",
        "Rod travel at the hard stop, dead stroke included.",
    )
    yield Headline(
        "linkage.brake.pivot_force_500N",
        brake.forces.pivot_size,
        "N",
        "Force on the brake pedal's pivot at the hard stop, for 500 N square to the arm.",
    )
    yield Headline(
        "linkage.brake.rod_force_500N",
        brake.forces.rod,
        "N",
        "Force along the brake's push rod at the hard stop, for 500 N square to the arm.",
    )
    yield Headline(
        "linkage.brake.pad_room",
        brake.room,
        "mm",
        "Arc of the brake pad from rest until the toes meet the wall.",
    )
    yield Headline(
        "linkage.brake.locks_at",
        brake.locks_at,
        "mm",
        "Arc of the brake pad at which rod and arm come into line; empty for none to 69 degrees.",
    )
    yield Headline(
        "linkage.clutch.ratio",
        clutch.result.mean_ratio,
        "1",
        "Mean pad movement over piston movement from rest to the clutch's release.",
    )
    yield Headline(
        "linkage.clutch.rod_angle_max",
        np.max(clutch.stroke.rod_angle, axis=0),
        "rad",
        "Largest angle of the push rod to the cylinder over the clutch's stroke.",
    )
    yield Headline(
        "linkage.clutch.locks_at",
        clutch.locks_at,
        "mm",
        "Arc of the clutch pad at which rod and arm come into line; empty for none to 69 degrees.",
    )
