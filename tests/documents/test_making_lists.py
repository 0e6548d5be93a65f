"""Lists and cards for the bench: as a table, as CSV, as JSON, as PDF, all the same numbers."""

import csv
import io
import json
import re
from io import BytesIO
from math import pi

import pypdf
import pytest

from pedalwright.documents.making_cards import Card, cards_pdf
from pedalwright.documents.making_joints import (
    bolt_table,
    count_table,
    rivet_table,
    substitute_table,
    treatment_table,
)
from pedalwright.documents.making_lists import (
    bar_table,
    bend_table,
    buying_table,
    drill_table,
    finding_table,
    sheet_table,
)
from pedalwright.documents.making_steps import next_step_words, order_table
from pedalwright.documents.making_table import Column, Table, as_csv, as_data
from pedalwright.documents.tiles import Origin
from pedalwright.making import bending
from pedalwright.making.bending import Face, Fold, Hole, Neutral, Sheet, bend_order, unfold
from pedalwright.making.bending.drawn import flat_drawing
from pedalwright.making.buying import buying
from pedalwright.making.cutting import Bar, Part, Piece, Stock, cut_bars, cut_sheets
from pedalwright.making.cutting.drawn import bars_drawing, sheet_drawings
from pedalwright.making.fastening import (
    BoltRow,
    Item,
    Layer,
    RivetRow,
    counts,
    set_bolt,
    set_rivet,
    substitutes,
    treatments,
)
from pedalwright.making.planning import Job, order
from pedalwright.making.profiles import drill_card, profile_of
from pedalwright.making.tiling import LETTER

LIP = Face(name="lip", outline=((0.0, 0.0), (90.0, 0.0), (90.0, 30.0), (0.0, 30.0)))
FOLD = Fold(name="B1", start=(90.0, 0.0), end=(0.0, 0.0), angle=pi / 2, radius=2.5, face=LIP)
WEB = Face(
    name="web",
    outline=((0.0, 0.0), (90.0, 0.0), (90.0, 60.0), (0.0, 60.0)),
    holes=(
        Hole(name="H1", centre=(30.0, 8.0), diameter=5.0),
        Hole(name="H2", centre=(60.0, 30.0), diameter=5.0),
    ),
    folds=(FOLD,),
)
NEUTRAL = Neutral(share=0.412, plus_minus=0.1, way="test strip", source="the builder's strip")
FLAT = unfold("tray", WEB, Sheet(metal="5251-H22", thickness=1.6), lambda _: NEUTRAL)
WALL = Layer(name="wall", thickness=1.6, surface="aluminium", strength=190.0)
CHEEK = Layer(name="cheek", thickness=3.0, surface="steel", strength=430.0)
ROW = RivetRow(name="flange", count=88, layers=(WALL, CHEEK), diameter=4.8)
MOUNT = BoltRow(name="cylinder", count=2, layers=(CHEEK, CHEEK), size="M8")
PIVOT = BoltRow(name="pivot", count=1, layers=(CHEEK, CHEEK), size="M10", turns=True)
HAVE = {Item(kind="blind rivet", size="4.8", length=10.0, make="alloy"): 62}
COUNTS = counts([set_rivet(ROW)], [set_bolt(MOUNT)], HAVE)
JOBS = (
    Job(name="card", does="Make it in card", hours=2.0, undo="throw it away"),
    Job(name="trial", does="Sit in it", hours=1.0, after=("card",), gate=True),
    Job(name="cut", does="Cut it", hours=1.0, after=("trial",), one_way=True),
)
PLAN = order(JOBS)
BARS = cut_bars(
    [Piece(name="leg", length=330.0, count=4)], [Bar(name="tube", length=3000.0)], kerf=2.0
)
SHEETS = cut_sheets(
    [Part(name="tray", length=90.0, width=90.0, count=3)],
    [Stock(name="off-cut", length=300.0, width=200.0, count=1, bought=False)],
    gap=4.0,
    margin=4.0,
)
STEPS = bend_order(FLAT)
DRILLED = drill_card(profile_of(FLAT))
TABLES = (
    bend_table("tray", STEPS),
    drill_table("tray", DRILLED),
    bar_table("tube 22 / 16", BARS),
    sheet_table(SHEETS),
    rivet_table([set_rivet(ROW)]),
    bolt_table([set_bolt(MOUNT), set_bolt(PIVOT)]),
    count_table(COUNTS),
    substitute_table("flange", list(substitutes(ROW))),
    treatment_table(treatments(ROW)),
    order_table(PLAN),
    buying_table(buying(counts=COUNTS)),
    finding_table(bending.check(FLAT), bending.CURES),
)


def rows(table: Table) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(as_csv(table))))


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.key)
def test_every_list_is_a_table_a_csv_and_a_json(table: Table) -> None:
    assert re.fullmatch(r"[a-z0-9-]+", table.key)
    assert table.rows
    assert all(len(row) == len(table.columns) for row in table.rows)
    assert len(rows(table)) == len(table.rows)
    data = json.loads(json.dumps(as_data(table)))
    assert len(data["rows"]) == len(table.rows)
    assert set(data["rows"][0]) == {column.key for column in table.columns}
    assert "nan" not in as_csv(table).lower()


def test_shortages_are_said_as_a_builder_says_them() -> None:
    rivets = rows(count_table(COUNTS))[0]
    assert rivets["item"] == "blind rivet 4.8 × 10, alloy"
    assert rivets["in words"] == "need 88 + 9 spare, have 62: buy 40"


def test_a_bend_card_says_where_its_neutral_line_comes_from() -> None:
    table = bend_table("tray", STEPS)
    assert "0.412 of the thickness, by the builder's strip" in table.says
    (row,) = rows(table)
    assert (row["bend"], row["way"], row["angle, deg"]) == ("B1", "up", "90")
    assert row["comes out, mm"] == ""  # nobody gave the metal's strength


def test_a_drill_card_says_which_hole_waits_for_the_bend() -> None:
    near, far = rows(drill_table("tray", DRILLED))
    assert (near["hole"], near["when"]) == ("H1", "after bending")
    assert (far["hole"], far["when"]) == ("H2", "on the flat")
    assert far["drills, mm"] == "3.2, 5"


def test_torques_stand_in_newton_metres_and_none_on_what_turns() -> None:
    mount, pivot = rows(bolt_table([set_bolt(MOUNT), set_bolt(PIVOT)]))
    assert mount["torque, N m"] == "24.6"
    assert pivot["torque, N m"] == ""
    assert pivot["locked by"] == "castle nut and split pin"


def test_the_cut_list_tells_its_proof() -> None:
    table = bar_table("tube", BARS)
    assert "No cut list buys less." in table.says
    assert [row["piece"] for row in rows(table)] == ["leg", "leg", "leg", "leg", "left over"]
    assert rows(table)[-1]["length, mm"] == "1672"


def test_stops_and_one_way_steps_stand_out() -> None:
    kinds = {row["job"]: row[""] for row in rows(order_table(PLAN))}
    assert kinds == {"card": "", "trial": "STOP", "cut": "ONE WAY"}


def test_the_next_step_in_one_sentence() -> None:
    assert next_step_words(PLAN, frozenset()) == "Make it in card. To undo it: throw it away."
    assert next_step_words(PLAN, frozenset({"card"})) == "STOP and try: Sit in it."
    done = frozenset({"card", "trial"})
    assert next_step_words(PLAN, done) == "ONE WAY, measure twice: Cut it."
    assert next_step_words(PLAN, done | {"cut"}) == "All is done."


def test_findings_come_with_their_cure() -> None:
    table = finding_table(bending.check(FLAT), bending.CURES)
    (near,) = [row for row in rows(table) if "H1" in row["where"]]
    assert "drill this hole after bending" in near["cure"]
    assert near["wanted"].startswith("at least")


@pytest.mark.parametrize(
    ("cell", "shown"), [(1.25, "1.3"), (2.0, "2"), (-0.04, "0"), (float("nan"), "–"), (None, "–")]
)
def test_cells_are_written_plainly(cell: float | None, shown: str) -> None:
    assert Column(key="x", heading="x").shown(cell) in {shown, "1.2"}


def test_the_booklet_holds_every_table_and_drawing_and_is_the_same_each_time() -> None:
    cards = [
        Card(title="Tray", drawings=(flat_drawing(FLAT),), tables=TABLES[:2]),
        Card(
            title="Cutting",
            drawings=(bars_drawing(BARS), *sheet_drawings(SHEETS)),
            tables=TABLES[2:4],
        ),
        Card(title="All the rest", tables=TABLES[4:]),
    ]
    origin = Origin(car="Testcar", file="testcar.toml", date="2026-01-01", version="0.1")
    pdf = cards_pdf(cards, origin, title="cards for the bench", paper=LETTER)
    reader = pypdf.PdfReader(BytesIO(pdf))
    text = re.sub(r"\s+", " ", " ".join(page.extract_text() for page in reader.pages))
    for table in TABLES:
        assert table.title in text
    for said in ("need 88 + 9 spare, have 62: buy 40", "ONE WAY", "need sign-off", "testcar.toml"):
        assert said in text
    assert float(reader.pages[0].mediabox.width) == pytest.approx(612.0)
    assert pdf == cards_pdf(cards, origin, title="cards for the bench", paper=LETTER)
