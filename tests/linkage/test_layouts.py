"""Every layout a builder may choose, against points followed by a general equation solver.

The solver knows nothing of levers: it holds distances in the side view, from rest in small
steps, so it stays on the branch a real pedal is on.
"""

from dataclasses import dataclass

import numpy as np
import pytest
from scipy.optimize import root

from pedalwright.core.points import REARWARD, Point
from pedalwright.linkage import (
    Pedal,
    Relay,
    Rod,
    angle_at_travel,
    forces,
    lever,
    locks_at,
    pedal_rod_length,
    position,
)

FORWARD = -REARWARD
PUSH = 500.0

#: x and z.
Flat = tuple[float, float]


@dataclass(frozen=True)
class Layout:
    """A pedal, its rod, and which way round the solver has to turn it, seen from the right."""

    pedal: Pedal
    rod: Rod

    @property
    def sense(self) -> float:
        """+1 where a push carries up towards rearward."""
        return 1.0 if self.pedal.hinge == "hanging" else -1.0


def hanging(pin_radius: float = 54.5, pin_angle: float = 0.0) -> Pedal:
    return Pedal(
        hinge="hanging",
        pivot=Point(120.0, 385.0, 350.0),
        pad_radius=272.0,
        pad_lean=np.radians(15.0),
        pad_offset=-15.0,
        pad_width=60.0,
        pin_radius=pin_radius,
        pin_angle=pin_angle,
    )


def floor(pin_radius: float = 36.0, pin_angle: float = 0.0) -> Pedal:
    return Pedal(
        hinge="floor",
        pivot=Point(160.0, -395.0, 40.0),
        pad_radius=180.0,
        pad_lean=np.radians(18.0),
        pad_offset=0.0,
        pad_width=60.0,
        pin_radius=pin_radius,
        pin_angle=pin_angle,
    )


def reaching(pedal: Pedal, x: float, z: float, direction: Point) -> Layout:
    """The socket `x` behind and `z` above the pin."""
    socket = lever(pedal).pin + Point(x, 0.0, z)
    return Layout(pedal, Rod(socket=socket, direction=direction))


def relayed(
    pedal: Pedal, *, tube: Flat, driven: Flat, driving: Flat, socket: Flat, direction: Point
) -> Layout:
    """Points of the relay in the pedal's plane."""

    def at(place: Flat) -> Point:
        return Point(place[0], pedal.pivot.y, place[1])

    relay = Relay(pivot=at(tube), driven_pin=at(driven), driving_pin=at(driving))
    return Layout(pedal, Rod(socket=at(socket), direction=direction, relay=relay))


DOWN = Point(0.0, 0.0, -1.0)
DOWN_FORWARD = Point(-np.cos(0.2), 0.0, -np.sin(0.2))
LAYOUTS = {
    "hanging, cylinder ahead": reaching(hanging(), -106.0, -4.0, FORWARD),
    "hanging, cylinder nose down": reaching(hanging(), -104.0, -21.0, DOWN_FORWARD),
    "hanging, pull rod to a cylinder behind": reaching(hanging(), 90.0, 3.0, FORWARD),
    "over-pivot, cylinder behind": reaching(hanging(44.0, np.pi), 101.0, 0.0, REARWARD),
    "over-pivot, pull rod to a cylinder ahead": reaching(
        hanging(44.0, np.pi), -95.0, 2.0, REARWARD
    ),
    "floor, cylinder ahead": reaching(floor(), -95.0, 0.0, FORWARD),
    "floor, pull rod": reaching(floor(), 95.0, 2.0, FORWARD),
    "below the floor, pin under the pivot": reaching(floor(40.0, np.pi), 100.0, -2.0, REARWARD),
    "below the floor, pulled from ahead": reaching(floor(40.0, np.pi), -100.0, 0.0, REARWARD),
    "cranked arm, pin ahead of the pad's line": reaching(floor(38.0, 0.6), -90.0, 4.0, FORWARD),
    "relay that keeps the sense": relayed(
        hanging(),
        tube=(0, 410),
        driven=(5, 300),
        driving=(2, 350),
        socket=(-90, 349),
        direction=FORWARD,
    ),
    "relay that turns the sense round": relayed(
        hanging(44.0, np.pi),
        tube=(220, 330),
        driven=(215, 395),
        driving=(222, 280),
        socket=(120, 281),
        direction=FORWARD,
    ),
    "bell crank": relayed(
        hanging(),
        tube=(20, 250),
        driven=(25, 297),
        driving=(-35, 252),
        socket=(-36, 160),
        direction=DOWN,
    ),
}
EVERY = pytest.mark.parametrize("layout", LAYOUTS.values(), ids=LAYOUTS.keys())


def flat(point: Point) -> np.ndarray:
    return np.array([point.x, point.z], dtype=float)


def swung(about: np.ndarray, point: np.ndarray, angle: float) -> np.ndarray:
    """Turned so that a positive angle carries up towards rearward."""
    turn = np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])
    return about + turn @ (point - about)


def followed(layout: Layout, pad_angle: float) -> float:
    """Piston travel when the pedal has been turned, in 60 steps from rest."""
    rod = layout.rod
    pivot, pin = flat(layout.pedal.pivot), flat(lever(layout.pedal).pin)
    socket, along = flat(rod.socket), flat(rod.direction)

    def errors(unknown: np.ndarray, angle: float) -> list[float]:
        end = swung(pivot, pin, layout.sense * angle)
        now = socket + along * unknown[0]
        if rod.relay is None:
            return [float(np.hypot(*(now - end)) - np.hypot(*(socket - pin)))]
        tube = flat(rod.relay.pivot)
        driven, driving = flat(rod.relay.driven_pin), flat(rod.relay.driving_pin)
        reached = [swung(tube, point, unknown[1]) for point in (driven, driving)]
        return [
            float(np.hypot(*(reached[0] - end)) - np.hypot(*(driven - pin))),
            float(np.hypot(*(now - reached[1])) - np.hypot(*(socket - driving))),
        ]

    state = np.zeros(1 if rod.relay is None else 2)
    for angle in np.linspace(0.0, pad_angle, 61)[1:]:
        state = root(errors, state, args=(angle,), tol=1e-12).x
    return float(state[0])


@EVERY
def test_the_piston_goes_where_the_solver_puts_it(layout: Layout) -> None:
    made = lever(layout.pedal)
    for angle in (0.1, 0.25):
        travel = position(made, layout.rod, angle).piston_travel
        assert travel == pytest.approx(followed(layout, angle), abs=1e-8)
        assert travel > 0.0
        assert angle_at_travel(made, layout.rod, travel) == pytest.approx(angle, abs=1e-10)


@EVERY
def test_the_ratio_is_the_solvers_slope_and_the_work_agrees(layout: Layout) -> None:
    made, step = lever(layout.pedal), 1e-4
    slope = 2 * step * layout.pedal.pad_radius
    slope /= followed(layout, 0.2 + step) - followed(layout, 0.2 - step)
    here = position(made, layout.rod, 0.2)
    assert here.ratio == pytest.approx(slope, rel=1e-6)
    piston = forces(made, layout.rod, here, PUSH).piston
    assert piston == pytest.approx(PUSH * slope, rel=1e-6)


@EVERY
def test_nothing_here_locks_within_the_stroke(layout: Layout) -> None:
    locks = locks_at(lever(layout.pedal), layout.rod)
    assert np.isnan(locks) or locks > 0.25 * layout.pedal.pad_radius


RELAYED = [name for name, layout in LAYOUTS.items() if layout.rod.relay is not None]


@pytest.mark.parametrize("name", RELAYED)
def test_a_relay_lever_is_in_balance(name: str) -> None:
    """Three forces on it, from the two rods and its tube: no sum and no moment left."""
    layout = LAYOUTS[name]
    made, rod = lever(layout.pedal), layout.rod
    here = position(made, rod, 0.2)
    found = forces(made, rod, here, PUSH)
    assert here.relay is not None
    assert rod.relay is not None
    assert found.relay_pivot is not None
    foot = made.axis.cross(here.pad - made.pivot).unit() * PUSH
    by_pedal = foot + found.pivot  # its rod carries on what the pivot does not take
    by_cylinder = -(by_pedal + found.relay_pivot)
    assert by_pedal.length() == pytest.approx(found.pedal_rod, rel=1e-12)
    assert by_cylinder.length() == pytest.approx(found.rod, rel=1e-12)
    assert -by_cylinder.dot(rod.direction) == pytest.approx(found.piston, rel=1e-9)
    moment = (here.relay.driven_pin - rod.relay.pivot).cross(by_pedal) + (
        here.relay.driving_pin - rod.relay.pivot
    ).cross(by_cylinder)
    assert moment.length() == pytest.approx(0.0, abs=1e-6)


def test_ratios_through_a_relay_multiply() -> None:
    layout = LAYOUTS["relay that keeps the sense"]
    here = position(lever(layout.pedal), layout.rod, 0.1)
    assert here.relay is not None
    #: 110 from the tube to the driven pin and 60 to the driving one, all rods nearly square.
    assert here.ratio / here.relay.ratio == pytest.approx(110 / 60, rel=0.01)


def test_a_rod_with_a_relay_reaches_from_pin_to_relay() -> None:
    layout = LAYOUTS["relay that keeps the sense"]
    assert layout.rod.relay is not None
    span = layout.rod.relay.driven_pin - lever(layout.pedal).pin
    assert pedal_rod_length(lever(layout.pedal), layout.rod) == span.length()
    plain = LAYOUTS["floor, cylinder ahead"]
    assert pedal_rod_length(lever(plain.pedal), plain.rod) == pytest.approx(95.0)
