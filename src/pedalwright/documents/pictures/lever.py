"""A pedal's lever as it is cut and drilled, with the paths of its points: full size at 1:1.

Seen from the car's right, front to the left, the pedal at rest. The arm is drawn with its depths,
the pivot tube and the hole for the rod pin; arcs show how pad and pin travel to full stroke.
"""

from collections.abc import Iterator
from math import dist

from pedalwright.assess import Assessment
from pedalwright.design import Design
from pedalwright.documents.pictures.places import pad_outline, seen, swing, towards
from pedalwright.documents.pictures.shown import Shown, Which, shown
from pedalwright.drawing import (
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


def lever_layout(design: Design, assessment: Assessment, which: Which) -> Drawing:
    """One pedal's lever."""
    drawn = shown(design, assessment, which)
    return Drawing(
        name=f"{which}-lever",
        title=f"{which.capitalize()} lever at rest, with the paths of pad and pin",
        description=(
            f"The {which} pedal's arm with pivot tube and pin hole, its radii, and the arcs of pad "
            "and pin up to full stroke."
        ),
        shapes=(*_arm(drawn), *_paths(drawn), *_rods(drawn), *_sizes(drawn)),
    )


def _arm(drawn: Shown) -> Iterator[Item]:
    """Outline of the tapered arm, on to the pin where that lies beyond the pivot."""
    part, lever = drawn.part, drawn.lever
    pivot, pad, pin = seen(lever.pivot), seen(lever.pad), seen(lever.pin)
    arm, tube = part.carrier.arm, part.carrier.pivot
    ux, uz = towards(pivot, pad)
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
    face = pad_outline(part.pedal, lever, lever.pad)
    yield Polyline(face, closed=True, fill=Fill.PAPER, tone=Tone.ACCENT, part="pad", title="pad")
    for size in (tube.tube_outside, tube.tube_inside):
        yield Circle(pivot, float(size) / 2, fill=Fill.PAPER, part="pivot", title="pivot tube")
    yield CentreCross(pivot, float(tube.tube_outside) / 2, part="pivot")
    hole = float(arm.pin_hole) / 2
    yield Circle(pin, hole, fill=Fill.PAPER, part="rod-pin", title="hole for the rod pin")
    yield CentreCross(pin, hole, part="rod-pin")
    yield CentreCross(pad, 3.0, part="pad")


def _paths(drawn: Shown) -> Iterator[Item]:
    """Arcs of pad and pin, and the arm's middle line at both ends of the stroke."""
    lever, full = drawn.lever, drawn.full
    pivot = seen(lever.pivot)
    for rest, end in ((lever.pad, full.pad), (lever.pin, full.pin)):
        radius = dist(pivot, seen(rest))
        turn = swing(pivot, seen(rest), seen(end))
        yield Arc(pivot, radius, *turn, line=Line.CENTRE, tone=Tone.QUIET)
    for at in (full.pad, full.pin):
        yield Polyline((pivot, seen(at)), line=Line.OTHER_POSITION, tone=Tone.QUIET)


def _rods(drawn: Shown) -> Iterator[Item]:
    """The push rod at rest and at full stroke."""
    rest = (seen(drawn.lever.pin), seen(drawn.part.rod.socket))
    pressed = (seen(drawn.full.pin), seen(drawn.full.socket))
    yield Polyline(pressed, line=Line.OTHER_POSITION, tone=Tone.QUIET, part="push-rod")
    yield Polyline(rest, tone=Tone.ACCENT, part="push-rod", title="push rod at rest")
    yield Circle(rest[1], 3.0, line=Line.THIN, fill=Fill.PAPER, tone=Tone.ACCENT, part="rod-socket")
    yield Leader(rest[1], "rod socket", to=(-4.0, -9.0))


def _sizes(drawn: Shown) -> Iterator[Item]:
    part, lever = drawn.part, drawn.lever
    pivot, pad, pin = seen(lever.pivot), seen(lever.pad), seen(lever.pin)
    arm, tube = part.carrier.arm, part.carrier.pivot
    yield Linear(pivot, pad, "aligned", offset=26.0)
    yield Linear(pivot, pin, "aligned", offset=16.0)
    yield Linear(pin, seen(part.rod.socket), "aligned", offset=10.0, label="rod {}")
    reach = dist(pivot, pad)
    turn = swing(pivot, pad, seen(drawn.full.pad))
    yield Angular(pivot, *turn, radius=0.6 * reach, sides=False)
    yield diameter(pin, float(arm.pin_hole), 0.3, out=12.0)
    yield diameter(pivot, float(tube.tube_outside), 0.9, out=9.0, label="tube Ø{}")
    ux, uz = towards(pivot, pad)
    middle = (pivot[0] + 0.75 * reach * ux, pivot[1] + 0.75 * reach * uz)
    depth = measure(float(arm.depth_at_pad), 1)
    thick = measure(float(arm.thickness), 1)
    joggle = measure(float(part.pedal.pad_offset), 1)
    yield Leader(
        middle, f"arm {thick} x {depth}\npad {joggle} to the right", to=(14.0, -6.0), end="dot"
    )
