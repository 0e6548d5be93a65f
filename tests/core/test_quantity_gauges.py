"""Gauge numbers against what their tables are made from, and against printed values."""

from itertools import pairwise

import pytest

from pedalwright.core.quantity import parse
from pedalwright.core.quantity.gauges import AWG, MSG, SWG, Gauge

# The British gauge steps evenly within stretches: numbers, and thousandths of an inch between
# neighbours. Order in Council of 23 August 1883; BS 3737:1964.
SWG_STEPS = [
    (0, 3, 24.0),
    (3, 6, 20.0),
    (6, 10, 16.0),
    (10, 14, 12.0),
    (14, 19, 8.0),
    (19, 23, 4.0),
    (23, 26, 2.0),
    (26, 28, 1.6),
    (28, 30, 1.2),
]

# Ounces per square foot, US Act of 3 March 1893; the sheet maker's gauge divides them by
# 41.82 lb per square foot and inch.
MSG_OUNCES = dict(
    enumerate(
        [
            *(160, 150, 140, 130, 120, 110, 100, 90, 80, 70, 60, 50, 45, 40),
            *(36, 32, 28, 24, 22, 20, 18, 16, 14, 12, 11, 10, 9, 8),
        ],
        start=3,
    )
)

# Printed tables of sheet gauges, in mm.
PRINTED = {
    "10 SWG": 3.251,
    "12 SWG": 2.642,
    "14 SWG": 2.032,
    "16 SWG": 1.626,
    "18 SWG": 1.219,
    "20 SWG": 0.914,
    "22 SWG": 0.711,
    "30 SWG": 0.315,
    "10 MSG": 3.416,
    "16 MSG": 1.519,
    "18 MSG": 1.214,
    "20 MSG": 0.912,
    "22 MSG": 0.759,
    "10 AWG": 2.588,
    "16 AWG": 1.291,
    "18 AWG": 1.024,
    "20 AWG": 0.812,
}


def test_the_british_gauge_steps_evenly_in_stretches() -> None:
    stepped = [(a, round(float(SWG.inches[a] - SWG.inches[a + 1]) * 1000, 6)) for a in range(30)]
    expected = [(a, step) for first, last, step in SWG_STEPS for a in range(first, last)]
    assert stepped == expected
    assert SWG.inches[0] * 1000 == 324


def test_the_american_steel_gauge_is_a_weight_per_area() -> None:
    assert MSG.inches.keys() == MSG_OUNCES.keys()
    for number, ounces in MSG_OUNCES.items():
        assert float(MSG.inches[number]) == pytest.approx(ounces / 16 / 41.82, abs=0.5001e-4)


def test_the_american_aluminium_gauge_is_a_geometric_series() -> None:
    ratios = [float(AWG.inches[a] / AWG.inches[b]) for a, b in pairwise(sorted(AWG.inches))]
    assert ratios == pytest.approx([92 ** (1 / 39)] * 30, rel=1e-12)
    assert float(AWG.inches[0]) == pytest.approx(0.3249, abs=5e-5)
    assert float(AWG.inches[30]) == pytest.approx(0.01003, abs=5e-6)


@pytest.mark.parametrize(("text", "printed"), PRINTED.items())
def test_a_sheet_has_its_printed_thickness(text: str, printed: float) -> None:
    assert parse(text, "mm").value == pytest.approx(printed, abs=0.5001e-3)


@pytest.mark.parametrize("gauge", [SWG, MSG, AWG])
def test_a_higher_number_is_a_thinner_sheet(gauge: Gauge) -> None:
    sheets = [gauge.inches[number] for number in sorted(gauge.inches)]
    assert all(thick > thin for thick, thin in pairwise(sheets))
