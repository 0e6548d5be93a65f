"""A public galvanic chart (mV in sea water), with the usual 0.15, 0.25 and 0.50 V."""

import pytest

from pedalwright.making.fastening import contact
from pedalwright.making.fastening.metals import DAMP, DRY, SALT


def test_limits_of_the_anodic_index() -> None:
    assert (SALT, DAMP, DRY) == (150.0, 250.0, 500.0)


@pytest.mark.parametrize(
    ("one", "other", "apart", "eaten"),
    [
        ("aluminium", "steel", 30.0, "aluminium"),
        ("aluminium", "304 active", 270.0, "aluminium"),
        ("zinc", "aluminium", 310.0, "zinc"),
    ],
)
def test_three_couples(one: str, other: str, apart: float, eaten: str) -> None:
    for pair in (contact("row", one, other), contact("row", other, one)):
        assert pair.apart == apart
        assert pair.eaten == eaten


def test_where_a_barrier_is_wanted() -> None:
    """Steel on alloy nowhere; stainless and zinc on alloy anywhere but in the dry."""
    assert contact("row", "aluminium", "steel").apart < SALT
    for other in ("304 active", "zinc"):
        assert DAMP < contact("row", "aluminium", other).apart < DRY
