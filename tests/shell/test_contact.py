"""One-sided contact: the only answer there is, or an honest no."""

import numpy as np
import pytest
from scipy.optimize import nnls

from pedalwright.core.units import Array
from pedalwright.shell.contact import press


def drawn(places: int, seed: int) -> tuple[Array, Array]:
    """A give that is positive definite, and gaps of both signs."""
    rng = np.random.default_rng(seed)
    root = rng.normal(size=(places, places))
    return root @ root.T + 0.01 * np.eye(places), rng.normal(size=places)


@pytest.mark.parametrize("seed", range(25))
def test_no_gap_below_nothing_no_pull_and_no_force_at_a_gap(seed: int) -> None:
    give, opening = drawn(40, seed)
    found = press(give, opening)
    gap = give @ found.force + opening
    assert found.settled
    assert found.force.min() >= 0.0
    assert gap.min() > -1e-7
    assert np.abs(gap * found.force).max() < 1e-6


def test_the_same_as_by_least_squares() -> None:
    """The force of least energy, by Lawson and Hanson's method from another library."""
    give, opening = drawn(30, 99)
    root = np.linalg.cholesky(give)
    theirs, _ = nnls(root.T, -np.linalg.solve(root, opening))
    assert press(give, opening).force == pytest.approx(theirs, abs=1e-8 * theirs.max())


def test_places_that_only_just_touch_settle() -> None:
    give, _ = drawn(12, 5)
    force = np.array([3.0, 0.0, 2.0, 0, 0, 1.0, 0, 0, 0, 4.0, 0, 0])
    found = press(give, -give @ force)
    assert found.settled
    assert found.force == pytest.approx(force, abs=1e-6)


def test_a_search_that_does_not_end_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("pedalwright.shell.contact.PASSES", 1)
    give, opening = drawn(40, 1)
    found = press(give, opening)
    assert not found.settled
    assert np.isnan(found.force).all()


def test_nothing_to_press() -> None:
    found = press(np.zeros((0, 0)), np.zeros(0))
    assert found.settled
    assert found.force.shape == (0,)
