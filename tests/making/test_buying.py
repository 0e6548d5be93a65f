"""The buying list: what is there already is not on it, and nothing has a brand."""

from pedalwright.making.buying import buying
from pedalwright.making.cutting import Bar, Part, Piece, Stock, cut_bars, cut_sheets
from pedalwright.making.fastening import Item, Layer, RivetRow, counts, set_rivet, treatments
from pedalwright.making.profiles import Bore, Disc, Profile, drill_card, hull

WALL = Layer(name="wall", thickness=1.6, surface="aluminium")
CHEEK = Layer(name="cheek", thickness=3.0, surface="steel")
ROW = RivetRow(name="flange", count=88, layers=(WALL, CHEEK), diameter=4.8)
TUBE = Bar(name="tube", length=1000.0)


def wanted(**given: object) -> dict[str, int]:
    return {one.what: one.quantity for one in buying(**given)}  # type: ignore[arg-type]


def test_only_what_is_lacking_is_bought() -> None:
    have = {Item(kind="blind rivet", size="4.8", length=10.0, make="alloy"): 62}
    found = buying(counts=counts([set_rivet(ROW)], [], have))
    (rivets,) = [one for one in found if one.shop == "fasteners"]
    assert (rivets.what, rivets.quantity) == ("blind rivet 4.8 × 10, alloy", 40)
    assert rivets.why == "need 88 + 9 spare, have 62"
    have = dict.fromkeys(have, 200)
    assert not any("rivet" in what for what in wanted(counts=counts([set_rivet(ROW)], [], have)))


def test_bars_by_section_and_sheets_by_size() -> None:
    plan = cut_bars([Piece(name="leg", length=400.0, count=5)], [TUBE], kerf=2.0)
    own = Stock(name="off-cut", length=400.0, width=300.0, count=1, bought=False)
    new = Stock(name="5083 3 mm", length=1000.0, width=500.0)
    parts = [Part(name="p", length=390.0, width=290.0, count=2)]
    sheets = cut_sheets(parts, [own, new], gap=2.0, margin=2.0)
    found = wanted(bars={"tube 22 / 16": plan}, sheets=[sheets])
    assert found["tube 22 / 16, 1000 mm long"] == 3
    assert found["5083 3 mm, 1000 × 500 mm"] == 1
    assert not any("off-cut" in what for what in found)


def test_tools_come_from_the_drill_cards() -> None:
    arm = Profile(
        name="arm",
        outline=hull([Disc((0.0, 0.0), 20.0)]),
        bores=(
            Bore(name="A", centre=(0.0, 0.0), diameter=12.0, reamed=True),
            Bore(name="B", centre=(9.0, 0.0), diameter=4.9),
        ),
    )
    found = wanted(drilling=drill_card(arm), skin_pins=12)
    assert found["drill 3.2 mm"] == 2
    assert found["drill 4.9 mm"] == 2
    assert found["drill 11.7 mm"] == 1
    assert found["hand reamer 12 mm"] == 1
    assert found["skin pin 3.2 mm (1/8 in)"] == 12


def test_what_goes_between_metals_and_into_the_pipes() -> None:
    found = buying(treatments=treatments(ROW), fluid="DOT 4")
    compound = next(one for one in found if one.what.startswith("jointing compound"))
    assert compound.why == "for flange"
    assert compound.quantity == 1
    assert any("DOT 4" in one.what for one in found if one.shop == "motor factor")
    assert not any(one.shop == "motor factor" for one in buying())
