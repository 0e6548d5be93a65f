"""Laws of a net of marks: the hand of the car, the place of the datum and the order of the
tapes change nothing; reading again halves the variance; a line and a face move with their marks.
"""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from survey.nets import TRUE, held, place, tapes

from pedalwright.core.points import UP, Point
from pedalwright.survey import (
    Adjustment,
    Distance,
    Sight,
    Slope,
    Station,
    Step,
    adjust,
    fitted_face,
    fitted_line,
)

ERRORS = st.lists(st.floats(-1.5, 1.5), min_size=6, max_size=6)
SHIFT = st.tuples(*[st.floats(-2000.0, 2000.0)] * 3)


def net(errors: list[float]) -> tuple[list[Station], list[Sight]]:
    """Tapes, a height above a hook, a plumb line and an angle; all consistent but for chance."""
    others: list[Sight] = [
        Step(mark="P", base="A", axis="z", length=float(TRUE[2]) + 0.4, sigma=1.0),
        Step(mark="P", base="D", axis="y", length=float(TRUE[1]) - 545.0 - 0.6, sigma=1.0),
        Slope(foot="A", head="P", angle=float(np.arctan2(180.0, np.hypot(320, 250))), sigma=0.004),
    ]
    return [*held(), Station(name="P")], [*tapes(errors=errors), *others]


def figures(found: Adjustment) -> list[float]:
    """What must not change when the car is only looked at differently."""
    point = found.mark("P")
    assert point is not None
    checks = [(c.redundancy, c.normalised) for c in found.sights]
    volume = float(np.linalg.det(point.covariance))
    return [found.unit_weight, point.dilution, volume, *(x for pair in checks for x in pair)]


@given(ERRORS)
def test_the_other_hand(errors: list[float]) -> None:
    stations, sights = net(errors)
    found = adjust(stations, sights)
    other = adjust(
        [replace(s, at=s.at.mirrored()) for s in stations],
        [
            replace(s, length=-s.length) if isinstance(s, Step) and s.axis == "y" else s
            for s in sights
        ],
    )
    assert place(other) == pytest.approx(place(found) * [1.0, -1.0, 1.0], abs=1e-4)
    assert figures(other) == pytest.approx(figures(found), rel=1e-5, abs=1e-7)


@given(ERRORS, SHIFT)
def test_a_moved_datum_moves_the_coordinates_and_nothing_else(
    errors: list[float], shift: tuple[float, float, float]
) -> None:
    stations, sights = net(errors)
    found = adjust(stations, sights)
    moved = adjust([replace(s, at=s.at + Point(*shift)) for s in stations], sights)
    assert place(moved) == pytest.approx(place(found) + shift, abs=1e-4)
    assert figures(moved) == pytest.approx(figures(found), rel=1e-5, abs=1e-7)


@given(ERRORS, st.floats(-3.1, 3.1))
def test_a_datum_turned_about_the_plumb_line(errors: list[float], angle: float) -> None:
    stations, sights = net(errors)
    upright = [s for s in sights if not (isinstance(s, Step) and s.axis == "y")]
    found = adjust(stations, upright)
    turned = adjust([replace(s, at=s.at.turned(UP, angle)) for s in stations], upright)
    there = Point(*place(found)).turned(UP, angle)
    assert place(turned) == pytest.approx([there.x, there.y, there.z], abs=1e-4)
    assert figures(turned) == pytest.approx(figures(found), rel=1e-5, abs=1e-7)


@given(ERRORS, st.permutations(range(9)), st.permutations(range(7)))
def test_the_order_of_tapes_and_marks_does_not_matter(
    errors: list[float], order: list[int], marks: list[int]
) -> None:
    stations, sights = net(errors)
    found = adjust(stations, sights)
    other = adjust([stations[i] for i in marks], [sights[i] for i in order])
    assert place(other) == pytest.approx(place(found), abs=1e-4)
    assert sorted(c.normalised for c in other.sights) == pytest.approx(
        sorted(c.normalised for c in found.sights), rel=1e-5, abs=1e-7
    )


@given(ERRORS)
def test_reading_everything_again_halves_the_variance(errors: list[float]) -> None:
    stations, sights = net(errors)
    once, twice = adjust(stations, sights), adjust(stations, [*sights, *sights])
    first, second = once.mark("P"), twice.mark("P")
    assert first is not None
    assert second is not None
    assert place(twice) == pytest.approx(place(once), abs=1e-4)
    assert second.covariance == pytest.approx(first.covariance / 2.0, rel=1e-6, abs=1e-9)


@given(ERRORS)
def test_redundancies_add_up_to_what_is_spare(errors: list[float]) -> None:
    found = adjust(*net(errors))
    assert sum(c.redundancy for c in found.sights) == pytest.approx(found.freedom, abs=1e-6)


@given(ERRORS, st.integers(0, 5))
def test_the_gain_says_where_the_mark_goes_when_a_reading_changes(
    errors: list[float], row: int
) -> None:
    stations, sights = net(errors)
    found = adjust(stations, sights)
    tape = sights[row]
    assert isinstance(tape, Distance)
    nudged = [*sights]
    nudged[row] = replace(tape, length=tape.length + 0.01)
    mark = [m.name for m in found.marks].index("P")
    gain = found.gain[3 * mark : 3 * mark + 3, row]
    moved = (place(adjust(stations, nudged)) - place(found)) / 0.01
    assert moved == pytest.approx(gain, abs=5e-3), "residuals bend it by a few parts in a thousand"


@given(SHIFT, st.lists(st.floats(-4.0, 4.0), min_size=4, max_size=4))
def test_a_face_moves_with_its_marks(shift: tuple[float, float, float], off: list[float]) -> None:
    marks = np.array([[0.0, 0, 0], [0, 500, 0], [0, 0, 400], [0, 500, 400]])
    marks[:, 0] += off
    small = np.eye(12)
    looks = Point(1.0, 0.0, 0.0)
    here, there = (fitted_face(m, looks, small) for m in (marks, marks + np.array(shift)))
    assert there.off == pytest.approx(here.off, abs=1e-6)
    assert there.plane.normal.dot(here.plane.normal) == pytest.approx(1.0, abs=1e-12)
    assert there.plane.offset - here.plane.offset == pytest.approx(
        here.plane.normal.dot(Point(*shift)), abs=1e-6
    )
    assert there.sigma == pytest.approx(here.sigma, rel=1e-6)


@given(st.floats(-1.0, 1.0), st.floats(-3.0, 3.0))
def test_three_marks_in_a_line(middle: float, out: float) -> None:
    marks = np.array([[0.0, 0, 0], [300 + 200 * middle, 0, out], [600, 0, 0]])
    line = fitted_line(marks, np.eye(9))
    assert max(line.off) <= abs(out) + 1e-9
    assert line.start.x == pytest.approx(0.0, abs=0.1)
    assert line.end.x == pytest.approx(600.0, abs=0.1)
    assert (line.end - line.start).length() == pytest.approx(600.0, abs=0.2)


def test_the_mean_height_of_a_face_is_as_good_as_the_mean_of_its_marks() -> None:
    marks = np.array([[0.0, 0, 0], [0, 500, 0], [0, 0, 400], [0, 500, 400]])
    face = fitted_face(marks, Point(1.0, 0.0, 0.0), np.eye(12))
    assert face.sigma == pytest.approx(0.5, rel=1e-6)
    assert face.tilt_sigma == pytest.approx(1.0 / 400.0, rel=1e-3)
