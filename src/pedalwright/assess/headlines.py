"""The results other tools may lean on: stable names, units, and what each one means.

`docs/results.md` is made from this file, so every headline is defined once.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.assess.parts import Assessment, Placed
from pedalwright.core.units import Num
from pedalwright.driver import Posture, Seated


@dataclass(frozen=True, slots=True)
class Headline:
    """One result: `room.name`, its value in inside units, and what it is."""

    name: str
    value: Num
    unit: str
    says: str


def headlines(assessment: Assessment) -> tuple[Headline, ...]:
    """Every headline of an assessment, in the order of the rooms."""
    return (
        *_linkage(assessment),
        *_brakes(assessment),
        *_clutch(assessment),
        *_throttle(assessment),
        *_structure(assessment),
        *(line for placed in assessment.drivers for line in _driver(placed)),
    )


def _linkage(a: Assessment) -> Iterator[Headline]:
    yield Headline(
        "linkage.brake.ratio",
        a.brake.hard_stop.ratio,
        "1",
        "Pad movement over piston movement at the hard stop.",
    )
    yield Headline(
        "linkage.brake.rod_angle_max",
        np.max(a.brake.stroke.rod_angle, axis=0),
        "rad",
        "Largest angle of the push rod to the cylinder between rest and the hard stop.",
    )
    yield Headline(
        "linkage.brake.rod_angle_hard_stop",
        a.brake.hard_stop.rod_angle,
        "rad",
        "Angle of the push rod to the cylinder at the hard stop.",
    )
    yield Headline(
        "linkage.brake.piston_travel",
        a.brake.hard_stop.piston_travel,
        "mm",
        "Rod travel at the hard stop, dead stroke included.",
    )
    yield Headline(
        "linkage.brake.pivot_force_500N",
        a.brake.forces.pivot_size,
        "N",
        "Force on the brake pedal's pivot at the hard stop, for 500 N square to the arm.",
    )
    yield Headline(
        "linkage.brake.rod_force_500N",
        a.brake.forces.rod,
        "N",
        "Force along the brake's push rod at the hard stop, for 500 N square to the arm.",
    )
    yield Headline(
        "linkage.brake.pad_room",
        a.brake.room,
        "mm",
        "Arc of the brake pad from rest until the toes meet the wall.",
    )
    yield Headline(
        "linkage.brake.locks_at",
        a.brake.locks_at,
        "mm",
        "Arc of the brake pad at which rod and arm come into line; empty for none to 69 degrees.",
    )
    yield Headline(
        "linkage.clutch.ratio",
        a.clutch.result.mean_ratio,
        "1",
        "Mean pad movement over piston movement from rest to the clutch's release.",
    )
    yield Headline(
        "linkage.clutch.rod_angle_max",
        np.max(a.clutch.stroke.rod_angle, axis=0),
        "rad",
        "Largest angle of the push rod to the cylinder over the clutch's stroke.",
    )
    yield Headline(
        "linkage.clutch.locks_at",
        a.clutch.locks_at,
        "mm",
        "Arc of the clutch pad at which rod and arm come into line; empty for none to 69 degrees.",
    )


def _brakes(a: Assessment) -> Iterator[Headline]:
    result = a.brake.result
    stop = result.at_500
    yield Headline(
        "brakes.deceleration_500N",
        stop.deceleration,
        "m/s2",
        "Deceleration for 500 N on the pad at the hard stop, usual friction, no limit of grip.",
    )
    yield Headline(
        "brakes.effort_6_43",
        result.effort_6_43,
        "N",
        "Push on the pad for 6.43 m/s2, usual friction, no limit of grip.",
    )
    yield Headline(
        "brakes.line_pressure_500N",
        stop.front_pressure,
        "MPa",
        "Pressure in the front circuit for 500 N on the pad at the hard stop.",
    )
    yield Headline(
        "brakes.rear_line_pressure_500N",
        stop.rear_pressure,
        "MPa",
        "Pressure in the rear circuit for 500 N on the pad at the hard stop.",
    )
    yield Headline(
        "brakes.front_share",
        stop.front_share,
        "1",
        "Front share of the braking force at usual friction.",
    )
    yield Headline(
        "brakes.ideal_front_share",
        result.ideal_share,
        "1",
        "Front share at which both axles use the road alike, at the deceleration of 500 N.",
    )
    yield Headline(
        "brakes.critical_deceleration",
        result.nominal.critical,
        "m/s2",
        "Deceleration up to which the front wheels lock first, at usual friction.",
    )
    yield Headline(
        "brakes.critical_deceleration_low",
        result.low.critical,
        "m/s2",
        "The same with the linings of both axles at their low friction.",
    )
    yield Headline(
        "brakes.critical_deceleration_high",
        result.high.critical,
        "m/s2",
        "The same with the linings of both axles at their high friction.",
    )
    yield Headline(
        "brakes.rear_alone_500N",
        result.rear_alone_500,
        "m/s2",
        "Deceleration for 500 N with the front circuit lost, at that deeper hard stop.",
    )
    yield Headline(
        "brakes.front_alone_500N",
        result.front_alone_500,
        "m/s2",
        "Deceleration for 500 N with the rear circuit lost, at that deeper hard stop.",
    )
    yield Headline(
        "brakes.pad_travel_hard_stop",
        result.pad_travel_hard_stop,
        "mm",
        "Arc of the pad from rest to the hard stop, structure rigid: dead stroke, lift, hoses.",
    )
    yield Headline(
        "brakes.pad_travel_500N",
        a.brake.budget.total,
        "mm",
        "The same with the structure giving at 500 N.",
    )
    yield Headline(
        "brakes.pad_travel_front_alone",
        result.pad_travel_front_alone,
        "mm",
        "Arc of the pad to the hard stop with the rear circuit lost.",
    )
    yield Headline(
        "brakes.pad_travel_rear_alone",
        result.pad_travel_rear_alone,
        "mm",
        "Arc of the pad to the hard stop with the front circuit lost.",
    )
    yield from _alone_and_on_the_road(a)
    yield from _where_given(a)


def _alone_and_on_the_road(a: Assessment) -> Iterator[Headline]:
    result, strokes = a.brake.result, a.brake.strokes
    grip = result.at_grip
    yield Headline(
        "brakes.effort_front_alone_2_44",
        result.effort_front_alone,
        "N",
        "Push on the pad for 2.44 m/s2 with the rear circuit lost.",
    )
    yield Headline(
        "brakes.effort_rear_alone_2_44",
        result.effort_rear_alone,
        "N",
        "Push on the pad for 2.44 m/s2 with the front circuit lost.",
    )
    yield Headline(
        "brakes.first_lock",
        grip.first_lock,
        "m/s2",
        "Deceleration at which the first wheels lock, at the tyres' grip.",
    )
    yield Headline(
        "brakes.lock_effort", grip.lock_effort, "N", "Push on the pad that locks the first wheels."
    )
    yield Headline(
        "brakes.efficiency",
        grip.efficiency,
        "1",
        "Braking rate at the first lock over the tyres' grip: how well both axles are used.",
    )
    yield Headline(
        "brakes.reached_500N",
        grip.reached_500,
        "m/s2",
        "Deceleration for 500 N on the pad that the tyres' grip allows.",
    )
    yield Headline(
        "brakes.front_alone_reached_500N",
        grip.front_alone_500,
        "m/s2",
        "The same with the rear circuit lost.",
    )
    yield Headline(
        "brakes.rear_alone_reached_500N",
        grip.rear_alone_500,
        "m/s2",
        "The same with the front circuit lost.",
    )
    yield Headline(
        "hydraulics.front_stroke",
        strokes.front_piston,
        "mm",
        "Travel of the front circuit's piston at the hard stop, dead stroke included.",
    )
    yield Headline(
        "hydraulics.rear_stroke",
        strokes.rear_piston,
        "mm",
        "Travel of the rear circuit's piston at the hard stop, dead stroke included.",
    )


def _where_given(a: Assessment) -> Iterator[Headline]:
    """What is known only where a bar, a servo, a load or drums with known friction are given."""
    result, bar = a.brake.result, a.brake.bar
    if bar is not None:
        yield Headline(
            "hydraulics.bar_tilt",
            bar.hard_stop,
            "rad",
            "Tilt of the balance bar at the hard stop; positive with the front rod ahead.",
        )
        yield Headline(
            "hydraulics.bar_tilt_rear_lost",
            bar.rear_lost,
            "rad",
            "The same with the rear circuit lost and its cylinder at its end.",
        )
        yield Headline(
            "hydraulics.bar_tilt_front_lost",
            bar.front_lost,
            "rad",
            "The same with the front circuit lost and its cylinder at its end.",
        )
    follows = "Torque gained over friction gained, in small steps: 1 for a disc, more for a drum."
    given = (
        ("front_sensitivity", result.front_sensitivity, "1", follows),
        ("rear_sensitivity", result.rear_sensitivity, "1", follows),
        ("pad_travel_worn", result.pad_travel_worn, "mm", "Arc of the pad with worn linings."),
        ("servo_lost_500N", result.servo_lost_500, "m/s2", "Deceleration with the servo lost."),
    )
    for name, value, unit, says in given:
        if value is not None:
            yield Headline(f"brakes.{name}", value, unit, says)
    if result.laden is not None:
        yield Headline(
            "brakes.laden_effort_6_43",
            result.laden.effort_6_43,
            "N",
            "Push on the pad for 6.43 m/s2 with the load the car may carry.",
        )
        yield Headline(
            "brakes.laden_critical_deceleration",
            result.laden.nominal.critical,
            "m/s2",
            "Deceleration up to which the front wheels of the laden car lock first.",
        )
    for axle, rise in (("front", result.front_rise), ("rear", result.rear_rise)):
        if rise is not None:
            yield Headline(
                f"brakes.{axle}_rise_100",
                rise.one_stop,
                "K",
                "Rise of a disc or drum in one stop from 100 km/h, nothing cooling.",
            )


def _clutch(a: Assessment) -> Iterator[Headline]:
    result = a.clutch.result
    yield Headline(
        "clutch.travel_needed",
        result.travel_needed,
        "mm",
        "Arc of the pad from rest to full release, every loss counted, the structure rigid.",
    )
    yield Headline(
        "clutch.travel_available",
        result.travel_available,
        "mm",
        "Arc of the pad from rest until the toes meet the wall.",
    )
    yield Headline(
        "clutch.effort", result.effort, "N", "Push on the pad that holds the clutch released."
    )
    yield Headline(
        "clutch.master_stroke",
        result.master_stroke,
        "mm",
        "Travel of the master piston to full release, dead stroke included.",
    )
    yield Headline(
        "clutch.lift_reached",
        result.lift_reached,
        "mm",
        "Bearing lift that the travel there is can give, at most the lift wanted.",
    )
    yield Headline(
        "clutch.travel_at_6_to_1",
        result.travel_at_six,
        "mm",
        "Pad travel that a pedal of the trade's usual 6 to 1 would need here.",
    )
    yield Headline(
        "clutch.effort_peak",
        result.effort_peak,
        "N",
        "Largest push on the pad on the way to full release.",
    )
    yield Headline(
        "clutch.spare",
        result.spare,
        "mm",
        "Arc of the pad left between full release, give of the structure counted, and the wall.",
    )
    yield Headline(
        "clutch.stop_from",
        result.window.released,
        "mm",
        "Arc of the pad at which a stop may stand at the earliest: released, give counted.",
    )
    yield Headline(
        "clutch.stop_to",
        result.window.over_stroke,
        "mm",
        "Arc of the pad at which a stop must stand at the latest, to spare the cover.",
    )
    if result.bite is not None:
        yield Headline(
            "clutch.bite",
            result.bite,
            "mm",
            "Arc of the pad at which the plate begins to bite, give counted; if a bite is given.",
        )


def _throttle(a: Assessment) -> Iterator[Headline]:
    result = a.throttle.result
    yield Headline(
        "throttle.spindle_angle",
        result.at_stop,
        "rad",
        "Turn of the spindle with the pad at its stop, were it free to turn on.",
    )
    yield Headline(
        "throttle.opening_share",
        np.minimum(result.at_stop / result.full_opening, 1.0),
        "1",
        "Share of the full opening's turn that the pedal reaches.",
    )
    yield Headline(
        "throttle.one_spring_lost",
        result.one_spring_lost,
        "N*mm",
        "Least closing torque at the spindle with any one return spring lost.",
    )
    yield Headline(
        "throttle.effort",
        result.effort,
        "N",
        "Push on the accelerator pad that holds full opening, or its stop if that comes first.",
    )
    yield Headline(
        "throttle.rod_to_lever_min",
        result.rod_to_lever,
        "rad",
        "Smallest angle between any rod and its lever over the stroke; 0 is a dead point.",
    )
    if result.unequal is not None:
        yield Headline(
            "throttle.unequal",
            result.unequal,
            "rad",
            "Largest difference of another carburettor's spindle from the first, if there is one.",
        )
    if result.rock_turn is not None:
        yield Headline(
            "throttle.rock_turn",
            result.rock_turn,
            "rad",
            "Largest turn of the spindle for 10 mm of engine movement, if its direction is given.",
        )
    if result.open_at_half is not None:
        yield Headline(
            "throttle.open_at_half",
            result.open_at_half,
            "1",
            "Open share of the bore with the pad half-way to its stop, if the bore is given.",
        )


def _structure(a: Assessment) -> Iterator[Headline]:
    strength = a.brake.strength
    yield Headline(
        "structure.give_500N",
        strength.give.total,
        "mm",
        "Movement of the brake pad at 500 N because arm, rod and mounts give.",
    )
    yield Headline(
        "structure.flange_give_500N",
        strength.flange_give,
        "mm",
        "Movement of the brake cylinder's flange at 500 N on the pad.",
    )


def _driver(placed: Placed) -> Iterator[Headline]:
    yield from _body(placed)
    seats = (("clutch", placed.clutch), ("brake", placed.brake), ("throttle", placed.throttle))
    for pedal, seat in seats:
        for when, posture in (("rest", seat.rest), ("full", seat.full)):
            yield from _posture(f"driver.{placed.name}.{pedal}.{when}", posture)
        yield from _pad(f"driver.{placed.name}.{pedal}", seat)


def _body(placed: Placed) -> Iterator[Headline]:
    name, body, spread = f"driver.{placed.name}", placed.brake.body, placed.spread
    lengths = (
        ("thigh", body.thigh, spread.thigh),
        ("shank", body.shank, spread.shank),
        ("heel_to_ball", body.heel_to_ball, spread.heel_to_ball),
    )
    for part, length, doubt in lengths:
        yield Headline(f"{name}.{part}", length, "mm", "As measured, else guessed from stature.")
        yield Headline(f"{name}.{part}_spread", doubt, "mm", "How far off it may be, 1 SD.")


def _posture(name: str, posture: Posture) -> Iterator[Headline]:
    yield Headline(f"{name}.knee", posture.knee_angle, "rad", "Thigh to shank; 180 is straight.")
    yield Headline(f"{name}.ankle", posture.ankle_angle, "rad", "Shank to sole.")
    yield Headline(f"{name}.hip", posture.hip_angle, "rad", "Trunk to thigh.")
    yield Headline(f"{name}.sole", posture.sole_angle, "rad", "Sole above the horizontal.")


def _pad(name: str, seat: Seated) -> Iterator[Headline]:
    yield Headline(
        f"{name}.pad_above_heel",
        seat.pad_above_heel,
        "mm",
        "Pad centre above the heel's rest, at its highest.",
    )
