"""What is asked of the pads side by side, and of the shoes on them.

Figures for new cars stand beside what the shoes of this car's drivers need: an old narrow footwell
often cannot have the former and must have the latter.
"""

from collections.abc import Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.driver.parts import Row
from pedalwright.driver.row.solve import Beside, Steps, spacing

UNECE_R35 = Source("UN R35", "annex 4, letters seen in a national rule, to verify", "regulation")
UNECE_R35_ENDS = Source(
    "UN R35", "annex 4, which edges it joins is inferred, to verify", "regulation"
)
CLEARANCES = Source("common practice", "no source", "trade")
STEPS = Source("common practice", "20 to 50 mm from pad to pad at rest, no source", "trade")

GAP, WIDEST_GAP = 50.0, 100.0
BRAKE_TO_LEFT, BRAKE_TO_RIGHT = 160.0, 130.0
SHOE_ROOM = 10.0
LEAST_STEP, MOST_STEP = 20.0, 50.0
LEVEL = 15.0
REST_WIDTH = 90.0

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
BRAKE_LEFT_WALL = Limit(
    "driver.brake_left_wall",
    "There is room for clutch and left foot between the brake pad and the wall on its left.",
    "at least",
    "mm",
    UNECE_R35_ENDS,
    "should",
)
BRAKE_RIGHT_WALL = Limit(
    "driver.brake_right_wall",
    "There is room for accelerator and right foot between the brake pad and the wall on its right.",
    "at least",
    "mm",
    UNECE_R35_ENDS,
    "should",
)
STEP_REST = Limit(
    "driver.step_rest",
    "The brake pad stands nearer to the driver than the accelerator, so that neither is taken for "
    "the other.",
    "at least",
    "mm",
    STEPS,
    "should",
)
STEP_CRUISING = Limit(
    "driver.step_cruising",
    "From a cruising accelerator the foot is not lifted far to find the brake.",
    "at most",
    "mm",
    STEPS,
    "should",
)
HEEL_AND_TOE = Limit(
    "driver.heel_and_toe",
    "Under the hardest push brake and accelerator lie level enough for one shoe to work both.",
    "at most",
    "mm",
    Source("common practice", "within 15 mm, and 45 to 60 mm beside; no source", "trade"),
    "should",
)
FOOT_REST = Limit(
    "driver.foot_rest",
    "The left foot can rest beside the clutch pad.",
    "at least",
    "mm",
    Source("common practice", "a shoe's width, no source", "trade"),
    "should",
)
SHOE_NEXT_PAD = Limit(
    "driver.shoe_next_pad",
    "A shoe on one pad does not touch the pad beside it anywhere in the stroke.",
    "at least",
    "mm",
    CLEARANCES,
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


def check_row(row: Row) -> Iterator[Finding]:
    """Judge the gaps between pads and walls, which do not depend on the driver.

    A new car must have the 50 mm; an old narrow footwell often cannot, so they are wishes.
    """
    gaps = spacing(row)
    yield GAP_ACCELERATOR_BRAKE.check(gaps.accelerator_brake, GAP)
    yield REACH_ACCELERATOR_BRAKE.check(gaps.accelerator_brake, WIDEST_GAP)
    yield GAP_BRAKE_CLUTCH.check(gaps.brake_clutch, GAP)
    yield GAP_CLUTCH_WALL.check(gaps.clutch_wall, GAP)
    yield BRAKE_LEFT_WALL.check(gaps.brake_left_wall, BRAKE_TO_LEFT)
    yield BRAKE_RIGHT_WALL.check(gaps.brake_right_wall, BRAKE_TO_RIGHT)
    yield FOOT_REST.check(gaps.clutch_wall, REST_WIDTH)


def check_steps(steps: Steps) -> Iterator[Finding]:
    """Judge how the brake pad stands to the accelerator along the car."""
    yield STEP_REST.check(steps.rest, LEAST_STEP)
    yield STEP_CRUISING.check(steps.cruising, MOST_STEP)
    yield HEEL_AND_TOE.check(np.abs(steps.braking), LEVEL)


def check_shoes(beside: Beside, about: str) -> Iterator[Finding]:
    """Judge what is left beside a driver's shoes over the strokes of his pedals."""
    yield SHOES_APART.check(beside.shoes, SHOE_ROOM, about)
    yield SHOE_NEXT_PAD.check(beside.brake_clutch, SHOE_ROOM, f"{about}, brake and clutch")
    yield SHOE_NEXT_PAD.check(
        beside.accelerator_brake, SHOE_ROOM, f"{about}, brake and accelerator"
    )
    yield SHOE_WALL.check(beside.clutch_wall, SHOE_ROOM, f"{about}, clutch")
    yield SHOE_WALL.check(beside.accelerator_wall, SHOE_ROOM, f"{about}, accelerator")
