"""ANSUR II, body measurements of 4 082 men and 1 986 women (NATICK/TR-15/007, 2014).

The expected lines were computed from the survey's public data by a separate least-squares
script. Strength: derived from read data; intercepts to 0.05 mm, slopes to 5e-5, spreads to
0.02 mm, share explained to 5e-4, predictions to 0.1 mm.
"""

from dataclasses import dataclass

import numpy as np
import pytest

from pedalwright.driver import predicted
from pedalwright.driver.formulas.body import survey_prediction
from pedalwright.driver.population import ONE, TWO, Sex, widest_spread
from pedalwright.shelf.body_lengths import BodyLength, body_length


@dataclass(frozen=True)
class Line:
    """A regression line; the slope on the inside leg is 0 where it is not given."""

    intercept: float
    per_stature: float
    per_inside_leg: float
    spread: float
    determination: float

    def agrees(self, row: BodyLength) -> None:
        assert row.intercept == pytest.approx(self.intercept, abs=0.05)
        assert row.per_stature == pytest.approx(self.per_stature, abs=5e-5)
        assert row.per_inside_leg == pytest.approx(self.per_inside_leg, abs=5e-5)
        assert row.spread == pytest.approx(self.spread, abs=0.02)
        assert row.determination == pytest.approx(self.determination, abs=5e-4)


@pytest.mark.parametrize(
    ("sex", "length", "one", "two"),
    [
        pytest.param("male", "knee height sitting",
                     Line(-83.823445, 0.363269, 0, 12.684531, 0.794033),
                     Line(-27.144408, 0.176157, 0.321457, 10.099727, 0.869454), id="AR-M knee"),
        pytest.param("male", "buttock to knee",
                     Line(-9.029181, 0.357008, 0, 18.352428, 0.640118),
                     Line(43.347263, 0.1841, 0.297055, 16.928367, 0.693877), id="AR-M buttock"),
        pytest.param("male", "foot",
                     Line(30.133685, 0.137252, 0, 9.119961, 0.515644),
                     Line(43.651746, 0.092626, 0.076668, 8.935425, 0.535161), id="AR-M foot"),
        pytest.param("male", "shank",
                     Line(-98.125324, 0.294314, 0, 14.023953, 0.674289),
                     Line(-28.97877, 0.066043, 0.392167, 10.440759, 0.819511), id="AR-M shank"),
        pytest.param("male", "thigh",
                     Line(-76.790144, 0.276767, 0, 21.158065, 0.445763),
                     Line(-9.262221, 0.05384, 0.382987, 19.081973, 0.549304), id="AR-M thigh"),
        pytest.param("female", "knee height sitting",
                     Line(-90.901518, 0.369787, 0, 13.019794, 0.768862),
                     Line(-19.935919, 0.135853, 0.396244, 9.068261, 0.887929), id="AR-F knee"),
        pytest.param("female", "buttock to knee",
                     Line(-27.860184, 0.379776, 0, 21.648351, 0.559292),
                     Line(42.458342, 0.147975, 0.392631, 19.573101, 0.639918), id="AR-F buttock"),
        pytest.param("female", "foot",
                     Line(18.497638, 0.139883, 0, 8.604192, 0.521511),
                     Line(36.847201, 0.079395, 0.102457, 8.260038, 0.559245), id="AR-F foot"),
        pytest.param("female", "shank",
                     Line(-90.395082, 0.303096, 0, 17.112689, 0.564007),
                     Line(1.373088, 0.000588, 0.512398, 12.120083, 0.781408), id="AR-F shank"),
        pytest.param("female", "thigh",
                     Line(-42.512401, 0.259093, 0, 17.372431, 0.478412),
                     Line(0.464961, 0.117421, 0.239969, 16.428957, 0.533762), id="AR-F thigh"),
    ],
)  # fmt: skip
def test_the_shelf_has_the_lines_of_the_survey(sex: str, length: str, one: Line, two: Line) -> None:
    one.agrees(body_length(sex, length, ONE))
    two.agrees(body_length(sex, length, TWO))


MEANS = {
    "male": (1756.215, 68.551, {
        "knee height sitting": (554.156, 27.946),
        "buttock to knee": (617.953, 30.589),
        "foot": (271.178, 13.103),
        "ball of foot": (200.935, 10.471),
        "ankle height": (72.904, 5.6669),
    }),
    "female": (1628.473, 64.2, {
        "knee height sitting": (511.287, 27.074),
        "buttock to knee": (590.595, 32.602),
        "foot": (246.293, 12.436),
        "ball of foot": (182.051, 9.6419),
        "ankle height": (62.748, 5.1084),
    }),
}  # fmt: skip


@pytest.mark.parametrize("sex", MEANS)
def test_every_line_goes_through_the_means_and_leaves_the_spread_it_must(sex: Sex) -> None:
    """Means and spreads of the A cases: a least-squares line has no choice in either."""
    stature, stature_sd, lengths = MEANS[sex]
    for length, (mean, sd) in lengths.items():
        row = body_length(sex, length, ONE)
        assert predicted(sex, length, stature, np.nan).value == pytest.approx(mean, abs=0.05)
        assert row.per_stature * stature_sd / sd == pytest.approx(
            np.sqrt(row.determination), abs=5e-4
        )
        explained = 1 - row.determination
        lost = (row.people - 1) / (row.people - 2)
        assert row.spread == pytest.approx(sd * np.sqrt(explained * lost), abs=0.02)


@pytest.mark.parametrize(
    ("sex", "stature", "inside_leg", "expected"),
    [
        pytest.param("male", 1780, np.nan, {
            "shank": (425.753933, 14.023953),
            "thigh": (415.855682, 21.158065),
            "knee height sitting": (562.796068, 12.684531),
            "buttock to knee": (626.445032, 18.352428),
            "foot": (274.442947, 9.119961),
            "ball of foot": (203.353947, 7.813875),
        }, id="AP-M-1780"),
        pytest.param("female", 1620, np.nan, {
            "shank": (400.620093, 17.112689),
            "thigh": (377.219021, 17.372431),
            "knee height sitting": (508.153186, 13.019794),
            "buttock to knee": (587.376703, 21.648351),
            "foot": (245.107781, 8.604192),
            "ball of foot": (181.175636, 6.997655),
        }, id="AP-F-1620"),
        pytest.param("male", 1880, 920, {
            "shank": (455.976609, 10.440759),
            "thigh": (444.305148, 19.081973),
            "knee height sitting": (599.771597, 10.099727),
            "buttock to knee": (662.745184, 16.928367),
            "foot": (288.322876, 8.935425),
            "ball of foot": (213.677819, 7.598355),
        }, id="AP-M-1880-920"),
    ],
)  # fmt: skip
def test_predictions_for_one_driver(
    sex: Sex, stature: float, inside_leg: float, expected: dict[str, tuple[float, float]]
) -> None:
    for length, (value, spread) in expected.items():
        found = predicted(sex, length, stature, inside_leg)
        assert float(found.value) == pytest.approx(value, abs=0.1)
        assert float(found.spread) == pytest.approx(spread, abs=0.1)


def test_one_line_read_by_hand() -> None:
    """Shank of a man of 1880 mm with 920 mm of inside leg, added up on paper."""
    assert survey_prediction(-28.97877, 0.066043, 1880, 0.392167, 920) == pytest.approx(
        455.9767, abs=1e-3
    )


def test_a_batch_may_mix_people_with_and_without_an_inside_leg() -> None:
    both = predicted("male", "shank", np.array([1780.0, 1880.0]), np.array([np.nan, 920.0]))
    assert both.value == pytest.approx(np.array([425.753933, 455.976609]), abs=0.1)
    assert both.spread == pytest.approx(np.array([14.023953, 10.440759]), abs=0.02)


def test_the_wider_of_the_two_sexes_is_taken_for_somebody_unknown() -> None:
    assert widest_spread("thigh") == pytest.approx(21.158065, abs=0.02)
    assert widest_spread("shank") == pytest.approx(17.112689, abs=0.02)


#: Mean and standard deviation of the whole sample, by length.
STATURES = {"male": (1756.214601, 68.550788, 4082), "female": (1628.473313, 64.199512, 1986)}


@pytest.mark.parametrize(
    ("sex", "length", "mean", "deviation"),
    [
        pytest.param("male", "knee height sitting", 554.155561, 27.946155, id="A-M knee"),
        pytest.param("male", "buttock to knee", 617.953454, 30.588651, id="A-M buttock"),
        pytest.param("male", "foot", 271.178344, 13.102597, id="A-M foot"),
        pytest.param("male", "ball of foot", 200.935081, 10.470947, id="A-M ball"),
        pytest.param("male", "ankle height", 72.904459, 5.666911, id="A-M ankle"),
        pytest.param("female", "knee height sitting", 511.286506, 27.07441, id="A-F knee"),
        pytest.param("female", "buttock to knee", 590.594663, 32.60167, id="A-F buttock"),
        pytest.param("female", "foot", 246.293051, 12.435535, id="A-F foot"),
        pytest.param("female", "ball of foot", 182.05136, 9.64192, id="A-F ball"),
        pytest.param("female", "ankle height", 62.748238, 5.108403, id="A-F ankle"),
    ],
)
def test_a_line_goes_through_the_mean_and_explains_its_share_of_the_scatter(
    sex: str, length: str, mean: float, deviation: float
) -> None:
    """What least squares must do: the mean person has the mean length, to 0.05 mm."""
    stature, scatter, people = STATURES[sex]
    row = body_length(sex, length, ONE)
    assert row.intercept + row.per_stature * stature == pytest.approx(mean, abs=0.05)
    left = deviation * np.sqrt((1.0 - row.determination) * (people - 1) / (people - 2))
    assert row.spread == pytest.approx(left, abs=0.02)
    assert row.per_stature * scatter == pytest.approx(
        deviation * np.sqrt(row.determination), abs=0.02
    )
