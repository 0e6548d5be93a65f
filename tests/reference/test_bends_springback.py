"""Springback: the textbook cubic (S. Kalpakjian, Manufacturing Engineering and Technology, sheet
forming), and the factor k_R of trade table books."""

import numpy as np
import pytest

from pedalwright.making.bending.formulas import overbend, springback, sprung_radius, tool_radius


@pytest.mark.parametrize(
    ("Y", "R", "share", "left"), [(120.0, 4.5, 0.9923, 4.535), (260.0, 9.0, 0.9666, 9.311)]
)
def test_alloy_of_3_mm(Y: float, R: float, share: float, left: float) -> None:
    """Worked by hand from the cubic."""
    X = springback(R, Y, 70000.0, 3.0)
    assert pytest.approx(share, abs=5e-5) == X
    assert sprung_radius(R, X) == pytest.approx(left, abs=5e-4)


def test_the_middle_line_keeps_its_length() -> None:
    left = sprung_radius(9.0, springback(9.0, 260.0, 70000.0, 3.0))
    turned = overbend(np.pi / 2, 9.0, left, 3.0)
    assert turned * (9.0 + 1.5) == pytest.approx(np.pi / 2 * (left + 1.5))
    assert np.degrees(turned) == pytest.approx(92.67, abs=0.01)


def test_tool_radius_by_the_trade_factor() -> None:
    assert tool_radius(0.95, 12.6, 2.0) == pytest.approx(11.92, abs=5e-3)
