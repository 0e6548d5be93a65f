"""The push test finds the culprit that was hidden in the car."""

from dataclasses import replace

import numpy as np
import pytest

from assess.unboxed import unboxed
from pedalwright.assess import assess
from pedalwright.design import Design
from pedalwright.fitting import Expected, push_test
from pedalwright.structure import PushTest


@pytest.fixture
def improved(improved: Design) -> Design:
    """With its mounts as stiff as is said, so that a test can make one soft."""
    return unboxed(improved)


def softer(design: Design, *, cylinder: float = 1.0, pivot: float = 1.0) -> Design:
    mount = design.brake.carrier.mount
    made = replace(
        mount,
        cylinder_stiffness=mount.cylinder_stiffness / cylinder,
        pivot_stiffness=mount.pivot_stiffness / pivot,
    )
    carrier = replace(design.brake.carrier, mount=made)
    return replace(design, brake=replace(design.brake, carrier=carrier))


def swollen(design: Design, times: float) -> Design:
    plumbing = replace(design.brake.plumbing, hoses=design.brake.plumbing.hoses * times)
    return replace(design, brake=replace(design.brake, plumbing=plumbing))


def read_off(expected: Expected, *, dials: bool, more: float = 0.0) -> PushTest:
    pad = float(expected.pad) + more
    if not dials:
        return PushTest(push=expected.push, pad=pad)
    return PushTest(
        push=expected.push,
        pad=pad,
        flange=float(expected.flange),
        bracket=float(expected.bracket),
    )


def measured(thought: Design, real: Design, *, dials: bool = True, air: float = 0.0) -> Design:
    """The car as it is thought to be, with what the real one shows."""
    tests = tuple(
        read_off(each, dials=dials, more=air * float(each.push) / 500.0)
        for each in push_test(real).expected
    )
    return replace(thought, brake=replace(thought.brake, push_tests=tests))


def test_what_is_expected_is_what_the_car_gives_after_the_touch(improved: Design) -> None:
    """The force-travel curve's own movement, its straight line between touch and 500 N."""
    brake = assess(improved).brake
    push, travel = np.asarray(brake.curve.push), np.asarray(brake.curve.travel)
    at_500 = float(np.interp(500.0, push, travel)) - float(travel[0])
    hardest = push_test(improved).expected[-1]
    assert hardest.push == 500.0
    assert hardest.pad == pytest.approx(at_500, rel=0.01)
    assert hardest.flange == pytest.approx(float(brake.strength.flange_give), rel=1e-9)
    stiffness = float(improved.brake.carrier.mount.pivot_stiffness)
    pivot = float(brake.strength.effort.pivot_force) / stiffness
    assert hardest.bracket == pytest.approx(pivot, rel=1e-9)


def test_a_car_as_it_was_thought_to_be_is_as_expected(improved: Design) -> None:
    assert push_test(measured(improved, improved)).off_by == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(("name", "cylinder", "pivot"), [("cylinder", 6, 1), ("pivot", 1, 9)])
def test_dials_name_the_soft_mount_and_its_size(
    improved: Design, name: str, cylinder: float, pivot: float
) -> None:
    found = push_test(measured(improved, softer(improved, cylinder=cylinder, pivot=pivot)))
    likely = found.causes[0]
    assert likely.name == f"the {name}'s mount"
    assert likely.belief > 0.6
    assert likely.found == pytest.approx(cylinder * pivot * float(likely.expected), rel=0.12)
    assert sum(float(cause.belief) for cause in found.causes) == pytest.approx(1.0)


def test_soft_hoses_cannot_be_told_from_air_but_from_metal(improved: Design) -> None:
    found = push_test(measured(improved, swollen(improved, 2.5)))
    first, second, *others = found.causes
    assert {first.name, second.name} == {"the hoses", "air in the fluid"}
    assert sum(float(cause.belief) for cause in others) < 0.01


def test_belief_by_brute_force(improved: Design) -> None:
    """Two causes, one reading each of pad and flange: the same integrals on a fine grid."""
    car = measured(improved, softer(improved, cylinder=3.0))
    one = replace(car, brake=replace(car.brake, push_tests=car.brake.push_tests[-1:]))
    found = {cause.name: cause for cause in push_test(one).causes}
    expected, (read,) = push_test(improved).expected[-1], one.brake.push_tests
    readings = (
        (float(read.pad), float(expected.pad), 1.0),
        (float(read.flange or 0.0), float(expected.flange), 0.05),
        (float(read.bracket or 0.0), float(expected.bracket), 0.05),
    )
    likely: dict[str, float] = {}
    for name, spread, shares in (
        ("the cylinder's mount", 1.0, (found["the cylinder's mount"].expected, readings[1][1], 0)),
        ("the pivot's mount", 1.0, (found["the pivot's mount"].expected, 0, readings[2][1])),
    ):
        grid = np.linspace(-8.0, 12.0, 20001)
        density = np.exp(-0.5 * (grid / spread) ** 2)
        for (value, mean, good), share in zip(readings, shares, strict=True):
            sigma = np.hypot(good, 0.05 * mean)
            density = density * np.exp(-0.5 * ((value - mean - grid * float(share)) / sigma) ** 2)
        likely[name] = float(np.trapezoid(density, grid)) / spread
    ratio = likely["the pivot's mount"] / likely["the cylinder's mount"]
    beliefs = found["the pivot's mount"].belief, found["the cylinder's mount"].belief
    assert float(beliefs[0]) / float(beliefs[1]) == pytest.approx(ratio, rel=1e-4)


def test_without_dials_the_belief_is_shared(improved: Design) -> None:
    """The pad alone cannot tell one mount from the other."""
    by_dial = push_test(measured(improved, softer(improved, cylinder=6.0)))
    by_rule = push_test(measured(improved, softer(improved, cylinder=6.0), dials=False))
    assert by_dial.causes[0].belief > 0.9
    assert by_rule.causes[0].belief < 0.75


def test_air_that_nobody_expected_is_found(improved: Design) -> None:
    found = push_test(measured(improved, improved, air=12.0))
    assert found.causes[0].name == "air in the fluid"
    assert found.causes[0].expected == 0.0
    assert found.causes[0].found == pytest.approx(12.0, rel=0.1)
