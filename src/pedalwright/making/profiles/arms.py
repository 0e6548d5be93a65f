"""The design's own flat parts: pedal arms, relay arms, straps, as they are sawn and drilled.

An arm lies with its pivot at the origin and its pad along +x, seen from the side from which the
stroke turns it anticlockwise. The outline is a string laid round the eyes at pivot and pin and the
rounded end at the pad, so it is nowhere narrower than the tapered arm that was judged.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, cos, sin

from pedalwright.core.points import RIGHT, Point
from pedalwright.design.tree import Carrier
from pedalwright.linkage import Pedal, Relay, lever
from pedalwright.making.bending import Neutral
from pedalwright.making.bending.formulas import (
    bend_allowance,
    bend_deduction,
    joggle_length,
    joggle_run,
    joggle_slant,
    setback,
)
from pedalwright.making.profiles.hull import Disc, hull
from pedalwright.making.profiles.parts import BendLine, Bore, Mark, Profile, Way
from pedalwright.structure import RelayArms

#: Radius of an eye over its hole: the least edge distance of EN 1993-1-8 table 3.3.
EYE = 1.2
#: Metal to leave round a tube that is welded in, mm.
ROUND_TUBE = 5.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Joggle:
    """Two bends that carry the pad's end of an arm sideways, as far as the pedal's pad offset."""

    #: From the pivot to where it begins, as seen from the side, mm.
    start: float
    #: Of each of the two bends, rad, and their inside radius, mm.
    angle: float
    radius: float
    neutral: Neutral


def pedal_arm(
    name: str, pedal: Pedal, carrier: Carrier, *, metal: str = "", joggle: Joggle | None = None
) -> Profile:
    """The arm of a pedal as it is sawn; a joggle makes it longer than it is seen.

    The rod pin has to lie on the pivot's side of the joggle.
    """
    arm, outside = carrier.arm, float(carrier.pivot.tube_outside)
    angle, radius = float(pedal.pin_angle), float(pedal.pin_radius)
    longer, bends = _joggled(pedal, carrier, joggle)
    pivot, pad = (0.0, 0.0), (float(pedal.pad_radius) + longer, 0.0)
    pin = (radius * cos(angle), radius * sin(angle))
    hole = float(arm.pin_hole)
    return Profile(
        name=name,
        outline=hull(
            [
                Disc(pivot, max(float(arm.depth_at_pivot) / 2, outside / 2 + ROUND_TUBE)),
                Disc(pin, EYE * hole),
                Disc(pad, float(arm.depth_at_pad) / 2),
            ]
        ),
        bores=(
            Bore(name="P", centre=pivot, diameter=outside, use="pivot tube, welded in"),
            Bore(name="R", centre=pin, diameter=hole, use="rod pin", reamed=True),
        ),
        bends=bends,
        marks=(Mark(name="middle of the pad", at=pad),),
        metal=metal,
        thickness=float(arm.thickness),
    )


def _joggled(
    pedal: Pedal, carrier: Carrier, joggle: Joggle | None
) -> tuple[float, tuple[BendLine, ...]]:
    """How much longer the flat arm is, and where it is bent: lines in the middle of each bend."""
    if joggle is None:
        return 0.0, ()
    offset, thick = float(pedal.pad_offset), float(carrier.arm.thickness)
    back = setback(joggle.angle, joggle.radius, thick)
    arc = bend_allowance(joggle.angle, joggle.radius, joggle.neutral.share, thick)
    lost = bend_deduction(back, arc)
    slant = joggle_slant(abs(offset), thick, joggle.angle)
    run = joggle_run(slant, thick, joggle.angle)
    first = joggle.start - float(lost) / 2
    places = (first, first + float(slant) - float(lost))
    assert float(pedal.pin_radius) < joggle.start - float(back), "the rod pin lies in the joggle"
    half = max(float(carrier.arm.depth_at_pivot), float(carrier.arm.depth_at_pad)) / 2
    ways: tuple[Way, Way] = ("up", "down") if offset > 0.0 else ("down", "up")
    return float(joggle_length(slant, run, lost)), tuple(
        BendLine(
            name=f"B{i}",
            start=(x, -half),
            end=(x, half),
            way=way,
            angle=joggle.angle,
            radius=joggle.radius,
        )
        for i, (x, way) in enumerate(zip(places, ways, strict=True), 1)
    )


def seen_from(pedal: Pedal) -> str:
    """The side from which the stroke turns the arm anticlockwise: where its axis points to."""
    return f"seen from the car's {'right' if float(lever(pedal).axis.y) > 0.0 else 'left'}"


def relay_arms(
    relay: Relay, arms: RelayArms, pin_hole: float, *, name: str = "relay", metal: str = ""
) -> Iterator[Profile]:
    """A relay lever's arms: one plate where both lie in it, else two straps.

    The driven pin lies along +x. Seen from the left, however the lever turns.
    """
    driven, driving = _across(relay, relay.driven_pin), _across(relay, relay.driving_pin)
    between = atan2(driving[1], driving[0]) - atan2(driven[1], driven[0])
    reach = [(driven[0] ** 2 + driven[1] ** 2) ** 0.5, (driving[0] ** 2 + driving[1] ** 2) ** 0.5]
    first = (reach[0], 0.0)
    second = (reach[1] * cos(between), reach[1] * sin(between))
    tube = float(arms.tube_outside)
    depths = float(arms.driven_depth), float(arms.driving_depth)
    eyes = [("driven arm", first, depths[0]), ("driving arm", second, depths[1])]
    if float(arms.spacing) == 0.0:
        yield _strap(f"{name} lever", tube, eyes, pin_hole, metal, float(arms.thickness))
    else:
        for (of, _, depth), radius in zip(eyes, reach, strict=True):
            eye = [(of, (radius, 0.0), depth)]
            yield _strap(f"{name} {of}", tube, eye, pin_hole, metal, float(arms.thickness))


def strap(
    name: str, bores: tuple[Bore, ...], rim: float, *, metal: str = "", thickness: float
) -> Profile:
    """A link, clevis plate or cheek: a string round its bores, `rim` of metal round each."""
    discs = [Disc(bore.centre, bore.diameter / 2 + rim) for bore in bores]
    return Profile(name=name, outline=hull(discs), bores=bores, metal=metal, thickness=thickness)


def _strap(
    name: str,
    tube: float,
    eyes: list[tuple[str, tuple[float, float], float]],
    pin_hole: float,
    metal: str,
    thickness: float,
) -> Profile:
    deepest = max(depth for _, _, depth in eyes)
    discs = [Disc((0.0, 0.0), max(deepest / 2, tube / 2 + ROUND_TUBE))]
    discs += [Disc(at, EYE * pin_hole) for _, at, _ in eyes]
    pins = tuple(
        Bore(name=f"R{i}", centre=at, diameter=pin_hole, use=f"pin of the {of}", reamed=True)
        for i, (of, at, _) in enumerate(eyes, 1)
    )
    return Profile(
        name=name,
        outline=hull(discs),
        bores=(
            Bore(name="P", centre=(0.0, 0.0), diameter=tube, use="relay tube, welded in"),
            *pins,
        ),
        metal=metal,
        thickness=thickness,
    )


def _across(relay: Relay, pin: Point) -> tuple[float, float]:
    """A pin seen along the relay's tube: x rearward, y up, from the tube's middle."""
    axis = RIGHT if relay.axis is None else relay.axis.unit()
    reach = pin - relay.pivot
    flat = reach - axis * axis.dot(reach)
    level = Point(1.0, 0.0, 0.0) - axis * axis.x
    level = level.unit()
    up = axis.cross(level) * -1.0
    return float(flat.dot(level)), float(flat.dot(up))
