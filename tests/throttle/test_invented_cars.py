"""The throttles of three invented cars against hand estimates."""

import numpy as np
import pytest

from pedalwright.throttle import Cable, Opening, Spring, SquareRod, Throttle, check, respond

SPRINGS = (Spring(torque_closed=450.0, rate=0.0),) * 2
INCH = 25.4


def larkfield(pedal_lever: float, bell_crank: tuple[float, float], rods: float) -> Opening:
    into, out_of = bell_crank
    throttle = Throttle(
        pad_room=55.0,
        stages=(
            SquareRod(driving_radius=pedal_lever, driven_radius=into, rod_length=rods),
            SquareRod(driving_radius=out_of, driven_radius=38.0, rod_length=rods),
        ),
        full_opening=np.deg2rad(78.0),
        springs=SPRINGS,
        friction=100.0,
    )
    return respond(throttle, 235.0)


@pytest.mark.parametrize("rods", [250.0, 600.0])
def test_larkfield_first_opens_less_than_half(rods: float) -> None:
    result = larkfield(60.0, (40.0, 60.0), rods)
    assert np.rad2deg(result.at_stop) == pytest.approx(32.0, abs=0.5)
    assert [f.limit.code for f in check(result) if not f.ok and f.limit.weight == "must"] == [
        "throttle.full_opening"
    ]


@pytest.mark.parametrize("rods", [250.0, 600.0])
def test_larkfield_improved_opens_fully(rods: float) -> None:
    result = larkfield(90.0, (34.0, 78.0), rods)
    assert np.rad2deg(result.at_stop) == pytest.approx(79.0, abs=0.5)
    assert 54.0 < result.pad_travel_full < 55.0
    assert result.one_spring_lost == 450.0
    assert all(f.ok for f in check(result))


def by_cable(
    pad_room: float, pad_radius: float, radii: tuple[float, float], full_opening: float
) -> Opening:
    throttle = Throttle(
        pad_room=pad_room,
        stages=(Cable(driving_radius=radii[0], driven_radius=radii[1], slack=0.0),),
        full_opening=np.deg2rad(full_opening),
        springs=SPRINGS,
        friction=100.0,
    )
    return respond(throttle, pad_radius)


def test_brackwater_first_and_fixed() -> None:
    first = by_cable(55.0, 185.0, (60.0, 32.0), 75.0)
    assert np.rad2deg(first.at_stop) == pytest.approx(32.0, abs=0.5)
    fixed = by_cable(55.0, 185.0, (140.0, 32.0), 75.0)
    assert np.rad2deg(fixed.at_stop) == pytest.approx(75.0, abs=0.6)
    assert all(f.ok for f in check(fixed))


def test_saltmarsh() -> None:
    result = by_cable(2.4 * INCH, 7.5 * INCH, (5.0 * INCH, 1.1 * INCH), 80.0)
    assert np.rad2deg(result.at_stop) == pytest.approx(np.rad2deg(2.4 / 7.5 * 5.0 / 1.1))
    assert all(f.ok for f in check(result))
