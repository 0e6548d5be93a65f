"""ANSUR II, body by body: what is predicted against what was measured (NATICK/TR-15/007, 2014).

`ansur_ii_sample.csv` holds every 82nd man and every 40th woman of the survey's public data. Where
the whole survey lies in a folder `data/ansur2` near the checkout, the coefficients of the shelf are
worked out anew, and lines are tried on people who were left out of their fit.
"""

import csv
import gzip
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from pedalwright.driver import Person, body, body_spread, expected
from pedalwright.driver.parts import People
from pedalwright.driver.population import NEAREST, ONE, THIGH_LINK, TWO, Sex, predicted
from pedalwright.shelf.body_lengths import body_length

Column = NDArray[np.float64]
Data = dict[str, Column]

SEXES: tuple[Sex, Sex] = ("male", "female")
COLUMNS = {
    "foot": "footlength",
    "ball of foot": "balloffootlength",
    "foot width": "footbreadthhorizontal",
    "ankle height": "lateralmalleolusheight",
    "knee height sitting": "kneeheightsitting",
    "buttock to knee": "buttockkneelength",
}
READINGS = {"knee height": "kneeheightsitting", "buttock to knee": "buttockkneelength",
            "foot": "footlength"}  # fmt: skip


def measured(data: Data, length: str) -> Column:
    """A length of each person; thigh and shank are differences of landmark heights."""
    knee = data["lateralfemoralepicondyleheight"]
    if length == "shank":
        return knee - data["lateralmalleolusheight"]
    if length == "thigh":
        return data["trochanterionheight"] - knee
    return data[COLUMNS[length]]


def read(lines: Iterator[str]) -> list[dict[str, str]]:
    return list(csv.DictReader(lines))


def columns(rows: list[dict[str, str]]) -> Data:
    names = ["stature", "crotchheight", *COLUMNS.values(), "lateralmalleolusheight",
             "lateralfemoralepicondyleheight", "trochanterionheight"]  # fmt: skip
    return {name: np.array([float(row[name]) for row in rows]) for name in names}


@pytest.fixture(scope="module")
def sample() -> dict[Sex, Data]:
    """Some 100 people."""
    path = Path(__file__).with_name("ansur_ii_sample.csv")
    rows = read(iter(path.read_text(encoding="utf-8").splitlines()))
    return {sex: columns([row for row in rows if row["sex"] == sex]) for sex in SEXES}


@pytest.fixture(scope="module")
def survey(checkout: Path) -> dict[Sex, Data]:
    """All 6 068, where somebody has put them near."""
    near = [folder for parent in checkout.parents for folder in parent.glob("*/data/ansur2")]
    if not near:
        pytest.skip(
            "the survey's public data are not here: no folder data/ansur2 near the checkout"
        )

    def one(sex: Sex) -> Data:
        with gzip.open(near[0] / f"ansur2_{sex}.csv.gz", "rt", encoding="utf-8") as lines:
            return columns(read(lines))

    return {sex: one(sex) for sex in SEXES}


def givens(length: str) -> Iterator[tuple[str, list[str]]]:
    """What a line goes by: its name on the shelf, and the columns."""
    yield ONE, ["stature"]
    yield TWO, ["stature", "crotchheight"]
    if length in NEAREST:
        reading = READINGS[NEAREST[length]]
        yield f"{ONE} and {NEAREST[length]}", ["stature", reading]
        yield f"{ONE}, inside leg and {NEAREST[length]}", ["stature", "crotchheight", reading]


LINES = [
    pytest.param(sex, length, given, names, id=f"{sex} {length} by {given}")
    for sex in SEXES
    for length in ("thigh", "shank", *COLUMNS)
    for given, names in givens(length)
]


def fitted(data: Data, length: str, names: list[str]) -> tuple[Column, float, float]:
    """Coefficients, residual SD and share explained, by least squares."""
    y = measured(data, length)
    x = np.column_stack([np.ones_like(y), *(data[name] for name in names)])
    found, *_ = np.linalg.lstsq(x, y, rcond=None)
    rest = y - x @ found
    spread = np.sqrt(rest @ rest / (len(y) - x.shape[1]))
    return found, float(spread), float(1.0 - rest.var() / y.var())


@pytest.mark.parametrize(("sex", "length", "given", "names"), LINES)
def test_the_shelf_holds_the_least_squares_lines(
    survey: dict[Sex, Data], sex: Sex, length: str, given: str, names: list[str]
) -> None:
    row = body_length(sex, length, given)
    found, spread, explained = fitted(survey[sex], length, names)
    reading = row.per_reading if given not in {ONE, TWO} else 0.0
    slopes = [row.per_stature, row.per_inside_leg, reading]
    kept = [slope for slope in slopes if slope != 0.0]
    assert row.people == len(survey[sex]["stature"])
    assert [row.intercept, *kept] == pytest.approx(list(found), abs=2e-6)
    assert row.spread == pytest.approx(spread, abs=1e-5)
    assert row.determination == pytest.approx(explained, abs=1e-5)


@pytest.mark.parametrize(("sex", "length", "given", "names"), LINES)
def test_people_left_out_of_the_fit_are_met_without_bias_and_within_the_spread(
    survey: dict[Sex, Data], sex: Sex, length: str, given: str, names: list[str]
) -> None:
    """Five times a fifth is left out. Bias below a tenth of the spread, spread within 5 %.

    Of the people left out 68 % lie within one spread and 95 % within two, give or take 2.5 %.
    """
    data = survey[sex]
    people = len(data["stature"])
    part = np.random.default_rng(1).integers(0, 5, people)
    off = np.empty(people)
    for left_out in range(5):
        kept = {name: column[part != left_out] for name, column in data.items()}
        out = {name: column[part == left_out] for name, column in data.items()}
        found, *_ = fitted(kept, length, names)
        line = np.column_stack([np.ones(len(out["stature"])), *(out[name] for name in names)])
        off[part == left_out] = measured(out, length) - line @ found
    spread = body_length(sex, length, given).spread
    assert abs(off.mean()) < spread / 10.0
    assert off.std() == pytest.approx(spread, rel=0.05)
    assert np.mean(np.abs(off) < spread) == pytest.approx(0.683, abs=0.025)
    assert np.mean(np.abs(off) < 2.0 * spread) == pytest.approx(0.954, abs=0.025)


def persons(data: Data, people: People | None, *, readings: bool) -> Person:
    """All of them as one batch."""
    sitting = {"knee_height": data["kneeheightsitting"], "buttock_knee": data["buttockkneelength"]}
    return Person(
        stature=data["stature"],
        inside_leg=data["crotchheight"],
        people=people,
        foot_length=data["footlength"] if readings else np.nan,
        **(sitting if readings else {}),
    )


@pytest.mark.parametrize("readings", [False, True], ids=["by stature and leg", "by readings"])
@pytest.mark.parametrize("sex", SEXES)
def test_the_sample_is_met_as_the_spread_promises(
    sample: dict[Sex, Data], sex: Sex, *, readings: bool
) -> None:
    """Fifty people: the mean within 3 standard errors, two thirds and all but a few within ±."""
    data = sample[sex]
    who = persons(data, "men" if sex == "male" else "women", readings=readings)
    lengths, spread = body(who), body_spread(who)
    for name, length, link in (("shank", "shank", 1.0), ("thigh", "thigh", THIGH_LINK)):
        truth = measured(data, length) * link
        off = (truth - np.asarray(getattr(lengths, name))) / np.asarray(getattr(spread, name))
        assert abs(off.mean()) < 3.0 / np.sqrt(len(off))
        assert 0.5 < np.mean(np.abs(off) < 1.0) < 0.9
        assert np.mean(np.abs(off) < 2.0) > 0.85


def test_readings_on_the_person_narrow_the_lower_leg_and_hardly_the_thigh(
    sample: dict[Sex, Data],
) -> None:
    """As the sample shows and as the ± says: a thigh is guessed badly whatever is measured."""
    data = sample["male"]
    by_stature = predicted("male", "shank", data["stature"])
    by_reading = predicted("male", "shank", data["stature"], np.nan, data["kneeheightsitting"])
    truth = measured(data, "shank")
    assert np.std(truth - by_reading.value) < 0.92 * np.std(truth - by_stature.value)
    assert np.mean(by_reading.spread) < 0.8 * np.mean(by_stature.spread)
    thigh = predicted("male", "thigh", data["stature"])
    better = predicted("male", "thigh", data["stature"], np.nan, data["buttockkneelength"])
    assert 0.94 < np.mean(better.spread) / np.mean(thigh.spread) < 1.0


def test_somebody_of_unknown_sex_is_met_within_a_wider_spread(sample: dict[Sex, Data]) -> None:
    """Both halves of the sample together, as `mixed`: the ± counts how far the sexes differ."""
    offs = []
    for sex in SEXES:
        data = sample[sex]
        who = persons(data, "mixed", readings=False)
        found = expected("mixed", "shank", who)
        offs.append((measured(data, "shank") - found.value) / found.spread)
    off = np.concatenate(offs)
    assert abs(off.mean()) < 0.3
    assert 0.55 < np.mean(np.abs(off) < 1.0) < 0.85
    assert np.mean(np.abs(off) < 2.0) > 0.9
