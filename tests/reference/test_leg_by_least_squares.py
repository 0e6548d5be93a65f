"""Legs in space found by a general solver: joints as free points, bones as lengths to keep.

scipy's least squares knows no triangle and no plane geometry of ours: it moves twelve coordinates
until bones, foot, floor and pad agree. Strength: an independent solution of the same assumptions,
held to 1e-5 mm.
"""

from collections.abc import Callable

import numpy as np
import pytest
from driver.stands import FAR, on, tread
from numpy.typing import NDArray
from scipy.optimize import least_squares

from pedalwright.core.points import Point
from pedalwright.driver import Driver, Person, Posture, body, place
from pedalwright.driver.body import HIP_JOINTS_APART
from pedalwright.driver.legs import heel_lifted
from pedalwright.driver.parts import Body

Vector = NDArray[np.float64]
Extra = Callable[[Vector, Vector, Vector, Vector], list[float]]


def vector(point: Point) -> Vector:
    return np.array([float(point.x), float(point.y), float(point.z)])


def solved(hip: Vector, ball: Vector, lengths: Body, start: Posture, extra: Extra) -> list[Vector]:
    """Knee, ankle, heel and ball; the start is a rough one, decimetres off."""
    way = ball - hip
    aside = np.array([way[1], -way[0], 0.0]) / np.hypot(way[0], way[1])
    foot = float(np.hypot(lengths.ankle_forward, lengths.ankle_height))
    fore = float(np.hypot(lengths.heel_to_ball - lengths.ankle_forward, lengths.ankle_height))

    def misfit(x: Vector) -> list[float]:
        knee, ankle, heel, toes = x.reshape(4, 3)
        return [
            np.linalg.norm(knee - hip) - lengths.thigh,
            np.linalg.norm(ankle - knee) - lengths.shank,
            np.linalg.norm(ankle - heel) - foot,
            np.linalg.norm(ankle - toes) - fore,
            np.linalg.norm(toes - heel) - lengths.heel_to_ball,
            aside @ (ankle - hip),
            aside @ (heel - hip),
            aside @ (toes - hip),
            *extra(knee, ankle, heel, toes),
        ]

    joints = (start.knee, start.ankle, start.heel, start.ball)
    rough = np.round(np.array([vector(p) for p in joints]), -1)
    rough += np.array([[20.0, 5.0, 40.0], [10.0, -5.0, 20.0], [10.0, 5.0, 10.0], [0.0, 5.0, 5.0]])
    found = least_squares(misfit, rough.ravel(), xtol=1e-14, ftol=1e-14, gtol=1e-14)
    assert found.cost < 1e-15, "no leg fits all of it"
    return list(found.x.reshape(4, 3))


def agrees(posture: Posture, found: list[Vector]) -> None:
    for point, expected in zip(
        (posture.knee, posture.ankle, posture.heel, posture.ball), found, strict=True
    ):
        assert vector(point) == pytest.approx(expected, abs=1e-5)
    knee, ankle, heel, ball = found
    shin, sole = knee - ankle, ball - heel
    bend = np.arccos(shin @ sole / np.linalg.norm(shin) / np.linalg.norm(sole))
    assert float(posture.ankle_angle) == pytest.approx(bend, abs=1e-7)


def person(rng: np.random.Generator) -> Driver:
    return Driver(
        name="D",
        person=Person(stature=rng.uniform(1550, 1950)),
        hip=Point(rng.uniform(950, 1100), rng.uniform(-40, 40), rng.uniform(100, 260)),
        trunk=0.4,
    )


def joint(driver: Driver, side: float = 1.0) -> Vector:
    """The hip joint on one side."""
    return vector(driver.hip) + np.array([0.0, side * HIP_JOINTS_APART / 2, 0.0])


def in_plane(knee: Vector, hip: Vector, ball: Vector) -> float:
    way = ball - hip
    return float(np.array([way[1], -way[0], 0.0]) @ (knee - hip) / np.hypot(way[0], way[1]))


Drawn = tuple[Driver, Point, Posture]


def reached(draw: Callable[[np.random.Generator], Drawn], seed: int) -> Drawn:
    """The first draw of a seed whose leg reaches with some bend to spare."""
    rng = np.random.default_rng(seed)
    for _ in range(100):
        driver, pad, posture = draw(rng)
        if np.isfinite(posture.knee_angle) and 1.2 < float(posture.knee_angle) < 2.8:
            return driver, pad, posture
    raise AssertionError("no leg reaches")


@pytest.mark.parametrize("seed", range(25))
@pytest.mark.parametrize("side", [1.0, -1.0])
def test_heel_on_the_floor(seed: int, side: float) -> None:
    floor = -30.0

    def draw(rng: np.random.Generator) -> tuple[Driver, Point, Posture]:
        pad = Point(rng.uniform(120, 240), rng.uniform(-180, 180), floor + rng.uniform(60, 150))
        driver = person(rng)
        return driver, pad, on(driver, pad, pad, floor, side=side).rest

    driver, pad, posture = reached(draw, seed)
    hip = joint(driver, side)
    ball = vector(pad)
    found = solved(hip, ball, body(driver.person), posture, lambda k, _a, h, b: [
        *(b - ball), h[2] - floor, in_plane(k, hip, ball)
    ])  # fmt: skip
    agrees(posture, found)


@pytest.mark.parametrize("seed", range(25))
def test_heel_lifted_with_the_ankle_held(seed: int) -> None:
    def draw(rng: np.random.Generator) -> tuple[Driver, Point, Posture]:
        pad = Point(rng.uniform(60, 200), rng.uniform(-180, 180), rng.uniform(120, 260))
        driver = person(rng)
        lengths = body(driver.person)
        return driver, pad, heel_lifted(lengths, driver.hip, driver.trunk, pad, np.pi / 2)

    driver, pad, posture = reached(draw, seed)
    hip, ball = vector(driver.hip), vector(pad)
    found = solved(hip, ball, body(driver.person), posture, lambda k, a, h, b: [
        *(b - ball), (k - a) @ (b - h) / 100.0, in_plane(k, hip, ball)
    ])  # fmt: skip
    agrees(posture, found)


@pytest.mark.parametrize("seed", range(25))
def test_a_knee_turned_out(seed: int) -> None:
    """The knee's own plane, through hip and ankle, leans out by the angle asked for."""
    out, floor = np.deg2rad(15.0), -30.0

    def draw(rng: np.random.Generator) -> tuple[Driver, Point, Posture]:
        pad = Point(rng.uniform(120, 240), rng.uniform(-180, 180), floor + rng.uniform(60, 150))
        kept = person(rng)
        driver = Driver(name="D", person=kept.person, hip=kept.hip, trunk=0.4, knees_out=out)
        return driver, pad, on(driver, pad, pad, floor).rest

    driver, pad, posture = reached(draw, seed)
    hip = joint(driver)
    ball = vector(pad)

    def leaning(knee: Vector, ankle: Vector) -> float:
        along = (ankle - hip) / np.linalg.norm(ankle - hip)
        off = (knee - hip) - along * (along @ (knee - hip))
        up = np.array([0.0, 0.0, 1.0]) - along * along[2]
        right = np.cross(along, up / np.linalg.norm(up))
        return float(right @ off / np.linalg.norm(off) - np.sin(out)) * 100.0

    found = solved(hip, ball, body(driver.person), posture, lambda k, a, h, b: [
        *(b - ball), h[2] - floor, leaning(k, a)
    ])  # fmt: skip
    for point, expected in zip((posture.knee, posture.ankle, posture.heel), found, strict=False):
        assert vector(point) == pytest.approx(expected, abs=1e-5)


@pytest.mark.parametrize("seed", range(15))
def test_an_accelerator_pressed_with_the_heel_where_it_was(seed: int) -> None:
    """At rest the ball is on the pad's middle; pressed, the sole goes through it."""
    rng = np.random.default_rng(seed)
    driver, floor = person(rng), -30.0
    rest = Point(rng.uniform(150, 240), rng.uniform(-100, 100), floor + rng.uniform(110, 150))
    full = Point(rest.x - rng.uniform(20, 50), rest.y, rest.z - rng.uniform(5, 40))
    (seat,) = place(driver, [tread(rest, full, heel="stays")], floor, FAR)
    hip = joint(driver)
    lengths, ball = body(driver.person), vector(rest)
    _, _, heel, _ = solved(hip, ball, lengths, seat.rest, lambda k, _a, h, b: [
        *(b - ball), h[2] - floor, in_plane(k, hip, ball)
    ])  # fmt: skip
    way = (ball - hip) * [1.0, 1.0, 0.0]
    way /= np.linalg.norm(way)
    rise = vector(full)[2] - heel[2]
    run = (vector(full) - heel) @ way
    pressed = solved(hip, ball, lengths, seat.full, lambda k, _a, h, b: [
        *(h - heel), ((b - h) @ way) * rise / 100.0 - (b[2] - h[2]) * run / 100.0,
        in_plane(k, hip, ball),
    ])  # fmt: skip
    agrees(seat.full, pressed)
    assert float(seat.slide) == pytest.approx(np.hypot(run, rise) - lengths.heel_to_ball)
