"""VDI 2230: preload and torque of fine-thread M8 x 1 as its table prints them, 90 % of yield."""

import pytest

from pedalwright.shelf.bolts import bolt, property_class
from pedalwright.structure.formulas.bolts import preload, tightening_torque


@pytest.mark.parametrize(
    ("grade", "friction", "clamp", "torque"),
    [
        ("8.8", 0.10, 20.7, 22.8),
        ("10.9", 0.10, 30.4, 33.5),
        ("8.8", 0.12, 20.2, 26.1),
        ("10.9", 0.12, 29.7, 38.3),
        ("8.8", 0.14, 19.7, 29.2),
        ("10.9", 0.14, 28.9, 42.8),
    ],
)
def test_table_of_fine_threads_m8x1(
    grade: str, friction: float, clamp: float, torque: float
) -> None:
    row = bolt("M8")
    load = preload(property_class(grade).yield_strength, 0.9, 8.0, 1.0, friction)
    turn = tightening_torque(load, 8.0, 1.0, friction, friction, row.head_face, row.hole_medium)
    assert load / 1000 == pytest.approx(clamp, rel=4e-3)
    assert turn / 1000 == pytest.approx(torque, rel=5e-3)


@pytest.mark.parametrize(("size", "clamp", "torque"), [("M6", 10.18, 10.15), ("M8", 18.63, 24.57)])
def test_coarse_threads_solved_independently(size: str, clamp: float, torque: float) -> None:
    row = bolt(size)
    load = preload(640.0, 0.9, row.diameter, row.pitch, 0.12)
    turn = tightening_torque(
        load, row.diameter, row.pitch, 0.12, 0.12, row.head_face, row.hole_medium
    )
    assert load / 1000 == pytest.approx(clamp, rel=1e-3)
    assert turn / 1000 == pytest.approx(torque, rel=1e-3)
