"""For each limit of the clutch a design that breaks only that one."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.clutch import (
    CableFork,
    ClutchResult,
    Release,
    SlaveCylinder,
    budget,
    check,
    need,
    respond,
)
from pedalwright.clutch.formulas import bearing_travel
from pedalwright.hydraulics import Cylinder

GOOD = Release(
    actuator=SlaveCylinder(bore=22.22, fork_ratio=1.9, fork_efficiency=0.9),
    bearing_lift=8.0,
    free_play=1.5,
    release_load=1450.0,
    line_growth=0.06,
    dead_stroke=1.5,
    line_efficiency=0.9,
)
MASTER = Cylinder(bore=19.05, stroke=33.0)
LONG = Cylinder(bore=19.05, stroke=36.0)


def clutch(
    release: Release = GOOD,
    master: Cylinder | None = MASTER,
    ratio: float = 5.0,
    pad_room: float = 145.0,
    give_per_newton: float = 0.0,
) -> ClutchResult:
    return respond(
        release,
        master,
        travel=budget(need(release, master), lambda stroke: ratio * stroke),
        available=pad_room,
        mean_ratio=ratio,
        stroke_at_wall=pad_room / ratio,
        give_per_newton=give_per_newton,
    )


def failed(result: ClutchResult) -> list[str]:
    return [finding.limit.code for finding in check(result) if not finding.ok]


def test_the_good_one_passes_all() -> None:
    assert failed(clutch()) == []
    assert len(list(check(clutch()))) == 5


@pytest.mark.parametrize(
    ("code", "result"),
    [
        ("clutch.release", clutch(pad_room=135.0)),
        ("clutch.stroke", clutch(master=Cylinder(bore=19.05, stroke=27.0))),
        ("clutch.effort", clutch(replace(GOOD, release_load=2200.0))),
        ("clutch.over_stroke", clutch(pad_room=172.0, master=LONG)),
    ],
)
def test_a_design_that_breaks_only_this_limit(code: str, result: ClutchResult) -> None:
    assert failed(result) == [code]


def test_structure_that_gives_eats_the_room() -> None:
    stiff, soft = clutch(pad_room=138.5), clutch(pad_room=138.5, give_per_newton=0.01)
    assert failed(stiff) == []
    assert failed(soft) == ["clutch.release"]
    assert soft.budget.structure == pytest.approx(0.01 * soft.effort)
    assert soft.travel_needed == stiff.travel_needed
    assert soft.lift_reached < stiff.lift_reached == 8.0
    assert soft.lift_at_wall == stiff.lift_at_wall


def test_a_cylinder_that_bottoms_first_spares_the_cover() -> None:
    assert failed(clutch(pad_room=172.0)) == []


def test_a_cable_has_no_stroke_to_judge() -> None:
    cable = replace(
        GOOD,
        actuator=CableFork(fork_ratio=3.0, fork_efficiency=0.9),
        line_growth=0.0,
    )
    codes = [finding.limit.code for finding in check(clutch(cable, None, ratio=4.5))]
    assert codes == [
        "clutch.release",
        "clutch.effort",
        "clutch.over_stroke",
        "clutch.stop_window",
    ]


def test_what_is_missing_is_not_judged_and_not_ok() -> None:
    (release, *_) = check(clutch(replace(GOOD, bearing_lift=np.nan)))
    assert not release.judged
    assert not release.ok


def test_a_pedal_that_hardly_moves_lifts_nothing_and_pulls_nothing_back() -> None:
    """The piston has not yet covered its port; the bearing stays where it rests."""
    assert bearing_travel(s_master=1.0, dead=1.5, i_line=1.4, growth=0.1, i_fork=1.9) == 0.0
    no_free_play = replace(GOOD, free_play=0.0)
    result = clutch(no_free_play, pad_room=5.0)
    assert result.lift_reached == 0.0
    assert result.lift_at_wall == 0.0
