"""A survey of a car on a slope, from its file to the places of its marks and their ±."""

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from pedalwright.design import mirrored
from pedalwright.project import ProjectError, read
from pedalwright.survey import Placed

#: Where the mark is in the car.
TRUE = np.array([800.0, 350.0, -120.0])
NOSE_DOWN, OVER = 2.0, -1.5


def text(tilt: str, at: np.ndarray) -> str:
    """A mark by plumb line, level and rule from the datum."""
    x, y, z = (f"{length:.4f} ±2 mm" for length in at)
    return f"""
format = 1
[survey]
{tilt}
offsets = [
    {{ mark = "P", rearward = "{x}", right = "{y}", up = "{z}" }},
]
"""


def placed(file: str) -> Placed:
    project = read(file)
    assert project.surveyed is not None
    mark = project.surveyed.adjustment.mark("P")
    assert mark is not None
    return mark


def car() -> Rotation:
    nose = Rotation.from_euler("y", -NOSE_DOWN, degrees=True)
    return nose * Rotation.from_euler("x", OVER, degrees=True)


def tilt(plus_minus: str) -> str:
    rearward, right, _ = car().as_matrix().T
    pitch, roll = (np.rad2deg(np.arcsin(way[2])) for way in (rearward, right))
    return f'pitch = "{pitch:.9f} {plus_minus} deg"\nroll = "{roll:.9f} {plus_minus} deg"'


def test_what_was_read_on_a_slope_is_turned_into_the_car() -> None:
    mark = placed(text(tilt("±0"), car().apply(TRUE)))
    assert [mark.at.x, mark.at.y, mark.at.z] == pytest.approx(TRUE, abs=1e-3)
    assert [mark.sigma.x, mark.sigma.y, mark.sigma.z] == pytest.approx([1.0] * 3)


def test_a_doubtful_tilt_makes_heights_doubtful_as_far_out_as_they_are() -> None:
    """0.3 degree at 800 mm is 4.2 mm, at 350 mm 1.8 mm; two standard deviations, as the 2 mm."""
    mark = placed(text(tilt("±0.3"), car().apply(TRUE)))
    assert [mark.at.x, mark.at.y, mark.at.z] == pytest.approx(TRUE, abs=1e-3)
    of_tilt = np.deg2rad(0.3) * np.array([120.0, 120.0, np.hypot(800.0, 350.0)])
    assert [2.0 * float(s) for s in (mark.sigma.x, mark.sigma.y, mark.sigma.z)] == pytest.approx(
        np.hypot(2.0, of_tilt), rel=0.03
    )


def test_a_car_of_which_nothing_was_said_stood_level() -> None:
    mark = placed(text("", TRUE))
    assert [mark.at.x, mark.at.y, mark.at.z] == pytest.approx(TRUE)


def test_the_other_hand_leans_the_other_way() -> None:
    design = read(text(tilt("±0"), car().apply(TRUE))).design
    other = mirrored(design).survey
    assert other.pitch == design.survey.pitch
    assert design.survey.roll is not None
    assert other.roll == -design.survey.roll
    assert mirrored(mirrored(design)).survey == design.survey


def test_where_the_tilt_is_not_known_only_tapes_count() -> None:
    assert read(text('pitch = "?"', TRUE)).surveyed is None


def test_no_car_is_measured_on_its_side() -> None:
    with pytest.raises(ProjectError, match="pitch"):
        read(text('pitch = "80 deg"', TRUE))
