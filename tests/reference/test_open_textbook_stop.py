"""Case C18: an open textbook on ground transport, chapter on stopping (C.0816).

Strength: handbook, in round words: 1.5 t from 120 km/h at half of gravity has "a little over
800 kJ", stops in "just under 7 s" and makes "about 120 kW" (read). The digits were recomputed.
"""

import pytest

from pedalwright.brakes.stop.formulas import mean_power, moving_energy, stop_time

SPEED = 120.0 / 3.6


def test_c18_energy_time_and_power() -> None:
    energy = moving_energy(1500.0, SPEED)
    time = stop_time(SPEED, 0.5 * 9.81)
    power = mean_power(energy, time)
    assert energy / 1000.0 == pytest.approx(833.3, abs=0.06)
    assert time == pytest.approx(6.80, abs=0.006)
    assert power / 1000.0 == pytest.approx(122.6, abs=0.06)
    assert 800e3 < energy < 850e3
    assert 6.5 < time < 7.0
    assert power == pytest.approx(120e3, rel=0.05)
