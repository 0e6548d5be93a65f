"""Questions about legs: what they claim is what `assess` says of the same candidate."""

from collections.abc import Callable

import numpy as np
import pytest

from pedalwright.assess import Assessment, assess
from pedalwright.assess.legs import legs
from pedalwright.core.answers import Answer, Change, Row, Step
from pedalwright.design import Design
from pedalwright.documents.answers import said
from pedalwright.project import cars
from pedalwright.search import floor_drop, leg_room, pedal_height, spacing
from pedalwright.search.changes import changed
from pedalwright.search.floor_drop import heels_at
from pedalwright.search.pedal_height import lifted_by
from pedalwright.search.tray import AROUND, tray

Car = Callable[[str], Design]
PEDALS = ("clutch", "brake", "throttle")


def leg_musts(design: Design, pedals: tuple[str, ...] = PEDALS) -> set[tuple[str, str]]:
    return {
        (f.limit.code, f.about)
        for f in assess(design).findings
        if f.room == "driver"
        and f.limit.weight == "must"
        and not f.ok
        and f.about.split(", ")[1] in pedals
    }


def row(answer: Answer, name: str) -> Row:
    return next(found for found in answer.rows if found.name == name)


def marked(answer: Answer, *marks: str) -> Row:
    (found,) = [found for found in answer.rows if found.mark in marks]
    return found


def depth_of(found: Row) -> float:
    if found.name == "level with the floor":
        return 0.0
    number, way = found.name.split()
    return float(number) if way == "down" else -float(number)


# -- how deep ---------------------------------------------------------------------------


def test_larkfields_first_tub_lifts_the_sole_and_a_shallower_one_fits_both(car: Car) -> None:
    """By hand: pads 180 above the heels stand D1's sole at 67; the improved arms have 157."""
    design = car("larkfield-first")
    answer = floor_drop(design)
    assert answer.outcome == "fails"
    assert answer.says.figures[0].value == 75.0
    assert np.rad2deg(answer.says.figures[1].value) == pytest.approx(67.0, rel=0.05)
    assert "sole of D1" in said(answer.says)
    take = depth_of(marked(answer, "take"))
    heels = 180.0 - (75.0 - take)
    assert 150.0 < heels < 170.0
    assert leg_musts(changed(design, answer.steps[0].changes)) == set()


@pytest.mark.parametrize("name", ["larkfield-first", "larkfield-improved"])
def test_no_demand_on_a_leg_is_missed_within_what_fits_and_one_is_just_beyond(
    car: Car, name: str
) -> None:
    design = car(name)
    answer = floor_drop(design)
    passes = [depth_of(r) for r in answer.rows if r.mark in {"passes", "keep", "take", "short"}]
    fails = [depth_of(r) for r in answer.rows if r.mark in {"fails", "now"}]
    for depth in passes:
        assert leg_musts(changed(design, heels_at(design, depth))) == set()
    for depth in (*fails, max(passes) + 1.0):
        assert leg_musts(changed(design, heels_at(design, depth))) != set()


@pytest.mark.parametrize("name", ["larkfield-first", "saltmarsh-improved"])
def test_the_angles_of_every_depth_are_those_of_assess(car: Car, name: str) -> None:
    design = car(name)
    for found in floor_drop(design).rows:
        made = assess(changed(design, heels_at(design, depth_of(found))))
        expected = [
            float(angle)
            for placed in made.drivers
            for angle in (
                placed.brake.rest.sole_angle,
                min(s.rest.ankle_angle for s in (placed.clutch, placed.brake, placed.throttle)),
                placed.brake.rest.knee_angle,
            )
        ]
        assert list(found.values[: len(expected)]) == pytest.approx(expected, abs=1e-9)


def test_brackwater_asks_for_a_heel_plate_as_thick_as_was_found_by_trial(car: Car) -> None:
    """The second fix has 32; by hand the sole of 201 had to be above the pad's 211."""
    answer = floor_drop(car("brackwater-first"))
    (step,) = answer.steps
    assert step.what.text.startswith("Put {} of packing")
    assert 30.0 < step.what.figures[0].value < 41.0
    fixed = car("brackwater-fix2")
    assert floor_drop(fixed).outcome == "passes"
    assert leg_musts(changed(fixed, heels_at(fixed, -31.0))) == set()
    assert leg_musts(changed(fixed, heels_at(fixed, -30.0))) != set()
    assert not floor_drop(fixed).steps


def test_a_leg_that_no_depth_helps_is_told(car: Car) -> None:
    answer = floor_drop(car("saltmarsh-first"))
    assert answer.outcome == "fails"
    assert "No depth mends this: D1, clutch, full: leg has to span" in said(answer.says)


def test_what_is_left_above_the_ground(car: Car) -> None:
    """The floor is 5 above the rail, the ground 190 below it, the tub 75 deep: 120."""
    answer = floor_drop(car("larkfield-first"))
    assert "120 mm is left above the ground" in " ".join(said(note) for note in answer.notes)
    assert answer.columns[-1].head == "to ground"
    unknown = floor_drop(car("brackwater-fix2"))
    assert unknown.columns[-1].head != "to ground"


@pytest.mark.parametrize("name", ["larkfield-first", "larkfield-improved"])
def test_the_tub_holds_every_shoe_that_is_below_the_floor(car: Car, name: str) -> None:
    """Points along every sole, both edges: below the floor they lie inside the opening."""
    design = car(name)
    opening = tray(design, 75.0)
    floor = float(design.survey.face("floor").offset)
    rail = 545.0
    for placed in legs(design, assess(design)):
        for seat in (placed.clutch, placed.brake, placed.throttle):
            heel, toe = seat.stroke.heel, seat.stroke.toe
            for share in np.linspace(0.0, 1.0, 21):
                at = heel + (toe - heel) * share
                below = np.asarray(at.z) < floor
                half = float(seat.body.shoe_width) / 2
                assert np.all(np.where(below, at.x, opening.front) >= opening.front)
                assert np.all(np.where(below, at.x, opening.front) <= opening.rear)
                assert np.all(np.where(below, at.y - half, opening.left) >= opening.left)
                assert np.all(np.where(below, at.y + half, opening.left) <= rail + AROUND)
    assert opening.right <= rail


# -- how high, how far apart ------------------------------------------------------------


@pytest.mark.parametrize("name", ["larkfield-first", "brackwater-first"])
def test_a_pad_within_its_range_meets_every_demand_on_its_leg(car: Car, name: str) -> None:
    design = car(name)
    for found in pedal_height(design).rows:
        now, low, high, *_ = found.values
        inside = [high - now] if np.isfinite(high) else []
        inside += [low - now] if np.isfinite(low) else []
        for lift in inside:
            moved = changed(design, lifted_by(design, found.name, lift))
            assert leg_musts(moved, (found.name,)) == set()
        if np.isfinite(high):
            beyond = changed(design, lifted_by(design, found.name, high - now + 1.0))
            assert leg_musts(beyond, (found.name,)) != set()


def test_larkfields_first_pads_stand_180_above_the_heels(car: Car) -> None:
    answer = pedal_height(car("larkfield-first"))
    assert row(answer, "brake").values[0] == pytest.approx(180.0, rel=0.005)
    assert row(answer, "brake").mark == row(answer, "clutch").mark == "fails"
    assert row(answer, "throttle").mark == "passes"


def test_a_lifted_pedal_is_the_same_pedal_elsewhere(car: Car) -> None:
    design = car("larkfield-improved")
    was = assess(design)
    up = assess(changed(design, lifted_by(design, "brake", 12.0)))
    assert float(up.brake.lever.pad.z - was.brake.lever.pad.z) == pytest.approx(12.0)
    assert float(up.brake.hard_stop.ratio) == pytest.approx(float(was.brake.hard_stop.ratio))
    up = assess(changed(design, lifted_by(design, "clutch", 12.0)))
    assert float(up.clutch.lever.pad.z - was.clutch.lever.pad.z) == pytest.approx(12.0)
    assert float(up.clutch.result.effort) == pytest.approx(float(was.clutch.result.effort))


@pytest.mark.parametrize("name", cars())
def test_a_joggle_breaks_nothing_and_leaves_less_missing(car: Car, name: str) -> None:
    design = car(name)
    answer = spacing(design)
    assert len(answer.rows) == 3
    for step in answer.steps:
        assert step.breaks == ()
        after = assess(changed(design, step.changes))
        assert missing(after) < missing(assess(design)) - 4.0


def missing(assessment: Assessment) -> float:
    """Shoes in full, pads by half, as a builder would weigh them."""
    weights = {"driver.shoe": 1.0, "driver.gap": 0.5}
    total = 0.0
    for finding in assessment.findings:
        for start, weight in weights.items():
            if finding.limit.code.startswith(start):
                short = float(finding.bound - np.nan_to_num(finding.value))
                total += weight * max(short, 0.0)
    return total


def test_what_the_shoes_need_stands_beside_the_rule(car: Car) -> None:
    """Saltmarsh's pads 2 and 2 1/4 wide under a shoe of 4 1/2: 2 3/8 apart, and 10 mm of air."""
    found = row(spacing(car("saltmarsh-improved")), "clutch to brake")
    gap, rule, need, beside = found.values
    assert gap == pytest.approx(1.875 * 25.4)
    assert rule == 50.0
    assert need == pytest.approx(2.375 * 25.4 + 10.0)
    assert beside < gap - need + 10.0  # the legs turn the shoes in
    assert found.mark == "short"


# -- what buys leg room -----------------------------------------------------------------


@pytest.mark.parametrize("name", ["larkfield-first", "brackwater-fix2", "saltmarsh-first"])
def test_every_change_is_a_design_and_gives_what_assess_says(car: Car, name: str) -> None:
    design = car(name)
    names = [driver.name for driver in design.drivers]
    was = assess(design)
    for found in leg_room(design).rows:
        now = assess(changed(design, found.changes))
        for i, who in enumerate(names):
            joint = in_hand(now, was, who, "rad") - in_hand(was, was, who, "rad")
            assert found.values[2 * i] == pytest.approx(joint, abs=1e-9, nan_ok=True)


def in_hand(found: Assessment, was: Assessment, who: str, unit: str) -> float:
    judged = {(f.limit.code, f.about) for f in was.findings if f.judged}
    hands = [
        float((f.value - f.bound) * (1.0 if f.limit.sense == "at least" else -1.0))
        for f in found.findings
        if f.room == "driver"
        and f.about.startswith(f"{who}, ")
        and f.limit.unit == unit
        and f.limit.code != "driver.pad_rake"
        and (f.limit.code, f.about) in judged
    ]
    return float(np.min(hands))


def test_packing_is_the_first_step_in_larkfields_first_car(car: Car) -> None:
    """Ranked by what an hour of work gives; what breaks a demand is no step."""
    answer = leg_room(car("larkfield-first"))
    first: Step = answer.steps[0]
    assert first.what.text.startswith("Thicker heel plate")
    assert all(step.breaks == () for step in answer.steps)
    assert row(answer, "deeper tub").mark == "fails"


def test_raking_the_pads_moves_no_leg(car: Car) -> None:
    found = row(leg_room(car("larkfield-improved")), "pads raked")
    *legs_won, sole = found.values
    assert legs_won == [0.0] * 4
    assert np.rad2deg(sole) == pytest.approx(25.0, abs=0.1)


def test_a_notch_gives_the_toes_and_the_pads_its_depth(car: Car) -> None:
    design = car("larkfield-improved")
    was = assess(design)
    now = assess(changed(design, (Change("toe_pocket", 30.0, "mm"),)))
    for before, after in zip(was.drivers, now.drivers, strict=True):
        gap = after.brake.near.toe_wall - before.brake.near.toe_wall
        assert np.asarray(gap) == pytest.approx(np.full(3, 30.0))
    assert float(now.clutch.room) > float(was.clutch.room) + 30.0


def test_seats_move_for_every_driver(car: Car) -> None:
    changes = row(leg_room(car("larkfield-improved")), "seat lower").changes
    assert changes == (
        Change("drivers.D1.hip.z", 100.0, "mm"),
        Change("drivers.D2.hip.z", 100.0, "mm"),
    )
