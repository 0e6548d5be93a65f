"""A mark from tapes to known hooks: where it is, how well, and what the tapes say of each other."""

import numpy as np
import pytest
from survey.nets import HOOKS, TRUE, adjusted, held, place, tapes

from pedalwright.core.points import UP, Point
from pedalwright.survey import Distance, Slope, Station, Step, adjust


def test_tapes_without_error_give_the_place() -> None:
    found = adjusted((0.0,) * 6)
    assert place(found) == pytest.approx(TRUE, abs=1e-4)
    assert found.freedom == 3
    assert found.unit_weight == pytest.approx(0.0, abs=1e-4)
    assert found.suspicions == ()


def test_chance_errors_are_shared_out_and_nobody_is_blamed() -> None:
    found = adjusted((0.8, -1.2, 0.5, -0.4, 1.1, -0.9))
    assert np.linalg.norm(place(found) - TRUE) < 2.0
    assert 0.0 < found.unit_weight < found.unit_weight_bound
    assert found.suspicions == ()


def test_one_wrong_tape_of_six_is_named_and_set_aside() -> None:
    found = adjusted((0.3, -0.4, 14.0, 0.2, -0.3, 0.4))
    (suspicion,) = found.suspicions
    assert suspicion.certain
    assert suspicion.likely == ("C–P",)
    assert suspicion.mark == "P"
    assert set(suspicion.among) == {f"{name}–P" for name in HOOKS}
    assert suspicion.size == pytest.approx(14.0, abs=2.0)
    assert suspicion.size > suspicion.bound
    assert suspicion.read - suspicion.expected == pytest.approx(14.0, abs=2.0)
    assert np.linalg.norm(place(found) - TRUE) < 2.0
    aside = [checked.sight.about for checked in found.sights if checked.set_aside]
    assert aside == ["C–P"]


def test_with_four_tapes_an_error_shows_but_not_whose() -> None:
    found = adjusted((0.0, 14.0, 0.0, 0.0), "ABCE")
    (suspicion,) = found.suspicions
    assert not suspicion.certain
    assert set(suspicion.likely) == {"A–P", "B–P", "C–P", "E–P"}
    assert [checked.set_aside for checked in found.sights] == [False] * 4
    known = found.mark("P")
    assert known is not None
    assert known.sigma.x > 1.0, "what nobody can tell makes the ± wider"


def test_three_tapes_check_nothing() -> None:
    found = adjusted((0.0, 14.0, 0.0), "ABE")
    assert found.freedom == 0
    assert np.isnan(found.unit_weight)
    assert all(np.isnan(checked.normalised) for checked in found.sights)


@pytest.mark.parametrize(
    ("slip", "says"),
    [
        (100.0, "100 mm too many"),
        (-10.0, "10 mm too few"),
        (25.4, "an inch too many"),
    ],
)
def test_a_usual_slip_is_recognised(slip: float, says: str) -> None:
    (suspicion,) = adjusted((0.3, -0.4, slip, 0.2, -0.3, 0.4)).suspicions
    assert suspicion.cause == says


def test_digits_read_the_wrong_way_round_are_recognised() -> None:
    readings = tapes()
    assert readings[2].length == pytest.approx(473.4, abs=0.1)
    for read, says in ((437.0, "digits swapped: 473"), (455.0, "")):
        readings[2] = Distance(hook="C", to="P", length=read, sigma=1.0)
        (suspicion,) = adjust([*held(), Station(name="P")], readings).suspicions
        assert suspicion.likely == ("C–P",)
        assert suspicion.cause == says


def test_a_tape_hooked_on_another_mark_is_recognised() -> None:
    readings = tapes()
    from_d = readings[3].length
    readings[2] = Distance(hook="C", to="P", length=from_d + 0.4, sigma=1.0)
    (suspicion,) = adjust([*held(), Station(name="P")], readings).suspicions
    assert suspicion.likely == ("C–P",)
    assert suspicion.cause == "hooked on D"


def test_an_offset_on_the_wrong_side_is_recognised() -> None:
    offset = Step(mark="P", base="", axis="y", length=-250.0, sigma=1.0)
    found = adjust([*held(), Station(name="P")], [*tapes(), offset])
    (suspicion,) = found.suspicions
    assert suspicion.likely == ("P right of the datum",)
    assert suspicion.cause == "left and right swapped"
    assert place(found) == pytest.approx(TRUE, abs=0.5)


def test_marks_without_a_place_are_named_with_what_they_have() -> None:
    found = adjust(
        [*held(), Station(name="P"), Station(name="Q"), Station(name="R")],
        [*tapes(names="AB", errors=(0.0, 0.0)), Distance(hook="Q", to="R", length=50.0, sigma=1.0)],
    )
    assert {mark.name for mark in found.marks} == set(HOOKS)
    assert [(loose.name, loose.sights, loose.needs) for loose in found.loose] == [
        ("P", ("A–P", "B–P"), 3),
        ("Q", ("Q–R",), 3),
        ("R", ("Q–R",), 3),
    ]


def test_hooks_in_a_plane_leave_two_places() -> None:
    flat = [Station(name=n, at=Point(x, y, 0.0)) for n, (x, y, _) in HOOKS.items() if n in "ABCD"]
    readings = [
        Distance(
            hook=station.name,
            to="P",
            length=float(np.linalg.norm(np.array([station.at.x, station.at.y, 0.0]) - TRUE)),
            sigma=1.0,
        )
        for station in flat
    ]
    (two,) = adjust([*flat, Station(name="P")], readings).two_places
    assert two.name == "P"
    assert {round(two.here.z), round(two.there.z)} == {180, -180}
    for side, height in ((UP, 180.0), (-UP, -180.0)):
        found = adjust([*flat, Station(name="P", side=side)], readings)
        assert found.two_places == ()
        assert place(found) == pytest.approx([320.0, 250.0, height], abs=1e-3)
    level = Step(mark="P", base="A", axis="z", length=-181.0, sigma=1.0)
    below = adjust([*flat, Station(name="P")], [*readings, level])
    assert below.two_places == ()
    assert place(below)[2] == pytest.approx(-180.5, abs=0.5), "what was levelled decides"
    phone = Slope(foot="A", head="P", angle=float(np.arctan2(180.0, 406.1)), sigma=0.004)
    above = adjust([*flat, Station(name="P")], [*readings, phone])
    assert above.two_places == ()
    assert place(above)[2] == pytest.approx(180.0, abs=0.5), "so does a phone's angle"


def test_marks_tied_to_each_other_are_mirrored_together_or_not_at_all() -> None:
    flat = [Station(name=n, at=Point(x, y, 0.0)) for n, (x, y, _) in HOOKS.items() if n in "ABCD"]
    true = {"P": TRUE, "Q": np.array([420.0, 300.0, 120.0])}
    known = {station.name: np.array([station.at.x, station.at.y, 0.0]) for station in flat} | true
    readings = [
        Distance(hook=hook, to=to, length=float(np.linalg.norm(known[hook] - known[to])), sigma=1.0)
        for hook, to in [*((h.name, t) for h in flat for t in "PQ"), ("P", "Q")]
    ]
    marks = [*flat, Station(name="P"), Station(name="Q")]
    assert len(adjust(marks, readings).two_places) == 1
    sided = [*flat, Station(name="P"), Station(name="Q", side=UP)]
    found = adjust(sided, readings)
    assert found.two_places == ()
    assert place(found, "P") == pytest.approx(true["P"], abs=1e-3)
    assert place(found, "Q") == pytest.approx(true["Q"], abs=1e-3)


def test_marks_find_each_other_from_what_the_datum_holds() -> None:
    """The net of the hooks itself: one place, two coordinates of a second, one of a third."""
    at = {name: np.array(place) for name, place in HOOKS.items()}
    nan = np.nan
    marks = [
        Station(name="A", at=Point(0.0, 0.0, 0.0)),
        Station(name="B", at=Point(nan, 0.0, 0.0), side=Point(1.0, 0.0, 0.0)),
        Station(name="D", at=Point(nan, nan, 0.0), side=Point(0.0, 1.0, 0.0)),
        *(Station(name=name, side=UP) for name in "CEF"),
    ]
    names = "ABDCEF"
    readings = [
        Distance(hook=a, to=b, length=float(np.linalg.norm(at[a] - at[b])), sigma=1.0)
        for i, a in enumerate(names)
        for b in names[i + 1 :]
    ]
    found = adjust(marks, readings)
    for name in names:
        assert place(found, name) == pytest.approx(at[name], abs=1e-3), name
    assert found.freedom == 15 - 12
    held_a, held_b = found.mark("A"), found.mark("B")
    assert held_a is not None
    assert held_b is not None
    assert held_a.held
    assert held_b.sigma.x > 0.0
    assert held_b.sigma.y == held_b.sigma.z == 0.0


def test_a_mark_that_its_tape_does_not_reach_is_known_to_be_unknown() -> None:
    nan = np.nan
    marks = [
        Station(name="A", at=Point(0.0, 0.0, 0.0)),
        Station(name="B", at=Point(400.0, nan, 0.0), side=Point(0.0, 1.0, 0.0)),
    ]
    found = adjust(marks, [Distance(hook="A", to="B", length=331.0, sigma=1.0)]).mark("B")
    assert found is not None
    assert found.sigma.y > 1000.0
