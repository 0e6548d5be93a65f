"""Charts are read back: where a value is drawn, what is written, that names keep apart."""

import itertools
import math

import numpy as np
import pytest

from pedalwright.drawing.axis import Axis, round_step
from pedalwright.drawing.budget import BudgetChart, Cause
from pedalwright.drawing.charts import PITCH, Level, LineChart, Series, Spot, spread
from pedalwright.drawing.lines import Line
from pedalwright.drawing.shapes import Polyline, Text
from pedalwright.drawing.sheet import Drawing
from pedalwright.drawing.svg import svg


def texts(drawing: Drawing) -> dict[str, Text]:
    return {s.text: s for s in drawing.laid_out().shapes if isinstance(s, Text)}


def titled(drawing: Drawing, title: str) -> list[Polyline]:
    shapes = drawing.laid_out().shapes
    return [s for s in shapes if isinstance(s, Polyline) and s.title == title]


@pytest.mark.parametrize(
    ("wanted", "step"), [(0.7, 1.0), (1.0, 1.0), (1.1, 2.0), (3.0, 5.0), (60.0, 100.0), (0.2, 0.2)]
)
def test_steps_are_round(wanted: float, step: float) -> None:
    assert round_step(wanted) == pytest.approx(step)


@pytest.mark.parametrize(
    ("values", "expected"),
    [
        ([0.0, 92.0], ["0", "20", "40", "60", "80", "100"]),
        ([4.93, 5.5], ["4.8", "5.0", "5.2", "5.4", "5.6"]),
        ([0.3, 0.8], ["0.3", "0.4", "0.5", "0.6", "0.7", "0.8"]),
        ([-3.0, 3.0], ["-4", "-2", "0", "2", "4"]),
        ([0.0, 0.3], ["0.0", "0.1", "0.2", "0.3"]),
        ([math.nan], ["0.0", "0.2", "0.4", "0.6", "0.8", "1.0"]),
    ],
)
def test_an_axis_counts_in_round_steps_and_holds_all_values(
    values: list[float], expected: list[str]
) -> None:
    ruler = Axis("Travel", "mm").ruled(values)
    assert [text for _, text in ruler.marks] == expected


def test_an_axis_of_one_value_is_not_empty() -> None:
    for value in (0.0, 5.0, -0.02):
        ruler = Axis("Travel", "mm").ruled([value, value])
        assert ruler.low < value < ruler.high


def test_an_axis_goes_down_to_zero_when_asked() -> None:
    assert Axis("Force", "N", include=(0.0,)).ruled([300.0, 480.0]).low == 0.0


TRAVEL = np.linspace(0.0, 100.0, 11)


def chart(*series: Series, limits: tuple[Level, ...] = (), spots: tuple[Spot, ...] = ()) -> Drawing:
    return LineChart(
        name="c",
        title="Chart",
        x=Axis("Pad travel", "mm"),
        y=Axis("Force", "N"),
        series=series,
        limits=limits,
        spots=spots,
        width=100.0,
        height=50.0,
    ).drawing()


def test_values_are_drawn_where_the_axes_say() -> None:
    drawing = chart(Series("force", TRAVEL, 5.0 * TRAVEL))
    (line,) = titled(drawing, "force")
    assert line.points[0] == (0.0, 0.0)
    assert line.points[-1] == pytest.approx((100.0, 50.0))
    assert line.points[3] == pytest.approx((30.0, 15.0))
    mark = texts(drawing)["200"]
    assert mark.at[1] == pytest.approx(20.0)
    assert {"Pad travel (mm)", "Force (N)"} <= set(texts(drawing))


def test_a_gap_in_the_values_is_a_gap_in_the_line() -> None:
    values = np.where(np.arange(11) == 5, math.nan, TRAVEL)
    lines = titled(chart(Series("force", TRAVEL, values)), "force")
    assert [len(line.points) for line in lines] == [5, 5]


def test_a_line_is_named_at_its_last_value() -> None:
    values = np.where(TRAVEL > 60.0, math.nan, 5.0 * TRAVEL)
    drawing = chart(Series("stops early", TRAVEL, values), Series("force", TRAVEL, 5.0 * TRAVEL))
    assert texts(drawing)["stops early"].at[1] == pytest.approx(30.0)
    assert texts(drawing)["stops early"].at[0] > 100.0


def test_names_keep_apart() -> None:
    series = [Series(f"attempt {i}", TRAVEL, (5.0 + 0.01 * i) * TRAVEL) for i in range(4)]
    drawing = chart(*series, limits=(Level("at most 510 N", 510.0),))
    named = [t for t in texts(drawing).values() if t.at[0] > 100.0]
    heights = sorted(t.at[1] for t in named)
    assert len(heights) == 5
    assert all(b - a >= PITCH - 1e-9 for a, b in itertools.pairwise(heights))


def test_spreading_moves_no_more_than_needed() -> None:
    assert spread([0.0, 10.0, 20.0], 4.0) == pytest.approx([0.0, 10.0, 20.0])
    assert spread([10.0, 10.0, 30.0], 4.0) == pytest.approx([8.0, 12.0, 30.0])
    assert spread([10.0, 10.0, 13.0], 4.0) == pytest.approx([7.0, 11.0, 15.0])


def test_a_limit_goes_right_across_in_a_line_of_its_own() -> None:
    drawing = chart(Series("force", TRAVEL, TRAVEL), limits=(Level("at most 80 N", 80.0),))
    (limit,) = [
        s for s in drawing.laid_out().shapes if isinstance(s, Polyline) and s.part == "limit"
    ]
    assert limit.line is Line.CENTRE
    assert limit.points == ((0.0, pytest.approx(40.0)), (100.0, pytest.approx(40.0)))


def test_a_spot_is_named() -> None:
    assert "panic stop" in texts(
        chart(Series("f", TRAVEL, TRAVEL), spots=(Spot("panic stop", 9, 9),))
    )


def budget(*amounts: float, limits: tuple[Level, ...] = ()) -> Drawing:
    return BudgetChart(
        name="b",
        title="Travel",
        causes=tuple(Cause(f"cause {i}", amount) for i, amount in enumerate(amounts)),
        total="travel",
        limits=limits,
        width=100.0,
    ).drawing()


def ends(drawing: Drawing, name: str) -> tuple[float, float]:
    (bar,) = titled(drawing, name)
    xs = [x for x, _ in bar.points]
    return min(xs), max(xs)


def test_bars_begin_where_the_last_ended_and_add_up() -> None:
    drawing = budget(3.0, 12.5, 4.5)
    assert ends(drawing, "cause 0") == pytest.approx((0.0, 15.0))
    assert ends(drawing, "cause 1") == pytest.approx((15.0, 77.5))
    assert ends(drawing, "cause 2") == pytest.approx((77.5, 100.0))
    assert ends(drawing, "travel") == pytest.approx((0.0, 100.0))
    assert {"3.0", "12.5", "4.5", "20.0"} <= set(texts(drawing))


def test_a_cause_that_gives_back_steps_to_the_left() -> None:
    drawing = budget(15.0, -5.0, limits=(Level("all there is", 20.0),))
    assert ends(drawing, "cause 1") == pytest.approx((50.0, 75.0))
    assert ends(drawing, "travel") == pytest.approx((0.0, 50.0))
    assert texts(drawing)["all there is"].at[0] == pytest.approx(100.0)


def test_what_has_no_value_is_said_and_the_sum_has_none_either() -> None:
    drawing = budget(3.0, math.nan)
    assert titled(drawing, "travel") == []
    values = [s.text for s in drawing.laid_out().shapes if isinstance(s, Text)]
    assert values.count("no value") == 2
    assert b"nan" not in svg(drawing, physical=True)


@pytest.mark.parametrize(
    ("values", "expected"),
    [
        ([0.0, 4.7], ["0", "1", "2", "3", "4", "5"]),
        ([0.0, 2.3], ["0.0", "0.5", "1.0", "1.5", "2.0", "2.5"]),
        ([0.0, 1.1], ["0.00", "0.25", "0.50", "0.75", "1.00", "1.25"]),
        ([0.0, 9.0], ["0", "2", "4", "6", "8", "10"]),
        ([0.0, 0.016], ["0.000", "0.005", "0.010", "0.015", "0.020"]),
    ],
)
def test_an_axis_in_inches_counts_in_halves_and_quarters(
    values: list[float], expected: list[str]
) -> None:
    ruler = Axis("Travel", "in").ruled(values)
    assert [text for _, text in ruler.marks] == expected


def test_the_letters_of_an_amount_stand_over_a_limit() -> None:
    shapes = budget(15.0, 4.0, limits=(Level("room", 19.5),)).laid_out().shapes
    limit = next(i for i, s in enumerate(shapes) if isinstance(s, Polyline) and s.part == "limit")
    amount = next(i for i, s in enumerate(shapes) if isinstance(s, Text) and s.text == "19.0")
    assert amount > limit
