"""EN 10270-1, table of wire SM: least tensile strength by diameter (from memory, to verify)."""

import pytest

from pedalwright.linkage.formulas import wire_strength


@pytest.mark.parametrize(
    ("diameter", "strength"), [(0.5, 2200.0), (1.0, 1980.0), (2.0, 1760.0), (3.0, 1630.0)]
)
def test_the_line_runs_through_the_table(diameter: float, strength: float) -> None:
    """To within 1 per cent of the rows."""
    assert wire_strength(diameter) == pytest.approx(strength, rel=0.01)
