"""A pedal pressed part of the way is the assessed one at both ends, and between them in between."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from pedalwright.assess import Assessment, assess
from pedalwright.assess.stroke import PEDAL_NAMES, PedalName, pressed
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.project import car_text, read

CARS = ("larkfield-improved", "brackwater-fix2", "saltmarsh-improved")


@pytest.fixture(scope="module", params=CARS)
def car(request: pytest.FixtureRequest) -> tuple[Design, Assessment]:
    design = read(car_text(request.param)).design
    return design, assess(design)


def near(one: Point, other: Point) -> bool:
    return bool((one - other).length() < 1e-9)


@pytest.mark.parametrize("which", PEDAL_NAMES)
@pytest.mark.parametrize(("share", "place"), [(0.0, "rest"), (1.0, "full")])
def test_its_ends_are_those_of_the_assessment(
    car: tuple[Design, Assessment], which: PedalName, share: float, place: str
) -> None:
    design, found = car
    for person in design.drivers:
        here = pressed(design, found, which, share, person.name)
        assert here.legs[0].name == person.name
        placed = next(p for p in found.drivers if p.name == person.name)
        seat = getattr(placed, which)
        assert here.legs[0].posture == seat.at(place)


@pytest.mark.parametrize("which", PEDAL_NAMES)
def test_a_hair_from_its_ends_it_is_a_hair_from_the_assessment(
    car: tuple[Design, Assessment], which: PedalName
) -> None:
    """The legs at the ends are looked up and those between are placed: both are the same legs."""
    design, found = car
    for end, share in ((0.0, 1e-9), (1.0, 1.0 - 1e-9)):
        there, nearly = pressed(design, found, which, end), pressed(design, found, which, share)
        for leg, other in zip(there.legs, nearly.legs, strict=True):
            assert (leg.posture.knee - other.posture.knee).length() < 1e-4
            assert (leg.posture.heel - other.posture.heel).length() < 1e-4


@pytest.mark.parametrize("which", PEDAL_NAMES)
def test_the_pad_goes_along_its_arc_in_even_steps(
    car: tuple[Design, Assessment], which: PedalName
) -> None:
    design, found = car
    steps = [pressed(design, found, which, share) for share in np.linspace(0.0, 1.0, 9)]
    radii = [(step.pad - step.lever.pivot).length() for step in steps]
    assert np.ptp(radii) < 1e-9
    chords = [(b.pad - a.pad).length() for a, b in pairwise(steps)]
    assert np.ptp(chords) < 1e-9
    assert near(steps[0].pad, steps[0].lever.pad)
    assert near(steps[-1].pad, steps[-1].pad_full)


@pytest.mark.parametrize("which", ["brake", "clutch"])
def test_the_rod_keeps_its_length(car: tuple[Design, Assessment], which: PedalName) -> None:
    design, found = car
    lengths = []
    for share in np.linspace(0.0, 1.0, 7):
        here = pressed(design, found, which, share).position
        assert here is not None
        lengths.append((here.socket - here.pin).length())
    assert np.ptp(lengths) < 1e-9


def test_the_box_stands_where_the_driver_named_first_has_it() -> None:
    design = read(car_text("saltmarsh-improved")).design
    found = assess(design)
    first, second = (pressed(design, found, "brake", 0.0, d.name) for d in design.drivers)
    apart = second.slide - first.slide
    assert abs(apart) > 1.0
    assert near(second.lever.pad, first.lever.pad + Point(apart, 0.0, 0.0))


def test_a_stroke_nobody_can_work_out_begins_all_the_same() -> None:
    design = read(car_text("larkfield-improved")).design
    plumbing = replace(design.brake.plumbing, dead_stroke=np.nan)
    unknown = replace(design, brake=replace(design.brake, plumbing=plumbing))
    found = assess(unknown)
    here = pressed(unknown, found, "brake", 0.0)
    assert near(here.pad, here.lever.pad)
    assert np.isnan(pressed(unknown, found, "brake", 0.5).pad.x)
