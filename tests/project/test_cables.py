"""A clutch worked by a cable has no master cylinder; one worked by fluid must not be without."""

import pytest

from pedalwright.assess import assess
from pedalwright.project import ProjectError, car_text, plus_minus_tree, read

FLUID = car_text("larkfield-improved")
CABLE = car_text("brackwater-fix2")
MASTER = '[clutch.master]\nbore = "3/4 in"\nstroke = "33 mm"\n'


def test_a_cable_has_no_master() -> None:
    project = read(CABLE)
    assert project.design.clutch.master is None
    assert plus_minus_tree(project).clutch.master is None
    assert "clutch.master" not in project.provenance


def test_a_master_that_nobody_wrote_down_is_missing_and_the_clutch_not_judged() -> None:
    assert MASTER in FLUID
    project = read(FLUID.replace(MASTER, ""))
    assert project.provenance["clutch.master"].tag == "missing"
    unjudged = {f.limit.code for f in assess(project.design).findings if not f.judged}
    assert {"clutch.release", "clutch.effort"} <= unjudged


def test_a_cable_with_a_master_is_asked_about() -> None:
    with pytest.raises(ProjectError, match="A clutch worked by a cable has no master cylinder"):
        read(CABLE + MASTER)


def test_room_as_measured_wins_over_the_wall() -> None:
    to_the_wall = assess(read(FLUID).design).clutch
    assert read(FLUID).design.clutch.pad_room is None
    text = FLUID.replace("[clutch]\n", '[clutch]\npad_room = "120 mm"\n')
    measured = assess(read(text).design).clutch
    assert float(to_the_wall.room) > 130.0
    assert float(measured.room) == pytest.approx(120.0, rel=1e-12)
    assert float(measured.full.pad_travel) == pytest.approx(120.0, rel=1e-12)
