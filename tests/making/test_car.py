"""What the invented cars ask to be made, and in which order."""

import numpy as np
import pytest

from pedalwright.design import Design
from pedalwright.making.car import SERVICED, PanelWork, bar_pieces, car_jobs, car_profiles
from pedalwright.making.cutting import Bar, cut_bars
from pedalwright.making.planning import ancestors, check, order
from pedalwright.project import car_text, read

CARS = ["larkfield-improved", "brackwater-fix2", "saltmarsh-improved"]
TUB = PanelWork(name="foot-tub", bends=4, rivets=42)
COVER = PanelWork(name="cover", rivets=40, hides=("brake cylinder nuts",))


def design(name: str) -> Design:
    return read(car_text(name)).design


@pytest.mark.parametrize("car", CARS)
def test_every_car_has_two_arms_with_two_holes(car: str) -> None:
    arms = car_profiles(design(car))
    assert [arm.name for arm in arms] == ["brake arm", "clutch arm"]
    assert all(len(arm.bores) == 2 for arm in arms)


def test_larkfields_tubes_and_rods_are_cut_from_two_bars() -> None:
    """Pivot tubes 22 / 16; each rod is as long as pin and socket are apart, less its fork."""
    made = design("larkfield-improved")
    pieces = bar_pieces(made)
    (tubes,) = [rows for section, rows in pieces.items() if section.startswith("tube 22 / 16")]
    assert {piece.name for piece in tubes} == {"brake pivot tube", "clutch pivot tube"}
    assert tubes[0].length == pytest.approx(float(made.brake.carrier.pivot.span) - 0.5)
    plan = cut_bars(tubes, [Bar(name="tube 22/16", length=1000.0)], kerf=2.0)
    assert plan.missing == ()
    rods = [piece for rows in pieces.values() for piece in rows if "push rod" in piece.name]
    assert len(rods) == 2
    assert all(40.0 < rod.length < 200.0 for rod in rods)


def test_a_cable_clutch_has_no_rod_to_cut_and_no_cylinder_to_bolt() -> None:
    made = design("brackwater-fix2")
    names = [piece.name for rows in bar_pieces(made).values() for piece in rows]
    assert "clutch push rod" not in names
    assert "clutch-cylinder" not in {job.name for job in car_jobs(made)}


@pytest.mark.parametrize("car", CARS)
@pytest.mark.parametrize("panels", [(), (TUB,), (TUB, COVER)])
def test_every_one_way_step_has_its_trial_and_every_nut_its_hand(
    car: str, panels: tuple[PanelWork, ...]
) -> None:
    jobs = car_jobs(design(car), panels)
    plan = order(jobs)
    assert [f.about for f in check(jobs, plan) if not f.ok] == []
    assert len(plan.jobs) == len(jobs)
    assert np.isfinite(plan.hours)


def test_nothing_is_welded_or_riveted_before_he_has_sat_in_metal() -> None:
    jobs = car_jobs(design("larkfield-improved"), (TUB, COVER))
    planned = [timed.job for timed in order(jobs).jobs]
    for job in planned:
        if any(word in job.name for word in ("weld", "pin", "rivet")):
            assert "trial-in-metal" in ancestors(planned, job.name)


def test_a_cover_riveted_over_the_cylinders_nuts_is_told() -> None:
    jobs = car_jobs(design("larkfield-improved"), (COVER,))
    broken = {f.limit.code for f in check(jobs, order(jobs), serviced=SERVICED) if not f.ok}
    assert broken == {"making.serviced"}
    screwed = PanelWork(name="cover", hides=COVER.hides, screwed=True)
    jobs = car_jobs(design("larkfield-improved"), (screwed,))
    assert all(f.ok for f in check(jobs, order(jobs), serviced=SERVICED))
    names = [timed.job.name for timed in order(jobs).jobs]
    assert names.index("brake-cylinder") < names.index("bolt-cover")


def test_a_panel_that_hides_nothing_is_riveted_before_the_cylinders_go_on() -> None:
    names = [t.job.name for t in order(car_jobs(design("larkfield-improved"), (TUB,))).jobs]
    assert names.index("rivet-foot-tub") < names.index("brake-cylinder")


def test_the_builders_own_hours_count() -> None:
    made = design("larkfield-improved")
    usual, slow = order(car_jobs(made)), order(car_jobs(made, hours={"paint": 13.0}))
    assert slow.hours == usual.hours + 10.0
    assert slow.alone == usual.alone + 10.0 > slow.hours
    with pytest.raises(AssertionError, match="no job is called"):
        car_jobs(made, hours={"panting": 1.0})
