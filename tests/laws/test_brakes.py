"""Laws of cylinders and brakes: scaling, sharing, work, lock order, batches."""

from dataclasses import dataclass, replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from pedalwright.brakes import (
    BrakeResult,
    Braking,
    Car,
    Disc,
    Drum,
    Load,
    Plumbing,
    Ratios,
    WheelBrake,
    brake_at,
    demand,
    earliest_rear_lock,
    respond,
)
from pedalwright.brakes.formulas import (
    GRAVITY,
    critical_rate,
    front_adhesion,
    front_alone_grip,
    front_load,
    front_lock,
    ideal_share,
    rear_adhesion,
    rear_alone_grip,
    rear_load,
    rear_lock,
)
from pedalwright.core.batch import over, pick, stack
from pedalwright.core.units import Num
from pedalwright.hydraulics import (
    BalanceBar,
    Boost,
    Cylinder,
    Demand,
    Limiter,
    Masters,
    Servo,
    Tandem,
    Twin,
    circuits,
    pressures,
    shortest_reserve,
    strokes,
)


def between(low: float, high: float) -> SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


CARS = st.builds(
    Car,
    mass=between(500, 1500),
    front_share=between(0.38, 0.58),
    wheelbase=between(2000, 2800),
    cg_height=between(350, 600),
    tyre_radius=between(260, 340),
)
CYLINDERS = st.builds(Cylinder, bore=between(15, 26), stroke=between(25, 38))
TANDEMS = st.builds(Tandem, bore=between(15, 26), stroke=between(25, 38))
TWINS = st.builds(
    Twin,
    front=CYLINDERS,
    rear=CYLINDERS,
    bar=st.builds(BalanceBar, spacing=between(50, 80), offset=between(-10, 10)),
)
DISCS = st.builds(
    Disc,
    piston_bore=between(30, 60),
    pistons_one_side=st.sampled_from([1.0, 2.0]),
    pistons_moved=st.sampled_from([1.0, 2.0, 4.0]),
    effective_radius=between(90, 130),
    friction_low=between(0.28, 0.34),
    friction=between(0.35, 0.4),
    friction_high=between(0.41, 0.5),
    lift=between(0.1, 0.6),
)
DRUMS = st.builds(
    Drum,
    cylinder_bore=between(15, 26),
    pistons_moved=st.just(2.0),
    drum_radius=between(90, 140),
    factor_low=between(1.5, 2.0),
    factor=between(2.1, 2.6),
    factor_high=between(2.7, 4.4),
    lift=between(0.3, 1.0),
)
PLUMBINGS = st.builds(
    Plumbing, hoses=between(200, 2000), dead_stroke=between(0, 3), efficiency=between(0.8, 1.0)
)
#: A run-out servo, a limiter, a load: each may be there or not.
ASSISTED = st.builds(
    Tandem,
    bore=between(15, 26),
    stroke=between(25, 38),
    servo=st.builds(
        Servo,
        points=st.tuples(st.builds(Boost, push=between(200, 900), force=between(1000, 4000))),
    ),
)
LIMITED = st.builds(
    Plumbing,
    hoses=between(200, 2000),
    dead_stroke=between(0, 3),
    efficiency=between(0.8, 1.0),
    limiter=st.builds(Limiter, knee=between(0.5, 8), slope=st.just(0.0) | between(0.01, 1)),
)
LOADED = st.builds(
    Car,
    mass=between(500, 1500),
    front_share=between(0.38, 0.58),
    wheelbase=between(2000, 2800),
    cg_height=between(350, 600),
    tyre_radius=between(260, 340),
    grip=between(0.3, 1.1),
    load=st.builds(
        Load, mass=between(50, 300), front_share=between(0, 0.5), cg_height=between(350, 600)
    ),
)
DEMANDS = st.builds(Demand, front=between(500, 4000), rear=between(500, 4000))
PUSHES, RATIOS = between(50, 1500), between(2.5, 7)


@dataclass(frozen=True, kw_only=True, slots=True)
class Case:
    """Everything the brakes room is given."""

    car: Car
    masters: Masters
    front: WheelBrake
    rear: WheelBrake
    plumbing: Plumbing
    ratios: Ratios
    pad_travel: tuple[Num, Num, Num]
    push: Num

    def braking(self) -> Braking:
        ratio = self.ratios.hard_stop
        parts = (self.car, self.masters, self.front, self.rear, self.plumbing)
        return brake_at(*parts, push=self.push, ratio=ratio)

    def result(self) -> BrakeResult:
        parts = (self.car, self.masters, self.front, self.rear, self.plumbing)
        return respond(*parts, ratios=self.ratios, pad_travel=self.pad_travel)


def cases(
    masters: SearchStrategy[Masters] = TANDEMS | TWINS,
    front: SearchStrategy[WheelBrake] = DISCS | DRUMS,
    rear: SearchStrategy[WheelBrake] = DISCS | DRUMS,
    car: SearchStrategy[Car] = CARS,
    plumbing: SearchStrategy[Plumbing] = PLUMBINGS,
) -> SearchStrategy[Case]:
    return st.builds(
        Case,
        car=car,
        masters=masters,
        front=front,
        rear=rear,
        plumbing=plumbing,
        ratios=st.builds(Ratios, hard_stop=RATIOS, front_alone=RATIOS, rear_alone=RATIOS),
        pad_travel=st.tuples(between(40, 120), between(60, 180), between(60, 180)),
        push=PUSHES,
    )


@st.composite
def likes(draw: DrawFn) -> list[Case]:
    """Two to four cars with the same kinds of part, so that they make a batch."""
    masters = draw(st.sampled_from([TANDEMS, TWINS, ASSISTED]))
    front, rear = draw(st.sampled_from([DISCS, DRUMS])), draw(st.sampled_from([DISCS, DRUMS]))
    car, plumbing = (
        draw(st.sampled_from([CARS, LOADED])),
        draw(st.sampled_from([PLUMBINGS, LIMITED])),
    )
    like = cases(masters, front, rear, car, plumbing)
    return draw(st.lists(like, min_size=2, max_size=4))


# -- cylinders --------------------------------------------------------------------------


@given(TWINS | TANDEMS, PUSHES, RATIOS)
def test_twice_the_bore_area_gives_half_the_pressure(
    masters: Masters, push: float, ratio: float
) -> None:
    wider = (
        replace(masters, bore=masters.bore * np.sqrt(2.0))
        if isinstance(masters, Tandem)
        else replace(
            masters,
            front=replace(masters.front, bore=masters.front.bore * np.sqrt(2.0)),
            rear=replace(masters.rear, bore=masters.rear.bore * np.sqrt(2.0)),
        )
    )
    before, after = (pressures(m, push, ratio, 0.9) for m in (masters, wider))
    assert after == pytest.approx([p / 2.0 for p in before], rel=1e-12)


@given(TWINS, PUSHES, RATIOS)
def test_a_bar_shares_the_whole_push(twin: Twin, push: float, ratio: float) -> None:
    front, rear = circuits(twin)
    p_front, p_rear = pressures(twin, push, ratio, 1.0)
    assert front.share + rear.share == pytest.approx(1.0, rel=1e-12)
    assert p_front * front.area + p_rear * rear.area == pytest.approx(push * ratio, rel=1e-12)


@given(TWINS, between(0.1, 5.0))
def test_the_rod_nearer_the_bearing_gets_more(twin: Twin, further: float) -> None:
    bar = replace(twin.bar, offset=twin.bar.offset + further)
    assert circuits(replace(twin, bar=bar))[0].share > circuits(twin)[0].share


@given(TWINS | TANDEMS, DEMANDS, PUSHES)
def test_the_work_of_the_rod_is_the_work_of_the_fluid(
    masters: Masters, fluid: Demand, push: float
) -> None:
    """With no dead stroke and no friction, at a pressure that is held."""
    p_front, p_rear = pressures(masters, push, 1.0, 1.0)
    travel = strokes(masters, fluid, dead_stroke=0.0).hard_stop
    assert push * travel == pytest.approx(p_front * fluid.front + p_rear * fluid.rear, rel=1e-12)


@given(TANDEMS, DEMANDS, between(0, 3), PUSHES)
def test_a_tandem_is_a_pair_of_cylinders_of_half_its_area(
    tandem: Tandem, fluid: Demand, dead_stroke: float, push: float
) -> None:
    """With the bar centred: the same pressure and the same travel of the rod."""
    half = Cylinder(bore=tandem.bore / np.sqrt(2.0), stroke=tandem.stroke)
    twin = Twin(front=half, rear=half, bar=BalanceBar(spacing=60.0, offset=0.0))
    assert pressures(twin, push, 5.0, 0.9) == pytest.approx(pressures(tandem, push, 5.0, 0.9))
    one, two = strokes(tandem, fluid, dead_stroke), strokes(twin, fluid, dead_stroke)
    assert one.hard_stop == pytest.approx(two.hard_stop, rel=1e-12)
    used_one, used_two = shortest_reserve(tandem, one), shortest_reserve(twin, two)
    assert used_one == pytest.approx(used_two, rel=1e-12)


@given(TWINS | TANDEMS, DEMANDS, between(0, 3))
def test_a_lost_circuit_takes_more_travel_while_there_is_stroke_in_reserve(
    masters: Masters, fluid: Demand, dead_stroke: float
) -> None:
    found = strokes(masters, fluid, dead_stroke)
    assume(shortest_reserve(masters, found) < 1.0)
    assert found.front_alone > found.hard_stop
    assert found.rear_alone > found.hard_stop


# -- from the pad to the road -----------------------------------------------------------


@given(cases(), between(1.01, 3.0))
def test_braking_grows_with_the_push(case: Case, more: float) -> None:
    before, after = case.braking(), replace(case, push=case.push * more).braking()
    assert after.deceleration == pytest.approx(more * before.deceleration, rel=1e-12)
    assert after.deceleration > before.deceleration
    assert after.front_share == pytest.approx(before.front_share, rel=1e-12)


@given(cases())
def test_the_effort_gives_the_deceleration_it_was_asked_for(case: Case) -> None:
    effort = case.result().effort_6_43
    assert replace(case, push=effort).braking().deceleration == pytest.approx(6.43, rel=1e-12)


@given(cases())
def test_the_lost_circuits_share_the_stop_where_the_ratio_is_the_same(case: Case) -> None:
    ratio = case.ratios.hard_stop
    level = replace(case, ratios=Ratios(hard_stop=ratio, front_alone=ratio, rear_alone=ratio))
    found = level.result()
    both = found.front_alone_500 + found.rear_alone_500
    assert both == pytest.approx(found.at_500.deceleration, rel=1e-12)


@given(DISCS, DISCS, PLUMBINGS)
def test_the_fluid_is_all_accounted_for(front: Disc, rear: Disc, plumbing: Plumbing) -> None:
    found = demand(front, rear, plumbing)
    lifted = sum(
        2.0 * disc.pistons_moved * np.pi / 4.0 * disc.piston_bore**2 * disc.lift
        for disc in (front, rear)
    )
    assert found.front + found.rear == pytest.approx(lifted + plumbing.hoses, rel=1e-12)


# -- balance and lock order -------------------------------------------------------------


def loads(car: Car) -> dict[str, Num]:
    return {"psi": car.front_share, "h": car.cg_height, "L": car.wheelbase}


@given(CARS, between(0.0, 1.0))
def test_the_axles_carry_the_car(car: Car, z: float) -> None:
    front = front_load(car.mass, GRAVITY, z=z, **loads(car))
    rear = rear_load(car.mass, GRAVITY, z=z, **loads(car))
    assert front + rear == pytest.approx(car.mass * GRAVITY, rel=1e-12)
    share = ideal_share(z=z, **loads(car))
    assert share == pytest.approx(front / (front + rear), rel=1e-12)


@given(CARS, between(0.05, 1.0))
def test_with_the_ideal_share_both_axles_use_the_road_alike(car: Car, z: float) -> None:
    share = ideal_share(z=z, **loads(car))
    used = [f(phi=share, z=z, **loads(car)) for f in (front_adhesion, rear_adhesion)]
    assert used == pytest.approx([z, z], rel=1e-9)
    assert critical_rate(phi=share, **loads(car)) == pytest.approx(z, rel=1e-9)


@given(CARS, between(0.45, 0.8), between(0.1, 1.1))
def test_below_the_critical_rate_the_front_locks_first(car: Car, phi: float, mu: float) -> None:
    front = front_lock(mu=mu, phi=phi, **loads(car))
    rear = rear_lock(mu=mu, phi=phi, **loads(car))
    critical = critical_rate(phi=phi, **loads(car))
    assert (front < rear) == (min(front, rear) < critical)


@given(CARS, between(0.2, 1.0))
def test_an_axle_alone_brakes_with_its_load_times_the_grip(car: Car, mu: float) -> None:
    weight = car.mass * GRAVITY
    for grip, load in ((front_alone_grip, front_load), (rear_alone_grip, rear_load)):
        z = grip(mu=mu, **loads(car))
        assert z * weight == pytest.approx(
            mu * load(car.mass, GRAVITY, z=z, **loads(car)), rel=1e-9
        )


def test_a_lifted_rear_axle_has_no_finite_use_of_the_road() -> None:
    assert rear_adhesion(phi=0.7, z=1.0, psi=0.7, h=800.0, L=2000.0) == np.inf


@given(cases())
def test_the_curves_meet_at_the_critical_deceleration(case: Case) -> None:
    found = case.result()
    rates = np.asarray(found.decelerations)
    front_more = found.front_utilisation > found.rear_utilisation
    assert np.array_equal(front_more, rates < found.nominal.critical)
    assert earliest_rear_lock(found) <= found.nominal.critical


@given(cases(masters=TANDEMS | ASSISTED, plumbing=LIMITED))
def test_behind_a_limiter_the_front_locks_first_up_to_the_critical_deceleration(
    case: Case,
) -> None:
    found = case.result()
    rates = np.asarray(found.decelerations)
    below = rates < found.nominal.critical
    assert np.all((found.front_utilisation > found.rear_utilisation)[below])
    plain = replace(case, plumbing=replace(case.plumbing, limiter=None)).result()
    assert found.nominal.critical >= plain.nominal.critical * (1.0 - 1e-12) or (
        plain.nominal.critical < 0.0
    )
    assert np.all(np.diff(found.front_shares) >= -1e-12)


@given(cases(masters=ASSISTED, plumbing=LIMITED))
def test_the_effort_is_the_inverse_of_the_chain(case: Case) -> None:
    found = case.result()
    assume(np.isfinite(found.effort_6_43) and found.effort_6_43 < 1e6)
    again = replace(case, push=found.effort_6_43).braking()
    assert again.deceleration == pytest.approx(6.43, rel=1e-9)


@given(cases(), DISCS, DISCS)
def test_crosswise_friction_is_not_mixed_in(case: Case, front: Disc, rear: Disc) -> None:
    """Low, usual and high friction put both axles at the same end."""
    ends = {"friction_low": 0.3, "friction": 0.36, "friction_high": 0.42}
    found = replace(case, front=replace(front, **ends), rear=replace(rear, **ends)).result()
    assert found.low.front_share == pytest.approx(found.high.front_share, rel=1e-12)


# -- batches ----------------------------------------------------------------------------


def same(one: Num, other: Num) -> Num:
    assert np.shape(one) == np.shape(other)
    np.testing.assert_allclose(one, other, rtol=1e-12)
    return one


@given(likes())
def test_a_batch_equals_its_singles(rows: list[Case]) -> None:
    batch = stack(rows)
    braking, result = batch.braking(), batch.result()
    fluid = demand(batch.front, batch.rear, batch.plumbing)
    moved = strokes(batch.masters, fluid, batch.plumbing.dead_stroke)
    for i, row in enumerate(rows):
        over(same, row.braking(), pick(braking, i))
        over(same, row.result(), pick(result, i))
        alone = demand(row.front, row.rear, row.plumbing)
        over(same, alone, pick(fluid, i))
        over(same, strokes(row.masters, alone, row.plumbing.dead_stroke), pick(moved, i))


@given(cases(), st.sampled_from(["mass", "front_share", "wheelbase", "cg_height", "tyre_radius"]))
def test_one_number_may_vary_alone(case: Case, name: str) -> None:
    """Its curve then has the variants behind the decelerations, whichever number it is."""
    values = getattr(case.car, name) * np.array([0.9, 1.0, 1.1])
    found = replace(case, car=replace(case.car, **{name: values})).result()
    middle = case.result()
    curve = np.broadcast_to(found.front_utilisation, (19, 3))
    np.testing.assert_allclose(curve[:, 1], middle.front_utilisation, rtol=1e-12)
    assert np.shape(found.decelerations) == (19, 3)
