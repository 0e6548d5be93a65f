"""Driver: body, shoe, posture and room, from the hip to the toes, seen from the side."""

from pedalwright.driver.body import body, body_spread
from pedalwright.driver.clearances import (
    knee_to_rim,
    shin_to_column,
    thigh_to_rim,
    toe_to_wall,
)
from pedalwright.driver.feet import curved_sole_on_pad, heel_fixed_on_pad, sole_on_pad
from pedalwright.driver.formulas.foot import heel_height
from pedalwright.driver.legs import (
    heel_lifted,
    heel_on_floor,
    hip_for_ankle,
    knee_between,
    sole_at,
)
from pedalwright.driver.limits import check, check_body, check_row, check_shoes
from pedalwright.driver.loads import joint_moments
from pedalwright.driver.parts import (
    Body,
    Driver,
    HeelRest,
    Pad,
    Person,
    Posture,
    Row,
    Seated,
    Spacing,
)
from pedalwright.driver.population import leg_from_survey, predicted
from pedalwright.driver.row import shoe_room, spacing
from pedalwright.driver.sensitivity import knee_sensitivity, knee_spread
from pedalwright.driver.solve import place, place_on_accelerator
from pedalwright.driver.swing import toe_swing

__all__ = [
    "Body",
    "Driver",
    "HeelRest",
    "Pad",
    "Person",
    "Posture",
    "Row",
    "Seated",
    "Spacing",
    "body",
    "body_spread",
    "check",
    "check_body",
    "check_row",
    "check_shoes",
    "curved_sole_on_pad",
    "heel_fixed_on_pad",
    "heel_height",
    "heel_lifted",
    "heel_on_floor",
    "hip_for_ankle",
    "joint_moments",
    "knee_between",
    "knee_sensitivity",
    "knee_spread",
    "knee_to_rim",
    "leg_from_survey",
    "place",
    "place_on_accelerator",
    "predicted",
    "shin_to_column",
    "shoe_room",
    "sole_at",
    "sole_on_pad",
    "spacing",
    "thigh_to_rim",
    "toe_swing",
    "toe_to_wall",
]
