"""A design whose numbers are arrays is a population of designs."""

from dataclasses import dataclass, replace

import numpy as np
import pytest

from pedalwright.core.batch import over, pick, spread, stack
from pedalwright.core.units import Num


@dataclass(frozen=True, kw_only=True, slots=True)
class Hole:
    """A part in a tree."""

    distance: Num
    name: str = "pin"


@dataclass(frozen=True, kw_only=True, slots=True)
class Arm:
    """A tree of parts, numbers, texts, choices and an absent part."""

    length: Num
    holes: tuple[Hole, ...]
    cranked: bool = False
    spare: Hole | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Cable:
    """Another part with the same fields as a hole."""

    distance: Num
    name: str = "pin"


def arm(length: float, *distances: float) -> Arm:
    return Arm(length=length, holes=tuple(Hole(distance=d) for d in distances))


ROWS = [arm(250.0, 50.0, 60.0), arm(272.0, 54.5, 62.0), arm(276.0, 55.0, 58.0)]


def test_variants_lie_on_the_last_axis() -> None:
    batch = stack(ROWS)
    assert np.array_equal(batch.length, [250.0, 272.0, 276.0])
    assert np.array_equal(batch.holes[1].distance, [60.0, 62.0, 58.0])
    curves = stack([Hole(distance=np.linspace(0.0, end, 41)) for end in (1.0, 2.0, 3.0)])
    assert np.shape(curves.distance) == (41, 3)


def test_picking_undoes_stacking() -> None:
    batch = stack(ROWS)
    for i, row in enumerate(ROWS):
        assert pick(batch, i) == row


def test_what_is_no_array_is_picked_as_it_is() -> None:
    mixed = Arm(length=np.array([1.0, 2.0]), holes=(Hole(distance=3.0),))
    assert pick(mixed, 1) == arm(2.0, 3.0)


def test_whole_numbers_become_real_ones() -> None:
    batch = stack([Hole(distance=1), Hole(distance=2)])
    assert np.asarray(batch.distance).dtype == np.float64


def test_a_batch_cannot_be_written_into() -> None:
    lengths = np.asarray(stack(ROWS).length)
    with pytest.raises(ValueError, match="read-only"):
        lengths[0] = 0.0


@pytest.mark.parametrize(
    "other",
    [
        replace(ROWS[0], cranked=True),
        replace(ROWS[0], spare=Hole(distance=1.0)),
        replace(ROWS[0], holes=(Hole(distance=1.0, name="spring"), Hole(distance=1.0))),
    ],
)
def test_unlike_designs_make_no_batch(other: Arm) -> None:
    with pytest.raises(AssertionError, match="one batch cannot hold"):
        stack([ROWS[0], other])


def test_unlike_parts_make_no_batch() -> None:
    with pytest.raises(AssertionError, match="one batch cannot hold"):
        over(max, Hole(distance=1.0), Cable(distance=2.0))


def test_a_different_number_of_parts_makes_no_batch() -> None:
    with pytest.raises(ValueError, match="shorter"):
        stack([arm(1.0, 2.0, 3.0), arm(1.0, 2.0)])


def test_hands_build_within_their_plus_minus() -> None:
    nominal, plus_minus = arm(272.0, 54.5, 62.0), arm(2.0, 0.5, 0.0)
    cars = spread(nominal, plus_minus, 4000, np.random.default_rng(1))
    lengths = np.asarray(cars.length)
    assert lengths.shape == (4000,)
    assert 270.0 <= lengths.min() < 270.1
    assert 273.9 < lengths.max() <= 274.0
    # even between the ends: the mean and the spread of a flat distribution
    assert lengths.mean() == pytest.approx(272.0, abs=4 * 2.0 / np.sqrt(3 * 4000))
    assert lengths.std() == pytest.approx(2.0 / np.sqrt(3), rel=0.03)
    assert np.all(cars.holes[1].distance == 62.0)


def test_each_number_is_drawn_by_itself_and_the_same_seed_draws_the_same() -> None:
    draws = [
        spread(arm(1.0, 1.0), arm(1.0, 1.0), 200, np.random.default_rng(seed)) for seed in (7, 7, 8)
    ]
    assert np.array_equal(draws[0].length, draws[1].length)
    assert not np.array_equal(draws[0].length, draws[2].length)
    together = np.corrcoef(draws[0].length, draws[0].holes[0].distance)[0, 1]
    assert abs(together) < 0.3
