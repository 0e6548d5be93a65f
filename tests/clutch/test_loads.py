"""Load curves, bite, stop window and cable runs of the clutch."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.clutch import (
    CableBends,
    CableFork,
    CableWire,
    ClutchResult,
    Diaphragm,
    LoadPoint,
    PlateBite,
    Release,
    RodFork,
    SlaveCylinder,
    budget,
    check,
    need,
    respond,
)
from pedalwright.clutch.loads import bearing_load, between_points
from pedalwright.core.batch import stack
from pedalwright.core.units import Num
from pedalwright.hydraulics import Cylinder

GOOD = Release(
    actuator=SlaveCylinder(bore=22.22, fork_ratio=1.9, fork_efficiency=0.9),
    bearing_lift=8.0,
    free_play=1.5,
    release_load=1450.0,
    line_growth=0.06,
    dead_stroke=1.5,
    line_efficiency=0.9,
)
FORK = CableFork(fork_ratio=3.0, fork_efficiency=0.9)
CABLE = replace(GOOD, actuator=FORK, line_growth=0.0)
MASTER = Cylinder(bore=19.05, stroke=33.0)
POINTS = (
    LoadPoint(travel=0.0, load=0.0),
    LoadPoint(travel=2.0, load=1500.0),
    LoadPoint(travel=5.0, load=1900.0),
    LoadPoint(travel=9.0, load=1300.0),
)
SPRING = Diaphragm(
    outside=200.0,
    inside=160.0,
    thickness=2.2,
    cone=3.6,
    pressed=2.6,
    finger_ratio=3.8,
    elastic=206_000.0,
    poisson=0.3,
)


def clutch(
    release: Release = GOOD,
    master: Cylinder | None = MASTER,
    *,
    ratio: float = 5.0,
    pad_room: float = 145.0,
    give_per_newton: float = 0.0,
    stop: float | None = None,
    growing: float = 0.0,
) -> ClutchResult:
    """On a pedal whose ratio stays, or grows with the stroke."""

    def pad(stroke: Num) -> Num:
        return ratio * stroke + growing * stroke**2

    needed = need(release, master)
    return respond(
        release,
        master,
        travel=budget(needed, pad),
        available=pad_room,
        mean_ratio=pad(needed.master) / needed.master,
        stroke_at_wall=pad_room / ratio,
        give_per_newton=give_per_newton,
        pad=pad,
        stop=stop,
    )


def failed(result: ClutchResult) -> list[str]:
    return [finding.limit.code for finding in check(result) if not finding.ok]


# -- load curves


@pytest.mark.parametrize(
    ("lift", "load"), [(0.0, 0.0), (1.0, 750.0), (2.0, 1500.0), (3.5, 1700.0), (9.0, 1300.0)]
)
def test_the_load_is_straight_between_points(lift: float, load: float) -> None:
    assert between_points(POINTS, lift) == pytest.approx(load, rel=1e-12, abs=1e-9)


def test_agrees_with_numpy_and_takes_stations_and_variants() -> None:
    lift = np.linspace(0.0, 9.0, 31)[:, np.newaxis] * np.array([0.2, 1.0])
    expected = np.interp(lift, [0.0, 2.0, 5.0, 9.0], [0.0, 1500.0, 1900.0, 1300.0])
    np.testing.assert_allclose(between_points(POINTS, lift), expected, rtol=1e-12, atol=1e-9)


def test_nothing_is_guessed_beyond_the_points_nor_out_of_order() -> None:
    assert np.isnan(between_points(POINTS, 9.01))
    assert np.isnan(between_points(POINTS[1:], 1.99))
    assert np.isnan(between_points((POINTS[0], POINTS[2], POINTS[1], POINTS[3]), 3.0))
    assert not next(
        f
        for f in check(clutch(replace(GOOD, load_points=POINTS[:3])))
        if f.room == "clutch" and f.limit.code == "clutch.effort"
    ).judged


def test_the_curve_says_the_load_at_full_release_and_its_peak() -> None:
    typed = clutch(replace(GOOD, release_load=1450.0))
    curved = clutch(replace(GOOD, load_points=POINTS, release_load=1.0))
    assert curved.effort == pytest.approx(typed.effort)  # 1450 N at 8 mm on the line to 1300 at 9
    assert curved.effort_curve is not None
    assert typed.effort_curve is None
    assert typed.effort_peak == typed.effort
    # the slice nearest the peak of 1900 N is within half a slice, a sixth of a millimetre
    assert curved.effort_peak / curved.effort == pytest.approx(1900.0 / 1450.0, rel=0.014)
    assert curved.effort_peak < curved.effort * 1900.0 / 1450.0


def test_work_of_the_foot_is_work_of_the_bearing_and_losses() -> None:
    """Slice by slice, on a pedal whose ratio grows, with a line that swells."""
    result = clutch(replace(GOOD, load_points=POINTS), growing=0.05)
    curve = result.effort_curve
    assert curve is not None
    lift = 8.0 / 24
    strokes = np.diff(budgeted_strokes(), axis=0)
    pad = np.diff([5.0 * s + 0.05 * s**2 for s in budgeted_strokes()], axis=0)
    work = np.sum(np.asarray(curve.effort) * pad)
    line = strokes / (lift * 1.9 * (22.22 / 19.05) ** 2)
    assert line == pytest.approx(1.06)
    assert work == pytest.approx(1.06 * np.sum(np.asarray(curve.load) * lift) / (0.9 * 0.9))


def budgeted_strokes() -> "np.ndarray[tuple[int], np.dtype[np.float64]]":
    lift = np.linspace(0.0, 8.0, 25)
    return 1.5 + (lift + 1.5) * 1.9 * (22.22 / 19.05) ** 2 * 1.06


def test_a_diaphragm_is_its_ring_through_the_fingers() -> None:
    """The washer's load written out in the textbooks' variables, lever by lever."""
    release = replace(GOOD, diaphragm=SPRING)
    s, h, t, delta = 2.6 + 8.0 / 3.8, 3.6, 2.2, 200.0 / 160.0
    k1 = ((delta - 1) / delta) ** 2 / ((delta + 1) / (delta - 1) - 2 / np.log(delta)) / np.pi
    ring = (
        4 * 206_000.0 / (1 - 0.09) * t**4 / (k1 * 200.0**2) * (s / t)
        * ((h / t - s / t) * (h / t - s / (2 * t)) + 1)
    )  # fmt: skip
    assert bearing_load(release, 8.0) == pytest.approx(ring / 3.8, rel=1e-12)
    result = clutch(release)
    assert result.effort_peak > 1.05 * result.effort, "past the hump the pedal is lighter"


def test_points_come_before_the_spring() -> None:
    both = clutch(replace(GOOD, diaphragm=SPRING, load_points=POINTS))
    assert both.effort == clutch(replace(GOOD, load_points=POINTS)).effort


def test_the_peak_is_what_is_judged() -> None:
    heavy = (*POINTS[:2], LoadPoint(travel=5.0, load=2600.0), POINTS[3])
    result = clutch(replace(GOOD, load_points=heavy))
    assert result.effort < 200.0 < result.effort_peak
    assert failed(result) == ["clutch.effort"]


# -- bite and stop


def test_the_bite_is_where_its_lift_is_reached() -> None:
    half = clutch(replace(GOOD, bite_share=0.5))
    assert half.bite is not None
    assert clutch(replace(GOOD, bearing_lift=4.0)).travel_needed == pytest.approx(half.bite)
    plate = replace(GOOD, bite=PlateBite(plate_lift=1.0, finger_ratio=4.0), bite_share=0.9)
    assert clutch(plate).bite == pytest.approx(half.bite)
    assert clutch().bite is None
    soft = clutch(replace(GOOD, bite_share=0.5), give_per_newton=0.01)
    assert soft.bite == pytest.approx(half.bite + 0.01 * soft.effort)


def test_spare_is_the_room_less_the_need() -> None:
    soft = clutch(give_per_newton=0.02)
    assert soft.spare == pytest.approx(145.0 - soft.budget.total)
    assert clutch(pad_room=100.0).spare < 0.0


def test_the_window_is_the_overlift_through_the_chain() -> None:
    result = clutch(replace(GOOD, over_lift=1.2))
    per_lift = 1.9 * (22.22 / 19.05) ** 2 * 1.06 * 5.0
    assert result.window.width == pytest.approx(1.2 * per_lift)
    assert result.window.released == result.budget.total
    assert clutch().window.width == pytest.approx(2.0 * per_lift)


def test_a_structure_that_gives_more_than_the_cover_leaves_no_window() -> None:
    """The cylinder bottoms first, so nothing else fails, but no stop could be set."""
    soft = clutch(give_per_newton=0.2, pad_room=170.0)
    assert soft.window.width < 0.0
    assert failed(soft) == ["clutch.stop_window"]


@pytest.mark.parametrize(("stop", "codes"), [(150.0, []), (168.0, ["clutch.stop_spares_cover"])])
def test_a_stop_takes_the_place_of_the_wall(stop: float, codes: list[str]) -> None:
    long = Cylinder(bore=19.05, stroke=36.0)
    assert failed(clutch(master=long, pad_room=172.0)) == ["clutch.over_stroke"]
    assert failed(clutch(master=long, pad_room=172.0, stop=stop)) == codes


# -- cables


def test_bends_say_the_efficiency_by_the_capstan() -> None:
    bends = CableBends(angle=np.pi, friction=0.1)
    led = replace(CABLE, actuator=replace(FORK, bends=bends), line_efficiency=0.5)
    plain = clutch(replace(CABLE, line_efficiency=1.0), None, ratio=4.5)
    result = clutch(led, None, ratio=4.5)
    assert result.effort / plain.effort == pytest.approx(1.369107, rel=1e-6)  # e^(0.1 pi)


def test_a_wire_says_the_stretch_by_its_pull() -> None:
    wire = CableWire(length=1200.0, area=4.0, elastic=100_000.0)
    led = replace(CABLE, actuator=replace(FORK, wire=wire), dead_stroke=9.0)
    pull = 1450.0 / (3.0 * 0.9 * 0.9)
    assert need(led, None).dead_stroke == pytest.approx(pull * 1200.0 / (100_000.0 * 4.0))
    assert clutch(led, None).budget.dead_stroke == pytest.approx(5.0 * need(led, None).dead_stroke)


def test_a_straight_stiff_cable_loses_nothing() -> None:
    fork = replace(
        FORK,
        bends=CableBends(angle=0.0, friction=0.2),
        wire=CableWire(length=1000.0, area=1e12, elastic=100_000.0),
    )
    ideal = clutch(replace(CABLE, line_efficiency=1.0, dead_stroke=0.0), None, ratio=4.5)
    result = clutch(replace(CABLE, actuator=fork), None, ratio=4.5)
    assert result.effort == pytest.approx(ideal.effort, rel=1e-9)
    assert result.travel_needed == pytest.approx(ideal.travel_needed, rel=1e-9)


# -- batches

CURVED = replace(GOOD, load_points=POINTS)


def fourth(load: float) -> Release:
    return replace(CURVED, load_points=(*POINTS[:3], LoadPoint(travel=9.0, load=load)))


@pytest.mark.parametrize(
    "rows",
    [
        [replace(CURVED, bearing_lift=lift) for lift in (6.0, 7.5, 9.0)],
        [replace(GOOD, diaphragm=replace(SPRING, pressed=s)) for s in (2.0, 2.6, 3.1)],
        [fourth(load) for load in (900.0, 1300.0, 1500.0)],
    ],
)
def test_a_batch_is_its_singles(rows: list[Release]) -> None:
    batch = clutch(stack(rows))
    for i, row in enumerate(rows):
        single = clutch(row)
        assert batch.effort_curve is not None
        assert single.effort_curve is not None
        np.testing.assert_allclose(
            np.asarray(batch.effort_curve.effort)[:, i], single.effort_curve.effort, rtol=1e-12
        )
        for one, some in [
            (single.effort_peak, batch.effort_peak),
            (single.window.width, batch.window.width),
            (single.budget.total, batch.budget.total),
        ]:
            assert np.broadcast_to(some, (3,))[i] == pytest.approx(one, rel=1e-12)


def test_a_rod_is_a_cable_that_neither_stretches_nor_rubs() -> None:
    losses = {"dead_stroke": 0.0, "line_efficiency": 1.0, "line_growth": 0.0}
    cable = Release(
        actuator=CableFork(fork_ratio=4.2, fork_efficiency=0.9),
        bearing_lift=7.0,
        free_play=1.0,
        release_load=1100.0,
        **losses,
    )
    rod = replace(cable, actuator=RodFork(fork_ratio=4.2, fork_efficiency=0.9))
    assert need(rod, None) == need(cable, None)
    assert need(rod, None).master == pytest.approx((7.0 + 1.0) * 4.2)
