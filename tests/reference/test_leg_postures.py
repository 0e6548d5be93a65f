"""Postures of a leg, solved independently with plain equations (closed form and Newton).

Side view with the heel of the accelerator foot as origin, so y is 0. Strength: each value was
found by two methods that agree to 1e-6; printed to 4 digits, held here to 0.1 mm and 0.1 degree.
"""

from dataclasses import dataclass

import numpy as np
import pytest

from pedalwright.core.points import Point
from pedalwright.driver import Body, Posture, heel_lifted, sole_at, sole_on_pad
from pedalwright.linkage import Pedal, lever, pad_after
from pedalwright.linkage.solve import arc_of_angle

MM, DEG = 0.1, 0.1


def lengths(
    thigh: float,
    shank: float,
    ankle_forward: float,
    ankle_height: float,
    heel_to_ball: float,
    shoe_length: float = np.nan,
) -> Body:
    return Body(
        thigh=thigh,
        shank=shank,
        heel_to_ball=heel_to_ball,
        ankle_forward=ankle_forward,
        ankle_height=ankle_height,
        shoe_length=shoe_length,
        shoe_width=np.nan,
    )


A = lengths(432, 418, 81, 107, 203)
B = lengths(410, 395, 75, 95, 190)
C = lengths(456, 459.1, 80.947, 106.99, 203)
D = lengths(379, 390, 66, 88, 176)


def at(x: float, z: float) -> Point:
    return Point(x, 0.0, z)


def is_at(point: Point, x: float, z: float) -> None:
    assert float(point.x) == pytest.approx(x, abs=MM)
    assert float(point.z) == pytest.approx(z, abs=MM)


def degrees(angle: object) -> float:
    return float(np.rad2deg(angle))


@dataclass(frozen=True)
class Found:
    """What the independent solution says."""

    ankle: tuple[float, float]
    knee: tuple[float, float]
    needed: float
    knee_deg: float
    ankle_deg: float
    thigh_deg: float
    shank_deg: float
    hip_deg: float

    def agrees(self, posture: Posture) -> None:
        is_at(posture.ankle, *self.ankle)
        is_at(posture.knee, *self.knee)
        assert float(posture.needed) == pytest.approx(self.needed, abs=MM)
        assert degrees(posture.knee_angle) == pytest.approx(self.knee_deg, abs=DEG)
        assert degrees(posture.ankle_angle) == pytest.approx(self.ankle_deg, abs=DEG)
        assert degrees(posture.hip_angle) == pytest.approx(self.hip_deg, abs=DEG)
        thigh, shank = posture.knee - posture.hip, posture.knee - posture.ankle
        assert degrees(np.arctan2(thigh.z, -thigh.x)) == pytest.approx(self.thigh_deg, abs=DEG)
        assert degrees(np.arctan2(shank.z, shank.x)) == pytest.approx(self.shank_deg, abs=DEG)


@pytest.mark.parametrize(
    ("body", "hip", "trunk", "sole", "ball", "found"),
    [
        pytest.param(
            A, at(790, 255), 24, 63.6, (-90.2609, 181.8295),
            Found((59.8257, 120.1286), (379.4669, 389.4862), 742.525949,
                  121.741339, 76.279578, 18.138239, 40.120422, 95.861761),
            id="C1-1",
        ),
        pytest.param(
            B, at(800, 160), 30, 66, (-77.28, 173.5736),
            Found((56.2816, 107.1559), (409.3102, 284.3444), 745.593457,
                  135.692839, 87.347489, 17.654649, 26.652511, 102.345351),
            id="C1-2",
        ),
        pytest.param(
            C, at(903, 180), 28, 70.4, (-68.0967, 191.2377),
            Found((73.6369, 112.1467), (474.4945, 335.9457), 832.134109,
                  130.827425, 80.425354, 19.997929, 29.174646, 98.002071),
            id="C1-3",
        ),
        pytest.param(
            D, at(735, 200), 26, 60, (-88.0, 152.4205),
            Found((43.2102, 101.1577), (372.4004, 310.284), 698.815343,
                  130.656184, 87.573225, 16.917041, 32.426775, 99.082959),
            id="C1-4",
        ),
    ],
)  # fmt: skip
def test_independent_solution_with_the_heel_on_the_floor(
    body: Body, hip: Point, trunk: float, sole: float, ball: tuple[float, float], found: Found
) -> None:
    posture = sole_at(body, hip, np.deg2rad(trunk), at(0, 0), np.deg2rad(sole))
    is_at(posture.ball, *ball)
    found.agrees(posture)
    assert float(posture.shortfall) == 0.0


def test_independent_solution_out_of_reach_c1_5() -> None:
    posture = sole_at(D, at(1010, 150), np.deg2rad(30), at(0, 0), np.deg2rad(68))
    assert float(posture.needed) == pytest.approx(954.766199, abs=MM)
    assert float(posture.reach) == pytest.approx(769, abs=MM)
    assert float(posture.shortfall) == pytest.approx(185.766199, abs=MM)
    assert np.isnan(posture.knee_angle)
    assert np.isnan(posture.knee.x)


@pytest.mark.parametrize(
    ("body", "hip", "trunk", "ball", "ankle_deg", "heel", "sole_deg", "found"),
    [
        pytest.param(
            A, at(790, 255), 24, at(-60, 205), 90, (75.5325, 53.8711), 48.114219,
            Found((101.1121, 185.6121), (412.3036, 464.6889), 851.469318,
                  109.076131, 90.0, 29.038088, 41.885781, 84.961912),
            id="C2-1",
        ),
        pytest.param(
            B, at(800, 160), 30, at(-95, 215), 95, (-13.9544, 43.1524), 64.750806,
            Found((39.9778, 151.5098), (410.5653, 288.2208), 896.688352,
                  141.526753, 95.0, 18.224053, 20.249194, 101.775947),
            id="C2-2",
        ),
        pytest.param(
            D, at(760, 200), 26, at(-110, 190), 100, (-22.2022, 37.463), 60.075963,
            Found((21.1422, 138.5633), (387.7988, 271.4652), 870.057469,
                  149.207063, 100.0, 10.8689, 19.924037, 105.1311),
            id="C2-3",
        ),
    ],
)  # fmt: skip
def test_independent_solution_with_the_heel_lifted(
    body: Body,
    hip: Point,
    trunk: float,
    ball: Point,
    ankle_deg: float,
    heel: tuple[float, float],
    sole_deg: float,
    found: Found,
) -> None:
    """The distance to span is hip to ball here: the plain length between the two given points."""
    posture = heel_lifted(body, hip, np.deg2rad(trunk), ball, np.deg2rad(ankle_deg))
    is_at(posture.heel, *heel)
    is_at(posture.ball, float(ball.x), float(ball.z))
    assert degrees(posture.sole_angle) == pytest.approx(sole_deg, abs=DEG)
    found.agrees(posture)


@pytest.mark.parametrize(
    ("body", "ankle_deg", "ball_to_knee"),
    [
        pytest.param(A, 90, 538.988868, id="C2-1"),
        pytest.param(B, 95, 510.840006, id="C2-2"),
        pytest.param(D, 100, 504.420675, id="C2-3"),
    ],
)
def test_independent_length_of_the_rigid_lower_leg(
    body: Body, ankle_deg: float, ball_to_knee: float
) -> None:
    posture = heel_lifted(body, at(790, 255), 0.4, at(-60, 205), np.deg2rad(ankle_deg))
    assert float(posture.reach - body.thigh) == pytest.approx(ball_to_knee, abs=MM)


@dataclass(frozen=True)
class Stroke:
    """A flat pad on a pivot; the pad moves forward and its face turns with the pedal."""

    body: Body
    hip: Point
    trunk_deg: float
    pivot: Point
    pad: Point
    face_deg: float
    #: +1 when the sole stands up over the stroke (hanging), -1 when it lies down.
    turn: int

    def at(self, rotation_deg: float) -> Posture:
        angle = self.turn * np.deg2rad(rotation_deg)
        arm = (self.pad - self.pivot).turned(Point(0.0, 1.0, 0.0), angle)
        face = np.deg2rad(self.face_deg) + angle
        return sole_on_pad(self.body, self.hip, np.deg2rad(self.trunk_deg), self.pivot + arm, face)


HANGING = Stroke(A, at(790, 255), 24, at(-170, 420), at(-55, 200), 62, +1)
FLOOR = Stroke(B, at(800, 160), 30, at(-120, -15), at(-70, 195), 70, -1)


@pytest.mark.parametrize(
    ("stroke", "rotation", "pad", "sole", "heel", "knee", "angles"),
    [
        pytest.param(HANGING, 0, (-55.0, 200.0), 62, (40.3027, 20.7616),
                     (396.6768, 433.6641), (111.421034, 73.8506, 89.570434), id="C3-1 0"),
        pytest.param(HANGING, 6, (-78.6262, 189.1844), 68, (-2.5811, 0.9661),
                     (380.3104, 392.0344), (120.205257, 70.69949, 95.505767), id="C3-1 6"),
        pytest.param(HANGING, 12, (-103.2536, 180.8977), 74, (-47.2992, -14.2384),
                     (367.3329, 344.3115), (131.131132, 69.062478, 102.068654), id="C3-1 12"),
        pytest.param(HANGING, 18, (-128.6122, 175.2306), 80, (-93.3617, -24.6854),
                     (358.995, 284.3029), (145.850928, 69.74033, 110.110598), id="C3-1 18"),
        pytest.param(FLOOR, 0, (-70.0, 195.0), 70, (-5.0162, 16.4584),
                     (412.6877, 294.4961), (134.541178, 83.690987, 100.850192), id="C3-2 0"),
        pytest.param(FLOOR, 8, (-99.7129, 199.9149), 62, (-10.5134, 32.1549),
                     (408.2594, 280.9929), (142.384935, 97.548744, 102.836191), id="C3-2 8"),
        pytest.param(FLOOR, 16, (-129.8208, 200.6468), 54, (-18.1416, 46.9336),
                     (400.0161, 250.0717), (154.641608, 113.332264, 107.309344), id="C3-2 16"),
    ],
)  # fmt: skip
def test_independent_solution_with_the_sole_flush_on_the_pad(
    stroke: Stroke,
    rotation: float,
    pad: tuple[float, float],
    sole: float,
    heel: tuple[float, float],
    knee: tuple[float, float],
    angles: tuple[float, float, float],
) -> None:
    posture = stroke.at(rotation)
    is_at(posture.ball, *pad)
    is_at(posture.heel, *heel)
    is_at(posture.knee, *knee)
    assert degrees(posture.sole_angle) == pytest.approx(sole, abs=DEG)
    found = (posture.knee_angle, posture.ankle_angle, posture.hip_angle)
    assert [degrees(angle) for angle in found] == pytest.approx(list(angles), abs=DEG)


@pytest.mark.parametrize(
    ("stroke", "rotation", "chord", "arc"),
    [
        pytest.param(HANGING, 6, 25.984157, 25.996033, id="C3-1 6"),
        pytest.param(HANGING, 12, 51.897092, 51.992067, id="C3-1 12"),
        pytest.param(HANGING, 18, 77.667782, 77.9881, id="C3-1 18"),
        pytest.param(FLOOR, 8, 30.116706, 30.141184, id="C3-2 8"),
        pytest.param(FLOOR, 16, 60.086687, 60.282369, id="C3-2 16"),
    ],
)
def test_independent_travel_of_the_pad(
    stroke: Stroke, rotation: float, chord: float, arc: float
) -> None:
    """By the lever that carries the pad: along its arc, and straight from where it was."""
    out = stroke.pad - stroke.pivot
    lean = np.arctan2(float(out.x), stroke.turn * -float(out.z))
    carried = lever(
        Pedal(
            hinge="hanging" if stroke.turn > 0 else "floor",
            pivot=stroke.pivot,
            pad_radius=float(out.length()),
            pad_lean=lean,
            pad_offset=0.0,
            pad_width=60.0,
            pin_radius=50.0,
        )
    )
    travel = arc_of_angle(carried, np.deg2rad(rotation))
    assert float(travel) == pytest.approx(arc, abs=1e-5)
    there = pad_after(carried, travel)
    is_at(there, float(stroke.at(rotation).ball.x), float(stroke.at(rotation).ball.z))
    assert float((there - stroke.pad).length()) == pytest.approx(chord, abs=1e-5)


def test_independent_solution_drags_the_heel_into_the_floor_from_12_degrees_c3_1() -> None:
    below = [float(HANGING.at(rotation).heel.z) < 0.0 for rotation in (0, 6, 12, 18)]
    assert below == [False, False, True, True]
