"""The pedal box on the bench: how far it gives, who gives, what is wrong with it."""

from dataclasses import replace

import numpy as np
import pytest
from panels.boxes import CHEEKS, FIRST, SECOND, SURVEY, WALL

from pedalwright.core.points import Point
from pedalwright.panels.parts import Box
from pedalwright.structure.box.held import held
from pedalwright.structure.box.parts import Held, Push, Seat, Unheld
from pedalwright.structure.box.push import box_give

ON_WALL = Seat(
    pedal="brake",
    cylinder_on="patch",
    cylinder=Point(28.0, 385.0, 286.0),
    flange_width=50.0,
    flange_height=40.0,
    pivot_on="brake hanger",
    tube_outside=22.0,
    tube_inside=16.0,
)
IN_BOX = replace(
    ON_WALL, cylinder_on="brake box", cylinder=Point(28.0, 385.0, 293.0), pivot_on="brake box"
)


def unit(ratio: float) -> Push:
    """One newton forward on the pad of a lever of that ratio."""
    return Push(
        at_flange=Point(28.0, 385.0, 293.0),
        flange=Point(-ratio, 0.0, 0.0),
        at_pivot=Point(120.0, 385.0, 350.0),
        pivot=Point(ratio - 1.0, 0.0, 0.0),
        turns=Point(0.0, 0.0, 0.0),
    )


def answer(box: Box, seat: Seat) -> Held:
    found = held(box, SURVEY, (seat,))
    assert not isinstance(found, Unheld), found.faults
    return found[0]


def test_a_flat_patch_and_a_rail_give_tens_of_millimetres_and_the_wall_most() -> None:
    give = box_give(answer(FIRST, ON_WALL), unit(4.0), 500.0)
    assert 50.0 < float(give.total) < 200.0
    worst = max(give.by_part, key=lambda one: float(one.give))
    assert worst.part == "front wall"
    assert float(worst.give) > 0.7 * float(give.total)


def test_a_channel_with_cylinder_and_pivot_in_one_piece_hardly_gives() -> None:
    give = box_give(answer(SECOND, IN_BOX), unit(5.0), 500.0)
    assert float(give.flange_moves) < 1.0
    assert float(give.total) < 3.0


@pytest.mark.parametrize(("box", "seat"), [(FIRST, ON_WALL), (SECOND, IN_BOX)])
def test_what_the_parts_give_is_what_the_pad_sinks(box: Box, seat: Seat) -> None:
    give = box_give(answer(box, seat), unit(5.0), 500.0)
    assert sum(float(one.give) for one in give.by_part) == pytest.approx(float(give.total), 1e-6)
    assert float(give.flange + give.pivot) == pytest.approx(float(give.total), rel=1e-12)


def test_many_pushes_are_each_by_itself() -> None:
    one = answer(SECOND, IN_BOX)
    ratios = np.array([4.0, 5.0, 6.0])
    many = box_give(one, replace(unit(5.0), flange=Point(-ratios, 0.0, 0.0)), 500.0)
    for i, ratio in enumerate(ratios):
        alone = box_give(one, replace(unit(5.0), flange=Point(-float(ratio), 0.0, 0.0)), 500.0)
        assert np.asarray(many.total)[i] == pytest.approx(float(alone.total), rel=1e-12)


def test_a_force_beside_the_point_that_stands_for_it_brings_its_moment() -> None:
    """What counts is the line of a force, not where on it one says it acts."""
    one = answer(SECOND, IN_BOX)
    further = replace(unit(5.0), at_flange=Point(-40.0, 385.0, 293.0))
    assert box_give(one, further, 500.0).total == pytest.approx(
        float(box_give(one, unit(5.0), 500.0).total), rel=1e-9
    )


def test_the_loop_is_open_without_a_way_from_flange_to_shaft() -> None:
    assert answer(FIRST, ON_WALL).joints == np.inf
    assert answer(SECOND, IN_BOX).joints == 0.0


def test_a_thicker_wall_gives_less_by_nearly_the_cube_of_its_thickness() -> None:
    """Of the wall's own share: bending goes with the cube, a patch that presses on it less so."""
    own = {}
    for thickness in (1.6, 3.2):
        box = replace(FIRST, walls=(replace(WALL, thickness=thickness),))
        give = box_give(answer(box, ON_WALL), unit(4.0), 500.0)
        own[thickness] = next(float(o.give) for o in give.by_part if o.part == "front wall")
    assert 4.0 < own[1.6] / own[3.2] < 8.5


def test_a_part_a_pedal_names_must_be_there() -> None:
    lost = held(SECOND, SURVEY, (replace(IN_BOX, cylinder_on="wall", pivot_on="wall"),))
    assert isinstance(lost, Unheld)
    assert [fault.where for fault in lost.faults] == [
        "brake.carrier.mount.cylinder_on",
        "brake.carrier.mount.pivot_on",
    ]
    assert "brake box" in lost.faults[0].accepts


def test_a_wall_that_nothing_holds_is_named() -> None:
    loose = replace(WALL, bottom="free", top="free", left="free", right="free")
    found = held(replace(FIRST, walls=(loose,)), SURVEY, (ON_WALL,))
    assert isinstance(found, Unheld)
    assert "front wall" in found.faults[0].where


def test_a_fastener_beside_its_sheet_is_named() -> None:
    off = replace(CHEEKS, above=110.0, rise=4.5)
    found = held(replace(SECOND, cheeks=(off,)), SURVEY, (IN_BOX,))
    assert isinstance(found, Unheld)
    assert any("brake box on front wall" in fault.where for fault in found.faults)
