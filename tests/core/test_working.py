"""Every formula leaves a step where somebody asked for the working, and only there."""

from collections.abc import Iterator

import numpy as np
import pytest

from pedalwright.core.units import MPa, N, Ratio, mm, mm2
from pedalwright.core.working import FORMULAS, Formula, formula, subject, unrecorded, working


def area(d: mm) -> mm2:
    """Area of a bore.

    More about it.
    """
    return np.pi / 4 * d**2


def pressure(F: N, A: mm2, share: Ratio = 1.0) -> MPa:
    """Pressure behind one piston."""
    return F * share / A


for rule in (area, pressure):
    rule.__module__ = "pedalwright.hydraulics.formulas"

AREA = Formula(area, "A", "geometry")
PRESSURE = Formula(pressure, "p", "Pascal")


@pytest.fixture
def register() -> Iterator[dict[str, Formula[...]]]:
    """The register, put back afterwards as it was."""
    before = dict(FORMULAS)
    yield FORMULAS
    FORMULAS.clear()
    FORMULAS.update(before)


def test_nobody_asks_nothing_is_kept() -> None:
    with working() as sheet:
        pass
    assert AREA(20.0) == pytest.approx(314.159, abs=0.001)
    assert sheet == []


def test_a_step_holds_what_went_in_and_what_came_out() -> None:
    with working() as sheet:
        value = PRESSURE(1000.0, A=200.0)
    (step,) = sheet
    assert step.formula is PRESSURE
    assert step.arguments == {"F": 1000.0, "A": 200.0, "share": 1.0}
    assert step.value == value == 5.0
    assert step.subject == ""


def test_steps_come_in_order_with_what_they_speak_of() -> None:
    with working() as sheet, subject("500 N"):
        with subject("front circuit"):
            PRESSURE(1000.0, AREA(20.0))
        with subject("rear circuit"):
            AREA(22.0)
    spoken = [(step.formula.symbol, step.subject) for step in sheet]
    assert spoken == [
        ("A", "500 N, front circuit"),
        ("p", "500 N, front circuit"),
        ("A", "500 N, rear circuit"),
    ]


def test_a_sweep_leaves_no_steps() -> None:
    with working() as sheet:
        with unrecorded():
            AREA(20.0)
        AREA(22.0)
    assert [step.arguments for step in sheet] == [{"d": 22.0}]


def test_one_sheet_inside_another_keeps_its_own() -> None:
    with working() as outer:
        AREA(1.0)
        with working() as inner:
            AREA(2.0)
        AREA(3.0)
    assert [step.arguments["d"] for step in outer] == [1.0, 3.0]
    assert [step.arguments["d"] for step in inner] == [2.0]


def test_sheets_and_subjects_are_put_back_after_a_fault() -> None:
    with pytest.raises(ZeroDivisionError), working() as broken, subject("front circuit"):
        PRESSURE(1.0, 0.0)
    assert broken == []
    with working() as sheet:
        AREA(1.0)
    assert sheet[0].subject == ""


def test_a_formula_knows_its_units_meaning_and_name() -> None:
    assert PRESSURE.units == {"F": "N", "A": "mm2", "share": "1", "return": "MPa"}
    assert AREA.meaning == "Area of a bore."
    assert (AREA.room, AREA.name) == ("hydraulics", "hydraulics.area")


def test_the_register_takes_a_name_once(register: dict[str, Formula[...]]) -> None:
    made = formula("A", source="geometry")(area)
    assert register["hydraulics.area"] is made
    assert not made.empirical
    with pytest.raises(AssertionError, match=r"two formulas are called hydraulics\.area"):
        formula("A", source="geometry")(area)
