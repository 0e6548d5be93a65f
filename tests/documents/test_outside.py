"""Numbers in the units of whoever reads them; pint is the judge of the units."""

import math
import re

import numpy as np
import pint
import pytest

from pedalwright.brakes.formulas import GRAVITY
from pedalwright.documents.outside import INCH, METRIC, outside

REGISTRY = pint.UnitRegistry()
NAMES = {"g": f"{GRAVITY} m/s**2", "°F": "delta_degF", "K": "delta_degC"}


def by_pint(name: str) -> pint.Quantity[float]:
    """One of a unit, by its name in the house."""
    spelled = re.sub(r"([a-z])([2-4])", r"\1**\2", name)
    return REGISTRY.parse_expression(NAMES.get(name, spelled).replace("in", "inch"))


@pytest.mark.parametrize("unit", list(INCH.factors))
def test_every_unit_shown_is_worth_what_pint_says(unit: str) -> None:
    shown, factor = INCH.factors[unit]
    there = by_pint(unit).to(by_pint(shown).units)
    assert factor == pytest.approx(there.magnitude / by_pint(shown).magnitude, rel=1e-12)


def test_angles_are_in_degrees_for_everyone() -> None:
    assert METRIC.said(math.pi / 6, "rad") == INCH.said(math.pi / 6, "rad") == "30.0°"


@pytest.mark.parametrize(
    ("value", "unit", "metric", "inch"),
    [
        (500.0, "N", "500 N", "112.4 lbf"),
        (44.45, "mm", "44.45 mm", "1.75 in"),
        (0.02977, "mm", "0.02977 mm", "0.0012 in"),
        (50.0, "mm", "50 mm", "1.969 in"),
        (4.81, "MPa", "4.81 MPa", "697.6 psi"),
        (0.8 * GRAVITY, "m/s2", "7.848 m/s²", "0.8 g"),
        (395.4, "N*mm", "395.4 N·mm", "3.5 lbf·in"),
        (100.0, "K", "100 K", "180 °F"),
        (0.25, "1", "0.25", "0.25"),
        (math.nan, "mm", "no value", "no value"),
        (math.inf, "mm", "∞ mm", "∞ in"),
    ],
)
def test_said(value: float, unit: str, metric: str, inch: str) -> None:
    assert METRIC.said(value, unit) == metric
    assert INCH.said(value, unit) == inch


@pytest.mark.parametrize(
    ("text", "inch"),
    [
        ("no more than 5 mm for 500 N", "no more than 5 mm (0.197 in) for 500 N (112 lbf)"),
        ("A full stop (6.43 m/s²) takes", "A full stop (6.43 m/s², 0.655 g) takes"),
        ("brake, 2000 N", "brake, 2000 N (450 lbf)"),
        ("60 N·mm, 3 N/mm, 15 mm²", "60 N·mm, 3 N/mm, 15 mm²"),
        ("within 5 degrees, with 15 % in hand", "within 5 degrees, with 15 % in hand"),
    ],
)
def test_a_rules_own_figure_stays_and_is_followed_by_the_readers(text: str, inch: str) -> None:
    assert METRIC.prose(text) == text
    assert INCH.prose(text) == inch


@pytest.mark.parametrize(
    ("shown", "unit", "inch"),
    [
        ("50 mm", "mm", "50 mm = 1.969 in"),
        ("1 3/4 in = 44.45 mm", "mm", "1 3/4 in = 44.45 mm"),
        ("235 MPa", "MPa", "235 MPa = 34\u202f084 psi"),
        ("not measured", "mm", "not measured"),
        ("0 mm", "mm", "0 mm"),
        ("14°", "rad", "14°"),
    ],
)
def test_a_number_read_back_says_what_it_is_here(shown: str, unit: str, inch: str) -> None:
    assert METRIC.read_back(shown, unit) == shown
    assert INCH.read_back(shown, unit) == inch


def test_a_machine_gets_fixed_units() -> None:
    for unit in INCH.factors:
        assert outside(1.0, unit) == (1.0, unit)
    values, unit = INCH.outside(np.array([25.4, 50.8]), "mm")
    assert unit == "in"
    assert values == pytest.approx([1.0, 2.0])
