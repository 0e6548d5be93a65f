"""Who gives, told one by one, is all that gives."""

import pytest

from pedalwright.assess import assess
from pedalwright.project import car_text, cars, read
from pedalwright.structure.gives import NAMED, REST, gives


@pytest.mark.parametrize("car", sorted(cars()))
def test_they_sum_to_the_give(car: str) -> None:
    found = assess(read(car_text(car)).design)
    for pedal in (found.brake, found.clutch):
        told = gives(pedal.strength)
        assert sum(float(one.give) for one in told) == pytest.approx(
            float(pedal.strength.give.total), rel=1e-9
        )


def test_the_culprits_of_a_flat_patch_stand_first() -> None:
    told = gives(assess(read(car_text("larkfield-first")).design).brake.strength)
    names = [one.part for one in told]
    box = names[names.index("push rod") + 1 :]
    assert box[:3] == ["front wall", "patch", "cowl rail"]
    assert box[-1] == REST
    assert len(box) <= NAMED + 1


def test_mounts_as_they_were_said() -> None:
    told = gives(assess(read(car_text("saltmarsh-improved")).design).brake.strength)
    assert [one.part for one in told][-2:] == ["cylinder's mount", "pivot's mount"]
