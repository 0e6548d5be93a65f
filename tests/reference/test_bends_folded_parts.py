"""A channel and a zed, blank and hole worked by hand with DIN 6935's deductions."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.making.bending import (
    Face,
    FlatPattern,
    Fold,
    Hole,
    Neutral,
    Sheet,
    neutral_by_din,
    unfold,
)


def din(thickness: float) -> object:
    def neutral(radius: float) -> Neutral:
        return neutral_by_din(radius, thickness)

    return neutral


def leg(name: str, length: float, width: float) -> Face:
    return Face(name=name, outline=((0.0, 0.0), (width, 0.0), (width, length), (0.0, length)))


def developed(pattern: FlatPattern) -> float:
    heights = [y for _, y in pattern.outline]
    return max(heights) - min(heights)


def test_a_channel_40_120_40_and_where_its_hole_is() -> None:
    """Radius 3, sheet 3: 200 less twice 5.756; the hole 30 from the first flange's outer face."""
    width, square = 80.0, np.pi / 2
    web = replace(
        leg("web", 120.0, width),
        holes=(Hole(name="H1", centre=(40.0, 30.0), diameter=8.0),),
        folds=(
            Fold(
                name="B1",
                start=(width, 0.0),
                end=(0.0, 0.0),
                angle=square,
                radius=3.0,
                face=leg("first flange", 40.0, width),
            ),
            Fold(
                name="B2",
                start=(0.0, 120.0),
                end=(width, 120.0),
                angle=square,
                radius=3.0,
                face=leg("second flange", 40.0, width),
            ),
        ),
    )
    flat = unfold("channel", web, Sheet(metal="S275", thickness=3.0), din(3.0))
    assert developed(flat) == pytest.approx(188.49, abs=0.005)
    edge = min(y for _, y in flat.outline)
    assert flat.holes[0].centre[1] - edge == pytest.approx(64.24, abs=0.005)


def test_a_zed_35_60_28_with_two_bends_of_45_degrees() -> None:
    width = 50.0
    web = replace(
        leg("web", 60.0, width),
        folds=(
            Fold(
                name="B1",
                start=(width, 0.0),
                end=(0.0, 0.0),
                angle=np.pi / 4,
                radius=4.0,
                face=leg("first", 35.0, width),
            ),
            Fold(
                name="B2",
                start=(0.0, 60.0),
                end=(width, 60.0),
                angle=-np.pi / 4,
                radius=4.0,
                face=leg("second", 28.0, width),
            ),
        ),
    )
    flat = unfold("zed", web, Sheet(metal="S275", thickness=2.0), din(2.0))
    assert developed(flat) == pytest.approx(120.60, abs=0.005)
    assert [bend.up for bend in flat.bends] == [True, False]
