"""Laws of a throttle's bore: what plate and shaft leave open."""

import numpy as np
import pytest
from hypothesis import given

from laws.throttle_cases import between
from pedalwright.throttle.formulas import (
    open_share,
    open_share_with_shaft,
    plate_width,
    shaft_in_bore,
    shaft_on_plate,
)


@given(between(0.05, 0.35), between(0.05, 0.2), between(0.3, 1.5))
def test_a_shaft_only_takes_away(a: float, psi_0: float, psi: float) -> None:
    plate = plate_width(psi, psi_0)
    thin = open_share(plate)
    alpha, beta = shaft_in_bore(a), shaft_on_plate(a, plate)
    both = open_share_with_shaft(alpha, beta)
    assert both <= thin + 1e-12
    assert both <= open_share_with_shaft(alpha, np.pi / 2) + 1e-12
    hair = open_share_with_shaft(shaft_in_bore(1e-6), shaft_on_plate(1e-6, plate))
    assert hair == pytest.approx(thin, abs=1e-5)


@given(between(0.05, 0.35), between(0.05, 0.2), between(0.3, 1.5))
def test_the_open_area_is_what_strips_of_the_bore_add_up_to(
    a: float, psi_0: float, psi: float
) -> None:
    """Strips along the way from spindle to rim; each is bored, less plate or shaft before it."""
    plate = plate_width(psi, psi_0)
    x = (np.arange(20000) + 0.5) / 20000  # along the shaft, bore's radius 1
    half = np.sqrt(1.0 - x**2)
    hidden = np.minimum(np.maximum(plate * half, a), half)
    strips = np.sum(half - hidden) / np.sum(half)
    both = open_share_with_shaft(shaft_in_bore(a), shaft_on_plate(a, plate))
    assert both == pytest.approx(strips, abs=2e-5)
