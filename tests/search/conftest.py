"""The packaged cars, read once."""

from collections.abc import Callable
from functools import cache

import pytest

from pedalwright.design import Design
from pedalwright.project import car_text, read


@cache
def design_of(name: str) -> Design:
    return read(car_text(name)).design


@pytest.fixture
def car() -> Callable[[str], Design]:
    return design_of
