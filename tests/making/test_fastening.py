"""Rivets that grip, bolts that stay, counts by the rule, metals apart."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.checks import Finding
from pedalwright.making.fastening import (
    CURES,
    BoltRow,
    Count,
    Item,
    Layer,
    RivetRow,
    check_bolt,
    check_counts,
    check_metals,
    check_rivet,
    counts,
    set_bolt,
    set_rivet,
    substitutes,
    treatments,
)
from pedalwright.making.fastening.formulas import as_strong, bolt_length, spares, to_buy

WALL = Layer(name="wall", thickness=1.6, surface="aluminium", strength=190.0)
PATCH = Layer(name="patch", thickness=3.0, surface="aluminium", strength=275.0)
CHEEK = Layer(name="cheek", thickness=3.0, surface="steel", strength=430.0)
FLANGE = RivetRow(name="tub flange", count=88, layers=(WALL, PATCH), diameter=4.8)
MOUNT = BoltRow(name="cylinder", count=2, layers=(CHEEK, CHEEK), size="M8")
PIVOT = BoltRow(name="pivot", count=1, layers=(CHEEK, CHEEK), size="M10", turns=True)


def broken(findings: list[Finding]) -> set[str]:
    codes = {found.limit.code for found in findings if not found.ok}
    assert codes <= set(CURES)
    return codes


def rivets_at(have: int, pack: int) -> Count:
    item = Item(kind="blind rivet", size="4.8", length=10.0, make="alloy")
    (count,) = counts([set_rivet(FLANGE)], [], {item: have}, {"blind rivet": pack})
    assert count.item == item
    return count


def test_need_88_and_9_spare_have_62_buy_40() -> None:
    count = rivets_at(62, 10)
    assert (count.need, count.spare, count.have, count.buy) == (88, 9, 62, 40)
    assert count.short == 26
    assert rivets_at(62, 50).buy == 50
    assert rivets_at(97, 10).buy == 0
    assert rivets_at(200, 10).buy == 0


@pytest.mark.parametrize(("need", "spare"), [(4, 5), (50, 5), (51, 6), (98, 10), (100, 10)])
def test_a_tenth_and_not_fewer_than_five(need: int, spare: int) -> None:
    assert spares(float(need), 5.0) == spare


def test_rows_of_the_same_rivet_are_counted_together() -> None:
    other = replace(FLANGE, name="patch", count=16)
    thin = replace(FLANGE, name="cover", count=40, layers=(WALL, WALL))
    found = counts([set_rivet(row) for row in (FLANGE, other, thin)], [], {})
    assert [(c.item.length, c.need) for c in found] == [(10.0, 104), (8.0, 40)]


def test_sheets_of_4_6_take_a_rivet_of_10() -> None:
    one = set_rivet(FLANGE)
    assert one.total == pytest.approx(4.6)
    assert (one.length, one.hole) == (10.0, 4.9)
    assert broken(list(check_rivet(one))) == set()


@pytest.mark.parametrize(
    ("length", "code"), [(12.0, "making.grip_least"), (8.0, "making.grip_most")]
)
def test_a_wrong_grip_is_refused(length: float, code: str) -> None:
    assert broken(list(check_rivet(set_rivet(replace(FLANGE, length=length))))) == {code}


def test_sheets_too_thick_for_any_rivet_pass_nothing() -> None:
    thick = replace(FLANGE, layers=(replace(WALL, thickness=40.0),))
    one = set_rivet(thick)
    assert one.length is None
    assert broken(list(check_rivet(one))) == {"making.grip_least", "making.grip_most"}


def test_substitutes_say_what_they_cost_in_strength() -> None:
    """From 4.8 alloy (1690 N): soft ones of the same size are 0.69 as strong, so 129 for 88."""
    found = {s.instead: s for s in substitutes(FLANGE)}
    soft = found["blind rivet 4.8 × 10, soft alloy"]
    assert soft.strength == pytest.approx(1160 / 1690)
    assert soft.count == np.ceil(88 * 1690 / 1160)
    assert "weaker" in soft.remark
    steel = found["blind rivet 4.8 × 10, steel"]
    assert steel.strength > 1.4
    assert steel.count == 62
    assert "zinc" in steel.remark
    larger = found["blind rivet 6.4 × 12, alloy"]
    assert "edge distance" in larger.remark
    bolt = found["bolt M5, 8.8, with a locking nut"]
    assert bolt.strength == pytest.approx(0.6 * 800 * 14.18 / 1690, rel=1e-3)
    assert "blind rivet 4.8 × 10, alloy" not in found


def test_what_does_not_grip_is_no_substitute() -> None:
    thin = replace(FLANGE, layers=(WALL,))  # 1.6 mm: no rivet of 6.4 grips it
    assert not any("6.4" in s.instead for s in substitutes(thin))


def test_a_clamped_bolt_has_length_nut_and_torque() -> None:
    """6 of sheet, two washers of 1.6, a nut of 8, two threads of 1.25: 19.7, so 20.

    The torque of M8 8.8 is the one of VDI 2230's sums: 24.57 N m at a friction of 0.12.
    """
    one = set_bolt(MOUNT)
    assert bolt_length(6.0, 3.2, 8.0, 1.25) == pytest.approx(19.7)
    assert one.length == 20.0
    assert one.locking == "nylon-insert locking nut"
    assert one.torque / 1000 == pytest.approx(24.57, rel=1e-3)
    assert one.torque_greased < one.torque < one.torque_dry
    assert one.pressure == pytest.approx(18630 / (np.pi / 4 * (16.0**2 - 9.0**2)), rel=1e-3)
    assert broken(list(check_bolt(one))) == set()


def test_what_turns_is_pinned_and_not_clamped() -> None:
    one = set_bolt(PIVOT)
    assert one.locking == "castle nut and split pin"
    assert np.isnan(one.torque)
    assert broken(list(check_bolt(one))) == set()
    kinds = {c.item.kind: c.need for c in counts([], [one], {})}
    assert kinds == {"bolt": 1, "washer": 2, "nut": 1, "split pin": 1}


def test_heat_and_captive_threads_change_the_lock() -> None:
    assert set_bolt(replace(MOUNT, hot=True)).locking == "all-metal locking nut"
    captive = set_bolt(replace(MOUNT, captive=True))
    assert captive.locking == "threadlocker"
    assert {c.item.kind for c in counts([], [captive], {})} == {"bolt", "washer"}


def test_soft_sheet_under_a_small_head_is_noticed_and_a_penny_washer_cures_it() -> None:
    soft = replace(MOUNT, grade="10.9", layers=(WALL, CHEEK), size="M8")
    assert broken(list(check_bolt(set_bolt(soft)))) == {"making.head_pressure"}
    assert broken(list(check_bolt(set_bolt(replace(soft, washers="penny"))))) == set()
    unknown = replace(soft, layers=(replace(WALL, strength=float("nan")), CHEEK))
    assert broken(list(check_bolt(set_bolt(unknown)))) == {"making.head_pressure"}


def test_a_stack_no_bolt_reaches_through_is_noticed() -> None:
    block = replace(CHEEK, thickness=140.0)
    long = set_bolt(replace(MOUNT, layers=(block,)))
    assert long.length is None
    assert broken(list(check_bolt(long))) == {"making.bolt_length"}


def test_stainless_in_alloy_wants_a_barrier() -> None:
    bare = replace(FLANGE, body="stainless")
    assert broken(list(check_metals([bare]))) == {"making.galvanic"}
    assert broken(list(check_metals([replace(bare, barrier=True)]))) == set()
    assert broken(list(check_metals([FLANGE, MOUNT], most=500.0))) == set()


def test_steel_on_alloy_passes_the_chart_and_gets_compound_all_the_same() -> None:
    row = replace(FLANGE, layers=(WALL, CHEEK), sealed=True)
    assert broken(list(check_metals([row]))) == set()
    found = {t.what: t.why for t in treatments(row)}
    assert set(found) == {"jointing compound", "sealant"}
    assert "30 mV" in found["jointing compound"]
    zinc = [t for t in treatments(replace(MOUNT, layers=(WALL, WALL))) if t.what == "barrier"]
    assert len(zinc) == 1
    assert "zinc is eaten" in zinc[0].why


def test_too_few_in_the_box_is_a_finding_by_item() -> None:
    findings = list(check_counts([rivets_at(62, 10)]))
    assert broken(findings) == {"making.fasteners_enough"}
    assert findings[0].value == pytest.approx(62 / 88)
    assert broken(list(check_counts([rivets_at(88, 10)]))) == set()


def test_formulas_by_hand() -> None:
    assert to_buy(88.0, 9.0, 62.0, 10.0) == 40.0
    assert to_buy(4.0, 5.0, 20.0, 10.0) == 0.0
    assert as_strong(10.0, 1690.0, 845.0) == 20.0
