"""What may be added about clutch and throttle in a file, and what it comes to in the answer."""

import numpy as np
import pytest

from pedalwright.assess import Assessment, assess
from pedalwright.assess.headlines import headlines
from pedalwright.project import car_text, plus_minus_tree, read

LARKFIELD = car_text("larkfield-improved")
CURVE = """
[[clutch.release.load_points]]
travel = "0 mm"
load = "0 N"

[[clutch.release.load_points]]
travel = "3 mm"
load = "1800 N"

[[clutch.release.load_points]]
travel = "12 mm"
load = "1200 N"
"""
SECOND = """
[throttle.opening.rock]
direction = [0, 0, 1]

[throttle.opening.barrel]
bore = "40 mm"
shaft = "8 mm"
closed = "5 deg"

[[throttle.opening.followers]]
driven_from = "spindle"

[throttle.opening.followers.stage]
kind = "square-rod"
driving_radius = "30 mm"
driven_radius = "31 mm"
rod_length = "180 mm"

[throttle.opening.followers.stage.ends.driving]
reach = "14 mm"
thread = "5 mm"
engaged = "8 mm"
bare = "9 mm"

[throttle.opening.followers.stage.ends.driven]
reach = "14 mm"
thread = "5 mm"
engaged = "8 mm"
bare = "9 mm"
"""
RUN = """
[clutch.release.actuator.bends]
angle = "180 deg"

[clutch.release.actuator.wire]
length = "1200 mm"
area = "4 mm2"
"""


def named(assessment: Assessment) -> dict[str, float]:
    return {line.name: float(line.value) for line in headlines(assessment)}


def test_a_load_curve_and_a_bite() -> None:
    plain = named(assess(read(LARKFIELD).design))
    text = LARKFIELD.replace("[clutch.release]\n", '[clutch.release]\nbite_share = "40 %"\n')
    curved = named(assess(read(text + CURVE).design))
    assert plain["clutch.effort_peak"] == plain["clutch.effort"]
    assert "clutch.bite" not in plain
    # 8 mm is 5/9 of the way from 1800 down to 1200 N; 1450 N was written
    ratio = (1800.0 - 600.0 * 5 / 9) / 1450.0
    assert curved["clutch.effort"] == pytest.approx(plain["clutch.effort"] * ratio, rel=1e-9)
    assert curved["clutch.effort_peak"] > 1.1 * curved["clutch.effort"]
    assert curved["clutch.bite"] < curved["clutch.stop_from"] < curved["clutch.stop_to"]


def test_the_give_of_the_structure_counts_before_the_wall() -> None:
    result = assess(read(LARKFIELD).design).clutch
    give = float(result.strength.give.total / result.strength.give.push)
    assert give > 0.0
    assert float(result.result.budget.structure) == pytest.approx(give * result.result.effort)


def test_a_second_carburettor_with_rock_and_bore() -> None:
    project = read(LARKFIELD + SECOND)
    plus_minus_tree(project)
    found = named(assess(project.design))
    assert 0.0 < found["throttle.unequal"] < np.deg2rad(5.0)
    assert found["throttle.rock_turn"] > np.deg2rad(10.0)
    assert 0.2 < found["throttle.open_at_half"] < 0.6
    (rod,) = assess(project.design).throttle.result.rods
    assert rod.cut == pytest.approx(180.0 - 28.0 + 16.0)


def test_a_cables_run_takes_the_place_of_typed_losses() -> None:
    plain = car_text("brackwater-fix2")
    led = read(plain + RUN).design.clutch.release
    before, after = named(assess(read(plain).design)), named(assess(read(plain + RUN).design))
    share = np.exp(0.1 * np.pi) * float(led.line_efficiency)
    # a little off, for the stretch changes the mean ratio
    assert after["clutch.effort"] == pytest.approx(before["clutch.effort"] * share, rel=0.01)
    assert after["clutch.master_stroke"] != before["clutch.master_stroke"]
