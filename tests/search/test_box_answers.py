"""Questions about the sheet metal that carries the pedals."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.core.answers import Answer
from pedalwright.design import Design
from pedalwright.project import car_text, read
from pedalwright.search import pedal_give
from pedalwright.search.box import doubler, load_path, rivets, thickness, weld
from pedalwright.search.box.additions import channel_for, plate
from pedalwright.search.box.built import hung_on, part, wall_under, with_part
from pedalwright.search.box.cures import box_cures
from pedalwright.search.judged import Judged


@cache
def car(name: str) -> Design:
    return read(car_text(name)).design


@cache
def first(question: str) -> Answer:
    design = car("larkfield-first")
    return {
        "spongy": lambda: pedal_give(design),
        "thickness": lambda: thickness(design, "brake", None),
        "doubler": lambda: doubler(design, "brake"),
        "rivets": lambda: rivets(design, "brake", None),
        "weld": lambda: weld(design, "brake", None),
        "load-path": lambda: load_path(design, "brake"),
    }[question]()


def test_the_causes_of_sponginess_sum_to_all_of_it() -> None:
    *causes, whole = first("spongy").rows
    assert sum(row.values[0] for row in causes) == pytest.approx(whole.values[0], rel=1e-6)
    assert causes[0].name == "the front wall"
    assert causes[0].values[1] > 0.5


def test_a_channel_that_closes_the_loop_is_among_the_cures_and_does_what_it_says() -> None:
    """Built into the design by hand the channel gives as much as the answer promised."""
    design = car("larkfield-first")
    step = next(step for step in first("load-path").steps if "channel" in step.what.text)
    made = channel_for(design, "brake")
    assert made is not None
    changed = hung_on(with_part(design, made), "brake", made.name, made.name)
    changed = replace(
        changed, box=replace(changed.box, doublers=(), hangers=changed.box.hangers[1:])
    )
    box = assess(changed).brake.strength.box
    assert box is not None
    assert box.joints == 0
    assert step.brings.figures[0].value == pytest.approx(float(box.total), rel=1e-6)
    assert first("load-path").steps[0] == step


def test_forces_on_the_box_and_of_the_frame_cancel() -> None:
    rows = {row.name: np.array(row.values[:3]) for row in first("load-path").rows}
    foot = rows.pop("foot on the pad")
    on = sum(force for name, force in rows.items() if not name.startswith("frame"))
    frame = sum(force for name, force in rows.items() if name.startswith("frame"))
    assert np.asarray(on) == pytest.approx(foot, abs=1e-6)
    assert np.asarray(frame) == pytest.approx(-foot, abs=1e-3)
    assert first("load-path").outcome == "fails"


def test_a_closed_loop_says_so_and_has_nothing_to_cure() -> None:
    answer = load_path(car("larkfield-improved"), "brake")
    assert answer.outcome == "passes"
    assert answer.steps == ()
    assert "closed" in answer.says.text


def test_the_pad_sinks_less_in_every_thicker_gauge() -> None:
    sinks = [row.values[1] for row in first("thickness").rows]
    assert sinks == sorted(sinks, reverse=True)
    assert first("thickness").outcome == "fails"
    now = next(row for row in first("thickness").rows if row.mark == "now")
    give = assess(car("larkfield-first")).brake.strength.give.total
    assert now.values[1] == pytest.approx(float(give), rel=1e-9)


def test_a_give_that_is_asked_for_finds_its_gauge() -> None:
    answer = thickness(car("larkfield-first"), "brake", 20.0)
    taken = next(row for row in answer.rows if row.mark == "take")
    assert taken.values[1] <= 20.0
    thinner = [row for row in answer.rows if row.values[1] > taken.values[1]]
    assert all(row.values[1] > 20.0 for row in thinner)


def test_no_doubler_does_on_this_wall_and_a_larger_one_does_more() -> None:
    answer = first("doubler")
    assert answer.outcome == "fails"
    thick = [row for row in answer.rows if row.name.endswith("x 5")]
    moves = [row.values[0] for row in thick]
    assert moves == sorted(moves, reverse=True)


def test_a_plate_is_cut_to_the_wall() -> None:
    design = car("larkfield-first")
    wall = wall_under(design, "brake")
    assert wall is not None
    made = plate(design, "brake", wall, 400.0, 3.0)
    assert made is not None
    assert float(made.middle.z) + float(made.height) / 2 < 390.0


def test_closer_rivets_bear_less_each_and_the_answer_takes_the_widest_that_do() -> None:
    answer = first("rivets")
    assert {row.mark for row in answer.rows} == {"now", "short"}
    wide = rivets(car("larkfield-improved"), "brake", None)
    taken = next(row for row in wide.rows if row.mark in {"take", "keep"})
    assert taken.values[3] <= 1.0
    assert all(row.values[0] <= taken.values[0] for row in wide.rows if row.values[3] <= 1.0)


def test_a_thicker_throat_takes_a_shorter_run() -> None:
    answer = first("weld")
    runs = [row.values[1] for row in answer.rows]
    assert runs == sorted(runs, reverse=True)
    assert weld(car("larkfield-improved"), "brake", None).outcome == "open"


@pytest.mark.parametrize("ask", [doubler, load_path])
def test_a_car_without_a_box_is_told_how_to_describe_one(ask: object) -> None:
    assert callable(ask)
    answer = ask(car("saltmarsh-improved"), "brake")
    assert answer.outcome == "open"
    assert "[box]" in answer.says.text


def test_gussets_tie_a_floor_bracket_to_the_bulkhead() -> None:
    design = car("brackwater-first")
    judged = Judged.of(assess(design))
    cures = [cure for cure in box_cures(design, judged, "brake") if cure.made is not None]
    tied = next(cure for cure in cures if "Tie" in cure.what.text)
    assert tied.made is not None
    assert part(tied.made.box, "left_gusset") is not None
    box = assess(tied.made).brake.strength.box
    assert box is not None
    assert judged.brake.strength.box is not None
    assert float(box.total) < 0.6 * float(judged.brake.strength.box.total)


def test_the_clutch_is_judged_by_what_the_clutch_may_give() -> None:
    """0.4 mm at 200 N, not the brake's 1 mm at 500 N."""
    bars = doubler(car("larkfield-first"), "clutch").bars
    assert bars is not None
    assert bars.bound == pytest.approx(0.4)
