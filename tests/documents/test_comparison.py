"""Two attempts side by side: nothing said of what is the same, everything of what is not."""

import numpy as np
import pytest

from pedalwright.assess import assess, headlines
from pedalwright.documents.about import About
from pedalwright.documents.comparison import Attempt, comparison_text, moves, turns
from pedalwright.project import car_text, diff, read


def attempt(name: str) -> Attempt:
    project = read(car_text(name))
    assessment = assess(project.design)
    about = About(
        car=project.name,
        note=project.note,
        date=project.date,
        file=f"{name}.toml",
        version="0",
        told=project.provenance,
    )
    return Attempt(about, assessment.findings, headlines(assessment))


FIRST, FIX_1, FIX_2 = (attempt(f"brackwater-{name}") for name in ("first", "fix1", "fix2"))


def codes(old: Attempt, new: Attempt, *, was: bool, now: bool) -> set[str]:
    return {
        side.limit.code
        for turn in turns(old, new)
        if (turn.was_met, turn.is_met) == (was, now)
        for side in (turn.old or turn.new,)
        if side is not None
    }


def test_a_car_beside_itself_has_nothing_to_tell() -> None:
    assert list(moves(FIRST, FIRST)) == []
    text = comparison_text(FIRST, FIRST, ())
    assert "MENDED: 0" in text
    assert "BROKEN: 0" in text
    assert "CHANGED: 0" in text


def test_the_tempting_fix_mends_the_lock_order_and_breaks_the_lost_circuit() -> None:
    assert "brakes.lock_order" in codes(FIRST, FIX_1, was=False, now=True)
    assert codes(FIRST, FIX_1, was=True, now=False) == {"brakes.one_circuit"}
    assert codes(FIX_1, FIX_2, was=True, now=False) == set()


@pytest.mark.parametrize("swap", [False, True])
def test_figures_that_moved_are_assessments_own(swap: bool) -> None:
    pair = (FIX_2, FIRST) if swap else (FIRST, FIX_2)
    found = {move.name: move for move in moves(*pair)}
    ratio = found["linkage.brake.ratio"]
    old, new = (
        next(float(line.value) for line in one.headlines if line.name == "linkage.brake.ratio")
        for one in pair
    )
    assert (ratio.old, ratio.new) == (old, new)
    assert "clutch.release" not in found
    assert all(abs(m.new - m.old) > 0.005 * abs(m.old) for m in found.values() if m.old == m.old)


def test_what_one_of_them_does_not_have_has_no_value() -> None:
    larkfield = attempt("larkfield-improved")
    tilt = next(m for m in moves(FIRST, larkfield) if m.name == "hydraulics.bar_tilt")
    assert np.isnan(tilt.new)
    asked = [t for t in turns(FIRST, larkfield) if t.new is None]
    assert {t.old.limit.code for t in asked if t.old} >= {"hydraulics.bar_tilt"}


def test_the_text_shows_what_was_typed() -> None:
    changes = diff(read(car_text("brackwater-first")), read(car_text("brackwater-fix2")))
    text = comparison_text(FIRST, FIX_2, changes)
    assert "brake.pedal.pin_radius:  43 mm  ->  36 mm" in text
    assert f"CHANGED: {len(changes)} entries" in text
    assert "sign-off" in text
