"""A pedal's lever as it is cut and drilled, with the paths of its points: full size at 1:1.

Seen from the car's right, front to the left, the pedal at rest. The arm is drawn with its depths,
the pivot tube and the hole for the rod pin; arcs show how pad and pin travel to full stroke.
"""

from collections.abc import Iterator
from math import atan2, hypot

from pedalwright.assess import Assessment
from pedalwright.core.points import Point
from pedalwright.design import BrakeDesign, ClutchDesign, Design
from pedalwright.drawing import (
    XY,
    Angular,
    Arc,
    CentreCross,
    Circle,
    Drawing,
    Fill,
    Item,
    Leader,
    Line,
    Linear,
    Polyline,
    Tone,
    diameter,
)
from pedalwright.drawing.dimension import measure
from pedalwright.linkage import Lever, Position

#: Drawn length of a pad along its arm, mm.
PAD = 50.0


def lever_layout(design: Design, assessment: Assessment, which: str) -> Drawing:
    """One pedal's lever; `which` is brake or clutch."""
    part: BrakeDesign | ClutchDesign = design.brake if which == "brake" else design.clutch
    lever = assessment.brake.lever if which == "brake" else assessment.clutch.lever
    full = assessment.brake.hard_stop if which == "brake" else assessment.clutch.full
    return Drawing(
        name=f"{which}-lever",
        title=f"{which.capitalize()} lever at rest, with the paths of pad and pin",
        description=(
            f"The {which} pedal's arm with pivot tube and pin hole, its radii, and the arcs of pad "
            "and pin up to full stroke."
        ),
        shapes=(
            *_arm(part, lever),
            *_paths(lever, full),
            *_rods(part, lever, full),
            *_sizes(part, lever, full),
        ),
    )


def _xz(point: Point) -> XY:
    return float(point.x), float(point.z)


def _arm(part: BrakeDesign | ClutchDesign, lever: Lever) -> Iterator[Item]:
    """Outline of the tapered arm, on to the pin where that lies beyond the pivot."""
    pivot, pad, pin = _xz(lever.pivot), _xz(lever.pad), _xz(lever.pin)
    arm, tube = part.carrier.arm, part.carrier.pivot
    ux, uz = _towards(pivot, pad)
    beyond = (pin[0] - pivot[0]) * ux + (pin[1] - pivot[1]) * uz < 0.0
    root = pin if beyond else pivot
    half_root, half_pad = float(arm.depth_at_pivot) / 2, float(arm.depth_at_pad) / 2
    outline = (
        (root[0] - uz * half_root, root[1] + ux * half_root),
        (pad[0] - uz * half_pad, pad[1] + ux * half_pad),
        (pad[0] + uz * half_pad, pad[1] - ux * half_pad),
        (root[0] + uz * half_root, root[1] - ux * half_root),
    )
    yield Polyline(outline, closed=True, fill=Fill.TINT, part="arm", title="arm")
    face = (
        (pad[0] - ux * PAD / 2, pad[1] - uz * PAD / 2),
        (pad[0] + ux * PAD / 2, pad[1] + uz * PAD / 2),
    )
    yield Polyline(face, tone=Tone.ACCENT, part="pad", title="pad")
    for radius, part_name in ((tube.tube_outside, "pivot"), (tube.tube_inside, "pivot")):
        yield Circle(pivot, float(radius) / 2, fill=Fill.PAPER, part=part_name, title="pivot tube")
    yield CentreCross(pivot, float(tube.tube_outside) / 2, part="pivot")
    hole = float(arm.pin_hole) / 2
    yield Circle(pin, hole, fill=Fill.PAPER, part="rod-pin", title="hole for the rod pin")
    yield CentreCross(pin, hole, part="rod-pin")
    yield CentreCross(pad, 3.0, part="pad")


def _paths(lever: Lever, full: Position) -> Iterator[Item]:
    """Arcs of pad and pin, and the arm's middle line at both ends of the stroke."""
    pivot = _xz(lever.pivot)
    for rest, end in ((lever.pad, full.pad), (lever.pin, full.pin)):
        a, b = _angle(pivot, _xz(rest)), _angle(pivot, _xz(end))
        radius = hypot(_xz(rest)[0] - pivot[0], _xz(rest)[1] - pivot[1])
        yield Arc(pivot, radius, min(a, b), max(a, b), line=Line.CENTRE, tone=Tone.QUIET)
    for at in (full.pad, full.pin):
        yield Polyline((pivot, _xz(at)), line=Line.OTHER_POSITION, tone=Tone.QUIET)


def _rods(part: BrakeDesign | ClutchDesign, lever: Lever, full: Position) -> Iterator[Item]:
    """The push rod at rest and at full stroke."""
    rest = (_xz(lever.pin), _xz(part.rod.socket))
    pressed = (_xz(full.pin), _xz(full.socket))
    yield Polyline(pressed, line=Line.OTHER_POSITION, tone=Tone.QUIET, part="push-rod")
    yield Polyline(rest, tone=Tone.ACCENT, part="push-rod", title="push rod at rest")
    yield Circle(rest[1], 3.0, line=Line.THIN, fill=Fill.PAPER, tone=Tone.ACCENT, part="rod-socket")
    yield Leader(rest[1], "rod socket", to=(-4.0, -9.0))


def _sizes(part: BrakeDesign | ClutchDesign, lever: Lever, full: Position) -> Iterator[Item]:
    pivot, pad, pin = _xz(lever.pivot), _xz(lever.pad), _xz(lever.pin)
    arm, tube = part.carrier.arm, part.carrier.pivot
    yield Linear(pivot, pad, "aligned", offset=26.0)
    yield Linear(pivot, pin, "aligned", offset=16.0)
    yield Linear(pin, _xz(part.rod.socket), "aligned", offset=10.0, label="rod {}")
    a, b = _angle(pivot, pad), _angle(pivot, _xz(full.pad))
    reach = hypot(pad[0] - pivot[0], pad[1] - pivot[1])
    yield Angular(pivot, min(a, b), max(a, b), radius=0.6 * reach, sides=False)
    yield diameter(pin, float(arm.pin_hole), 0.3, out=12.0)
    yield diameter(pivot, float(tube.tube_outside), 0.9, out=9.0, label="tube Ø{}")
    ux, uz = _towards(pivot, pad)
    middle = (pivot[0] + 0.75 * reach * ux, pivot[1] + 0.75 * reach * uz)
    depth = measure(float(arm.depth_at_pad), 1)
    thick = measure(float(arm.thickness), 1)
    joggle = measure(float(part.pedal.pad_offset), 1)
    yield Leader(
        middle, f"arm {thick} x {depth}\npad {joggle} to the right", to=(14.0, -6.0), end="dot"
    )


def _towards(start: XY, end: XY) -> XY:
    length = hypot(end[0] - start[0], end[1] - start[1])
    return (end[0] - start[0]) / length, (end[1] - start[1]) / length


def _angle(centre: XY, point: XY) -> float:
    """Direction of a point from a centre, measured so that a lever's swing never jumps."""
    angle = atan2(point[1] - centre[1], point[0] - centre[0])
    return angle if angle > -2.5 else angle + 6.283185307179586
