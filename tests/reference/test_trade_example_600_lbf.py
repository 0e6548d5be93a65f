"""Case C06: a trade page's example, 100 lbf on a 6:1 pedal and a one-inch cylinder.

Strength: the 600 lbf of rod force stand on the page (read); the pressure was computed
independently with plain equations.
"""

import pytest

from pedalwright.hydraulics.formulas import bore_area, line_pressure
from pedalwright.linkage.formulas import piston_force

POUND_FORCE = 0.45359237 * 9.80665
PSI = POUND_FORCE / 25.4**2


def test_c06_rod_force_and_pressure() -> None:
    push = 100.0 * POUND_FORCE
    assert piston_force(push, 6.0) / POUND_FORCE == pytest.approx(600.0)
    pressure = line_pressure(push, 6.0, eta=1.0, share=1.0, A=bore_area(25.4))
    assert pressure / PSI == pytest.approx(763.94, abs=0.006)
    assert pressure == pytest.approx(5.2672, abs=0.00006)
