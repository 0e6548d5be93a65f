"""A pedal's lever as it is cut and drilled, with the paths of its points: full size at 1:1.

Seen from the car's left, front to the left, the pedal at rest. The arm is drawn with its depths,
the pivot tube and the hole for the rod pin; arcs show how pad and pin travel to full stroke.
"""

from collections.abc import Iterator
from math import dist

from pedalwright.assess import Assessment
from pedalwright.core.lengths import Written
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.places import beside, pad_outline, seen, swing, towards
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

#: How many of the things around a pedal are named.
NEAREST = 2


def lever_layout(design: Design, assessment: Assessment, which: Which, units: Units) -> Drawing:
    """One pedal's lever."""
    drawn = shown(design, assessment, which)
    return Drawing(
        name=f"{which}-lever",
        title=f"{which.capitalize()} lever at rest, with the paths of pad and pin",
        description=(
            f"The {which} pedal's arm with pivot tube and pin hole, its radii, and the arcs of pad "
            "and pin up to full stroke."
        ),
        shapes=(*_arm(drawn), *_paths(drawn), *_rods(drawn), *_sizes(drawn, units.lengths)),
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
    """Push rods, and a relay lever between them, at rest and at full stroke."""
    rest, pressed = drawn.at_rest, drawn.pressed
    for line in pressed.rods:
        yield Polyline(line, line=Line.OTHER_POSITION, tone=Tone.QUIET, part="push-rod")
    relay = pressed.relay or ()
    yield Polyline(relay, line=Line.OTHER_POSITION, tone=Tone.QUIET, part="relay")
    for line in rest.rods:
        yield Polyline(line, tone=Tone.ACCENT, part="push-rod", title="push rod at rest")
    if rest.relay is not None:
        yield Polyline(rest.relay, part="relay", title="relay lever at rest")
        yield CentreCross(rest.relay[1], 6.0, part="relay")
        yield Leader(rest.relay[1], "relay lever's tube", to=(-6.0, -8.0))
    socket = rest.rods[-1][1]
    yield Circle(socket, 3.0, line=Line.THIN, fill=Fill.PAPER, tone=Tone.ACCENT, part="rod-socket")
    yield Leader(socket, "rod socket", to=(-4.0, -9.0))


def _sizes(drawn: Shown, written: Written) -> Iterator[Item]:
    """Radii on the side the arm is open to, rods on the side away from the pivot."""
    lever, tube = drawn.lever, drawn.part.carrier.pivot
    pivot, pad, pin = seen(lever.pivot), seen(lever.pad), seen(lever.pin)
    yield Linear(pivot, pad, "aligned", offset=26.0, written=written)
    yield Linear(pivot, pin, "aligned", offset=16.0, written=written)
    for start, end in drawn.at_rest.rods:
        over = beside(start, end, 1.0)
        away = over[0] * (pivot[0] - start[0]) + over[1] * (pivot[1] - start[1]) < 0.0
        offset = 10.0 if away else -10.0
        yield Linear(start, end, "aligned", offset=offset, label="rod {}", written=written)
    reach = dist(pivot, pad)
    turn = swing(pivot, pad, seen(drawn.full.pad))
    yield Angular(pivot, *turn, radius=0.6 * reach, sides=False)
    rod_is_left = drawn.at_rest.rods[0][1][0] < pin[0]
    free = 2.6 if rod_is_left == (pin[1] < pivot[1]) else 0.5
    hole = float(drawn.part.carrier.arm.pin_hole)
    yield diameter(pin, hole, free, out=12.0, written=written)
    above = 0.9 if pad[1] < pivot[1] else -0.9
    outside = float(tube.tube_outside)
    yield diameter(pivot, outside, above, out=9.0, label="tube Ø{}", written=written)
    yield _note(drawn, written)


def _note(drawn: Shown, written: Written) -> Leader:
    """Size of the arm, joggle of the pad and what comes nearest, clear of the arm's dimensions."""
    pivot, pad = seen(drawn.lever.pivot), seen(drawn.lever.pad)
    arm, joggle = drawn.part.carrier.arm, float(drawn.part.pedal.pad_offset)
    text = f"arm {written(float(arm.thickness), 1)} x {written(float(arm.depth_at_pad), 1)}"
    if joggle:
        hand = "right" if joggle > 0.0 else "left"
        text += f"\npad {written(abs(joggle), 1)} {hand}"
    for thing, room in drawn.near[:NEAREST]:
        text += f"\nto {thing} {written(room, 1)}"
    ux, uz = towards(pivot, pad)
    along = 0.75 * dist(pivot, pad)
    middle = (pivot[0] + along * ux, pivot[1] + along * uz)
    dimensions_are_right = beside(pivot, pad, 1.0)[0] > 0.0
    return Leader(middle, text, to=(30.0 if dimensions_are_right else 14.0, -6.0))
