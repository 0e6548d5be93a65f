"""The pedal box on the bench: holes for every fastener, walls only drilled, nothing shut in."""

from collections import Counter
from dataclasses import replace
from functools import cache

import pytest
from panels.boxes import EVERYTHING, FIRST, RAIL, SURVEY, WALL

from pedalwright.assess.box import seats_of, walls_and_tubes
from pedalwright.design import Design
from pedalwright.making.box import BoxWork, blanks, box_work, part_of, piece_drawing
from pedalwright.making.box.limits import check_heads
from pedalwright.making.car import SERVICED, car_jobs
from pedalwright.making.fastening.counts import in_all
from pedalwright.making.planning import ancestors, check, order
from pedalwright.panels.box import made
from pedalwright.panels.made import Made
from pedalwright.panels.parts import Bolts, Box, Cover, Doubler, RivetNuts, Stitches
from pedalwright.project import car_text, read
from pedalwright.shelf.stock import BentStrip, Folder, Stock, StockRivets, StockSheet
from pedalwright.structure.box.bench import stood

CARS = [
    "larkfield-first",
    "larkfield-improved",
    "brackwater-first",
    "brackwater-fix1",
    "brackwater-fix2",
    "saltmarsh-first",
    "saltmarsh-improved",
]


@cache
def design(car: str) -> Design:
    return read(car_text(car)).design


@cache
def work(car: str) -> BoxWork:
    return box_work(design(car))


def made_box(car: str) -> Made:
    """The box as it is made."""
    return made(design(car).box, walls_and_tubes(design(car)))


def model(car: str) -> Counter[str]:
    """Fasteners that the strength of the box counts on, by their row."""
    seats = seats_of(design(car))
    if not seats:
        return Counter()
    bench = stood(made_box(car), seats).bench
    return Counter(one.name.rpartition(", ")[0] for one in bench.fasteners)


def invented(box: Box, stock: Stock | None = None) -> BoxWork:
    base = design("larkfield-improved")
    return box_work(replace(base, box=box, survey=SURVEY, stock=stock or Stock()))


@pytest.mark.parametrize("car", CARS)
def test_fasteners_counted_are_holes_on_the_cards_are_fasteners_in_the_strength_model(
    car: str,
) -> None:
    found = work(car)
    bores = {
        piece.name: Counter(bore.name.partition(".")[0] for bore in piece.profile.bores)
        for piece in found.pieces
    }
    counted = {row.name: row.count for row in (*found.rows.rivets, *found.rows.bolts)}
    welded = {row.name for row in made_box(car).rows if isinstance(row.joining, Stitches)}
    for joint in found.rows.joints:
        if joint.name in welded:  # a stitch has no hole
            continue
        assert counted[f"{joint.mark}: {joint.name}"] == joint.count
        for part in joint.parts:
            assert bores[part][joint.mark] == joint.count
    in_model = model(car)
    names = {joint.name: joint.count for joint in found.rows.joints}
    assert all(names[n] == count for n, count in in_model.items() if n not in welded)
    assert all(finding.ok for finding in found.findings if "holes_counted" in finding.limit.code)


def test_what_holds_the_brake_is_in_the_strength_model_row_for_row() -> None:
    for car, rows in (("larkfield-improved", 2), ("larkfield-first", 1), ("brackwater-fix2", 7)):
        assert len(model(car)) == rows


@pytest.mark.parametrize("car", CARS)
def test_a_wall_is_drilled_and_never_made(car: str) -> None:
    found = work(car)
    walls = {wall.name for wall in design(car).box.walls}
    assert {piece.name for piece in found.pieces if piece.there} == walls
    cut = {part.name for parts in blanks(found.pieces).values() for part in parts}
    assert not cut & walls
    assert {one.name for one in found.work}.isdisjoint(walls)


def test_larkfield_first_lacks_rivets_and_those_in_its_tin_grip_only_the_patch() -> None:
    found = work("larkfield-first")
    tin = {part: sum(r.count for r in found.rows.rivets if part in r.name) for part in
           ("tunnel_cover", "patch", "foot_tub")}  # fmt: skip
    assert tin == {"tunnel_cover": 40, "patch": 16, "foot_tub": 42}
    from pedalwright.making.car import box as fastener_box

    one = in_all(4.8, found.rows.rivets, fastener_box(design("larkfield-first").stock))
    assert (one.need, one.spare, one.have, one.buy) == (98, 10, 62, 50)
    lengths = {row.name: row.length for row in found.rows.rivets}
    assert [name for name, length in lengths.items() if length == 10.0] == [
        "F1: patch on front_wall"
    ]
    refused = [f for f in found.findings if f.limit.code == "making.rivets_there_grip"]
    assert [f.about for f in refused] == ["tin, 4.8 × 10, on 3.2 mm of sheet: F2, F3, F4, F5, F6"]


def test_a_bolt_through_a_plate_goes_on_through_the_wall_behind_it() -> None:
    found = work("brackwater-fix2")
    (bracket,) = (row for row in found.rows.bolts if "floor_bracket" in row.name)
    assert [layer.name for layer in bracket.layers] == ["floor_bracket", "floor_plate", "floor"]
    floor = next(piece for piece in found.pieces if piece.name == "floor")
    assert sum("floor_bracket" in bore.matched for bore in floor.profile.bores) == bracket.count


def test_a_rivets_head_under_a_part_that_is_laid_on_it_is_told() -> None:
    plate = Doubler(
        name="second",
        on="patch",
        middle=FIRST.doublers[0].middle,
        width=160.0,
        height=160.0,
        thickness=2.0,
        metal="S275",
        joined=Bolts(diameter=6.0, pitch=80.0, edge=30.0),
    )
    laid = invented(replace(FIRST, hangers=(), doublers=(*FIRST.doublers, plate)))
    (told,) = check_heads(laid.made)
    assert told.about == "16 of patch on front wall, under second"
    assert not told.ok
    clear = invented(
        replace(
            FIRST, hangers=(), doublers=(*FIRST.doublers, replace(plate, width=120.0, height=120.0))
        )
    )
    assert not list(check_heads(clear.made))


def test_the_builders_own_strip_decides_where_his_bends_lie() -> None:
    strip = BentStrip(
        name="alloy",
        metal="5251-H22",
        thickness=1.6,
        length=100.0,
        leg_one=51.6,
        leg_two=51.6,
        radius=3.0,
    )
    by_book, by_strip = invented(EVERYTHING), invented(EVERYTHING, Stock(strips=(strip,)))
    for book, own in zip(by_book.pieces, by_strip.pieces, strict=True):
        for bend in own.pattern.bends:
            alloy = own.panel.metal.name == "5251-H22"
            assert bend.neutral.way == (
                "test strip" if alloy else "DIN 6935" if own.panel.metal.steel else "table"
            )
        assert [b.name for b in book.pattern.bends] == [b.name for b in own.pattern.bends]
    tub = next(piece for piece in by_strip.pieces if piece.name == "foot-tub")
    # 51.6 + 51.6 - 100: what a strip gained is what a bend of that radius takes off
    assert tub.pattern.bends[0].deduction == pytest.approx(3.2)


def test_his_folder_refuses_a_flange_it_cannot_turn() -> None:
    def short(stock: Stock) -> set[str]:
        codes = {"making.flange_length", "making.folder_width"}
        failed = (f for f in invented(EVERYTHING, stock).findings if not f.ok)
        return {f"{f.limit.code} {f.about}" for f in failed if f.limit.code in codes}

    assert not any("stiffener" in one for one in short(Stock()))
    assert any("stiffener" in one for one in short(Stock(folder=Folder(least_flange=30.0))))
    assert any("foot-tub" in one for one in short(Stock(folder=Folder(longest=300.0))))


def under_a_lid(joined: Bolts | RivetNuts) -> BoxWork:
    lid = Cover(
        name="lid",
        on="front wall",
        middle=FIRST.doublers[0].middle,
        width=260.0,
        height=200.0,
        depth=0.0,
        thickness=1.6,
        metal="5251-H22",
        side="far",
        joined=FIRST.doublers[0].joined,  # type: ignore[arg-type]  # rivets, which are spaced
    )
    plate = replace(FIRST.doublers[0], joined=joined)
    return invented(Box(walls=(WALL,), rails=(RAIL,), doublers=(plate,), covers=(lid,)))


def test_nuts_behind_a_riveted_lid_are_told_and_a_captive_one_needs_no_hand() -> None:
    bolted = under_a_lid(Bolts(diameter=6.0, pitch=60.0, edge=12.0))
    lid = next(one for one in bolted.work if one.name == "lid")
    assert lid.hides == ("nuts of F1, patch on front wall",)
    jobs = car_jobs(design("larkfield-improved"), bolted.work)
    plan = order(jobs)
    names = [timed.job.name for timed in plan.jobs]
    assert names.index("bolt-patch") < names.index("rivet-lid")
    shut = [f for f in check(jobs, plan, serviced=(*SERVICED, *lid.hides)) if not f.ok]
    assert {f.limit.code for f in shut} == {"making.serviced"}
    captive = under_a_lid(RivetNuts(diameter=6.0, pitch=60.0, edge=12.0))
    assert next(one for one in captive.work if one.name == "lid").hides == ()
    assert sum(captive.rows.others.values()) == captive.rows.joints[0].count


@pytest.mark.parametrize("car", [car for car in CARS if car.startswith(("lark", "brack"))])
def test_nobody_drills_the_body_before_the_driver_has_sat_in_it(car: str) -> None:
    jobs = car_jobs(design(car), work(car).work)
    plan = order(jobs)
    assert not plan.circle
    assert all(f.ok for f in check(jobs, plan, serviced=SERVICED))
    complete = [timed.job for timed in plan.jobs]
    for job in jobs:
        if job.name.startswith(("drill-", "rivet-", "bolt-")):
            assert "trial-in-metal" in ancestors(complete, job.name)
        if job.name.startswith("cut-"):
            assert "trial-in-card" in ancestors(complete, job.name)
        if job.name.startswith("bend-"):
            assert "strip" in ancestors(complete, job.name)


def test_left_and_right_are_told_apart() -> None:
    found = {piece.name: piece for piece in work("brackwater-fix2").pieces}
    assert found["left_cheek"].mirrored == ("right_cheek",)
    assert found["right_cheek"].alike == ()
    straps = {piece.name: piece for piece in work("larkfield-first").pieces}
    assert "brake_hanger, other" in straps["brake_hanger, one"].alike


def test_sharp_bends_run_across_the_rolling_direction() -> None:
    base = design("larkfield-improved")
    sharp = tuple(replace(cheeks, bend=4.5) for cheeks in base.box.cheeks)
    found = box_work(replace(base, box=replace(base.box, cheeks=sharp)))
    boxes = [piece for piece in found.pieces if "_box" in piece.name]
    assert boxes
    for piece in boxes:  # the long folds stand upright on the flat piece
        assert piece.pattern.sheet.grain == 0.0
        assert part_of(piece).grain == "along"
    assert work("larkfield-improved").pieces[-1].pattern.sheet.grain is None  # 3 in 1.6 alloy


def test_a_cylinder_is_marked_where_it_goes_on_plate_and_wall() -> None:
    found = {piece.name: piece for piece in work("larkfield-improved").pieces}
    for name in ("brake_box", "front_wall"):
        marks = {mark.name: mark.at for mark in found[name].profile.marks}
        assert marks["brake cylinder"] == pytest.approx((385.0, 293.4))
    (bracket,) = (one for one in work("larkfield-improved").work if one.name == "brake_box")
    assert bracket.cylinders == ("brake cylinder",)


def test_a_tray_is_laid_on_its_floor_before_the_floor_is_opened() -> None:
    found = work("larkfield-improved")
    floor = next(piece for piece in found.pieces if piece.name == "floor_pan")
    assert [s.name for s in floor.profile.scribed if s.cut] == ["foot_tub: cut out"]
    plan = order(car_jobs(design("larkfield-improved"), found.work))
    jobs = [timed.job.name for timed in plan.jobs]
    assert jobs.index("bend-foot_tub") < jobs.index("open-floor_pan") < jobs.index("clamp-foot_tub")


def test_a_box_that_cannot_be_made_is_told_and_nothing_of_it_is_drawn() -> None:
    lost = replace(FIRST.doublers[0], on="scuttle")
    found = invented(replace(FIRST, doublers=(lost,)))
    assert found.pieces == ()
    (told,) = found.findings
    assert "box.doublers.patch.on" in told.about
    assert not told.ok


def test_a_stronger_rivet_on_the_shelf_serves_and_a_weaker_one_does_not() -> None:
    def body(tin: StockRivets) -> str:
        return invented(FIRST, Stock(rivets=(tin,))).rows.rivets[0].body

    tin = StockRivets(name="tin", body="steel", diameter=4.8, length=10.0, count=100.0)
    assert body(tin) == "steel"
    assert body(replace(tin, body="soft alloy")) == "alloy"


def test_every_piece_draws_itself_in_both_sizes() -> None:
    for car in CARS:
        for piece in work(car).pieces:
            for brief in (False, True):
                drawing = piece_drawing(piece, brief=brief)
                assert [group.part for group in drawing.shapes] == ["cut", "bend", "drill", "mark"]  # type: ignore[union-attr]


def test_a_sheet_serves_one_plate_only_once() -> None:
    from pedalwright.documents.making_sheets import Made

    one = StockSheet(name="off-cut", metal="S355", thickness=3.0, length=400.0, width=300.0)
    base = design("larkfield-first")
    folder = Made.of(replace(base, stock=Stock(sheets=(one,))))
    sheets = [table for table in folder.cutting if table.key.startswith("sheets-")]
    used = {(table.key, row[0], row[1]) for table in sheets for row in table.rows}
    assert len([key for key in used if "off-cut" in str(key[2])]) == 1
