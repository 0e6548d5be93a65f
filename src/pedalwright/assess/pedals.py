"""Each pedal wired up: from its lever to what it is for, and what carries it."""

from collections.abc import Iterator
from typing import TypeAlias

import numpy as np

from pedalwright import brakes, clutch, hydraulics, linkage, structure, throttle
from pedalwright.assess.box import unit_push
from pedalwright.assess.parts import BrakePedal, ClutchPedal, ThrottlePedal
from pedalwright.core.checks import Finding
from pedalwright.core.points import Plane
from pedalwright.core.units import Num
from pedalwright.core.working import subject, unrecorded
from pedalwright.design import BrakeDesign, Carrier, ClutchDesign, Design
from pedalwright.linkage import Forces, Lever, Pedal, Position, Rod
from pedalwright.structure.box.parts import Carried, Held

_Wheels: TypeAlias = tuple[brakes.WheelBrake, brakes.WheelBrake]


def brake_pedal(design: Design, wall: Plane, on: Held | None) -> BrakePedal:
    """The brake, from the foot to the road."""
    part = design.brake
    lever = linkage.lever(part.pedal)
    system = (part.masters, part.front, part.rear, part.plumbing)
    taken = _pressed(part, lever)
    demand = brakes.demand(part.front, part.rear, part.plumbing, taken)
    strokes = hydraulics.strokes(part.masters, demand, part.plumbing.dead_stroke)

    def at(stroke: Num) -> Position:
        return linkage.position(lever, part.rod, linkage.angle_at_travel(lever, part.rod, stroke))

    with subject("hard stop"):
        stop = at(strokes.hard_stop)
        forces = linkage.forces(lever, part.rod, stop, brakes.DESIGN_PUSH)
    with subject("rear circuit lost"):
        front_alone = at(strokes.front_alone)
    with subject("front circuit lost"):
        rear_alone = at(strokes.rear_alone)
    worn = (brakes.worn(part.front), brakes.worn(part.rear))
    result = brakes.respond(
        design.car,
        *system,
        ratios=brakes.Ratios(
            hard_stop=stop.ratio, front_alone=front_alone.ratio, rear_alone=rear_alone.ratio
        ),
        pad_travel=(stop.pad_travel, front_alone.pad_travel, rear_alone.pad_travel),
        worn_travel=_travel(part, lever, taken, worn),
    )
    hot = (brakes.hot(part.front, result.front_rise), brakes.hot(part.rear, result.rear_rise))
    strength = _strength(part.carrier, part.pedal, lever, part.rod, stop, on, structure.BRAKE_LOADS)
    give = strength.give.total / strength.give.push
    spent = brakes.take_up(part.masters, part.front, part.rear, part.plumbing, taken)

    def pad(stroke: Num) -> Num:
        return linkage.pad_travel_at(lever, part.rod, stroke)

    with unrecorded():
        share = brakes.pressure_share(part.masters, stop.ratio)
        curve = brakes.force_travel(spent, give, pad, share)
        budget = brakes.budget(spent, give * brakes.DESIGN_PUSH, pad)
    return BrakePedal(
        lever=lever,
        rod=part.rod,
        stroke=linkage.stroke(lever, part.rod, stop.angle),
        hard_stop=stop,
        front_alone=front_alone,
        rear_alone=rear_alone,
        room=linkage.arc_to_face(lever, wall, design.toes_to_wall),
        forces=forces,
        result=result,
        strokes=strokes,
        bar=hydraulics.bar(part.masters, strokes),
        curve=curve,
        budget=budget,
        hot_travel=_travel(part, lever, taken, hot),
        not_counted=brakes.not_counted(part.front, part.rear, part.plumbing),
        strength=strength,
    )


def clutch_pedal(design: Design, wall: Plane, on: Held | None) -> ClutchPedal:
    """The clutch, from the foot to the release bearing."""
    part = design.clutch
    lever = linkage.lever(part.pedal)

    def at(stroke: Num) -> Position:
        return linkage.position(lever, part.rod, linkage.angle_at_travel(lever, part.rod, stroke))

    def pad(stroke: Num) -> Num:
        return linkage.pad_travel_at(lever, part.rod, stroke)

    needed = clutch.need(part.release, part.master)
    with unrecorded():
        travel = clutch.budget(needed, pad)
        wall_angle = _wall_angle(part, lever, wall, design.toes_to_wall)
        at_wall = linkage.position(lever, part.rod, wall_angle)
    with subject("released"):
        released = at(needed.master)
        mean_ratio = linkage.mean_ratio(released.pad_travel, released.piston_travel)
    with subject("end of the stroke"):
        full = linkage.position(lever, part.rod, np.fmin(released.angle, wall_angle))
    loads = structure.CLUTCH_LOADS
    strength = _strength(part.carrier, part.pedal, lever, part.rod, full, on, loads)
    result = clutch.respond(
        part.release,
        part.master,
        travel=travel,
        available=at_wall.pad_travel,
        mean_ratio=mean_ratio,
        stroke_at_wall=at_wall.piston_travel,
        give_per_newton=strength.give.total / strength.give.push,
        pad=pad,
        stop=None if part.stop is None else part.stop.full_travel,
    )
    return ClutchPedal(
        lever=lever,
        rod=part.rod,
        stroke=linkage.stroke(lever, part.rod, full.angle),
        full=full,
        room=at_wall.pad_travel,
        result=result,
        strength=strength,
    )


def throttle_pedal(design: Design) -> ThrottlePedal:
    """The accelerator, from the foot to the spindle."""
    part = design.throttle
    lever = linkage.lever(part.pedal)
    return ThrottlePedal(
        lever=lever,
        pad_full=linkage.pad_after(lever, part.opening.pad_room),
        result=throttle.respond(part.opening, part.pedal.pad_radius),
    )


def hydraulic_findings(part: BrakeDesign, brake: BrakePedal) -> Iterator[Finding]:
    """Cylinders and bar, and what was given of fluid, valves and reservoirs."""
    if brake.hot_travel is not None:
        yield from brakes.check_hot(brake.hot_travel, brake.room)
    yield from hydraulics.check(hydraulics.shortest_reserve(part.masters, brake.strokes))
    if brake.bar is not None:
        yield from hydraulics.check_bar(brake.bar)
    plumbing = part.plumbing
    held: tuple[Num, Num] = (0.0, 0.0)
    if plumbing.residual is not None:
        held = (plumbing.residual.front, plumbing.residual.rear)
        discs = (isinstance(part.front, brakes.Disc), isinstance(part.rear, brakes.Disc))
        yield from hydraulics.check_residual(plumbing.residual, discs)
    if plumbing.reservoirs is not None:
        needed = brakes.wear_volumes(part.front, part.rear)
        yield from hydraulics.check_reservoirs(plumbing.reservoirs, needed, held)
        if plumbing.reservoirs.feed is not None:
            feed = plumbing.reservoirs.feed
            losses = hydraulics.feed_losses(feed, part.masters, brake.strokes)
            yield from hydraulics.check_feed(feed, losses)
    yield from brakes.check_heat(brake.result, plumbing.fluid)


def _strength(
    carrier: Carrier,
    pedal: Pedal,
    lever: Lever,
    rod: Rod,
    full: Position,
    on: Held | None,
    loads: structure.Loads,
) -> structure.Strength:
    """Strength and give at the end of the stroke, where the push is hardest."""
    with subject("1 N"):
        unit = linkage.forces(lever, rod, full, 1.0)
    return structure.respond(
        carrier.arm,
        carrier.pivot,
        carrier.clevis_pin,
        carrier.push_rod,
        carrier.mount,
        pad_radius=pedal.pad_radius,
        pin_radius=pedal.pin_radius,
        pad_offset=pedal.pad_offset,
        pin_angle=pedal.pin_angle,
        ratio=full.ratio,
        rod_length=linkage.pedal_rod_length(lever, rod),
        rod_share=unit.at_pin,
        pivot_share=unit.pivot_size,
        relaying=_relaying(carrier, lever, rod, full, unit),
        reactions=structure.Reactions(
            flange=structure.Load(at=full.socket, force=rod.direction * unit.piston),
            bracket=structure.Load(at=lever.pivot, force=-unit.pivot),
        ),
        carried=None if on is None else Carried(on, unit_push(lever, full, unit)),
        loads=loads,
    )


def _relaying(
    carrier: Carrier, lever: Lever, rod: Rod, full: Position, unit: Forces
) -> structure.Relaying | None:
    """The relay lever there, under 1 N on the pad."""
    if rod.relay is None or full.relay is None or unit.relay_pivot is None:
        return None
    driven, driving = linkage.relay_radii(lever, rod.relay)
    return structure.Relaying(
        arms=carrier.relay,
        driven_radius=driven,
        driving_radius=driving,
        rod_length=linkage.rod_wanted(lever, rod),
        ratio=full.relay.ratio,
        rod_share=unit.rod,
        tube_share=unit.relay_pivot.length(),
    )


def _wall_angle(part: ClutchDesign, lever: Lever, wall: Plane, gap: Num) -> Num:
    """Where the pad's room ends: as measured along its arc, else where the toes meet the wall."""
    if part.pad_room is None:
        return linkage.angle_at_face(lever, wall, gap)
    return linkage.angle_of_arc(lever, part.pad_room)


def _pressed(part: BrakeDesign, lever: Lever) -> brakes.Pressed | None:
    """Fluid that pressure takes up besides the hoses; None where nothing was given.

    The pressure is that at the hard stop without it, so the ratio there is a hair too small.
    """
    if not brakes.takes_pressure(part.front, part.rear, part.plumbing):
        return None
    with unrecorded():
        demand = brakes.demand(part.front, part.rear, part.plumbing)
        strokes = hydraulics.strokes(part.masters, demand, part.plumbing.dead_stroke)
        angle = linkage.angle_at_travel(lever, part.rod, strokes.hard_stop)
        ratio = linkage.position(lever, part.rod, angle).ratio
        pressures = hydraulics.pressures(
            part.masters,
            brakes.DESIGN_PUSH,
            ratio,
            part.plumbing.efficiency,
            part.plumbing.limiter,
        )
    return brakes.pressed(part.front, part.rear, part.plumbing, pressures)


def _travel(
    part: BrakeDesign, lever: Lever, taken: brakes.Pressed | None, wheels: _Wheels
) -> Num | None:
    """The pad's arc at the hard stop with other linings; None where they are the same."""
    if wheels[0] is part.front and wheels[1] is part.rear:
        return None
    with unrecorded():
        demand = brakes.demand(*wheels, part.plumbing, taken)
        strokes = hydraulics.strokes(part.masters, demand, part.plumbing.dead_stroke)
        return linkage.pad_travel_at(lever, part.rod, strokes.hard_stop)
