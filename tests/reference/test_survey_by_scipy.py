"""Nets of tapes, steps and slopes against scipy's least squares and against thousands of surveys.

Strength: independent solver; the laws of chance.
"""

import numpy as np
import pytest
from scipy.optimize import least_squares
from scipy.stats import chi2, norm
from survey.nets import HOOKS, TRUE, adjusted, held, place, tapes

from pedalwright.survey import Distance, Sight, Slope, Station, Step, adjust
from pedalwright.survey.formulas import chance_sum, ellipse_factor
from pedalwright.survey.suspects import CRITICAL

NAMES = ("P", "Q", "R", "S")


def mixed(rng: np.random.Generator) -> tuple[list[Station], list[Sight], dict[str, np.ndarray]]:
    """Four unknown marks, tapes to hooks and among them, heights, plumb lines and angles.

    Their errors are half of what is expected of them, so that none looks like a blunder.
    """
    at = {name: np.array(hook) for name, hook in HOOKS.items()}
    unknown = {name: rng.uniform((100, 50, 50), (600, 500, 380)) for name in NAMES}
    known = at | unknown
    sights: list[Sight] = []
    for name in NAMES:
        for hook in rng.permutation(list(HOOKS))[:5]:
            length = float(np.linalg.norm(at[hook] - known[name])) + rng.normal(0.0, 0.5)
            sights.append(Distance(hook=str(hook), to=name, length=length, sigma=1.0))
    for one, other in (("P", "Q"), ("R", "S")):
        length = float(np.linalg.norm(known[one] - known[other])) + rng.normal(0.0, 0.7)
        sights.append(Distance(hook=one, to=other, length=length, sigma=1.5))
        rise = known[other] - known[one]
        angle = float(np.arctan2(rise[2], np.hypot(rise[0], rise[1]))) + rng.normal(0.0, 0.002)
        sights.append(Slope(foot=one, head=other, angle=angle, sigma=0.004))
    height = known["Q"][2] - known["R"][2] + rng.normal(0.0, 0.3)
    sights.append(Step(mark="Q", base="R", axis="z", length=float(height), sigma=0.7))
    plumb = known["S"][1] + rng.normal(0.0, 0.3)
    sights.append(Step(mark="S", base="", axis="y", length=float(plumb), sigma=0.7))
    return [*held(), *(Station(name=name) for name in NAMES)], sights, known


def by_scipy(sights: list[Sight], start: dict[str, np.ndarray]) -> dict[str, np.ndarray]:
    def misfit(numbers: np.ndarray) -> list[float]:
        at = {name: np.array(hook) for name, hook in HOOKS.items()}
        at |= dict(zip(NAMES, numbers.reshape(-1, 3), strict=True))
        out: list[float] = []
        for sight in sights:
            if isinstance(sight, Distance):
                read = np.linalg.norm(at[sight.to] - at[sight.hook])
                out.append(float(read - sight.length) / sight.sigma)
            elif isinstance(sight, Step):
                base = at[sight.base] if sight.base else np.zeros(3)
                read = (at[sight.mark] - base)["xyz".index(sight.axis)]
                out.append(float(read - sight.length) / sight.sigma)
            else:
                rise = at[sight.head] - at[sight.foot]
                read = np.arcsin(rise[2] / np.linalg.norm(rise))
                out.append(float(read - sight.angle) / sight.sigma)
        return out

    found = least_squares(misfit, np.concatenate([start[name] for name in NAMES]), xtol=1e-14)
    return dict(zip(NAMES, found.x.reshape(-1, 3), strict=True))


@pytest.mark.parametrize("seed", range(8))
def test_a_mixed_net_agrees_with_another_solver(seed: int) -> None:
    stations, sights, known = mixed(np.random.default_rng(seed))
    found = adjust(stations, sights)
    assert found.suspicions == ()
    theirs = by_scipy(sights, known)
    for name in NAMES:
        assert place(found, name) == pytest.approx(theirs[name], abs=1e-3)


def surveys(count: int, seed: int, extra: float = 0.0) -> np.ndarray:
    """Errors of six tapes, chance alone; the third also wrong by `extra`."""
    errors = np.random.default_rng(seed).normal(0.0, 1.0, (count, 6))
    errors[:, 2] += extra
    return errors


@pytest.mark.slow
def test_the_error_ellipse_holds_the_point_as_often_as_it_says() -> None:
    """In plan, of 1000 surveys 95 in 100 within the 95 % ellipse, give or take 3 sigma."""
    count, within = 1000, 0
    for errors in surveys(count, 5):
        found = adjusted(errors.tolist())
        out = place(found)[:2] - TRUE[:2]
        known = found.mark("P")
        assert known is not None
        reach = float(out @ np.linalg.inv(known.covariance[:2, :2]) @ out)
        within += reach <= float(ellipse_factor(0.95)) ** 2
    share, chance = within / count, np.sqrt(0.95 * 0.05 / count)
    assert abs(share - 0.95) < 3.0 * chance


@pytest.mark.slow
@pytest.mark.parametrize("extra", [4.0, 6.0])
def test_an_error_is_noticed_as_often_as_theory_says(extra: float) -> None:
    """The normalised residual is normal about extra √r / sigma (Baarda's noncentrality)."""
    share = next(
        checked.redundancy
        for checked in adjusted((0.0,) * 6).sights
        if checked.sight.about == "C–P"
    )
    middle = extra * np.sqrt(share)
    power = norm.sf(CRITICAL - middle) + norm.cdf(-CRITICAL - middle)
    count = 500
    noticed = 0
    for errors in surveys(count, 7, extra):
        made = adjust([*held(), Station(name="P")], tapes(errors=errors.tolist()))
        third = next(checked for checked in made.sights if checked.sight.about == "C–P")
        noticed += third.normalised > CRITICAL
    chance = np.sqrt(power * (1.0 - power) / count)
    assert abs(noticed / count - power) < 3.5 * chance


@pytest.mark.slow
def test_false_alarms_are_as_rare_as_they_are_meant_to_be() -> None:
    """One reading in a thousand, six readings a survey."""
    count = 1500
    alarms = sum(bool(adjusted(errors.tolist()).suspicions) for errors in surveys(count, 11))
    assert alarms / count < 6.0 * 2.0 * norm.sf(CRITICAL) + 3.0 * np.sqrt(0.006 / count)
    assert alarms > 0


@pytest.mark.parametrize("freedom", [1, 2, 3, 5, 10, 40, 150])
def test_the_bound_on_the_scatter_is_that_of_chi_square(freedom: int) -> None:
    """Wilson and Hilferty's cube, within 2 % of the true bound from three on."""
    mine = float(chance_sum(float(freedom), 3.0902))
    assert mine == pytest.approx(chi2.isf(0.001, freedom), rel=0.06 if freedom < 3 else 0.02)
