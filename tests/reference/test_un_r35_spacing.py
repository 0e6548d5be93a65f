"""Gaps between pedals, UN R35 annex 4 (the table as a national inspection rule repeats it).

Strength: the numbers were read there; which edges the letters join is inferred. Exact.
"""

import pytest

from pedalwright.core.checks import Finding
from pedalwright.driver import Pad, Row, check_row, spacing


def pad(left: float, right: float) -> Pad:
    return Pad(middle=(left + right) / 2, width=right - left)


WIDE = Row(
    left_wall=-230,
    clutch=pad(-175, -115),
    brake=pad(-60, 0),
    accelerator=pad(65, 105),
    right_wall=150,
)
NARROW = Row(
    left_wall=-180,
    clutch=pad(-150, -95),
    brake=pad(-60, 5),
    accelerator=pad(48, 85),
    right_wall=120,
)


@pytest.mark.parametrize(
    ("row", "gaps", "to_walls"),
    [
        pytest.param(WIDE, (65, 55, 55), (170, 150), id="P-1"),
        pytest.param(NARROW, (43, 35, 30), (120, 115), id="P-2"),
    ],
)
def test_gaps_across_the_car(
    row: Row, gaps: tuple[float, float, float], to_walls: tuple[float, float]
) -> None:
    found = spacing(row)
    assert (found.accelerator_brake, found.brake_clutch, found.clutch_wall) == gaps
    assert (found.brake_left_wall, found.brake_right_wall) == to_walls


def failed(row: Row) -> set[str]:
    findings: list[Finding] = list(check_row(row))
    return {f.limit.code for f in findings if not f.ok and f.limit.source.document == "UN R35"}


def test_which_gaps_pass() -> None:
    assert failed(WIDE) == set()
    assert failed(NARROW) == {
        "driver.gap_accelerator_brake",
        "driver.gap_brake_clutch",
        "driver.gap_clutch_wall",
        "driver.brake_left_wall",
        "driver.brake_right_wall",
    }
