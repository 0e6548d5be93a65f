"""Stops, rod ends and springs are judged where a design has them, and nowhere else."""

from dataclasses import replace

import pytest

from pedalwright.assess import assess
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.linkage import RestStop, ReturnSpring, RodEnd, RodEnds, Stop
from pedalwright.project import car_text, read

SET = ("stop", "thread", "lock", "adjuster", "spring")


@pytest.fixture(scope="module")
def improved() -> Design:
    """Larkfield without its own springs, stops and rod ends."""
    design = read(car_text("larkfield-improved")).design
    brake = replace(design.brake, rest_stop=None, rod_ends=None, return_spring=None)
    clutch = replace(design.clutch, stop=None, rod_ends=None, return_spring=None)
    return replace(design, brake=brake, clutch=clutch)


def found(design: Design) -> dict[tuple[str, str], bool]:
    return {
        (f.limit.code, f.about): bool(f.ok)
        for f in assess(design).findings
        if f.limit.code.split(".")[1].startswith(SET) and f.room == "linkage"
    }


def test_nothing_is_asked_of_what_is_not_there(improved: Design) -> None:
    assert found(improved) == {}


def test_a_clutch_stop_in_the_right_place(improved: Design) -> None:
    """140 to release, 153 to the wall, 33 of stroke at a mean ratio of 5.07: 145 is right."""
    for at, wrong in ((145.0, set()), (130.0, {"stop_after_work"}), (155.0, {"stop_before_wall"})):
        made = replace(improved, clutch=replace(improved.clutch, stop=Stop(full_travel=at)))
        failing = {code.split(".")[1] for (code, _), ok in found(made).items() if not ok}
        assert failing == wrong
    short = replace(made.clutch, stop=Stop(full_travel=145.0))
    assert short.master is not None
    short = replace(short, master=replace(short.master, stroke=28.0))
    assert not found(replace(improved, clutch=short))["linkage.stop_saves_piston", "clutch"]


def test_a_brake_stop_lets_one_circuit_work(improved: Design) -> None:
    brake = assess(improved).brake
    deepest = max(float(brake.front_alone.pad_travel), float(brake.rear_alone.pad_travel))
    for at, ok in ((deepest + 1.0, True), (deepest - 1.0, False)):
        made = replace(improved, brake=replace(improved.brake, stop=Stop(full_travel=at)))
        assert found(made)["linkage.stop_after_work", "brake"] == ok


def test_rod_ends_and_springs_are_named_by_their_pedal(improved: Design) -> None:
    end = RodEnd(thread=10.0, pitch=1.5, engaged=16.0, depth=22.0, bare=14.0)
    spring = ReturnSpring(
        eye=Point(140.0, 385.0, 270.0),
        anchor=Point(240.0, 385.0, 270.0),
        free_length=80.0,
        rate=2.0,
        wire=2.0,
        coil=14.0,
    )
    brake = replace(
        improved.brake,
        rod_ends=RodEnds(pedal=end, cylinder=end, take_up=4.0),
        return_spring=spring,
    )
    assert found(replace(improved, brake=brake)) == {
        ("linkage.thread_left", "brake, pedal end"): True,
        ("linkage.thread_left", "brake, cylinder end"): True,
        ("linkage.lock_nut", "brake, pedal end"): True,
        ("linkage.lock_nut", "brake, cylinder end"): True,
        ("linkage.adjuster_reach", "brake"): True,
        ("linkage.spring_return", "brake"): True,
        ("linkage.spring_stress", "brake"): True,
    }


def test_a_made_rod_and_a_rest_stop_are_asked_about_where_they_are(improved: Design) -> None:
    """Pin to socket is 106.18: a rod of 106 goes in, one of 99 does not."""
    screw = RodEnd(thread=8.0, pitch=1.25, engaged=14.0, depth=22.0, bare=14.0)
    for length, ok in ((106.0, True), (99.0, False)):
        part = replace(
            improved.brake,
            rod=replace(improved.brake.rod, length=length),
            rest_stop=RestStop(arm=150.0, screw=screw),
        )
        judged = {
            (f.limit.code, f.about): bool(f.ok)
            for f in assess(replace(improved, brake=part)).findings
            if f.limit.code in {"linkage.rod_fits", "linkage.rest_reach"}
        }
        assert judged == {("linkage.rod_fits", "brake"): ok, ("linkage.rest_reach", "brake"): True}
