"""ISO 2768-1, medium, as tables of general tolerances print it."""

import pytest

from pedalwright.shelf.tolerances import general_tolerance


@pytest.mark.parametrize(
    ("length", "either_way"), [(4.0, 0.1), (25.0, 0.2), (90.0, 0.3), (300.0, 0.5), (650.0, 0.8)]
)
def test_medium(length: float, either_way: float) -> None:
    row = general_tolerance(length)
    assert row is not None
    assert row.medium == either_way


def test_nothing_is_made_up_beyond_the_table() -> None:
    assert general_tolerance(2500.0) is None
