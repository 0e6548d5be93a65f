"""How far a bar tilts in its tube: closed form against drawing the bar there."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from pedalwright.hydraulics import (
    BalanceBar,
    BarTilt,
    BarTube,
    Cylinder,
    Demand,
    Tandem,
    Twin,
    bar,
    check_bar,
    strokes,
)
from pedalwright.hydraulics.formulas import clevis_draw, tube_tilt

TUBE = BarTube(bar_diameter=12.0, bore=25.0, length=28.0, end_float=2.5)
TWIN = Twin(
    front=Cylinder(bore=17.78, stroke=32.0),
    rear=Cylinder(bore=17.78, stroke=32.0),
    bar=BalanceBar(spacing=64.0, offset=0.0, tube=TUBE),
)
FLUID = Demand(front=1700.0, rear=1400.0)


def tilted(twin: Twin = TWIN, fluid: Demand = FLUID) -> BarTilt:
    found = bar(twin, strokes(twin, fluid, dead_stroke=1.5))
    assert found is not None
    return found


def with_tube(tube: BarTube) -> Twin:
    return replace(TWIN, bar=replace(TWIN.bar, tube=tube))


@given(st.floats(15.0, 40.0), st.floats(10.0, 60.0), st.floats(6.0, 14.0))
def test_at_the_allowed_tilt_the_bar_touches_the_tubes_end(D: float, L: float, d: float) -> None:
    """Upper edge of the bar at the plane of the tube's end, seen from the middle of the bore."""
    phi = tube_tilt(D, L, d)
    edge = L / 2.0 * np.tan(phi) + d / 2.0 / np.cos(phi)
    assert edge == pytest.approx(D / 2.0, rel=1e-9)


def test_a_bar_as_thick_as_its_tube_cannot_tilt() -> None:
    assert tube_tilt(25.0, 28.0, 25.0) == pytest.approx(0.0)
    assert tube_tilt(25.0, 28.0, 26.0) == 0.0


@given(st.floats(40.0, 80.0), st.floats(0.0, 0.5))
def test_pins_keep_their_distance_along_the_bar(S: float, phi: float) -> None:
    ends = S / 2.0 * np.array([np.cos(phi), np.sin(phi)])
    assume(phi > 1e-6)
    assert np.hypot(*(2.0 * ends)) == pytest.approx(S)
    assert clevis_draw(S, phi) == pytest.approx(S / 2.0 - ends[0], abs=1e-12)


def test_a_lost_circuit_tilts_the_bar_by_the_rest_of_its_stroke() -> None:
    front, rear = (v / (np.pi / 4.0 * 17.78**2) + 1.5 for v in (1700.0, 1400.0))
    found = tilted()
    assert np.tan(found.hard_stop) == pytest.approx((front - rear) / 64.0)
    assert np.tan(found.rear_lost) == pytest.approx((front - 32.0) / 64.0)
    assert np.tan(found.front_lost) == pytest.approx((32.0 - rear) / 64.0)
    assert found.drawn_in == pytest.approx(32.0 * (1.0 - np.cos(found.front_lost)))


def test_a_bearing_off_centre_meets_its_tube_sooner() -> None:
    off = replace(TWIN, bar=replace(TWIN.bar, offset=-6.0))
    assert tilted(off).allowed == pytest.approx(tube_tilt(25.0, 40.0, 12.0))
    assert tilted(off).allowed < tilted().allowed  # type: ignore[operator]


def test_a_tandem_has_no_bar() -> None:
    tandem = Tandem(bore=20.64, stroke=36.0)
    assert bar(tandem, strokes(tandem, FLUID, dead_stroke=1.5)) is None


def broken(found: BarTilt) -> set[tuple[str, str]]:
    return {(f.limit.code, f.about) for f in check_bar(found) if not f.ok}


def test_a_good_bar_breaks_none() -> None:
    assert broken(tilted()) == set()
    assert len(list(check_bar(tilted()))) == 5


TIGHT = with_tube(replace(TUBE, bore=23.5))
UNEVEN = Demand(front=3300.0, rear=1400.0)


@pytest.mark.parametrize(
    ("found", "faults"),
    [
        (tilted(with_tube(replace(TUBE, end_float=1.5))), {("hydraulics.bar_end_float", "")}),
        (tilted(fluid=UNEVEN), {("hydraulics.bar_square", "")}),
        (tilted(TIGHT), {("hydraulics.bar_tilt", "front circuit lost")}),
        (
            tilted(with_tube(replace(TUBE, bore=12.5))),
            {("hydraulics.bar_tilt", f"{c} circuit lost") for c in ("front", "rear")}
            | {("hydraulics.bar_tilt", "hard stop")},
        ),
    ],
)
def test_one_design_breaks_only_this_one(found: BarTilt, faults: set[tuple[str, str]]) -> None:
    assert broken(found) == faults


def test_a_tube_that_was_not_measured_is_not_judged() -> None:
    loose = replace(TWIN, bar=replace(TWIN.bar, tube=None))
    assert [f.limit.code for f in check_bar(tilted(loose))] == ["hydraulics.bar_square"]
