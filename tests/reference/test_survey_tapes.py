"""Points from three to five tapes, in a plane and in space.

Strength: independent. The numbers were solved twice outside this project, by the method of
Levenberg and Marquardt and by that of Gauss and Newton, with the same result to 0.01 µm. E-7 is
the distance intersection of a textbook (Ghilani, Adjustment Computations, chapter on
trilateration; in feet), its inputs from memory; they close within 0.08 ft in 6000.
"""

from typing import NamedTuple

import numpy as np
import pytest

from pedalwright.core.points import Point
from pedalwright.survey import Adjustment, Distance, Station, adjust
from pedalwright.survey.formulas import dilution, semi_major, semi_minor
from pedalwright.survey.net import Net, net
from pedalwright.survey.start import start
from pedalwright.survey.suspects import normalised_of


class Case(NamedTuple):
    marks: tuple[tuple[float, ...], ...]
    tapes: tuple[float, ...]
    point: tuple[float, ...]
    residuals: tuple[float, ...]
    dilution: float
    sigmas: tuple[float, ...]
    #: Found over expected.
    unit_weight: float
    redundancies: tuple[float, ...]
    normalised: tuple[float, ...]
    ellipse: tuple[float, float] | None = None
    sigma: float = 1.0


FLAT = ((0.0, 0.0), (600.0, 0.0), (100.0, 450.0))
CASES = {
    "E-1": Case(
        FLAT,
        (436.0, 360.7, 314.0),
        (349.9931, 260.0017),
        (0.0, -0.0002, -0.0002),
        1.246621,
        (0.8019, 0.9545),
        0.000265,
        (0.0124, 0.4779, 0.5097),
        (0.000265, 0.000265, 0.000265),
        (1.034347, 0.695837),
    ),
    "E-2": Case(
        FLAT,
        (522.8, 357.9, 350.4),
        (421.0974, 309.9058),
        (0.0428, -0.0624, -0.0717),
        1.198299,
        (0.777, 0.9123),
        0.10425,
        (0.1688, 0.3584, 0.4728),
        (0.10425, 0.10425, 0.10425),
        (0.953867, 0.725298),
    ),
    # the third tape is 10 mm wrong; with four marks in a rectangle its opposite looks as bad
    "E-3": Case(
        ((0.0, 0.0), (650.0, 0.0), (650.0, 480.0), (0.0, 480.0)),
        (378.5, 515.4, 467.3, 292.4),
        (226.5049, 296.8497),
        (-5.1045, 1.7729, -5.8977, -1.1123),
        1.032581,
        (0.6353, 0.814),
        5.710453,
        (0.4038, 0.5392, 0.5337, 0.5233),
        (8.032574, 2.414446, 8.07281, 1.537691),
        (0.816072, 0.632653),
    ),
    "E-4": Case(
        ((0.0, 0.0, 0.0), (700.0, 0.0, 40.0), (650.0, 420.0, 0.0), (50.0, 400.0, 310.0)),
        (493.4, 536.0, 525.5, 314.3),
        (300.1285, 209.7638, 330.2703),
        (-0.2911, 0.8006, -0.4402, 0.6047),
        1.656117,
        (0.7361, 1.1147, 0.9789),
        1.133639,
        (0.0659, 0.4988, 0.1508, 0.2845),
        (1.133639, 1.133639, 1.133639, 1.133639),
    ),
    "E-5": Case(
        ((0.0, 0.0, 0.0), (600.0, 0.0, 0.0), (80.0, 500.0, 0.0)),
        (454.9, 441.5, 483.4),
        (310.0098, 180.0569, 280.0133),
        (0.0, 0.0, 0.0),
        1.922619,
        (1.0565, 1.2531, 1.0049),
        np.nan,
        (0.0, 0.0, 0.0),
        (np.nan, np.nan, np.nan),
    ),
    # hooks bunched in a short line, the point far off its end
    "E-6": Case(
        ((0.0, 0.0), (150.0, 4.0), (300.0, 0.0)),
        (702.6, 552.8, 404.5),
        (699.9792, 60.2287),
        (-0.0345, 0.0461, -0.0116),
        21.382142,
        (2.4648, 21.2396),
        0.058683,
        (0.3446, 0.6161, 0.0393),
        (0.058683, 0.058683, 0.058683),
        (21.37434, 0.577561),
    ),
    "E-7": Case(
        ((865.4, 4527.15), (2432.55, 2047.25), (2865.22, 27.15)),
        (6049.0, 4736.83, 5446.49),
        (6861.3168, 3727.8186),
        (-0.0374, 0.0768, -0.0474),
        1.767732,
        (0.0794, 0.1579),
        0.976594,
        (0.1464, 0.6183, 0.2352),
        (0.976594, 0.976594, 0.976594),
        (0.165695, 0.061595),
        0.1,
    ),
    # the third tape is 10 mm wrong, and five tapes show it
    "E-8": Case(
        ((0.0, 0.0), (700.0, 30.0), (620.0, 520.0), (300.0, 600.0), (-40.0, 410.0)),
        (356.5, 460.4, 463.7, 381.0, 372.0),
        (277.7004, 217.0336),
        (-4.0498, 1.4642, -6.5812, 2.615, -0.2883),
        0.902705,
        (0.6054, 0.6696),
        4.788125,
        (0.6381, 0.5929, 0.634, 0.5561, 0.5788),
        (5.069679, 1.901572, 8.265134, 3.506637, 0.378975),
        (0.680064, 0.593623),
    ),
}
EACH = pytest.mark.parametrize("case", CASES.values(), ids=CASES.keys())


def stations(case: Case) -> list[Station]:
    """The hooks, held, and P; in a plane its height is held too, and it lies to the right."""
    flat = len(case.marks[0]) == 2
    places = [Point(*mark, 0.0) if flat else Point(*mark) for mark in case.marks]
    hooks = [Station(name="ABCDE"[i], at=at) for i, at in enumerate(places)]
    nan = np.nan
    side = Point(0.0, 1.0, 0.0) if flat else Point(0.0, 0.0, 1.0)
    return [*hooks, Station(name="P", at=Point(nan, nan, 0.0 if flat else nan), side=side)]


def sights(case: Case) -> list[Distance]:
    return [
        Distance(hook="ABCDE"[i], to="P", length=length, sigma=case.sigma)
        for i, length in enumerate(case.tapes)
    ]


def solved(case: Case) -> tuple[Net, np.ndarray]:
    """All tapes fitted, whether or not one of them is wrong."""
    made = net(stations(case), sights(case))
    begun = start(stations(case), sights(case))
    return made, made.fitted(begun.at, np.ones(len(case.tapes), dtype=bool))


@EACH
def test_the_point_and_its_residuals(case: Case) -> None:
    made, at = solved(case)
    assert at[-1, : len(case.point)] == pytest.approx(case.point, abs=1e-4)
    misfit = made.equations.predicted(at) - made.equations.measured
    assert misfit == pytest.approx(case.residuals, abs=6e-5)


@EACH
def test_how_well_it_is_known(case: Case) -> None:
    made, at = solved(case)
    residues = made.residues(at, np.ones(len(case.tapes), dtype=bool))
    cofactor = residues.cofactor
    assert np.sqrt(np.diag(cofactor)) == pytest.approx(case.sigmas, abs=6e-5)
    squares = [*np.diag(cofactor) / case.sigma**2, 0.0][:3]
    assert dilution(*squares) == pytest.approx(case.dilution, abs=1e-6)
    assert residues.share == pytest.approx(case.redundancies, abs=6e-5)
    if case.ellipse is not None:
        xx, yy, xy = cofactor[0, 0], cofactor[1, 1], cofactor[0, 1]
        axes = (semi_major(xx, yy, xy), semi_minor(xx, yy, xy))
        assert axes == pytest.approx(case.ellipse, abs=1e-5)


@pytest.mark.parametrize(
    ("name", "covariances"),
    [
        ("E-1", (0.2604,)),
        ("E-2", (0.1542,)),
        ("E-3", (0.0299,)),
        ("E-4", (0.118546, 0.151162, -0.186069)),
        ("E-5", (0.5112, -0.3329, -0.2947)),
        ("E-6", (-50.8756,)),
        ("E-7", (-0.0073,)),
        ("E-8", (-0.0368,)),
    ],
)
def test_how_its_coordinates_err_together(name: str, covariances: tuple[float, ...]) -> None:
    made, at = solved(CASES[name])
    cofactor = made.residues(at, np.ones(len(CASES[name].tapes), dtype=bool)).cofactor
    found = cofactor[np.triu_indices(len(cofactor), 1)]
    assert found == pytest.approx(covariances, abs=6e-5)


@EACH
def test_what_the_tapes_say_of_each_other(case: Case) -> None:
    made, at = solved(case)
    every = np.ones(len(case.tapes), dtype=bool)
    freedom = len(case.tapes) - len(case.point)
    if freedom:
        weight = np.sqrt(made.squares(at, every) / freedom)
        assert weight == pytest.approx(case.unit_weight, rel=0.02)
    normalised = normalised_of(made.residues(at, every), every)
    assert normalised == pytest.approx(case.normalised, rel=2e-3, nan_ok=True)


def adjusted(name: str) -> Adjustment:
    return adjust(stations(CASES[name]), sights(CASES[name]))


def test_four_marks_in_a_rectangle_show_an_error_but_not_whose() -> None:
    (suspicion,) = adjusted("E-3").suspicions
    assert suspicion.likely == ("C–P", "A–P")
    assert not suspicion.certain


def test_a_fifth_mark_names_the_wrong_tape() -> None:
    found = adjusted("E-8")
    (suspicion,) = found.suspicions
    assert suspicion.likely == ("C–P",)
    assert suspicion.size == pytest.approx(10.0, abs=0.5)
    assert suspicion.cause == "10 mm too many"


@pytest.mark.parametrize("name", ["E-1", "E-2", "E-4", "E-5", "E-6", "E-7"])
def test_nothing_else_is_blamed(name: str) -> None:
    found = adjusted(name)
    assert found.suspicions == found.two_places == found.loose == ()
    point = found.mark("P")
    assert point is not None
    assert point.dilution == pytest.approx(CASES[name].dilution, abs=1e-6)


def test_hooks_in_a_plane_ask_for_the_side() -> None:
    case = CASES["E-5"]
    marks = [*stations(case)[:-1], Station(name="P")]
    (two,) = adjust(marks, sights(case)).two_places
    assert {round(two.here.z, 3), round(two.there.z, 3)} == {280.013, -280.013}
