"""Driver: body, shoe, posture and room, from the hip to the toes, in the plane of each leg."""

from pedalwright.driver.body import body, body_spread
from pedalwright.driver.clearances import (
    knee_to_rim,
    shin_to_column,
    thigh_to_rim,
    toe_to_wall,
)
from pedalwright.driver.feet import curved_sole_on_pad, heel_fixed_on_pad, sole_on_pad
from pedalwright.driver.formulas.foot import face_angle, heel_height
from pedalwright.driver.legs import (
    heel_lifted,
    heel_on_floor,
    hip_for_ankle,
    knee_between,
    sole_at,
)
from pedalwright.driver.limits import check, check_body, check_push
from pedalwright.driver.loads import joint_moments
from pedalwright.driver.parts import (
    Body,
    Driver,
    Footwell,
    HeelRest,
    Near,
    Pad,
    Person,
    Posture,
    Row,
    Seated,
    Spacing,
    Tread,
)
from pedalwright.driver.population import expected, leg_from_survey, predicted
from pedalwright.driver.push import (
    CRUISING,
    CRUISING_SHARE,
    HARDEST,
    NORMAL,
    NORMAL_PUSH,
    most_push,
)
from pedalwright.driver.row.limits import check_row, check_shoes, check_steps
from pedalwright.driver.row.solve import beside, spacing, steps
from pedalwright.driver.sensitivity import knee_sensitivity, knee_spread
from pedalwright.driver.solve import place, place_all
from pedalwright.driver.swing import toe_swing

__all__ = [
    "CRUISING",
    "CRUISING_SHARE",
    "HARDEST",
    "NORMAL",
    "NORMAL_PUSH",
    "Body",
    "Driver",
    "Footwell",
    "HeelRest",
    "Near",
    "Pad",
    "Person",
    "Posture",
    "Row",
    "Seated",
    "Spacing",
    "Tread",
    "beside",
    "body",
    "body_spread",
    "check",
    "check_body",
    "check_push",
    "check_row",
    "check_shoes",
    "check_steps",
    "curved_sole_on_pad",
    "expected",
    "face_angle",
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
    "most_push",
    "place",
    "place_all",
    "predicted",
    "shin_to_column",
    "sole_at",
    "sole_on_pad",
    "spacing",
    "steps",
    "thigh_to_rim",
    "toe_swing",
    "toe_to_wall",
]
