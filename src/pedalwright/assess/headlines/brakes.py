"""Headlines of the brakes: deceleration, push, balance, travel, heat."""

from collections.abc import Iterator

from pedalwright.assess.headlines.headline import Headline
from pedalwright.assess.parts import BrakePedal
from pedalwright.brakes import BrakeResult


def braking(brake: BrakePedal) -> Iterator[Headline]:
    """What every brake has."""
    result = brake.result
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
        brake.budget.total,
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
    yield from _alone_and_on_the_road(brake.result)


def where_given(result: BrakeResult) -> Iterator[Headline]:
    """What is known only where a servo, a load or drums with known friction are given."""
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


def _alone_and_on_the_road(result: BrakeResult) -> Iterator[Headline]:
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
