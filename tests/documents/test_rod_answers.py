"""Each way to let a made rod in, typed into the file, lets it in."""

from dataclasses import replace

import pytest

from pedalwright.assess import assess
from pedalwright.design import Design
from pedalwright.documents.rod_answers import rod_angle
from pedalwright.project import car_text, read
from pedalwright.search.changes import changed


def with_rod(length: float) -> Design:
    """A rod of that length, without threads, in Larkfield's brake."""
    design = read(car_text("larkfield-improved")).design
    rod = replace(design.brake.rod, length=length)
    return replace(design, brake=replace(design.brake, rod=rod, rod_ends=None))


def fits(design: Design) -> bool:
    return next(bool(f.ok) for f in assess(design).findings if f.limit.code == "linkage.rod_fits")


@pytest.mark.parametrize("length", [99.0, 110.0])
def test_every_way_in_lets_the_rod_in(length: float) -> None:
    design = with_rod(length)
    assert not fits(design)
    answer = rod_angle(design)
    ways = [step for step in answer.steps if "the rod goes in" in step.brings.text]
    sizes = [step.what.figures[0].value for step in ways]
    assert answer.outcome == "fails"
    assert "cannot be put together" in answer.says.text
    assert len(ways) == 3
    assert sizes == sorted(sizes)
    for step in ways:
        assert fits(changed(design, step.changes))


def test_a_rod_that_fits_is_not_spoken_of() -> None:
    answer = rod_angle(with_rod(106.0))
    assert answer.outcome == "passes"
    assert all("goes in" not in step.brings.text for step in answer.steps)
