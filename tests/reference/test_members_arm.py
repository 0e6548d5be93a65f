"""The tapered arm against published examples, closed forms and a frame program."""

from itertools import pairwise
from math import log

import numpy as np
import pytest
from numpy.polynomial.legendre import leggauss
from Pynite import FEModel3D

from pedalwright.structure.formulas.arm import bending_stress, offset_torque
from pedalwright.structure.formulas.sections import (
    bar_inertia,
    flat_modulus,
    torsion_constant,
)
from pedalwright.structure.formulas.stiffness import (
    bending_give,
    even_area,
    even_inertia,
    even_torsion_constant,
    shear_modulus,
    twist,
    twist_give,
)

E, NU = 210000.0, 0.3
G = E / (2 * (1 + NU))


def test_harris_stress_analysis_p_114_triangle_spring() -> None:
    """Width 3 in to nothing over 20 in, 0.5 in thick, 10 lbf: 0.04267 in, 1600 psi.

    A triangle is a beam of even strength: its give is 3/2 of an even one's. The thickness is
    even here and the width tapers, which the formula is told by turning the section.
    """
    give = bending_give(10.0, 20.0, 0.0, 30e6, 2 / 3 * bar_inertia(3.0, 0.5), 1.0)
    assert give == pytest.approx(0.04267, rel=2e-4)
    assert bending_stress(10.0 * 20.0, flat_modulus(0.5, 3.0)) == pytest.approx(1600.0)


@pytest.mark.parametrize("root", [25.5, 32.0, 45.0, 60.0])
def test_closed_form_of_a_depth_that_tapers(root: float) -> None:
    """delta = 12 F / (E b m³) [ln(h1/h0) + 2 h0 (1/h1 - 1/h0) - h0²/2 (1/h1² - 1/h0²)]."""
    F, L, b, h0 = 2000.0, 220.0, 10.0, 25.0
    m = (root - h0) / L
    closed = log(root / h0) + 2 * h0 * (1 / root - 1 / h0) - h0**2 / 2 * (1 / root**2 - 1 / h0**2)
    give = bending_give(F, L, 0.0, E, even_inertia(b, h0, root), 1.0)
    assert give == pytest.approx(12 * F / (E * b * m**3) * closed, rel=1e-6)
    assert even_area(b, h0, root) == pytest.approx(b * (root - h0) / log(root / h0), rel=1e-9)


def test_arm_45_to_25_with_the_pad_35_aside_solved_twice() -> None:
    """Closed form and a 60-element frame: 0.678 mm, 0.02080 rad, 1.406 mm."""
    bends = bending_give(2000.0, 220.0, 0.0, E, even_inertia(10.0, 25.0, 45.0), 1.0)
    turns = twist(
        offset_torque(2000.0, 35.0),
        220.0,
        shear_modulus(E, NU),
        even_torsion_constant(10.0, 25.0, 45.0),
    )
    assert bends == pytest.approx(0.678, abs=5e-4)
    assert turns == pytest.approx(0.02080, abs=5e-6)
    assert bends + twist_give(turns, 35.0) == pytest.approx(1.406, abs=1e-3)


def frame(
    pad: float, pin: float, beyond: bool, offset: float, depths: tuple[float, float]
) -> float:
    """Give of the pad by a frame program: forty even beams, pivot and pin as supports."""
    model = FEModel3D()
    model.add_material("steel", E, G, NU, 7.85e-6)
    t, pieces = 8.0, 40
    span = pad + pin if beyond else pad
    held_at = sorted({0.0, *np.linspace(0.0, span, pieces + 1), pin if beyond else pad - pin, pad})
    for i, x in enumerate(held_at):
        model.add_node(f"n{i}", x, 0.0, 0.0)
    for i, (x0, x1) in enumerate(pairwise(held_at)):
        # x runs from the pad; the arm does not taper any further beyond the pivot
        middle = min((x0 + x1) / 2, pad)
        h = depths[0] + (depths[1] - depths[0]) * middle / pad
        model.add_section(
            f"s{i}", t * h, h * t**3 / 12, float(bar_inertia(t, h)), float(torsion_constant(t, h))
        )
        model.add_member(f"m{i}", f"n{i}", f"n{i + 1}", "steel", f"s{i}")
    pivot = held_at.index(pad)
    rod = held_at.index(pad + pin if beyond else pad - pin)
    model.def_support(f"n{pivot}", True, True, True, True, True, False)
    model.def_support(f"n{rod}", False, True, False, False, False, False)
    model.add_node_load("n0", "FY", -500.0)
    model.add_node_load("n0", "MX", 500.0 * offset)
    model.analyze_linear()
    pad_node = model.nodes["n0"]
    return -pad_node.DY["Combo 1"] + pad_node.RX["Combo 1"] * offset


@pytest.mark.parametrize("beyond", [False, True])
def test_pynite_frame_of_forty_beams(beyond: bool) -> None:
    pad, pin, offset = 272.0, 54.5, 15.0
    h_pad, h_pivot = 24.0, 36.0
    over = pad if beyond else pad - pin
    at_support = h_pad + (h_pivot - h_pad) * over / pad
    bends = bending_give(
        500.0,
        over,
        pin,
        E,
        even_inertia(8.0, h_pad, at_support),
        even_inertia(8.0, h_pivot, at_support),
    )
    turns = twist(500.0 * offset, pad, G, even_torsion_constant(8.0, h_pad, h_pivot))
    whole = bends + twist_give(turns, offset)
    assert whole == pytest.approx(frame(pad, pin, beyond, offset, (h_pad, h_pivot)), rel=1e-3)


def test_the_places_of_the_sum_are_gauss_places() -> None:
    """A sum of eight places is exact for a polynomial of degree 15: here the even bar."""
    x, w = leggauss(8)
    assert float(np.sum(w * ((1 + x) / 2) ** 2) / 2) == pytest.approx(1 / 3, rel=1e-14)
    assert even_inertia(8.0, 32.0, 32.0) == pytest.approx(8.0 * 32.0**3 / 12, rel=1e-12)
