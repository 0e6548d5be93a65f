"""The design's own flat parts: pedal arms, relay arms, straps, as they are sawn and drilled.

An arm lies with its pivot at the origin and its pad along +x, seen from the side from which the
stroke turns it anticlockwise. The outline is a string laid round the eyes at pivot and pin and the
rounded end at the pad, so it is nowhere narrower than the tapered arm that was judged.
"""

from collections.abc import Iterator
from math import atan2, cos, sin

from pedalwright.core.points import RIGHT, Point
from pedalwright.design.tree import Carrier
from pedalwright.linkage import Pedal, Relay
from pedalwright.making.profiles.hull import Disc, hull
from pedalwright.making.profiles.parts import Bore, Mark, Profile
from pedalwright.structure import RelayArms

#: Radius of an eye over its hole: the least edge distance of EN 1993-1-8 table 3.3.
EYE = 1.2
#: Metal to leave round a tube that is welded in, mm.
ROUND_TUBE = 5.0


def pedal_arm(name: str, pedal: Pedal, carrier: Carrier, metal: str = "") -> Profile:
    """The arm of a pedal, straight; a joggle is bent afterwards and takes length of its own."""
    arm, outside = carrier.arm, float(carrier.pivot.tube_outside)
    angle, radius = float(pedal.pin_angle), float(pedal.pin_radius)
    pivot, pad = (0.0, 0.0), (float(pedal.pad_radius), 0.0)
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
        marks=(Mark(name="middle of the pad", at=pad),),
        metal=metal,
        thickness=float(arm.thickness),
    )


def seen_from(pedal: Pedal) -> str:
    """The side from which the stroke turns the arm anticlockwise."""
    return "seen from the car's left" if pedal.hinge == "hanging" else "seen from the car's right"


def relay_arms(
    relay: Relay, arms: RelayArms, pin_hole: float, *, name: str = "relay", metal: str = ""
) -> Iterator[Profile]:
    """A relay lever's arms: one plate where both lie in it, else two straps.

    The driven pin lies along +x. Seen from the right, however the lever turns.
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
