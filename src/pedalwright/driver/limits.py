"""What is asked of a driver's posture and room.

Comfort angles are bands from several studies that do not agree on method, most of them known
second-hand, so all but the outermost are wishes. A foot that cannot be held, a heel that hangs
in the air over the brake and a leg that is too short are not matters of comfort.
"""

from collections.abc import Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.points import Plane, Point
from pedalwright.driver.clearances import knee_to_rim, shin_to_column, toe_to_wall
from pedalwright.driver.parts import Body, Person, Row, Seated
from pedalwright.driver.population import leg_from_survey
from pedalwright.driver.row import shoe_room, spacing
from pedalwright.survey.parts import Line

BANDS = Source("common practice", "bands of driving posture studies, to verify", "trade")
CLEARANCES = Source("common practice", "no source", "trade")
UNECE_R35 = Source("UN R35", "annex 4, letters seen in a national rule, to verify", "regulation")
OURS = "pedalwright"

#: Below this ankle angle a foot that may lift its heel does so.
LEAST_ANKLE = np.deg2rad(75.0)
MOST_ANKLE_REST, MOST_ANKLE_FULL = np.deg2rad(105.0), np.deg2rad(115.0)
LEAST_KNEE_REST, MOST_KNEE_FULL = np.deg2rad(95.0), np.deg2rad(160.0)
LEAST_HIP = np.deg2rad(80.0)
KNEE_ROOM, SHIN_ROOM, TOE_ROOM = 50.0, 50.0, 25.0
SHOE_ROOM = 10.0
GAP, WIDEST_GAP = 50.0, 100.0
LEG_DOUBT = 25.0

ANKLE_MIN = Limit(
    "driver.ankle_min",
    "The foot is not bent up further than it can be held.",
    "at least",
    "rad",
    Source(OURS, "75 degrees; the bands end at 73 to 78, to verify", "ours"),
)
ANKLE_MAX = Limit(
    "driver.ankle_max",
    "The foot is not stretched further than is comfortable, 10 degrees more at full travel.",
    "at most",
    "rad",
    BANDS,
    "should",
)
KNEE_REST = Limit(
    "driver.knee_rest",
    "At rest the knee is not bent more than is comfortable.",
    "at least",
    "rad",
    BANDS,
    "should",
)
KNEE_FULL = Limit(
    "driver.knee_full",
    "At full travel the knee is still bent, so that the leg can push.",
    "at most",
    "rad",
    Source("common practice", "best force at 110 to 160 degrees, never above 165", "trade"),
)
HIP = Limit(
    "driver.hip",
    "The thigh is not folded up against the trunk.",
    "at least",
    "rad",
    BANDS,
    "should",
)
HEEL_LIFT = Limit(
    "driver.heel_lift",
    "The pad is no higher above the heel's rest than the sole is long, so the heel stays down.",
    "at most",
    "mm",
    Source(OURS, "a foot without a rest cannot measure out a push", "ours"),
)
HEEL_LIFT_CLUTCH = Limit(
    "driver.heel_lift_clutch",
    "The clutch pad, too, can be worked with the heel on its rest.",
    "at most",
    "mm",
    Source(OURS, "a clutch may be worked with the whole leg", "ours"),
    "should",
)
REACH = Limit(
    "driver.reach",
    "The leg is long enough to press the pedal to full travel.",
    "at most",
    "mm",
    Source(OURS, "thigh and shank in one line", "ours"),
)
KNEE_RIM = Limit(
    "driver.knee_rim",
    "The knee keeps clear of the steering wheel.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)
SHIN_COLUMN = Limit(
    "driver.shin_column",
    "The shin keeps clear of the steering column.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)
TOE_WALL = Limit(
    "driver.toe_wall",
    "At full travel the toes keep clear of the wall ahead.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)
LEG_ESTIMATE = Limit(
    "driver.leg_estimate",
    "Two ways to guess the length of the leg agree, else it has to be measured.",
    "at most",
    "mm",
    Source(OURS, "one standard deviation of people of one stature", "ours"),
    "should",
)
GAP_ACCELERATOR_BRAKE = Limit(
    "driver.gap_accelerator_brake",
    "A shoe on the accelerator does not catch the brake pad.",
    "at least",
    "mm",
    UNECE_R35,
    "should",
)
REACH_ACCELERATOR_BRAKE = Limit(
    "driver.far_accelerator_brake",
    "The foot finds the brake from the accelerator without a search.",
    "at most",
    "mm",
    UNECE_R35,
    "should",
)
GAP_BRAKE_CLUTCH = Limit(
    "driver.gap_brake_clutch",
    "A shoe on the brake does not catch the clutch pad.",
    "at least",
    "mm",
    UNECE_R35,
    "should",
)
GAP_CLUTCH_WALL = Limit(
    "driver.gap_clutch_wall",
    "There is room between the clutch pad and the wall beside it.",
    "at least",
    "mm",
    UNECE_R35,
    "should",
)
SHOES_APART = Limit(
    "driver.shoes_apart",
    "A shoe on the clutch and one on the brake do not touch.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)
SHOE_WALL = Limit(
    "driver.shoe_wall",
    "Shoes on the outer pads keep clear of the walls beside them.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)


def check(
    seated: Seated, about: str, *, rim: Point, column: Line, wall: Plane
) -> Iterator[Finding]:
    """Judge one driver's leg on one pedal; `about` names both, e.g. `D1, brake`."""
    rest, full = seated.rest, seated.full
    at_rest, at_full = f"{about}, rest", f"{about}, full"
    yield ANKLE_MIN.check(rest.ankle_angle, LEAST_ANKLE, at_rest)
    yield ANKLE_MIN.check(full.ankle_angle, LEAST_ANKLE, at_full)
    yield ANKLE_MAX.check(rest.ankle_angle, MOST_ANKLE_REST, at_rest)
    yield ANKLE_MAX.check(full.ankle_angle, MOST_ANKLE_FULL, at_full)
    yield KNEE_REST.check(rest.knee_angle, LEAST_KNEE_REST, at_rest)
    yield KNEE_FULL.check(full.knee_angle, MOST_KNEE_FULL, at_full)
    yield HIP.check(rest.hip_angle, LEAST_HIP, at_rest)
    heel = HEEL_LIFT_CLUTCH if seated.heel_may_lift else HEEL_LIFT
    yield heel.check(seated.pad_above_heel, seated.body.heel_to_ball, about)
    yield REACH.check(full.needed, full.reach, at_full)
    knee = np.minimum(knee_to_rim(rest, rim), knee_to_rim(full, rim))
    yield KNEE_RIM.check(knee, KNEE_ROOM, about)
    shin = np.minimum(shin_to_column(rest, column), shin_to_column(full, column))
    yield SHIN_COLUMN.check(shin, SHIN_ROOM, about)
    yield TOE_WALL.check(toe_to_wall(full, wall), TOE_ROOM, at_full)


def check_body(person: Person, body: Body, about: str) -> Iterator[Finding]:
    """Compare the leg that is drawn with what a survey says of this stature and inside leg."""
    drawn = body.thigh + body.shank
    yield LEG_ESTIMATE.check(np.abs(drawn - leg_from_survey(person)), LEG_DOUBT, about)


def check_row(row: Row) -> Iterator[Finding]:
    """Judge the gaps between pads and walls, which do not depend on the driver.

    A new car must have the 50 mm; an old narrow footwell often cannot, so they are wishes.
    """
    gaps = spacing(row)
    yield GAP_ACCELERATOR_BRAKE.check(gaps.accelerator_brake, GAP)
    yield REACH_ACCELERATOR_BRAKE.check(gaps.accelerator_brake, WIDEST_GAP)
    yield GAP_BRAKE_CLUTCH.check(gaps.brake_clutch, GAP)
    yield GAP_CLUTCH_WALL.check(gaps.clutch_wall, GAP)


def check_shoes(row: Row, body: Body, about: str) -> Iterator[Finding]:
    """Judge what is left beside a driver's shoes."""
    room = shoe_room(row, body.shoe_width)
    yield SHOES_APART.check(room.between_shoes, SHOE_ROOM, about)
    yield SHOE_WALL.check(room.left_wall, SHOE_ROOM, f"{about}, clutch")
    yield SHOE_WALL.check(room.right_wall, SHOE_ROOM, f"{about}, accelerator")
