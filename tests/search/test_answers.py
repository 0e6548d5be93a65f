"""What the answers claim is what `assess` says of the same candidate."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from pedalwright.assess import Assessment, assess
from pedalwright.core.answers import Answer, Row, Step
from pedalwright.design import Design
from pedalwright.documents.answers import said
from pedalwright.documents.questions import QUESTIONS
from pedalwright.hydraulics import Tandem
from pedalwright.project import cars
from pedalwright.search import (
    brake_balance,
    brake_drag,
    clutch_release,
    full_throttle,
    most_to_cut,
    pedal_effort,
    pedal_give,
    pedal_travel,
    which_bore,
    which_ratio,
)
from pedalwright.search.changes import changed
from pedalwright.search.levers import cut_by

Car = Callable[[str], Design]


def musts(assessment: Assessment) -> set[tuple[str, str]]:
    return {
        (f.limit.code, f.about)
        for f in assessment.findings
        if f.limit.weight == "must" and not f.ok
    }


def chosen(answer: Answer) -> Row:
    (row,) = [row for row in answer.rows if row.mark in {"take", "keep"}]
    return row


def first(answer: Answer, words: str) -> Step:
    return next(step for step in answer.steps if words in step.what.text)


@pytest.mark.parametrize("fitted", [15.875, 19.05, 20.6375, 22.225, 25.4])
def test_larkfields_improved_arms_ask_for_thirteen_sixteenths_whatever_is_fitted(
    car: Car, fitted: float
) -> None:
    design = car("larkfield-improved")
    masters = design.brake.masters
    assert isinstance(masters, Tandem)
    tried = replace(design, brake=replace(design.brake, masters=replace(masters, bore=fitted)))
    row = chosen(which_bore(tried))
    assert row.name.startswith("13/16 in")
    assert row.changes[0].value == 20.6375
    assert row.mark == ("keep" if fitted == 20.6375 else "take")


@pytest.mark.parametrize("name", ["larkfield-first", "larkfield-improved", "brackwater-first"])
def test_every_bore_of_the_row_is_what_assess_says(car: Car, name: str) -> None:
    design = car(name)
    for row in which_bore(design).rows:
        result = assess(changed(design, row.changes)).brake.result
        figures = dict(zip(("full stop", "0.9 g", "pad travel"), row.values, strict=False))
        assert figures["full stop"] == pytest.approx(float(result.effort_6_43), rel=1e-9)
        assert figures["pad travel"] == pytest.approx(float(result.pad_travel_hard_stop), rel=1e-9)
        assert figures["0.9 g"] == pytest.approx(
            float(result.effort_6_43) * 0.9 * 9.81 / 6.43, rel=1e-9
        )


def test_neighbours_lose_for_a_reason_with_its_figure(car: Car) -> None:
    rows = which_bore(car("larkfield-improved")).rows
    for row in rows:
        if row.mark not in {"keep", "take"}:
            assert row.why, f"{row.name} loses without a reason"
    inch = next(row for row in rows if row.name.startswith("1 in"))
    assert said(inch.why[0]).startswith("rear circuit alone: gives 2.1")


def test_larkfields_first_clutch_does_not_release_and_says_by_how_much(car: Car) -> None:
    design = car("larkfield-first")
    result = assess(design).clutch.result
    answer = clutch_release(design)
    assert answer.outcome == "fails"
    assert answer.says.figures[0].value == pytest.approx(float(result.budget.total), rel=1e-9)
    assert answer.says.figures[1].value == pytest.approx(float(result.travel_available), rel=1e-9)
    assert answer.bars is not None
    *causes, total = (bar.value for bar in answer.bars.bars)
    assert sum(causes) == pytest.approx(total, rel=1e-9)


def test_the_rule_of_thumb_would_not_release_larkfields_clutch(car: Car) -> None:
    answer = clutch_release(car("larkfield-improved"))
    assert answer.outcome == "passes"
    note = said(answer.notes[0])
    assert "a 6:1 clutch needs 165" in note
    assert "would not release" in note


def test_saltmarsh_asks_for_a_seven_eighths_clutch_master(car: Car) -> None:
    row = chosen(clutch_release(car("saltmarsh-first")))
    assert row.name.startswith("7/8 in")
    smaller = next(
        row for row in clutch_release(car("saltmarsh-first")).rows if row.name.startswith("13/16")
    )
    assert smaller.mark == "fails"


@pytest.mark.parametrize("name", ["larkfield-first", "brackwater-first"])
def test_every_throttle_lever_on_offer_opens_fully(car: Car, name: str) -> None:
    design = car(name)
    answer = full_throttle(design)
    levers = [step for step in answer.steps if "lever" in step.what.text]
    assert levers
    for step in levers:
        opening = assess(changed(design, step.changes)).throttle.result
        assert opening.at_stop >= opening.full_opening - np.deg2rad(1.0)
        assert step.brings.figures[0].value == pytest.approx(float(opening.at_stop), rel=1e-9)


def test_the_lever_on_offer_is_the_nearest_that_will_do(car: Car) -> None:
    design = car("brackwater-first")
    change = first(full_throttle(design), "driving lever").changes[0]
    assert change.path == "throttle.opening.stages.1.driving_radius"
    shorter = tuple(
        replace(c, value=c.value - 1.0)
        for c in first(full_throttle(design), "driving lever").changes
    )
    codes = {code for code, _ in musts(assess(changed(design, shorter)))}
    assert "throttle.full_opening" in codes


def test_a_balance_bar_moved_the_least_puts_brackwaters_lock_order_right(car: Car) -> None:
    design = car("brackwater-first")
    answer = brake_balance(design)
    assert answer.outcome == "fails"
    change = first(answer, "balance bar").changes[0]

    def misses(offset: float) -> bool:
        tried = changed(design, [replace(change, value=offset)])
        return "brakes.lock_order" in {code for code, _ in musts(assess(tried))}

    assert not misses(change.value)
    assert misses(change.value - 1.0)


def test_lock_order_in_the_table_is_assessments(car: Car) -> None:
    design = car("brackwater-fix2")
    result = assess(design).brake.result
    low, usual, high, _ = brake_balance(design).rows
    for row, balance in ((low, result.low), (usual, result.nominal), (high, result.high)):
        assert row.values[1] == pytest.approx(float(balance.critical) / 9.81, rel=1e-9)


def test_travel_by_cause_sums_to_the_pads_travel(car: Car) -> None:
    design = car("larkfield-first")
    answer = pedal_travel(design)
    *causes, total = answer.rows
    assert sum(row.values[0] for row in causes) == pytest.approx(total.values[0], rel=1e-9)
    assert total.values[0] == pytest.approx(float(assess(design).brake.budget.total), rel=1e-9)
    assert "arm, rod and mounts giving" in said(answer.says)


@pytest.mark.parametrize("name", ["larkfield-improved", "saltmarsh-first", "brackwater-fix2"])
def test_cures_for_travel_save_what_they_say_best_for_an_hour_first(car: Car, name: str) -> None:
    design = car(name)
    before = float(assess(design).brake.budget.total)
    steps = pedal_travel(design).steps
    worth: list[tuple[bool, float]] = []
    for step in steps:
        after = float(assess(changed(design, step.changes)).brake.budget.total)
        assert step.brings.figures[0].value == pytest.approx(before - after, rel=1e-6, abs=1e-9)
        worth.append((bool(step.breaks), -(before - after) / step.price.minutes))
    assert len(worth) >= 5
    assert worth == sorted(worth)


@pytest.mark.parametrize("name", ["larkfield-first", "saltmarsh-first"])
def test_what_frees_the_clutch_by_itself_comes_before_what_only_helps(car: Car, name: str) -> None:
    design = car(name)
    frees = [
        "clutch.release" not in {code for code, _ in musts(assess(changed(design, step.changes)))}
        for step in clutch_release(design).steps
        if not step.breaks
    ]
    assert frees[0]
    assert frees == sorted(frees, reverse=True)


def test_what_is_spongy_in_larkfields_first_is_the_wall_under_the_cylinder(car: Car) -> None:
    design = car("larkfield-first")
    answer = pedal_give(design)
    box = assess(design).brake.strength.box
    assert box is not None
    wall = next(own.give for own in box.by_part if own.part == "front_wall")
    assert "the front wall" in said(answer.says)
    assert answer.says.figures[1].value == pytest.approx(float(wall), rel=1e-9)
    assert not answer.steps[0].assumed
    assert "front wall" in answer.steps[0].what.text


def test_a_hard_pedal_names_lighter_ones_and_the_help_a_servo_must_give(car: Car) -> None:
    design = car("larkfield-first")
    answer = pedal_effort(design)
    assert answer.outcome == "fails"
    smaller = first(answer, "next smaller")
    after = assess(changed(design, smaller.changes)).brake.result.effort_6_43
    assert smaller.brings.figures[0].value == pytest.approx(float(after), rel=1e-9)
    servo = first(answer, "servo")
    assert servo.brings.figures[0].value == pytest.approx(709.9 / 400.0, rel=1e-3)
    assert pedal_effort(car("larkfield-improved")).outcome == "passes"


def test_a_port_that_may_be_closed_is_a_reason_to_drag(car: Car) -> None:
    design = car("larkfield-improved")
    assert brake_drag(design).outcome == "open"
    plumbing = replace(design.brake.plumbing, dead_stroke=0.2, rod_gap=0.1)
    closed = replace(design, brake=replace(design.brake, plumbing=plumbing))
    answer = brake_drag(closed)
    assert answer.outcome == "fails"
    assert "0.1 mm" in said(answer.says)
    open_port = replace(plumbing, dead_stroke=1.5, rod_gap=0.8)
    assert brake_drag(replace(design, brake=replace(design.brake, plumbing=open_port))).outcome == (
        "passes"
    )


def test_the_longest_cut_misses_nothing_new_and_two_more_millimetres_do(car: Car) -> None:
    design = car("larkfield-improved")
    most = most_to_cut(design, "brake")
    assert 0.0 < most < 60.0
    before = musts(assess(design))
    assert musts(assess(changed(design, cut_by(design, "brake", most)))) <= before
    assert not musts(assess(changed(design, cut_by(design, "brake", most + 2.0)))) <= before


def test_the_ratio_row_is_what_assess_says(car: Car) -> None:
    design = car("larkfield-improved")
    for row in which_ratio(design, "brake").rows:
        found = assess(changed(design, row.changes)).brake
        assert row.values[1] == pytest.approx(float(found.hard_stop.ratio), rel=1e-9)
        assert row.values[2] == pytest.approx(float(found.result.effort_6_43), rel=1e-9)


#: Questions that build a box a dozen times, and cars that are enough for them here.
BOX_QUESTIONS = {"thickness", "doubler", "rivets", "weld", "load-path"}
BOX_CARS = {"brackwater-first", "saltmarsh-first"}


@pytest.mark.parametrize("name", cars())
@pytest.mark.parametrize("question", list(QUESTIONS))
def test_no_answer_claims_what_assess_denies(car: Car, name: str, question: str) -> None:
    """A row that is taken or passes misses nothing of its pedal's rooms; a step that is not
    marked as failing something fails nothing that the car meets now."""
    slow = question in BOX_QUESTIONS and name not in BOX_CARS
    if slow or (question, name) == ("spongy", "brackwater-fix2"):
        pytest.skip("seconds each; their own tests have the rest")
    design = car(name)
    answer = QUESTIONS[question].answers(design, "brake", None)
    rooms = {"brakes", "hydraulics"} if question in {"bore", "ratio"} else {"clutch"}
    rooms = {"driver"} if question == "leg-room" else rooms
    for row in answer.rows:
        if row.changes and row.mark in {"take", "keep", "passes"}:
            codes = {code for code, _ in musts(assess(changed(design, row.changes)))}
            assert not {code for code in codes if code.split(".")[0] in rooms}
    before = musts(assess(design))
    for step in answer.steps:
        if step.changes and not step.breaks:
            assert musts(assess(changed(design, step.changes))) <= before
    assert said(answer.says).endswith(".")
    for figure in answer.says.figures:
        assert np.isfinite(figure.value)
