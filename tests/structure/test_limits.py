"""Each limit has one pedal that breaks it, and no other but those that it cannot leave whole."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from pedalwright.structure import (
    BRAKE_LOADS,
    CLUTCH_LOADS,
    Pushes,
    Strength,
    check,
    check_clutch,
)

Pedal = Callable[..., Strength]

#: A deep arm of soft alloy: strong enough, but its pin hole is not.
SOFT_ARM = {"depth_at_pivot": 64.0, "depth_at_pad": 64.0, "yield_strength": 118.0}
BREAKS: dict[str, tuple[dict[str, Any], set[str]]] = {
    # what yields at 1250 N yields at 2000 N as well
    "structure.arm_1250": (
        {"loads": replace(BRAKE_LOADS, panic=2000.0), "arm": {"yield_strength": 350.0}},
        {"structure.arm_yield"},
    ),
    "structure.arm_2000": ({"arm": {"yield_strength": 250.0}}, {"structure.arm_yield"}),
    "structure.arm_yield": ({"arm": {"yield_strength": 300.0}}, set()),
    "structure.fatigue": (
        {"loads": replace(BRAKE_LOADS, life=(Pushes(push=700.0, times=1e6),))},
        set(),
    ),
    "structure.side_load": ({"loads": replace(BRAKE_LOADS, sideways=400.0)}, set()),
    "structure.pin_bending": ({"clevis_pin": {"gap": 6.0}}, set()),
    "structure.pin_bearing": ({"arm": SOFT_ARM}, set()),
    "structure.rod_buckling": ({"rod_length": 190.0}, set()),
    "structure.pivot_tube": ({"pivot": {"span": 120.0}}, set()),
    "structure.pivot": ({"pivot": {"shaft_yield": 40.0}}, set()),
    "structure.pivot_bush": ({"pivot": {"bush_length": 8.0}}, set()),
    "structure.give": ({"mount": {"pivot_stiffness": 2500.0}}, set()),
    "structure.flange_give": (
        {
            "ratio": 3.8,
            "pivot_share": 2.8,
            "mount": {"cylinder_stiffness": 1850.0, "pivot_stiffness": 2e4},
        },
        set(),
    ),
}


#: A clutch pedal with the same arm.
CLUTCH_BREAKS: dict[str, dict[str, Any]] = {
    "structure.clutch_arm_1000": {"loads": replace(CLUTCH_LOADS, panic=2200.0)},
    "structure.clutch_arm_1500": {
        "arm": {"yield_strength": 210.0},
        "loads": replace(CLUTCH_LOADS, abuse=1700.0),
    },
}


def broken(strength: Strength) -> set[str]:
    return {finding.limit.code for finding in check(strength, "brake") if not finding.ok}


def broken_clutch(strength: Strength) -> set[str]:
    return {finding.limit.code for finding in check_clutch(strength, "clutch") if not finding.ok}


def test_the_good_pedal_breaks_none(pedal: Pedal) -> None:
    assert broken(pedal()) == set()


@pytest.mark.parametrize("code", BREAKS)
def test_one_pedal_breaks_one_limit(pedal: Pedal, code: str) -> None:
    changes, dragged_along = BREAKS[code]
    assert broken(pedal(**changes)) == {code} | dragged_along


@pytest.mark.parametrize("code", CLUTCH_BREAKS)
def test_one_clutch_pedal_breaks_one_limit_of_its_arm(pedal: Pedal, code: str) -> None:
    changes = CLUTCH_BREAKS[code]
    assert broken_clutch(pedal(loads=CLUTCH_LOADS)) == set()
    assert broken_clutch(pedal(**{"loads": CLUTCH_LOADS, **changes})) == {code}


def test_a_clutch_is_asked_the_same_of_all_but_its_arm(pedal: Pedal) -> None:
    brake = {finding.limit.code for finding in check(pedal(), "brake")}
    clutch = {finding.limit.code for finding in check_clutch(pedal(), "clutch")}
    assert brake - clutch == {
        "structure.arm_1250",
        "structure.arm_2000",
        "structure.arm_yield",
    }
    assert clutch - brake == set(CLUTCH_BREAKS)


def test_every_limit_has_its_pedal(pedal: Pedal) -> None:
    assert {finding.limit.code for finding in check(pedal(), "brake")} == set(BREAKS)


def test_a_donor_arm_of_mild_steel_stands_a_panic_stop_but_folds_at_2000_n(pedal: Pedal) -> None:
    """8 x 32, 272 over 54.5, S235: 0.95 of yield at 1250 N; at 2000 N a hinge forms."""
    mild = pedal(arm={"yield_strength": 235.0})
    assert mild.panic.arm.size / 235.0 == pytest.approx(0.95, abs=5e-3)
    assert broken(mild) == {"structure.arm_2000", "structure.arm_yield"}
    harder = pedal(arm={"yield_strength": 275.0})
    assert harder.abuse.arm_collapse.size / 275.0 == pytest.approx(0.96, abs=5e-3)
    assert broken(harder) == {"structure.arm_yield"}


def test_what_is_not_known_is_not_judged_and_not_passed(pedal: Pedal) -> None:
    unknown = pedal(arm={"yield_strength": np.nan}, mount={"cylinder_stiffness": np.nan})
    open_ended = [f for f in check(unknown, "brake") if not f.judged]
    assert {f.limit.code for f in open_ended} == {
        "structure.arm_1250",
        "structure.arm_2000",
        "structure.arm_yield",
        "structure.side_load",
        "structure.pin_bearing",
        "structure.give",
        "structure.flange_give",
    }
    assert not any(f.ok for f in open_ended)


def test_findings_say_which_pedal_and_which_push(pedal: Pedal) -> None:
    said = {finding.about for finding in check_clutch(pedal(loads=CLUTCH_LOADS), "clutch")}
    assert said == {
        "clutch, 1000 N",
        "clutch, 1500 N",
        "clutch, 200 N",
        "clutch, sideways",
        "clutch, over the years",
    }


def test_give_is_judged_in_proportion_to_the_push(pedal: Pedal) -> None:
    def give(strength: Strength) -> tuple[float, float]:
        (found,) = (f for f in check(strength, "") if f.limit.code == "structure.give")
        return float(found.bound), float(found.margin)

    brake, clutch = give(pedal()), give(pedal(loads=CLUTCH_LOADS))
    assert (brake[0], clutch[0]) == pytest.approx((5.0, 2.0))
    assert brake[1] == pytest.approx(clutch[1], rel=1e-12)


def test_a_batch_is_judged_one_by_one(pedal: Pedal) -> None:
    batch = pedal(arm={"yield_strength": np.array([235.0, 275.0, 380.0])})
    found = {finding.limit.code: finding for finding in check(batch, "brake")}
    assert found["structure.arm_2000"].ok.tolist() == [False, True, True]
    assert found["structure.arm_yield"].ok.tolist() == [False, False, True]
