"""Cut lists and nestings: nothing is lost, nothing overlaps, own stock first, shortages named."""

from collections import Counter
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pedalwright.drawing import Hatch, Polyline, svg
from pedalwright.making.cutting import (
    Bar,
    BarPlan,
    Part,
    Piece,
    SheetPlan,
    Stock,
    check_bars,
    check_sheets,
    cut_bars,
    cut_sheets,
)
from pedalwright.making.cutting.bars import MANY
from pedalwright.making.cutting.drawn import Label, bars_drawing, sheet_drawings

TUBE = Bar(name="tube", length=3000.0)


def cut_pieces(plan: BarPlan) -> Counter[str]:
    return Counter(piece.name for cut in plan.bars for piece in cut.pieces)


PIECES = st.lists(
    st.builds(
        Piece,
        name=st.uuids().map(str),
        length=st.floats(80.0, 1200.0),
        count=st.integers(1, 4),
    ),
    min_size=1,
    max_size=5,
)


@given(pieces=PIECES, kerf=st.floats(0.0, 4.0), trim=st.floats(0.0, 20.0))
@settings(max_examples=40)
def test_every_piece_is_cut_once_and_every_bar_is_long_enough(
    pieces: list[Piece], kerf: float, trim: float
) -> None:
    plan = cut_bars(pieces, [TUBE], kerf=kerf, trim=trim)
    assert cut_pieces(plan) == Counter({piece.name: piece.count for piece in pieces})
    assert plan.missing == ()
    for cut in plan.bars:
        total = sum(piece.length for piece in cut.pieces) + (len(cut.pieces) - 1) * kerf + trim
        assert total + cut.left <= TUBE.length + 1e-6
        assert cut.left == pytest.approx(max(0.0, TUBE.length - total - kerf), abs=1e-5)
    assert plan.bought.bound <= plan.bought.cost == TUBE.length * len(plan.bars)


def test_own_off_cuts_are_used_before_a_bar_is_bought() -> None:
    own = Bar(name="off-cut", length=700.0, count=2, bought=False)
    plan = cut_bars([Piece(name="leg", length=330.0, count=4)], [own, TUBE], kerf=2.0)
    assert [cut.bar.name for cut in plan.bars] == ["off-cut", "off-cut"]
    assert plan.bought.cost == 0.0
    assert plan.bought.best


def test_of_ones_own_bars_the_short_one_is_taken() -> None:
    own = [
        Bar(name="long", length=1500.0, count=1, bought=False),
        Bar(name="short", length=420.0, count=1, bought=False),
    ]
    plan = cut_bars([Piece(name="leg", length=400.0)], own, kerf=2.0)
    assert [cut.bar.name for cut in plan.bars] == ["short"]
    assert plan.bars[0].left == pytest.approx(18.0)


def test_a_shop_that_sells_two_lengths() -> None:
    """Two of 900 from one bar of 2000, not from one of 3000."""
    plan = cut_bars(
        [Piece(name="rail", length=900.0, count=2)], [TUBE, Bar(name="2 m", length=2000.0)], kerf=2
    )
    assert [cut.bar.name for cut in plan.bars] == ["2 m"]


def test_what_finds_no_stock_is_named() -> None:
    own = Bar(name="off-cut", length=700.0, count=1, bought=False)
    pieces = [Piece(name="leg", length=330.0, count=3), Piece(name="beam", length=900.0)]
    plan = cut_bars(pieces, [own], kerf=2.0)
    assert {piece.name: piece.count for piece in plan.missing} == {"leg": 1, "beam": 1}
    broken = {f.limit.code: f for f in check_bars(pieces, [own], plan) if not f.ok}
    assert set(broken) == {"making.part_on_stock", "making.stock_enough"}
    assert broken["making.part_on_stock"].about == "beam"
    assert broken["making.stock_enough"].value == pytest.approx(0.5)


def test_no_stock_at_all_is_an_answer() -> None:
    pieces = [Piece(name="leg", length=330.0, count=3)]
    plan = cut_bars(pieces, [], kerf=2.0)
    assert plan.missing == tuple(pieces)
    assert all(not f.ok for f in check_bars(pieces, [], plan))


def test_many_short_pieces_are_proved_as_well() -> None:
    """More ways to fill a bar than are written down: 128 short pieces, by single bars."""
    pieces = [Piece(name=f"{n}", length=31.0 + 7.3 * n, count=16) for n in range(8)]
    total = sum((piece.length + 2.0) * piece.count for piece in pieces)
    plan = cut_bars(pieces, [TUBE], kerf=2.0)
    assert MANY < 16**8
    assert cut_pieces(plan) == Counter({piece.name: 16 for piece in pieces})
    assert len(plan.bars) == -(-total // 3002.0)
    assert plan.bought.best


PARTS = st.lists(
    st.builds(
        Part,
        name=st.uuids().map(str),
        length=st.floats(20.0, 300.0),
        width=st.floats(20.0, 300.0),
        count=st.integers(1, 3),
        grain=st.sampled_from(["any", "along", "across"]),
    ),
    min_size=1,
    max_size=8,
)
SHEETS = [
    Stock(name="off-cut", length=380.0, width=320.0, count=1, bought=False),
    Stock(name="sheet", length=600.0, width=400.0),
]


@given(parts=PARTS, gap=st.floats(0.0, 6.0), margin=st.floats(0.0, 8.0))
@settings(max_examples=60)
def test_no_two_parts_overlap_and_none_hangs_over_the_edge(
    parts: list[Part], gap: float, margin: float
) -> None:
    plan = cut_sheets(parts, SHEETS, gap=gap, margin=margin, tries=8)
    counted = Counter(placed.part.name for sheet in plan.sheets for placed in sheet.parts)
    counted += Counter(part.name for part in plan.missing)
    assert counted == Counter({part.name: part.count for part in parts})
    for sheet in plan.sheets:
        for placed in sheet.parts:
            assert placed.x >= margin - 1e-6
            assert placed.y >= margin - 1e-6
            assert placed.x + placed.along <= sheet.stock.length - margin + 1e-6
            assert placed.y + placed.across <= sheet.stock.width - margin + 1e-6
            assert placed.turned is (placed.part.grain == "across") or placed.part.grain == "any"
        for one, other in combinations(sheet.parts, 2):
            clear = max(
                other.x - one.x - one.along,
                one.x - other.x - other.along,
                other.y - one.y - one.across,
                one.y - other.y - other.across,
            )
            assert clear >= gap - 1e-6
    assert plan.area.bound <= plan.area.cost
    assert plan.bought.bound <= plan.bought.cost


def nested(*parts: Part, stock: list[Stock] | None = None) -> SheetPlan:
    return cut_sheets(parts, stock or SHEETS, gap=4.0, margin=5.0)


def test_the_own_off_cut_comes_first() -> None:
    plan = nested(Part(name="plate", length=200.0, width=100.0, count=3))
    assert [sheet.stock.name for sheet in plan.sheets] == ["off-cut"]
    assert plan.bought.cost == 0.0
    assert plan.bought.best


def test_grain_turns_a_part() -> None:
    along = nested(Part(name="cheek", length=350.0, width=200.0, grain="along"))
    assert along.sheets[0].stock.name == "off-cut"
    across = nested(Part(name="cheek", length=350.0, width=200.0, grain="across"))
    assert across.sheets[0].stock.name == "sheet"
    assert across.sheets[0].parts[0].turned
    assert across.sheets[0].parts[0].along == 200.0


def test_a_part_larger_than_the_stock_is_named_with_its_excess() -> None:
    part = Part(name="wall", length=700.0, width=300.0)
    plan = nested(part)
    assert [p.name for p in plan.missing] == ["wall"]
    broken = {f.limit.code: f for f in check_sheets([part], SHEETS, plan) if not f.ok}
    assert set(broken) == {"making.part_on_stock", "making.stock_enough"}
    assert broken["making.part_on_stock"].value == pytest.approx(700.0 / 590.0)


def test_sheets_that_ran_out_break_only_the_count() -> None:
    parts = [Part(name="half", length=300.0, width=250.0, count=3)]
    own = [Stock(name="off-cut", length=380.0, width=320.0, count=2, bought=False)]
    plan = nested(*parts, stock=own)
    assert {f.limit.code for f in check_sheets(parts, own, plan) if not f.ok} == {
        "making.stock_enough"
    }


def test_the_bound_by_area_counts_own_sheets_first() -> None:
    """Six of 280 x 190 are 319200 mm2; the off-cut has 121600, a sheet 240000: one at least."""
    plan = nested(Part(name="p", length=280.0, width=190.0, count=6))
    assert plan.bought.bound == 1.0
    assert plan.bought.cost >= 1.0
    assert plan.area.bound == pytest.approx(6 * 280.0 * 190.0)


def test_a_bar_is_drawn_to_length_with_what_is_left() -> None:
    plan = cut_bars([Piece(name="leg", length=330.0, count=4)], [TUBE], kerf=2.0, trim=10.0)
    drawing = bars_drawing(plan)
    boxes = [s for s in drawing.shapes if isinstance(s, Polyline) and s.part == "leg"]
    assert [box.points[1][0] - box.points[0][0] for box in boxes] == pytest.approx([330.0] * 4)
    assert boxes[1].points[0][0] == pytest.approx(10.0 + 330.0 + 2.0)
    assert sum(isinstance(s, Hatch) for s in drawing.shapes) == 2
    assert b"left 1662" in svg(drawing.fitted(260.0, 180.0), physical=True)


def test_words_on_a_part_shrink_turn_and_vanish() -> None:
    assert len(Label(0.0, 0.0, 60.0, 20.0, ("A\n60 × 20", "A")).drawn(1.0)) == 2
    (upright,) = Label(0.0, 0.0, 5.0, 20.0, ("A\n60 × 20", "bracket", "A")).drawn(1.0)
    assert upright.angle > 1.0
    assert Label(0.0, 0.0, 2.0, 1.0, ("A",)).drawn(1.0) == ()


def test_every_sheet_has_its_drawing() -> None:
    plan = nested(Part(name="p", length=280.0, width=190.0, count=6))
    drawings = sheet_drawings(plan)
    assert [d.name for d in drawings] == [f"sheet-{i}" for i in range(1, len(plan.sheets) + 1)]
    for drawing, sheet in zip(drawings, plan.sheets, strict=True):
        parts = [s for s in drawing.shapes if isinstance(s, Polyline) and s.part == "p"]
        assert len(parts) == len(sheet.parts)
