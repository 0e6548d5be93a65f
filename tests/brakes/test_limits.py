"""For each limit of the brakes, one design that breaks only that one."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.brakes import (
    BrakeResult,
    Car,
    Disc,
    Plumbing,
    Ratios,
    check,
    limits,
    respond,
)
from pedalwright.core.checks import Limit
from pedalwright.core.units import Num
from pedalwright.hydraulics import Tandem

CAR = Car(mass=980.0, front_share=0.5, wheelbase=2320.0, cg_height=470.0, tyre_radius=305.0)
TANDEM = Tandem(bore=20.64, stroke=36.0)
FRONT = Disc(
    piston_bore=54.0,
    pistons_one_side=1.0,
    pistons_moved=2.0,
    effective_radius=112.0,
    friction_low=0.30,
    friction=0.36,
    friction_high=0.42,
    lift=0.28,
)
REAR = replace(FRONT, piston_bore=34.0, pistons_moved=1.0, effective_radius=108.0, lift=0.55)
PLUMBING = Plumbing(hoses=900.0, dead_stroke=1.5, efficiency=0.92)
ROOM = 150.0


def result(
    car: Car = CAR,
    front: Disc = FRONT,
    rear: Disc = REAR,
    tandem: Tandem = TANDEM,
    travel: tuple[Num, Num, Num] = (74.0, 120.0, 130.0),
) -> BrakeResult:
    ratios = Ratios(hard_stop=5.1, front_alone=5.3, rear_alone=5.4)
    return respond(car, tandem, front, rear, PLUMBING, ratios=ratios, pad_travel=travel)


def broken(found: BrakeResult, room: Num = ROOM) -> set[tuple[str, str]]:
    return {(f.limit.code, f.about) for f in check(found, room) if not f.ok}


def test_a_good_design_breaks_none() -> None:
    assert broken(result()) == set()


REAR_HEAVY = replace(REAR, piston_bore=40.0)
REAR_FEEBLE = replace(REAR, piston_bore=27.0)
#: A car with its weight behind may brake much at the rear, so a wide cylinder spoils only the push.
TAIL_HEAVY = result(
    car=replace(CAR, front_share=0.42),
    rear=replace(REAR, piston_bore=45.0),
    tandem=Tandem(bore=31.5, stroke=36.0),
)
FRONT_FEEBLE = replace(FRONT, piston_bore=24.0)


@pytest.mark.parametrize(
    ("design", "code", "about"),
    [
        (TAIL_HEAVY, "brakes.effort", ""),
        (result(tandem=Tandem(bore=8.0, stroke=36.0)), "brakes.touchy", ""),
        (result(rear=REAR_FEEBLE), "brakes.one_circuit", "rear circuit alone"),
        (result(rear=REAR_HEAVY), "brakes.lock_order", ""),
        (result(travel=(101.0, 120.0, 130.0)), "brakes.travel", ""),
        (result(travel=(74.0, 151.0, 130.0)), "brakes.lost_travel", "rear circuit lost"),
        (result(travel=(74.0, 120.0, 151.0)), "brakes.lost_travel", "front circuit lost"),
    ],
)
def test_one_design_breaks_only_this_one(design: BrakeResult, code: str, about: str) -> None:
    assert broken(design) == {(code, about)}


def test_a_front_circuit_can_be_the_feeble_one() -> None:
    """It cannot be the only fault: a car braked so little in front locks its rear wheels first."""
    found = broken(result(front=FRONT_FEEBLE, rear=replace(REAR, piston_bore=54.0)))
    assert ("brakes.one_circuit", "front circuit alone") in found


def test_each_limit_is_tried_above() -> None:
    asked = {found.limit.code for found in check(result(), ROOM)}
    known = {limit.code for limit in vars(limits).values() if isinstance(limit, Limit)}
    tried = {"effort", "touchy", "one_circuit", "lock_order", "travel", "lost_travel"}
    assert asked == known == {f"brakes.{code}" for code in tried}


def test_a_wall_that_is_never_met_is_not_judged() -> None:
    found = [f for f in check(result(), np.nan) if not f.ok]
    assert {f.limit.code for f in found} == {"brakes.travel", "brakes.lost_travel"}
    assert not any(f.judged for f in found)


def test_a_pad_already_at_the_wall_fails() -> None:
    assert broken(result(), room=-5.0) == {
        ("brakes.travel", ""),
        ("brakes.lost_travel", "rear circuit lost"),
        ("brakes.lost_travel", "front circuit lost"),
    }
