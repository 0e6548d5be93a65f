"""Laws of the clutch: work, sums, there and back again, cable and fluid, batches."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from pedalwright.clutch import (
    CableFork,
    ClutchResult,
    ConcentricBearing,
    Release,
    SlaveCylinder,
    budget,
    need,
    respond,
)
from pedalwright.clutch.formulas import (
    plate_capacity_new,
    plate_capacity_worn,
    spring_load,
    spring_peak,
    spring_shape_k1,
    spring_valley,
)
from pedalwright.core.batch import over, pick, stack
from pedalwright.core.units import Num
from pedalwright.hydraulics import Cylinder


def between(low: float, high: float) -> SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


def releases(
    actuator: SearchStrategy[SlaveCylinder | ConcentricBearing],
) -> SearchStrategy[Release]:
    return st.builds(
        Release,
        actuator=actuator,
        bearing_lift=between(4, 12),
        free_play=between(0, 4),
        release_load=between(500, 3000),
        line_growth=between(0, 0.2),
        dead_stroke=between(0, 3),
        line_efficiency=between(0.6, 1.0),
    )


SLAVES = st.builds(
    SlaveCylinder,
    bore=between(15, 30),
    fork_ratio=between(1, 3),
    fork_efficiency=between(0.7, 1.0),
)
RINGS = st.builds(ConcentricBearing, area=between(500, 1200))
FORKS = releases(SLAVES)
FLUID = releases(SLAVES | RINGS)
MASTERS = st.builds(Cylinder, bore=between(15, 26), stroke=between(25, 40))
RATIOS = between(3, 8)
ROOMS = between(60, 220)


def pad(stroke: Num) -> Num:
    """A pedal whose ratio falls a little as it is pressed."""
    return 5.2 * stroke - 0.012 * stroke**2


def made(
    release: Release, master: Cylinder | None, ratio: Num, room: Num, give: Num = 0.0
) -> ClutchResult:
    return respond(
        release,
        master,
        travel=budget(need(release, master), pad),
        available=room,
        mean_ratio=ratio,
        stroke_at_wall=room / ratio,
        give_per_newton=give,
    )


@given(FLUID, MASTERS, RATIOS)
def test_work_in_is_work_out_without_loss(release: Release, master: Cylinder, ratio: float) -> None:
    """Held down and let go on by a little: the push's work is the bearing's."""
    actuator = release.actuator
    if isinstance(actuator, SlaveCylinder):
        actuator = replace(actuator, fork_efficiency=1.0)
    ideal = replace(release, actuator=actuator, line_efficiency=1.0, line_growth=0.0)
    further = replace(ideal, bearing_lift=ideal.bearing_lift + 0.5)
    pad_moved = ratio * (need(further, master).master - need(ideal, master).master)
    effort = made(ideal, master, ratio, 150.0).effort
    assert effort * pad_moved == pytest.approx(ideal.release_load * 0.5, rel=1e-9)


@given(FLUID, MASTERS, RATIOS, between(0, 0.05))
def test_the_causes_sum_to_the_total(
    release: Release, master: Cylinder, ratio: float, give: float
) -> None:
    needed = need(release, master)
    causes = needed.dead_stroke + needed.free_play + needed.lift + needed.line_growth
    assert causes == pytest.approx(needed.master, rel=1e-12)
    result = made(release, master, ratio, 150.0, give)
    spent = result.budget
    causes = spent.dead_stroke + spent.free_play + spent.lift + spent.line_growth
    assert causes == pytest.approx(pad(needed.master), rel=1e-12)
    assert causes == pytest.approx(result.travel_needed, rel=1e-12)
    assert causes + spent.structure == pytest.approx(spent.total, rel=1e-12)
    assert min(spent.dead_stroke, spent.free_play, spent.lift, spent.line_growth) >= 0.0


@given(FLUID, MASTERS, RATIOS)
def test_there_and_back_again(release: Release, master: Cylinder, ratio: float) -> None:
    """Room for exactly the stroke needed lifts the bearing by exactly the lift wanted."""
    long = replace(master, stroke=1000.0)
    room = ratio * need(release, long).master
    result = made(release, long, ratio, room)
    assert result.lift_at_wall == pytest.approx(release.bearing_lift, rel=1e-9)
    assert result.lift_reached == pytest.approx(release.bearing_lift, rel=1e-9)
    assert result.fluid is not None
    assert result.fluid.least_bore == pytest.approx(master.bore, rel=1e-9)


@given(FLUID, MASTERS, RATIOS, ROOMS, between(0, 0.05))
def test_lift_stays_within_what_is_possible(
    release: Release, master: Cylinder, ratio: float, room: float, give: float
) -> None:
    result = made(release, master, ratio, room, give)
    assert 0.0 <= result.lift_reached <= min(release.bearing_lift, result.lift_at_wall + 1e-12)
    roomier = made(release, master, ratio, room + 10.0, give)
    assert roomier.lift_at_wall >= result.lift_at_wall
    assert made(release, master, ratio, 1e6, give).lift_at_wall <= (
        made(release, replace(master, stroke=1e6), ratio, 1e6, give).lift_at_wall
    )


@given(FORKS, RATIOS, ROOMS)
def test_a_cable_is_fluid_between_equal_bores(release: Release, ratio: float, room: float) -> None:
    slave = release.actuator
    assert isinstance(slave, SlaveCylinder)
    fluid = replace(release, line_growth=0.0)
    cable = replace(
        fluid,
        actuator=CableFork(fork_ratio=slave.fork_ratio, fork_efficiency=slave.fork_efficiency),
    )
    one = made(fluid, Cylinder(bore=slave.bore, stroke=1e6), ratio, room)
    other = made(cable, None, ratio, room)
    over(
        lambda a, b: np.testing.assert_allclose(a, b, rtol=1e-12, atol=1e-12),
        replace(one, fluid=None),
        other,
    )


@given(SLAVES, MASTERS, FORKS)
def test_a_fork_of_one_on_a_ring_of_the_same_area(
    slave: SlaveCylinder, master: Cylinder, release: Release
) -> None:
    plain = replace(slave, fork_ratio=1.0, fork_efficiency=1.0)
    ring = ConcentricBearing(area=np.pi / 4 * slave.bore**2)
    over(
        lambda a, b: np.testing.assert_allclose(a, b, rtol=1e-12, atol=1e-12),
        made(replace(release, actuator=plain), master, 5.0, 150.0),
        made(replace(release, actuator=ring), master, 5.0, 150.0),
    )


@given(FLUID, MASTERS, RATIOS)
def test_a_bigger_master_wants_less_travel_and_more_push(
    release: Release, master: Cylinder, ratio: float
) -> None:
    """Effort grows with the area; travel, dead stroke apart, shrinks with it."""
    double = replace(master, bore=master.bore * np.sqrt(2.0))
    small, big = need(release, master), need(release, double)
    half = (small.master - small.dead_stroke) / 2.0
    assert big.master - big.dead_stroke == pytest.approx(half, rel=1e-12)
    push = made(release, master, ratio, 150.0).effort
    assert made(release, double, ratio, 150.0).effort == pytest.approx(2.0 * push, rel=1e-12)


@given(between(0.1, 0.5), between(1000, 9000), between(180, 300), between(0.5, 0.95))
def test_a_new_plate_carries_a_little_more_than_a_worn_one(
    mu: float, F: float, D: float, share: float
) -> None:
    new = plate_capacity_new(2.0, mu, F, D, share * D)
    worn = plate_capacity_worn(2.0, mu, F, D, share * D)
    assert worn < new < 1.04 * worn
    thin = plate_capacity_new(2.0, mu, F, D, 0.999 * D)
    assert thin == pytest.approx(plate_capacity_worn(2.0, mu, F, D, 0.999 * D), rel=1e-6)


@given(between(1.45, 2.5), between(1.0, 4.0), between(1.3, 2.5))
def test_a_spring_washer_is_point_symmetric_about_flat(
    over_thickness: float, t: float, delta: float
) -> None:
    """What the load is above that of the flat washer before, it is below it behind."""
    h = over_thickness * t
    shape = spring_shape_k1(delta)

    def load(s: Num) -> Num:
        return spring_load(E=207e3, nu=0.3, K1=shape, D_e=150.0, h=h, t=t, s=s)

    peak, valley = spring_peak(h, t), spring_valley(h, t)
    assert 0.0 < peak < h < valley
    assert load(peak) + load(valley) == pytest.approx(2.0 * load(h), rel=1e-9)
    for s in (peak, valley):
        around = load(s + 1e-3 * t) - load(s - 1e-3 * t)
        assert around == pytest.approx(0.0, abs=1e-5 * load(h))


def same(one: Num, other: Num) -> Num:
    assert np.shape(one) == np.shape(other)
    np.testing.assert_allclose(one, other, rtol=1e-12, atol=1e-12)
    return one


@given(st.data(), st.sampled_from([SLAVES, RINGS]), st.integers(2, 4))
def test_a_batch_equals_its_singles(
    data: st.DataObject,
    kind: SearchStrategy[SlaveCylinder] | SearchStrategy[ConcentricBearing],
    n: int,
) -> None:
    rows = [data.draw(releases(kind)) for _ in range(n)]
    masters = [data.draw(MASTERS) for _ in range(n)]
    ratios = [data.draw(RATIOS) for _ in range(n)]
    rooms = [data.draw(ROOMS) for _ in range(n)]
    together = made(stack(rows), stack(masters), np.array(ratios), np.array(rooms), 0.01)
    for i in range(n):
        alone = made(rows[i], masters[i], ratios[i], rooms[i], 0.01)
        over(same, alone, pick(together, i))
