"""Larkfield, the invented car whose arms were cut too short at first."""

import pytest

from pedalwright.design import Design
from pedalwright.project import car_text, read


@pytest.fixture(scope="session")
def first() -> Design:
    return read(car_text("larkfield-first")).design


@pytest.fixture(scope="session")
def improved() -> Design:
    return read(car_text("larkfield-improved")).design
