"""The box in full: equilibrium, agreement with the fast answer, stress, rows, one missing."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from panels.boxes import FIRST, RIVETS, SECOND, SURVEY
from structure.test_box import IN_BOX, ON_WALL, unit

from pedalwright.panels.parts import Bolts, Box, RivetNuts
from pedalwright.structure.box.bench import COARSE
from pedalwright.structure.box.full import Case, Full, full
from pedalwright.structure.box.full_limits import check_full, check_missing
from pedalwright.structure.box.held import held
from pedalwright.structure.box.missing import one_missing
from pedalwright.structure.box.parts import Held, Seat, Unheld
from pedalwright.structure.box.push import box_give

CASES = (
    Case(name="brake, 500 N", pedal="brake", kind="effort", push=500.0, on=unit(5.0)),
    Case(name="brake, 1250 N", pedal="brake", kind="panic", push=1250.0, on=unit(5.0)),
    Case(name="brake, 2000 N", pedal="brake", kind="abuse", push=2000.0, on=unit(5.0)),
)


@cache
def worked(box: Box, seat: Seat) -> Full:
    found = full(box, SURVEY, (seat,), CASES)
    assert isinstance(found, Full), found
    return found


@pytest.mark.parametrize(("box", "seat"), [(FIRST, ON_WALL), (SECOND, IN_BOX)])
def test_the_frame_bears_just_what_the_foot_pushes(box: Box, seat: Seat) -> None:
    """All that is left over of push and pull is the foot's own 500 N, forward."""
    one = worked(box, seat)
    borne = sum(support.force for support in one.borne)
    assert np.asarray(borne)[0] == pytest.approx([500.0, 0.0, 0.0], abs=1e-5)


@pytest.mark.parametrize(("box", "seat"), [(FIRST, ON_WALL), (SECOND, IN_BOX)])
def test_the_fast_answer_is_near(box: Box, seat: Seat) -> None:
    fast = held(box, SURVEY, (seat,))
    assert not isinstance(fast, Unheld)
    give = box_give(fast[0], unit(5.0), 500.0).total
    assert worked(box, seat).pad[0] == pytest.approx(float(give), rel=0.03)


@pytest.mark.parametrize(("box", "seat"), [(FIRST, ON_WALL), (SECOND, IN_BOX)])
def test_on_one_and_the_same_mesh_fast_and_full_are_one(box: Box, seat: Seat) -> None:
    """What presses under any push of the pedal presses under this one, nearly."""
    answer = held(box, SURVEY, (seat,))
    assert not isinstance(answer, Unheld)
    one: Held = answer[0]
    coarse = full(box, SURVEY, (seat,), CASES, size=COARSE)
    assert isinstance(coarse, Full)
    give = float(box_give(one, unit(5.0), 500.0).total)
    assert coarse.pad[0] == pytest.approx(give, rel=2e-3)


def test_who_gives_sums_to_what_the_pad_sinks() -> None:
    one = worked(SECOND, IN_BOX)
    assert one.by_part.sum(axis=1) == pytest.approx(one.pad, rel=1e-8)


def test_twice_the_push_is_twice_the_stress() -> None:
    """Contact opens and closes with the sign of the load only, so all grows with it."""
    for part in worked(SECOND, IN_BOX).judged:
        assert part.stress[2] == pytest.approx(4.0 * part.stress[0], rel=1e-6)


def test_a_flat_patch_tears_its_wall_and_a_channel_does_not() -> None:
    stress = {part.part: part.stress[2] for part in worked(FIRST, ON_WALL).judged}
    assert stress["front wall"] > 1000.0
    bad = {f.about for f in check_full(worked(FIRST, ON_WALL), {}) if not f.ok}
    assert "front wall, brake, 2000 N" in bad
    bad = {f.about for f in check_full(worked(SECOND, IN_BOX), {}) if not f.ok}
    assert "brake box, brake, 2000 N" not in bad


def test_the_rivets_of_a_patch_bear_all_that_the_wall_does_not() -> None:
    (row,) = worked(FIRST, ON_WALL).rows
    assert row.count == 16
    assert row.known
    assert row.use[2] > 1.0


def test_a_maker_s_figure_counts_before_the_tables_least() -> None:
    strong = replace(RIVETS, shear=50000.0, pull=50000.0)
    box = replace(FIRST, doublers=(replace(FIRST.doublers[0], joined=strong),))
    weak = worked(FIRST, ON_WALL).rows[0]
    strong_use, weak_use = (np.max(row.together) for row in (worked(box, ON_WALL).rows[0], weak))
    assert strong_use < weak_use / 10


def test_a_rivet_nut_without_its_makers_figure_is_not_judged() -> None:
    nuts = RivetNuts(diameter=6.0, pitch=60.0, edge=10.0)
    box = replace(FIRST, doublers=(replace(FIRST.doublers[0], joined=nuts),))
    (row,) = worked(box, ON_WALL).rows
    assert not row.known
    assert np.isnan(row.use).all()


def test_one_bolt_missing_works_the_others_harder() -> None:
    one = worked(SECOND, IN_BOX)
    (missing,) = one_missing(one, CASES)
    assert missing.use[1] > one.rows[0].use[1] * 0.9
    (finding,) = check_missing((missing,))
    assert finding.ok == bool(missing.use.max() <= 1.0)
    assert isinstance(SECOND.cheeks[0].joined, Bolts)
