"""Laws of the loaded pedal: work, superposition, proportion, batches."""

from dataclasses import fields, is_dataclass, replace
from math import pi
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from pedalwright.core.batch import over, pick, stack
from pedalwright.core.units import Array
from pedalwright.structure import (
    Arm,
    ClevisPin,
    Loads,
    Mount,
    Pivot,
    Pushes,
    PushRod,
    Strength,
    respond,
)
from pedalwright.structure.arm import HeldArm, Place
from pedalwright.structure.formulas.sections import (
    edge_torsion_factor,
    face_torsion_factor,
    torsion_constant,
)
from pedalwright.structure.plates import supported_patch

Case = dict[str, Any]

#: A pedal has forty numbers: fewer of them, but each a whole pedal.
FEW = settings(max_examples=25)


def number(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


arms = st.builds(
    Arm,
    thickness=number(4.0, 12.0),
    depth_at_pivot=number(24.0, 60.0),
    depth_at_pad=number(16.0, 40.0),
    pin_hole=number(6.0, 12.0),
    elastic=number(6e4, 2.2e5),
    poisson=number(0.2, 0.4),
    yield_strength=number(100.0, 600.0),
)
cases = st.fixed_dictionaries(
    {
        "arm": arms,
        "pivot": st.builds(
            Pivot,
            tube_outside=number(20.0, 30.0),
            tube_inside=number(10.0, 18.0),
            shaft_diameter=number(8.0, 20.0),
            span=number(30.0, 120.0),
            bush_length=number(8.0, 25.0),
            tube_yield=number(150.0, 400.0),
            shaft_yield=number(150.0, 700.0),
            bush_pressure=number(10.0, 60.0),
        ),
        "clevis_pin": st.builds(
            ClevisPin,
            diameter=number(6.0, 14.0),
            inner_thickness=number(4.0, 12.0),
            fork_thickness=number(3.0, 8.0),
            gap=number(0.1, 2.0),
            yield_strength=number(200.0, 700.0),
        ),
        "push_rod": st.builds(
            PushRod,
            outside=number(8.0, 16.0),
            inside=number(0.0, 6.0),
            elastic=number(6e4, 2.2e5),
            yield_strength=number(150.0, 700.0),
        ),
        "mount": st.builds(
            Mount, cylinder_stiffness=number(200.0, 2e4), pivot_stiffness=number(200.0, 2e4)
        ),
        "pad_radius": number(180.0, 350.0),
        "pin_radius": number(30.0, 90.0),
        "pin_angle": st.sampled_from([0.0, pi]),
        "pad_offset": number(-60.0, 60.0),
        "ratio": number(2.0, 8.0),
        "rod_length": number(60.0, 300.0),
        "rod_share": number(2.0, 9.0),
        "pivot_share": number(1.0, 9.0),
        "loads": st.builds(
            Loads,
            effort=number(100.0, 600.0),
            panic=number(800.0, 1500.0),
            abuse=number(1500.0, 3000.0),
            sideways=number(50.0, 500.0),
            life=st.just((Pushes(push=300.0, times=1e5),)),
        ),
    }
)


def leaves(tree: Any, name: str = "") -> dict[str, float]:
    if not is_dataclass(tree):
        return {} if tree is None else {name: float(tree)}
    found: dict[str, float] = {}
    for field in fields(tree):
        found |= leaves(getattr(tree, field.name), f"{name}.{field.name}")
    return found


def causes(strength: Strength) -> dict[str, float]:
    give = strength.give
    return {f.name: getattr(give, f.name) for f in fields(give) if f.name not in {"push", "total"}}


@FEW
@given(case=cases)
def test_the_causes_of_give_sum_to_the_whole(case: Case) -> None:
    strength = respond(**case)
    assert sum(causes(strength).values()) == pytest.approx(strength.give.total, rel=1e-14)
    assert all(part >= 0.0 for part in causes(strength).values())


@FEW
@given(case=cases, factor=number(0.2, 5.0))
def test_twice_the_push_gives_and_stresses_twice_as_much(case: Case, factor: float) -> None:
    loads = case["loads"]
    harder = over(lambda push: factor * push, loads)
    before, after = respond(**case), respond(**{**case, "loads": harder})
    for name, value in leaves(before).items():
        if name.endswith(".damage"):
            continue  # it goes with a power of the stress
        still = name.endswith((".bears", ".arm_worst_at", ".buckling_load"))
        assert leaves(after)[name] == pytest.approx(value if still else factor * value, rel=1e-9)


@FEW
@given(case=cases)
def test_the_work_of_the_push_is_stored_in_the_parts(case: Case) -> None:
    """F x give / 2 against the strain energy of beam, rod and mounts, integrated apart."""
    arm, push, offset = case["arm"], case["loads"].effort, case["pad_offset"]
    pad, pin = case["pad_radius"], case["pin_radius"]
    between = case["pin_angle"] == 0.0
    over = pad - pin if between else pad
    modulus = arm.elastic / (2 * (1 + arm.poisson))

    def depth(x: float) -> float:
        taper = (arm.depth_at_pivot - arm.depth_at_pad) / pad
        return arm.depth_at_pad + taper * min(x, pad)

    def overhung(x: float) -> float:
        bends = (push * x) ** 2 / (2 * arm.elastic * arm.thickness * depth(x) ** 3 / 12)
        return bends + 1.2 * push**2 / (2 * modulus * arm.thickness * depth(x))

    def inside(x: float) -> float:
        pull = push * over / pin
        moment = pull * (over + pin - x)
        bends = moment**2 / (2 * arm.elastic * arm.thickness * depth(x) ** 3 / 12)
        return bends + 1.2 * pull**2 / (2 * modulus * arm.thickness * depth(x))

    def twisted(x: float) -> float:
        return (push * offset) ** 2 / (2 * modulus * torsion_constant(arm.thickness, depth(x)))

    stored = quad(overhung, 0, over)[0] + quad(inside, over, over + pin)[0]
    stored += quad(twisted, 0, pad)[0]
    rod, mount = case["push_rod"], case["mount"]
    in_rod = push * case["rod_share"]
    area = pi / 4 * (rod.outside**2 - rod.inside**2)
    stored += in_rod**2 * case["rod_length"] / (2 * rod.elastic * area)
    stored += (push * case["ratio"]) ** 2 / (2 * mount.cylinder_stiffness)
    stored += (push * case["pivot_share"]) ** 2 / (2 * mount.pivot_stiffness)
    assert push * respond(**case).give.total / 2 == pytest.approx(stored, rel=1e-6)


@FEW
@given(case=cases)
def test_give_of_one_soft_part_at_a_time_adds_up(case: Case) -> None:
    rigid = 1e30
    stiff = {
        "arm": replace(case["arm"], elastic=rigid),
        "push_rod": replace(case["push_rod"], elastic=rigid),
        "mount": Mount(cylinder_stiffness=rigid, pivot_stiffness=rigid),
    }
    alone = [respond(**{**case, **stiff, part: case[part]}).give.total for part in stiff]
    assert sum(alone) == pytest.approx(respond(**case).give.total, rel=1e-9)


@FEW
@given(case=cases)
def test_a_pad_to_the_left_is_as_good_as_one_to_the_right(case: Case) -> None:
    mirrored = {**case, "pad_offset": -case["pad_offset"]}
    assert leaves(respond(**mirrored)) == pytest.approx(leaves(respond(**case)), rel=1e-12)


@FEW
@given(many=st.lists(cases, min_size=2, max_size=5))
def test_a_batch_is_its_singles(many: list[Case]) -> None:
    batch: Case = {
        key: stack([case[key] for case in many])
        if is_dataclass(many[0][key])
        else np.array([case[key] for case in many])
        for key in many[0]
    }
    together = respond(**batch)
    for i, case in enumerate(many):
        alone, one = leaves(respond(**case)), leaves(pick(together, i))
        assert one == pytest.approx(alone, rel=1e-9)


@FEW
@given(case=cases, radii=st.lists(number(180.0, 350.0), min_size=2, max_size=4))
def test_one_number_may_be_a_batch_while_the_others_are_not(case: Case, radii: list[float]) -> None:
    together = respond(**{**case, "pad_radius": np.array(radii)})
    for i, radius in enumerate(radii):
        alone = respond(**{**case, "pad_radius": radius})
        assert leaves(pick(together, i)) == pytest.approx(leaves(alone), rel=1e-9)


@FEW
@given(case=cases)
def test_no_place_on_a_finer_grid_is_much_worse_than_the_worst_found(case: Case) -> None:
    held = HeldArm.between(
        case["arm"],
        case["pad_radius"],
        case["pin_radius"],
        case["pin_angle"],
        case["pad_offset"],
    )
    along: Array = np.linspace(0.0, 1.0, 1000, endpoint=False) * held.overhang
    bare = Place(from_pad=along, hole=0.0 * along, support=0.0 * along)
    push = case["loads"].abuse
    loaded = respond(**case).abuse
    assert np.max(held.yielding(push, bare).worse) <= 1.02 * loaded.arm.size
    assert np.max(held.folding(push, bare)) <= 1.02 * loaded.arm_collapse.size


@FEW
@given(case=cases)
def test_an_arm_yields_before_it_folds(case: Case) -> None:
    loaded = respond(**case).abuse
    assert loaded.arm_collapse.size < loaded.arm.size


@FEW
@given(case=cases, wider=number(1.01, 3.0))
def test_more_metal_is_never_weaker(case: Case, wider: float) -> None:
    arm = case["arm"]
    thick = replace(arm, thickness=wider * arm.thickness)
    deep = replace(
        arm, depth_at_pad=wider * arm.depth_at_pad, depth_at_pivot=wider * arm.depth_at_pivot
    )
    before = respond(**case)
    for better in (thick, deep):
        after = respond(**{**case, "arm": better})
        assert after.abuse.arm.size < before.abuse.arm.size
        assert after.sideways.size < before.sideways.size
        assert after.give.total < before.give.total


@given(slim=number(1.0, 400.0))
def test_the_broad_face_is_twisted_harder_than_the_edge(slim: float) -> None:
    assert face_torsion_factor(slim) <= edge_torsion_factor(slim) * (1 + 1e-4)


@given(scale=number(0.2, 5.0), turn=st.booleans())
def test_a_panel_may_be_scaled_and_turned(scale: float, turn: bool) -> None:
    one = supported_patch(300.0, 200.0, 60.0, 40.0)
    other = supported_patch(scale * 300.0, scale * 200.0, scale * 60.0, scale * 40.0)
    assert other.give == pytest.approx(one.give, rel=1e-9)
    if turn:
        turned = supported_patch(200.0, 300.0, 40.0, 60.0)
        assert turned.stress_long == pytest.approx(one.stress_short, rel=1e-9)
        assert turned.give * 300.0**2 == pytest.approx(one.give * 200.0**2, rel=1e-9)
