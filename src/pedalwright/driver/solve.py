"""From drivers and the strokes of their pedals to their legs on them."""

from collections.abc import Sequence
from dataclasses import replace
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from pedalwright.core.batch import over
from pedalwright.core.points import Point, at
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Array, Num, mm
from pedalwright.core.working import recorded, subject, unrecorded
from pedalwright.driver.around import around
from pedalwright.driver.body import HIP_JOINTS_APART, body
from pedalwright.driver.feet import turned_about_heel
from pedalwright.driver.formulas.foot import flush_heel, heel_behind_ball, sole_angle
from pedalwright.driver.legs import Foot, foot_lifted, foot_on_floor, posture, towards
from pedalwright.driver.limits import LEAST_ANKLE, MOST_KNEE_FULL
from pedalwright.driver.parts import Body, Driver, Footwell, Posture, Seated, Tread
from pedalwright.driver.places import Places, Stand
from pedalwright.driver.push import HARDEST

Known: TypeAlias = NDArray[np.bool_]

#: Ankle that a driver holds when the heel is off the floor (ours: the middle of the bands).
HELD_ANKLE = np.deg2rad(90.0)
#: Places that the working shows.
SHOWN = ("rest", HARDEST, "full")
#: Legs times variants that are worked together, so that a large batch fits in memory.
AT_ONCE = 1_000_000


def place(
    driver: Driver, treads: Sequence[Tread], heel_height: mm, footwell: Footwell
) -> tuple[Seated, ...]:
    """One driver's legs on every pedal, at every place of its stroke."""
    (seats,) = place_all([(driver, treads)], heel_height, footwell)
    return seats


@no_answer_is_nan
def place_all(
    drivers: Sequence[tuple[Driver, Sequence[Tread]]], heel_height: mm, footwell: Footwell
) -> tuple[tuple[Seated, ...], ...]:
    """Every driver's legs on his pedals, at every place of their strokes.

    A heel stays on its rest and slides with the pad; under an accelerator it stays where it is
    with the ball of the foot on the pad at rest. Where the pad is higher above the heel than the
    sole is long the heel has to lift, with the ankle held at 90 degrees; a pedal that is worked
    with the whole leg may also be reached for in this way when with the heel down the ankle would
    have to bend too far, the knee to stretch too far, or the leg is too short.
    """
    stands: list[tuple[Driver, Body, Tread, Point]] = []
    for driver, treads in drivers:
        with subject(driver.name):
            lengths = body(driver.person)
        stands += [(driver, lengths, tread, _hip(driver, tread)) for tread in treads]
    places = Places.of(stands, heel_height, footwell)
    if len(drivers) > 1 and places.length * np.prod(places.variants) > AT_ONCE:
        with unrecorded():
            return tuple(place_all([one], heel_height, footwell)[0] for one in drivers)
    with unrecorded():
        seats, lifts = _seated(places, heel_height, footwell)
    if recorded():
        _show(places, heel_height, lifts)
    found = iter(seats)
    return tuple(tuple(next(found) for _ in treads) for _, treads in drivers)


def _seated(places: Places, heel_height: mm, footwell: Footwell) -> tuple[list[Seated], Known]:
    """All places of all pedals of all drivers at once, on an axis in front of the variants."""
    lengths = places.bodies()
    pads = places.points([stand.tread.pads for stand in places.stands])
    legs, touched, lifts = _legs(lengths, places, pads, heel_height)
    near = around(lengths, legs, footwell, places)
    faces = places.numbers([stand.tread.faces for stand in places.stands])
    flush = flush_heel(pads.z, lengths.heel_to_ball, faces, heel_height)
    least = places.least(np.array([flush, -np.abs(legs.sole_angle - faces), -np.asarray(pads.z)]))
    seats = [
        Seated(
            body=stand.body,
            heel_height=heel_height,
            places=stand.tread.places,
            stroke=legs.at(stand.rows),
            near=near[i],
            pad_above_heel=-least[2, i] - heel_height,
            slide=touched[stand.full] - touched[stand.rows.start],
            heel_if_flush=least[0, i],
            tilt=-least[1, i],
            reach_back=_slid_back(stand, legs),
            heel=stand.tread.heel,
        )
        for i, stand in enumerate(places.stands)
    ]
    return seats, lifts


def _legs(
    lengths: Body, places: Places, pads: Point, heel_height: mm
) -> tuple[Posture, Array, Known]:
    """The legs; how far along the sole each is touched; which heels lift."""
    stands = places.stands
    hip = places.points([stand.hip for stand in stands])
    trunk = places.numbers([stand.driver.trunk for stand in stands])
    splay = places.numbers([_splay(stand) for stand in stands])
    feet = foot_on_floor(lengths, hip, pads, heel_height)
    rest = places.numbers([heel_height for _ in stands])
    feet = replace(
        feet,
        heel=Point(feet.heel.x, feet.heel.y, rest),
        reach=lengths.thigh + lengths.shank,
    )
    touched = np.array(lengths.heel_to_ball)
    for stand in stands:
        if stand.tread.heel == "stays":
            still, along = _heel_stays(stand, stand.tread.pads, heel_height)
            feet = _with(feet, stand.rows, still)
            touched[stand.rows] = along
    legs = posture(lengths, hip, trunk, feet, splay)
    lifts = _lifts(lengths, places, pads, legs, heel_height)
    if lifts.any():
        lifted = foot_lifted(lengths, hip, pads, HELD_ANKLE)
        lifts &= lifted.reaches | np.isnan(legs.knee_angle)  # better bent too far than not there
        feet = _either(lifts, lifted, replace(feet, needed=legs.needed, reach=legs.reach))
        legs = posture(lengths, hip, trunk, feet, splay)
        touched = np.where(lifts, lengths.heel_to_ball, touched)
    return legs, touched, lifts


def _hip(driver: Driver, tread: Tread) -> Point:
    """The hip joint on the pedal's side."""
    aside = tread.side * HIP_JOINTS_APART / 2
    return Point(driver.hip.x, driver.hip.y + aside, driver.hip.z)


def _splay(stand: Stand) -> Num:
    return stand.driver.knees_out * stand.tread.side


def _heel_stays(stand: Stand, pads: Point, heel_height: mm) -> tuple[Foot, Num]:
    """The foot on an accelerator, and how far along its sole the pad touches.

    The ball is on the pad at rest; from there on the sole turns about its heel.
    """
    rest, tread = stand.tread.pads.at(0), stand.tread
    way = towards(stand.hip, rest)
    chord = np.hypot(stand.body.heel_to_ball, tread.rounding)
    behind = heel_behind_ball(chord, sole_angle(rest.z - heel_height, chord))
    heel = Point(rest.x - way.x * behind, rest.y - way.y * behind, heel_height)
    sole, along = turned_about_heel(heel, way, pads, tread.rounding)
    return Foot(way=way, heel=heel, sole=sole), along


def _with(feet: Foot, rows: slice, still: Foot) -> Foot:
    """Some feet in the place of others: their heels stay."""

    def put(number: Num, other: Num) -> Num:
        changed = np.array(number)
        changed[rows] = other
        return changed

    way, heel = feet.way, feet.heel
    return replace(
        feet,
        way=Point(put(way.x, still.way.x), put(way.y, still.way.y), 0.0),
        heel=Point(put(heel.x, still.heel.x), put(heel.y, still.heel.y), heel.z),
        sole=put(feet.sole, still.sole),
    )


def _lifts(lengths: Body, places: Places, pads: Point, legs: Posture, heel_height: mm) -> Known:
    """Where a heel has to come off its rest."""
    lifts = np.asarray(pads.z - heel_height > lengths.heel_to_ball)
    for stand in places.stands:
        rows = stand.rows
        if stand.tread.heel == "stays":  # a heel that cannot rest at first is not put down later
            lifts[rows] = lifts[rows.start]
        elif stand.tread.heel == "may lift":
            held = at(legs.ankle_angle, rows) >= LEAST_ANKLE  # not so for a leg that is too short
            lifts[rows] |= np.logical_not(held & (at(legs.knee_angle, rows) <= MOST_KNEE_FULL))
    return lifts


def _either(lifts: Known, lifted: Foot, down: Foot) -> Foot:
    """The foot lifted where it has to be, down elsewhere."""

    def chosen(one: Num, other: Num) -> Num:
        return np.where(lifts, one, other)

    either: Foot = over(chosen, lifted, down)
    return either


def _slid_back(stand: Stand, legs: Posture) -> mm | None:
    """Distance to span at full travel with the seat fully back, the foot where it is."""
    if stand.driver.seat_back is None:
        return None
    leg = legs.at(stand.full)
    back = Point(leg.hip.x + stand.driver.seat_back, leg.hip.y, leg.hip.z)
    return leg.needed + (back - leg.ankle).length() - (leg.hip - leg.ankle).length()


def _show(places: Places, heel_height: mm, lifts: Known) -> None:
    """The same place by place, for the working."""
    for stand in places.stands:
        driver, lengths, tread = stand.driver, stand.body, stand.tread
        for name in (shown for shown in SHOWN if shown in tread.places):
            i = tread.places.index(name)
            pad = tread.pads.at(i)
            with subject(driver.name), subject(tread.name), subject(name):
                if lifts[stand.rows][i].all():
                    foot = foot_lifted(lengths, stand.hip, pad, HELD_ANKLE)
                elif tread.heel == "stays":
                    foot, _ = _heel_stays(stand, pad, heel_height)
                else:
                    foot = foot_on_floor(lengths, stand.hip, pad, heel_height)
                posture(lengths, stand.hip, driver.trunk, foot, _splay(stand))
