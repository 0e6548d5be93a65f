"""The clutches of three invented cars against hand estimates, which are good to 5 %."""

from collections.abc import Callable

import numpy as np
import pytest

from pedalwright.clutch import (
    CableFork,
    ClutchResult,
    ConcentricBearing,
    Release,
    SlaveCylinder,
    budget,
    need,
    respond,
)
from pedalwright.clutch.parts import Actuator
from pedalwright.core.points import Point
from pedalwright.core.units import Num
from pedalwright.hydraulics import Cylinder
from pedalwright.linkage import Lever, Pedal, Position, Rod, angle_at_travel, lever, position

BY_HAND = 0.05
INCH, LBF = 25.4, 4.448222


def release(actuator: Actuator, **numbers: float) -> Release:
    return Release(actuator=actuator, **numbers)


def on_pedal(
    made: Release, master: Cylinder | None, pedal: Lever, rod: Rod, pad_room: float
) -> ClutchResult:
    """The clutch on a real lever, as the wiring joins the two."""
    radius = (pedal.pad - pedal.pivot).length()

    def at(stroke: Num) -> Position:
        return position(pedal, rod, angle_at_travel(pedal, rod, stroke))

    needed = need(made, master)
    return respond(
        made,
        master,
        travel=budget(needed, lambda stroke: at(stroke).pad_travel),
        available=pad_room,
        mean_ratio=at(needed.master).pad_travel / needed.master,
        stroke_at_wall=position(pedal, rod, pad_room / radius).piston_travel,
    )


def at_ratio(made: Release, master: Cylinder | None, ratio: float, pad_room: float) -> ClutchResult:
    """The clutch on a pedal whose ratio stays."""
    pad: Callable[[Num], Num] = lambda stroke: ratio * stroke  # noqa: E731
    return respond(
        made,
        master,
        travel=budget(need(made, master), pad),
        available=pad_room,
        mean_ratio=ratio,
        stroke_at_wall=pad_room / ratio,
    )


def larkfield(pad_radius: float, pin_radius: float) -> tuple[Lever, Rod]:
    made = lever(
        Pedal(
            hinge="hanging",
            pivot=Point(120.0, 262.0, 350.0),
            pad_radius=pad_radius,
            pad_lean=np.deg2rad(16.0),
            pad_offset=0.0,
            pad_width=55.0,
            pin_radius=pin_radius,
        )
    )
    socket = Point(28.0, 262.0, float(made.pin.z) - 4.0)
    return made, Rod(socket=socket, direction=Point(-1.0, 0.0, 0.0))


LARKFIELD = release(
    SlaveCylinder(bore=22.22, fork_ratio=1.9, fork_efficiency=0.9),
    bearing_lift=8.0,
    free_play=1.5,
    release_load=1450.0,
    line_growth=0.06,
    dead_stroke=1.5,
    line_efficiency=0.9,
)


def test_larkfield_first_hits_the_wall_before_it_releases() -> None:
    result = on_pedal(LARKFIELD, Cylinder(bore=17.78, stroke=34.0), *larkfield(252.0, 53.0), 146.5)
    assert result.travel_needed == pytest.approx(152.0, rel=BY_HAND)
    assert result.travel_needed > 146.5
    assert result.lift_reached < 8.0
    assert result.fluid is not None
    assert 17.78 < result.fluid.least_bore < 19.05


def test_larkfield_improved_releases() -> None:
    result = on_pedal(LARKFIELD, Cylinder(bore=19.05, stroke=33.0), *larkfield(276.0, 55.0), 150.0)
    assert result.master_stroke == pytest.approx(27.0, rel=BY_HAND)
    assert result.travel_needed == pytest.approx(135.0, rel=BY_HAND)
    assert result.effort == pytest.approx(139.0, rel=BY_HAND)
    assert result.travel_at_six == pytest.approx(165.0, rel=0.005)
    assert result.lift_reached == 8.0


def test_brackwater_cable() -> None:
    made = release(
        CableFork(fork_ratio=4.2, fork_efficiency=1.0),
        bearing_lift=7.0,
        free_play=1.0,
        release_load=1100.0,
        line_growth=0.0,
        dead_stroke=1.5,
        line_efficiency=0.85,
    )
    result = at_ratio(made, None, 3.4, 150.0)
    assert result.fluid is None
    assert result.travel_needed == pytest.approx((8.0 * 4.2 + 1.5) * 3.4, rel=1e-12)
    assert result.effort == pytest.approx(1100.0 / (4.2 * 3.4 * 0.85), rel=1e-12)


@pytest.mark.parametrize(
    ("bore", "stroke", "travel"), [(5 / 8, 1.70, None), (13 / 16, None, 5.3), (7 / 8, None, 4.6)]
)
def test_saltmarsh_concentric(bore: float, stroke: float | None, travel: float | None) -> None:
    made = release(
        ConcentricBearing(area=1.35 * INCH**2),
        bearing_lift=0.35 * INCH,
        free_play=0.0,
        release_load=320.0 * LBF,
        line_growth=0.08,
        dead_stroke=0.04 * INCH,
        line_efficiency=0.9,
    )
    result = at_ratio(made, Cylinder(bore=bore * INCH, stroke=1.4 * INCH), 5.2, 5.0 * INCH)
    if stroke is not None:
        assert result.master_stroke / INCH == pytest.approx(stroke, abs=0.01)
    if travel is not None:
        assert result.travel_needed / INCH == pytest.approx(travel, abs=0.05)
    if bore == 7 / 8:
        assert result.effort / LBF == pytest.approx(31.0, rel=0.02)
