"""For each limit of the brakes, one design that breaks only that one."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.brakes import (
    BrakeResult,
    Car,
    Disc,
    Drum,
    Fluid,
    Load,
    Plumbing,
    Ratios,
    Rise,
    Rotor,
    ShoeDrum,
    WheelBrake,
    check,
    check_heat,
    check_hot,
    hot,
    limits,
    respond,
)
from pedalwright.core.checks import Limit
from pedalwright.core.units import Num
from pedalwright.hydraulics import Boost, Servo, Tandem

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
    front: WheelBrake = FRONT,
    rear: WheelBrake = REAR,
    tandem: Tandem = TANDEM,
    travel: tuple[Num, Num, Num] = (74.0, 120.0, 130.0),
    worn_travel: Num | None = None,
) -> BrakeResult:
    ratios = Ratios(hard_stop=5.1, front_alone=5.3, rear_alone=5.4)
    return respond(
        car,
        tandem,
        front,
        rear,
        PLUMBING,
        ratios=ratios,
        pad_travel=travel,
        worn_travel=worn_travel,
    )


def broken(found: BrakeResult, room: Num = ROOM) -> set[tuple[str, str]]:
    return {(f.limit.code, f.about) for f in check(found, room) if not f.ok}


def test_a_good_design_breaks_none() -> None:
    assert broken(result()) == set()


REAR_HEAVY = replace(REAR, piston_bore=40.0)
#: Linings that lose six tenths of their friction when they are hot.
FADED_FRONT, FADED_REAR = replace(FRONT, friction_low=0.14), replace(REAR, friction_low=0.14)
REAR_FEEBLE = replace(REAR, piston_bore=27.0)
#: A car with its weight behind may brake much at the rear, so a wide cylinder spoils only the push.
TAIL_HEAVY = result(
    car=replace(CAR, front_share=0.42),
    rear=replace(REAR, piston_bore=45.0),
    tandem=Tandem(bore=31.5, stroke=36.0),
)
FRONT_FEEBLE = replace(FRONT, piston_bore=24.0)
#: With so little weight on the front axle it locks early.
TAIL_LIGHT = replace(CAR, front_share=0.3)
SERVO = Servo(points=(Boost(push=2500.0, force=10000.0),))
#: Wide cylinders that only a servo can press.
ASSISTED = Tandem(bore=47.0, stroke=36.0, servo=SERVO)
#: About the front disc's torque; its shoes grab at 0.45.
GRABBING = ShoeDrum(
    cylinder_bore=30.0,
    pistons_moved=2.0,
    drum_radius=115.0,
    shoes="leading-trailing",
    push_arm=100.0,
    pivot_distance=52.0,
    friction_low=0.30,
    friction=0.31,
    friction_high=0.42,
    lift=0.5,
)
HEAVY = Load(mass=450.0, front_share=0.45, cg_height=470.0)
NOSE_LOAD = Load(mass=120.0, front_share=1.0, cg_height=520.0)
BOOT_LOAD = Load(mass=300.0, front_share=0.0, cg_height=470.0)
TAIL_LOAD = Load(mass=120.0, front_share=0.0, cg_height=480.0)


@pytest.mark.parametrize(
    ("design", "code", "about"),
    [
        (TAIL_HEAVY, "brakes.effort", ""),
        (result(tandem=Tandem(bore=19.0, stroke=36.0, servo=SERVO)), "brakes.touchy", ""),
        (result(tandem=Tandem(bore=18.0, stroke=36.0)), "brakes.firm", ""),
        (result(rear=REAR_FEEBLE), "brakes.one_circuit", "rear circuit alone"),
        (result(front=FADED_FRONT, rear=FADED_REAR), "brakes.hot_stop", ""),
        (result(rear=REAR_HEAVY), "brakes.lock_order", ""),
        (result(travel=(101.0, 120.0, 130.0)), "brakes.travel", ""),
        (result(worn_travel=151.0), "brakes.worn_travel", ""),
        (result(tandem=ASSISTED), "brakes.servo_lost", ""),
        (result(front=GRABBING), "brakes.grab", "front axle"),
        (result(car=TAIL_LIGHT), "brakes.adhesion", ""),
        (result(travel=(74.0, 151.0, 130.0)), "brakes.lost_travel", "rear circuit lost"),
        (result(travel=(74.0, 120.0, 151.0)), "brakes.lost_travel", "front circuit lost"),
    ],
)
def test_one_design_breaks_only_this_one(design: BrakeResult, code: str, about: str) -> None:
    assert broken(design) == {(code, about)}


#: The tail-heavy car again, whose rear brakes do their part.
TAIL_CAR = replace(CAR, front_share=0.42)
WIDE_REAR = replace(REAR, piston_bore=45.0)


@pytest.mark.parametrize(
    ("design", "code"),
    [
        (
            result(
                car=replace(TAIL_CAR, load=HEAVY),
                rear=WIDE_REAR,
                tandem=Tandem(bore=26.0, stroke=36.0),
            ),
            "effort",
        ),
        (result(car=replace(CAR, load=HEAVY)), "one_circuit"),
        (result(car=replace(CAR, load=NOSE_LOAD)), "lock_order"),
        (result(car=replace(TAIL_CAR, load=BOOT_LOAD)), "adhesion"),
        (result(car=replace(CAR, load=TAIL_LOAD)), "none"),
    ],
)
def test_a_load_may_break_one_alone(design: BrakeResult, code: str) -> None:
    expected = set() if code == "none" else {(f"brakes.{code}", "laden")}
    assert broken(design) == expected


def test_a_front_circuit_can_be_the_feeble_one() -> None:
    """It cannot be the only fault: a car braked so little in front locks its rear wheels first."""
    found = broken(result(front=FRONT_FEEBLE, rear=replace(REAR, piston_bore=54.0)))
    assert ("brakes.one_circuit", "front circuit alone") in found


def test_each_limit_is_tried_above() -> None:
    asked = {found.limit.code for found in check(result(), ROOM)}
    known = {limit.code for limit in vars(limits).values() if isinstance(limit, Limit)}
    always = {"effort", "touchy", "firm", "one_circuit", "lock_order", "travel", "lost_travel"}
    always |= {"adhesion", "hot_stop"}
    where_given = {"servo_lost", "worn_travel", "grab", "fluid_heat", "hot_travel", "fade"}
    assert asked == {f"brakes.{code}" for code in always}
    assert known == {f"brakes.{code}" for code in always | where_given}


FAST = replace(CAR, top_speed=170.0 / 3.6)


@pytest.mark.parametrize(("mass", "fades"), [(2.0, True), (4.5, False)])
def test_one_fast_stop_must_not_fade_the_linings(mass: float, fades: bool) -> None:
    """1.05 x 0.95 x 980 x 47.2^2 / 2 x share of the axle / 2 discs, over mass and 480 J/(kg K)."""
    heated = replace(FRONT, rotor=Rotor(mass=mass))
    design = result(car=FAST, front=heated)
    (found,) = check_heat(design, None)
    assert found.ok is not fades
    share = design.at_500.front_share
    heat = 1.05 * 0.95 * 980.0 * (170.0 / 3.6) ** 2 / 2.0 * share / 2.0
    assert found.value == pytest.approx(heat / (mass * 480.0))
    assert (found.limit.code, found.about) == ("brakes.fade", "front axle")


@pytest.mark.parametrize(("mass", "boils"), [(3.0, True), (4.5, False)])
def test_five_stops_must_not_boil_old_fluid(mass: float, boils: bool) -> None:
    """A third of the metal's rise after five stops from 100 km/h, against 155 - 20 degrees."""
    design = result(front=replace(FRONT, rotor=Rotor(mass=mass)))
    (found,) = check_heat(design, Fluid(grade="DOT 4"))
    heat = 1.05 * 0.95 * 980.0 * (100.0 / 3.6) ** 2 / 2.0 * design.at_500.front_share / 2.0
    assert found.value == pytest.approx(5.0 / 3.0 * heat / (mass * 480.0))
    assert (found.limit.code, found.bound, found.ok) == ("brakes.fluid_heat", 135.0, not boils)


def test_hot_linings_by_hand() -> None:
    """The same push on linings of 0.14 instead of 0.36 brakes as much less."""
    found = result(front=FADED_FRONT, rear=FADED_REAR)
    assert found.low_friction_500 == pytest.approx(found.at_500.deceleration * 14 / 36)


def test_a_hot_drum_leaves_its_shoes() -> None:
    """254 drum, 300 K: 127 x 11e-6 x 300 = 0.419, and its piston goes h/b = 100/52 as far."""
    rise = Rise(one_stop=60.0, five_stops=300.0)
    measured = replace(GRABBING, drum_radius=127.0)
    assert hot(measured, rise).lift - 0.5 == pytest.approx(0.4191 * 100.0 / 52.0)
    known = Drum(
        cylinder_bore=22.22,
        pistons_moved=2.0,
        drum_radius=127.0,
        factor_low=2.0,
        factor=2.0,
        factor_high=2.6,
        lift=0.85,
    )
    assert hot(known, rise).lift == pytest.approx(0.85 + 2 * 0.4191)
    assert hot(known, None) is known
    assert hot(FRONT, rise) is FRONT


@pytest.mark.parametrize(("travel", "ok"), [(149.0, True), (151.0, False), (np.nan, False)])
def test_a_hot_drums_travel_ends_before_the_wall(travel: float, ok: bool) -> None:
    (found,) = check_hot(travel, ROOM)
    assert (found.limit.code, bool(found.ok)) == ("brakes.hot_travel", ok)


def test_heat_is_judged_only_where_a_mass_and_a_speed_are_known() -> None:
    assert list(check_heat(result(), Fluid(grade="DOT 4"))) == []
    weighed = result(front=replace(FRONT, rotor=Rotor(mass=4.5)))
    assert list(check_heat(weighed, None)) == []
    assert weighed.front_rise is not None
    assert weighed.front_rise.five_stops == pytest.approx(5.0 * weighed.front_rise.one_stop)


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
