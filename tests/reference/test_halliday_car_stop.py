"""Case C23: Halliday, Resnick, Walker, Fundamentals of Physics, the car that locks all wheels.

Strength: handbook for the data, read in a public reprint; the book's answers (3.9 m/s2, 2.0,
3.5, 0.79 and 1.4 kN) are from memory, the further digits were recomputed with plain equations.
"""

import pytest

from pedalwright.brakes.formulas import deceleration, front_load, rear_load

G, WEIGHT, MU = 9.8, 11_000.0, 0.40
CAR = {"m": WEIGHT / G, "g": G, "psi": (4.2 - 1.8) / 4.2, "z": MU, "h": 750.0, "L": 4200.0}


def test_c23_loads_and_braking_forces_per_wheel() -> None:
    front, rear = front_load(**CAR) / 2.0, rear_load(**CAR) / 2.0
    force = MU * (front_load(**CAR) + rear_load(**CAR))
    assert deceleration(force, WEIGHT / G) == pytest.approx(3.92)
    assert front == pytest.approx(3535.7, abs=0.06)
    assert rear == pytest.approx(1964.3, abs=0.06)
    assert MU * front == pytest.approx(1414.3, abs=0.06)
    assert MU * rear == pytest.approx(785.7, abs=0.06)


def test_c23_the_books_rounded_answers() -> None:
    front, rear = front_load(**CAR) / 2.0, rear_load(**CAR) / 2.0
    printed = [f"{newtons / 1000.0:.2g}" for newtons in (rear, front, MU * rear, MU * front)]
    assert printed == ["2", "3.5", "0.79", "1.4"]
