"""What is on the shelf is used before anything is bought; joints are counted where they are."""

from math import nan

import pytest

from pedalwright.making.buying import buying
from pedalwright.making.car import (
    Plate,
    bar_pieces,
    box,
    car_fasteners,
    car_jobs,
    car_profiles,
    own_bars,
    own_sheets,
    packs,
    plate_parts,
    shortened,
)
from pedalwright.making.cutting import Bar, cut_bars, cut_sheets
from pedalwright.making.fastening import Item, counts, set_bolt, set_rivet
from pedalwright.making.profiles import drill_card
from pedalwright.shelf.stock import Stock, StockNuts, StockRivets, StockSheet
from pedalwright.structure.trims import CoverPlates, Gussets, Triangle
from tests.making.variations import BOLTED, RIVETED, WELDED, design, held, trimmed_by

STEEL = Plate(metal="steel", thickness=3.0, yield_strength=235.0)


def sheet(metal: str, thickness: float, count: float = 1.0) -> Stock:
    one = StockSheet(
        name="off-cut", metal=metal, thickness=thickness, length=400.0, width=300.0, count=count
    )
    return Stock(sheets=(one,))


def test_both_pivot_tubes_come_from_the_donors_and_none_is_bought() -> None:
    made = design()
    tubes = bar_pieces(made)["tube 22 / 16"]
    stock = [*own_bars(made.stock, "tube 22 / 16"), Bar(name="tube", length=1000.0)]
    plan = cut_bars(tubes, stock, kerf=1.5, trim=2.0)
    assert [cut.bar.name for cut in plan.bars] == ["donor-tube"]
    assert plan.bars[0].left == pytest.approx(150.0 - 2.0 - 2 * (59.5 + 1.5))
    assert not any("tube" in one.what for one in buying(bars={"tube 22 / 16": plan}))
    assert own_bars(made.stock, "tube 25 / 19") == []


@pytest.mark.parametrize(
    ("stock", "serves"),
    [
        (sheet("S275", 3.0), True),
        (sheet("S235", 3.0), True),
        (sheet("S275", 2.5), False),
        (sheet("DC01", 3.0), False),
        (sheet("5083-O/H111", 3.0), False),
        (sheet("found behind the shed", 3.0), False),
    ],
)
def test_a_sheet_serves_by_thickness_kind_and_strength(stock: Stock, serves: bool) -> None:
    assert bool(own_sheets(stock, STEEL)) == serves


def test_a_count_that_nobody_knows_is_not_counted_on() -> None:
    assert own_sheets(sheet("S275", 3.0, nan), STEEL)[0].count == 0
    tin = StockNuts(name="tin", kind="rivet nut", thread=6.0, count=nan)
    assert box(Stock(nuts=(tin,))) == {Item(kind="rivet nut", size="M6"): 0}


def test_a_donors_arm_asks_for_no_plate_and_one_of_plate_is_bought_with_room_to_file() -> None:
    assert plate_parts(design()) == {}
    wanted = plate_parts(design("brackwater-fix2"))
    assert {plate.thickness for plate in wanted} == {10.0, 8.0}
    plans = {plate: cut_sheets(parts, [], gap=4.0, margin=3.0) for plate, parts in wanted.items()}
    bought = buying(blanks={plate.words: plan.missing for plate, plan in plans.items()})
    (brake,) = [one for one in bought if one.why == "brake arm"]
    ((arm,),) = [parts for parts in wanted.values() if parts[0].name == "brake arm"]
    assert brake.what == (
        f"steel plate 10 mm, yield 275 MPa or more, cut to {arm.length + 6.0:.0f} × 74 mm"
    )


def test_larkfields_donor_arms() -> None:
    """310 becomes 272 and 318 becomes 276; the holes move by 7.5 and 2, less than they are wide."""
    brake, clutch = shortened(design())
    assert (brake.off, brake.apart) == (38.0, 7.5)
    assert (clutch.off, clutch.apart) == (42.0, -2.0)
    assert brake.redrilled
    assert clutch.redrilled
    first, _ = shortened(design("larkfield-first"))
    assert not first.redrilled
    said = {job.name: job.does for job in car_jobs(design())}
    assert "saw 38 mm off" in said["brake-arm"]
    assert "leave its old rod hole" in said["brake-arm"]
    said = {job.name: job.does for job in car_jobs(design("larkfield-first"))}
    assert "its rod hole stays" in said["brake-arm"]


def test_as_many_bolts_as_holes_in_the_strength_model() -> None:
    made = held(BOLTED)
    found = car_fasteners(made)
    (row,) = found.bolts
    assert (row.count, row.size, row.grade) == (len(BOLTED.holes), "M8", "8.8")
    needed = {one.item.kind: one.need for one in counts([], [set_bolt(row)], {})}
    assert needed == {"bolt": 4, "washer": 8, "nut": 4}
    assert "brake cylinder's flange" not in found.open
    assert "brake cylinder's flange" in car_fasteners(design()).open


def test_rivets_are_the_body_whose_strength_the_design_counts_on() -> None:
    (row,) = car_fasteners(held(RIVETED)).rivets
    assert (row.count, row.body, row.diameter) == (4, "steel", 4.8)
    # nobody said how thick the flange is: no length is made up
    assert set_rivet(row).length is None


def test_what_is_welded_needs_no_fastener_and_is_not_missing() -> None:
    found = car_fasteners(held(WELDED))
    assert found.bolts == ()
    assert "brake cylinder's flange" not in found.open


def test_two_cylinders_have_two_rods_two_forks_and_no_clevis_pin_at_the_brake() -> None:
    made = design("brackwater-fix2")
    (rods,) = [p for pieces in bar_pieces(made).values() for p in pieces if "push rod" in p.name]
    assert rods.count == 2
    others = {item.words: count for item, count in car_fasteners(made).others.items()}
    assert others["fork M10 for a pin 12, block on the balance bar"] == 2
    pins = [words for words in others if words.startswith("clevis pin")]
    assert pins == ["clevis pin 8, grip 17"]  # the clutch's cable


def test_every_rod_end_has_its_lock_nut_and_every_turning_bolt_its_split_pin() -> None:
    others = car_fasteners(design()).others
    forks = sum(n for item, n in others.items() if item.kind == "fork")
    locks = sum(n for item, n in others.items() if item.make == "thin, as lock-nut")
    assert (forks, locks) == (2, 3)  # and one on the rest stop's screw
    castle = sum(n for item, n in others.items() if item.make == "castle nut")
    pins = sum(n for item, n in others.items() if item.kind == "split pin")
    clevis = sum(n for item, n in others.items() if item.kind == "clevis pin")
    assert pins == castle + clevis == 4


def test_packs_and_spares_by_the_stated_rule() -> None:
    """98 wanted: 10 spare, 62 there, 46 lacking, so five packs of ten."""
    made = design()
    need = {Item(kind="blind rivet", size="4.8", length=10.0, make="alloy"): 98}
    (one,) = counts([], [], box(made.stock), packs(made.stock), need)
    assert (one.need, one.spare, one.have, one.short, one.buy) == (98, 10, 62, 36, 50)
    big = StockRivets(name="box", diameter=4.8, length=10.0, count=0.0, pack=100.0)
    (one,) = counts([], [], {}, packs(Stock(rivets=(big,))), need)
    assert one.buy == 200


@pytest.mark.parametrize(
    ("back", "wanted"),
    [
        (CoverPlates(thickness=3.0, lap=30.0), ("toes cover plate", 180.0, 25.0, 2)),
        (Gussets(thickness=3.0, height=40.0, lap=30.0), ("toes gusset", 180.0, 40.0, 2)),
    ],
)
def test_what_goes_back_after_a_trim_is_cut_from_plate(
    back: CoverPlates | Gussets, wanted: tuple[str, float, float, int]
) -> None:
    made = trimmed_by(back)
    ((part,),) = [p for plate, p in plate_parts(made).items() if plate.thickness == 3.0]
    assert (part.name, part.length, part.width, part.count) == wanted


def test_a_bar_past_a_trim_is_cut_long() -> None:
    made = trimmed_by(Triangle(width=20.0, thickness=4.0, distance=35.0, lap=30.0))
    (bar,) = bar_pieces(made)["flat 20 × 4"]
    assert bar.length == 120.0 + 2 * 30.0 + 2 * 35.0


def test_the_balance_bars_tube_is_welded_not_reamed() -> None:
    arm, _ = car_profiles(design("brackwater-fix2"))
    row = drill_card(arm)[1]
    assert row.bore.name == "B"
    assert "welded" in row.bore.use
    assert "ream" not in row.finish
    assert row.bore.diameter == 28.0
