"""The pedal under load: figures worked by hand, and where the worst place is."""

from collections.abc import Callable
from dataclasses import replace
from math import cos, pi, radians

import numpy as np
import pytest

from pedalwright.core.working import working
from pedalwright.structure import BRAKE_LOADS, CLUTCH_LOADS, Pushes, Strength

Pedal = Callable[..., Strength]


def test_flat_arm_without_joggle_worked_by_hand(pedal: Pedal) -> None:
    """2000 N x 217.5 mm on 8 x 32 with a 12 mm hole: two bars of 10 beside the hole."""
    loaded = pedal(pad_offset=0.0).abuse
    inertia = 2 * (8.0 * 10.0**3 / 12 + 80.0 * 11.0**2)
    assert loaded.arm_moment == pytest.approx(435e3)
    assert loaded.arm.size == pytest.approx(435e3 * 16.0 / inertia, rel=1e-12)
    assert loaded.arm_collapse.size == pytest.approx(435e3 / (2 * 80.0 * 11.0), rel=1e-12)
    assert loaded.arm_worst_at == pytest.approx(54.5)


def test_face_of_a_short_thick_arm_between_pin_and_pivot(pedal: Pedal) -> None:
    """The far side of the pin sees the push times overhang over span: here four times as much."""
    loaded = pedal(pad_offset=0.0).abuse
    shear = 2000.0 * 217.5 / 54.5
    assert loaded.arm_face == pytest.approx(3**0.5 * 1.5 * shear / (8.0 * 20.0), rel=1e-12)


def test_a_joggle_raises_both_places_and_a_far_pad_lets_the_face_govern(pedal: Pedal) -> None:
    straight, joggled, far = (pedal(pad_offset=e).abuse for e in (0.0, 15.0, 80.0))
    assert straight.arm_edge < joggled.arm_edge < far.arm_edge
    assert straight.arm_face < joggled.arm_face < far.arm_face
    assert straight.arm.size == straight.arm_edge
    assert joggled.arm.size == joggled.arm_edge
    assert far.arm.size == far.arm_face
    assert joggled.arm_torque == pytest.approx(30e3)


def test_a_pin_beyond_the_pivot_bends_the_arm_most_at_the_pivot_undrilled(pedal: Pedal) -> None:
    loaded = pedal(pin_angle=pi, pivot_share=6.05, pad_offset=0.0).abuse
    assert loaded.arm_moment == pytest.approx(2000.0 * 272.0)
    assert loaded.arm.size == pytest.approx(6 * 2000.0 * 272.0 / (8.0 * 32.0**2), rel=1e-12)
    assert loaded.arm_worst_at == pytest.approx(0.0, abs=1e-9)
    assert loaded.pivot_force == pytest.approx(12100.0)


def test_an_arm_that_tapers_too_fast_is_worst_away_from_the_pin(pedal: Pedal) -> None:
    """Even strength would need depth as the root of the distance; 10 + x/6 peaks where x/6 = 10."""
    arm = {"depth_at_pad": 10.0, "depth_at_pivot": 10.0 + 272.0 / 6, "pin_hole": 0.0}
    loaded = pedal(arm=arm, pad_offset=0.0).abuse
    peak = 6 * 2000.0 * 60.0 / (8.0 * 20.0**2)
    assert loaded.arm_worst_at == pytest.approx(272.0 - 60.0, abs=217.5 / 12)
    assert loaded.arm.size == pytest.approx(peak, rel=1e-2)
    assert loaded.arm.size <= peak


def test_an_arm_may_yield_at_one_place_and_fold_at_another(pedal: Pedal) -> None:
    """12 deep at the pad, 40 at the pivot, joggle 15: torsion tears at the pad, bending folds."""
    arm = {"depth_at_pad": 12.0, "depth_at_pivot": 40.0}
    loaded = pedal(arm=arm).abuse
    assert loaded.arm_worst_at == pytest.approx(272.0)
    assert loaded.arm.size == loaded.arm_face
    depth = 12.0 + 28.0 * 217.5 / 272.0
    bends = 435e3 / (8.0 * (depth**2 - 12.0**2) / 4)
    twists = 30e3 / (8.0**2 * (3 * (depth - 12.0) - 8.0) / 6)
    assert loaded.arm_collapse.size == pytest.approx((bends**2 + 3 * twists**2) ** 0.5, rel=1e-9)


def test_rod_pin_and_pivot_worked_by_hand(pedal: Pedal) -> None:
    loaded = pedal().abuse
    rod = 2000.0 * 5.05 / cos(radians(2.0))
    bends = rod / 2 * (6.0 / 2 + 0.5 + 8.0 / 4) / (pi * 12.0**3 / 32)
    shears = rod / 2 / (pi * 12.0**2 / 4)
    assert loaded.rod_force == pytest.approx(rod)
    assert loaded.pin.size == pytest.approx((bends**2 + 3 * shears**2) ** 0.5)
    assert loaded.pin_bearing.size == pytest.approx(rod / (12.0 * 8.0))
    tube = 8100.0 * 60.0 / 4 / (pi * (22.0**4 - 16.0**4) / (32 * 22.0))
    end = 8100.0 / 2 + 30e3 / 60.0
    assert loaded.pivot_tube.size == pytest.approx(tube)
    assert loaded.pivot_shaft.size == pytest.approx(3**0.5 * end / (pi * 16.0**2 / 4))
    assert loaded.bush.size == pytest.approx(end / (16.0 * 15.0))


def test_a_soft_hole_or_a_soft_pin_the_weaker_bears(pedal: Pedal) -> None:
    assert pedal(arm={"yield_strength": 200.0}).abuse.pin_bearing.bears == 200.0
    assert pedal(clevis_pin={"yield_strength": 210.0}).abuse.pin_bearing.bears == 210.0


def test_a_sideways_push_bends_the_arm_at_the_drilled_pin_or_at_a_slim_pivot(pedal: Pedal) -> None:
    at_pin = 200.0 * 217.5 / (20.0 * 8.0**2 / 6)
    assert pedal().sideways.size == pytest.approx(at_pin)
    undrilled = 200.0 * 272.0 / (32.0 * 8.0**2 / 6)
    assert pedal(arm={"pin_hole": 0.0}).sideways.size == pytest.approx(undrilled)
    assert pedal(pin_angle=pi).sideways.size == pytest.approx(undrilled)


def test_give_of_an_even_arm_worked_by_hand(pedal: Pedal) -> None:
    """500 N; the arm turns about its pin as the piece to the pivot bends."""
    give = pedal().give
    stiff = 210000.0 * 8.0 * 32.0**3 / 12
    bends = 500.0 * 217.5**2 * (217.5 + 54.5) / (3 * stiff)
    modulus = 210000.0 / 2.6
    slides = 1.2 * 500.0 * (217.5 + 217.5**2 / 54.5) / (modulus * 256.0)
    assert give.arm_bending == pytest.approx(bends, rel=1e-9)
    assert give.arm_shear == pytest.approx(slides, rel=1e-9)
    twists = 500.0 * 15.0**2 * 272.0 / (modulus * 0.2808 * 32.0 * 8.0**3)
    assert give.arm_twist == pytest.approx(twists, rel=5e-4)
    rod = (5.05 / cos(radians(2.0))) ** 2 * 500.0 * 106.0 / (210000.0 * pi / 4 * 8.16**2)
    assert give.push_rod == pytest.approx(rod)
    assert give.cylinder_mount == pytest.approx(5.05**2 * 500.0 / 5000.0)
    assert give.pivot_mount == pytest.approx(4.05**2 * 500.0 / 8000.0)
    assert pedal().flange_give == pytest.approx(5.05 * 500.0 / 5000.0)


def test_an_open_load_loop_gives_tens_of_millimetres(pedal: Pedal) -> None:
    """A cylinder on thin sheet and a pivot hung from a rail, ratio 4: 40 + 11 mm and the arm."""
    soft = pedal(
        mount={"cylinder_stiffness": 200.0, "pivot_stiffness": 400.0},
        pad_radius=248.0,
        pin_radius=62.0,
        ratio=4.0,
        pivot_share=3.0,
    )
    assert soft.give.cylinder_mount == pytest.approx(40.0)
    assert soft.give.pivot_mount == pytest.approx(11.25)
    assert 51.25 < soft.give.total < 52.5
    assert soft.flange_give == pytest.approx(10.0)


def test_a_hollow_rod_bows_later_than_a_solid_one_of_the_same_metal(pedal: Pedal) -> None:
    solid = pedal(push_rod={"outside": 10.0}, rod_length=300.0).buckling_load
    hollow = pedal(push_rod={"outside": 14.0, "inside": 96.0**0.5}, rod_length=300.0)
    assert hollow.buckling_load > 1.2 * solid


def test_a_clutch_is_judged_by_its_own_pushes(pedal: Pedal) -> None:
    clutch = pedal(loads=CLUTCH_LOADS)
    assert (clutch.give.push, clutch.panic.push, clutch.abuse.push) == (200.0, 1000.0, 1500.0)
    assert clutch.abuse.arm.size == pytest.approx(0.75 * pedal().abuse.arm.size)


def test_the_working_shows_each_sum_once_at_the_hardest_push_and_no_search(pedal: Pedal) -> None:
    with working() as sheet:
        pedal()
    subjects = {step.subject for step in sheet}
    assert {"2000 N", "sideways", "push rod", "give"} <= subjects
    assert not {"500 N", "1250 N"} & subjects
    assert all(np.ndim(step.value) == 0 for step in sheet)
    edge = [s for s in sheet if s.formula.name == "structure.edge_torsion_factor"]
    assert [s.subject for s in edge] == ["2000 N"]
    folds = [s for s in sheet if s.formula.name == "structure.collapse_stress"]
    assert folds[-1].value == pytest.approx(pedal().abuse.arm_collapse.size, rel=1e-12)


def test_lighter_pushes_are_the_hardest_one_in_proportion(pedal: Pedal) -> None:
    """Forces and stresses grow with the push, so one sum answers for all three."""
    loads = BRAKE_LOADS
    harder = pedal(loads=replace(loads, abuse=loads.panic))
    for name in ("arm", "arm_collapse", "pin", "pin_bearing", "pivot_tube", "pivot_shaft", "bush"):
        scaled, direct = getattr(pedal().panic, name), getattr(harder.abuse, name)
        assert scaled.size == pytest.approx(direct.size, rel=1e-12)
        assert scaled.bears == direct.bears
    assert pedal().panic.arm_worst_at == harder.abuse.arm_worst_at


def test_the_life_of_the_arm_by_hand(pedal: Callable[..., Strength]) -> None:
    """Category 90: 2e6 (90 / range)^3 above 66.3, slope 5 below, nothing under 36.4."""
    life = (Pushes(push=1000.0, times=2000.0), Pushes(push=10.0, times=1e9))
    found = pedal(loads=replace(BRAKE_LOADS, life=life))
    swing = 1.35 * float(found.abuse.arm.size) / 2.0
    assert swing > 66.3
    assert found.damage == pytest.approx(2000.0 / (2e6 * (90.0 / swing) ** 3), rel=1e-6)
