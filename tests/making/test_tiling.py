"""Sheets over a drawing: all of it is shown, neighbours overlap, crosses agree, empty ones go."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.drawing import Arc, Box, Circle, Drawing, Group, Line, Polyline, Text
from pedalwright.making.tiling import A4, LETTER, PAPERS, Paper, Printer, Tiling, tiled
from pedalwright.making.tiling.formulas import sheets_along, stretch
from pedalwright.making.tiling.parts import OVERLAP


def plate(wide: float, high: float) -> Drawing:
    outline = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    return Drawing(name="plate", title="Plate", shapes=(Polyline(outline, closed=True),))


def holds(box: Box, x: float, y: float) -> bool:
    return box.left <= x <= box.right and box.bottom <= y <= box.top


PLATES = st.builds(plate, st.floats(10.0, 900.0), st.floats(10.0, 900.0))
PRINTERS = st.builds(Printer, bar_x=st.floats(97.0, 103.0), bar_y=st.floats(97.0, 103.0))


@given(drawing=PLATES, paper=st.sampled_from(list(PAPERS.values())), printer=PRINTERS)
def test_every_place_of_the_outline_is_on_a_sheet(
    drawing: Drawing, paper: Paper, printer: Printer
) -> None:
    tiling = tiled(drawing, paper, printer)
    (outline,) = drawing.shapes
    assert isinstance(outline, Polyline)
    corners = outline.points
    for (ax, ay), (bx, by) in zip(corners, (*corners[1:], corners[0]), strict=True):
        for i in range(21):
            x, y = ax + i / 20 * (bx - ax), ay + i / 20 * (by - ay)
            assert any(holds(tile.window, x, y) for tile in tiling.tiles)


@given(drawing=PLATES, printer=PRINTERS)
def test_neighbours_share_a_strip_and_both_its_crosses(drawing: Drawing, printer: Printer) -> None:
    tiling = tiled(drawing, A4, printer)
    for one, other in combinations(tiling.tiles, 2):
        if abs(one.row - other.row) + abs(one.column - other.column) == 1:
            shared = set(one.crosses) & set(other.crosses)
            assert len(shared) == 2
            for cross in shared:
                assert holds(one.window, *cross.at)
                assert holds(other.window, *cross.at)
    names = [(cross.name, cross.at) for tile in tiling.tiles for cross in tile.crosses]
    assert len({name for name, _ in names}) == len(set(names))


@given(drawing=PLATES, printer=PRINTERS)
def test_a_sheet_and_its_margins_fit_the_paper(drawing: Drawing, printer: Printer) -> None:
    tiling = tiled(drawing, A4, printer)
    for tile in tiling.tiles:
        assert tile.window.width * tiling.stretch_x == pytest.approx(tiling.width - 34.0)
        assert tile.window.height * tiling.stretch_y == pytest.approx(tiling.height - 50.0)


@pytest.mark.parametrize(("paper", "sheets"), [(A4, 4), (LETTER, 4)])
def test_a_plate_of_380_by_260_lies_on_four_sheets(paper: Paper, sheets: int) -> None:
    tiling = tiled(plate(380.0, 260.0), paper)
    assert tiling.landscape
    assert [tile.name for tile in tiling.tiles] == ["A1", "A2", "B1", "B2"]
    assert len(tiling.tiles) == sheets


def test_what_fits_upright_stays_upright() -> None:
    assert not tiled(plate(100.0, 100.0), A4).landscape
    assert len(tiled(plate(100.0, 100.0), A4).tiles) == 1


def test_a_sheet_with_nothing_on_it_is_left_out() -> None:
    tiling: Tiling = tiled(plate(700.0, 900.0), A4)
    assert len(tiling.tiles) < tiling.rows * tiling.columns
    middle = (tiling.rows // 2, tiling.columns // 2)
    assert middle not in {(tile.row, tile.column) for tile in tiling.tiles}


@pytest.mark.parametrize(
    "mark",
    [
        Circle((350.0, 520.0), 3.0),
        Arc((350.0, 520.0), 3.0, 0.0, 1.0),
        Text((350.0, 520.0), "H1"),
        Group((Polyline(((349.0, 520.0), (351.0, 520.0)), line=Line.THIN),)),
    ],
)
def test_a_single_mark_in_the_middle_keeps_its_sheet(mark: Circle | Arc | Text | Group) -> None:
    empty = plate(700.0, 900.0)
    marked = Drawing(name="plate", title="Plate", shapes=(*empty.shapes, mark))
    assert len(tiled(marked, A4).tiles) == len(tiled(empty, A4).tiles) + 1


def test_the_paper_is_stretched_its_own_way_however_it_lies() -> None:
    """Bar X lies along the short edge: level on an upright sheet, upright on a lying one."""
    printer = Printer(bar_x=98.0, bar_y=99.0)
    upright, lying = tiled(plate(100.0, 100.0), A4, printer), tiled(plate(380, 260), A4, printer)
    assert (upright.stretch_x, upright.stretch_y) == (100.0 / 98.0, 100.0 / 99.0)
    assert (lying.stretch_x, lying.stretch_y) == (100.0 / 99.0, 100.0 / 98.0)
    assert printer.corrected
    assert not Printer().corrected


def test_formulas_by_hand() -> None:
    assert stretch(100.0, 98.4) == pytest.approx(1.01626, abs=5e-6)
    assert sheets_along(386.0, 263.0, OVERLAP) == 2.0
    assert sheets_along(263.0, 263.0, OVERLAP) == 1.0
    assert sheets_along(5.0, 263.0, OVERLAP) == 1.0
