"""A plate that holds tube, arm and pad square to each other while they are tacked and welded.

The tube stands on end on a bolt, the arm lies level on packing in the middle of it, the pad on
packing of its own. Seen from above as the template is seen, and from the side.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from pedalwright.core.lengths import Written, millimetres
from pedalwright.design import Design
from pedalwright.design.tree import BrakeDesign, ClutchDesign
from pedalwright.drawing import (
    XY,
    Box,
    CentreCross,
    Circle,
    Drawing,
    Fill,
    Hatch,
    Item,
    Leader,
    Line,
    Linear,
    Polyline,
    Tone,
)
from pedalwright.making.car.bars import END_FLOAT
from pedalwright.making.car.formulas import tube_to_cut, under_arm, under_pad, under_tube
from pedalwright.making.car.threads import thread
from pedalwright.making.profiles import Profile, pedal_arm, polygon, seen_from

#: Plate beyond what lies on it, its thickness, and the dowels beside the arm, mm (ours).
RIM, PLATE, DOWEL = 30.0, 10.0, 8.0
#: Where the dowels stand along the arm, as a share of the pad's radius (ours).
DOWELS_AT = 0.75
#: Packing thinner than this is a shim nobody needs, mm.
SHIM = 0.5


@dataclass(frozen=True, kw_only=True, slots=True)
class Jig:
    """The sizes of a jig; heights above its plate, mm."""

    name: str
    arm: Profile
    tube_length: float
    tube_outside: float
    tube_inside: float
    bolt: str
    pad_radius: float
    pad_width: float
    pad_thick: float
    under_tube: float
    under_arm: float
    under_pad: float
    seen: str


def car_jigs(design: Design) -> tuple[Jig, ...]:
    """One for each welded pedal."""
    return (_jig("brake", design.brake), _jig("clutch", design.clutch))


def _jig(name: str, part: BrakeDesign | ClutchDesign) -> Jig:
    pedal, pivot = part.pedal, part.carrier.pivot
    arm = pedal_arm(f"{name} arm", pedal, part.carrier)
    length = float(tube_to_cut(pivot.span, END_FLOAT))
    seen = seen_from(pedal)
    offset = float(pedal.pad_offset) if seen.endswith("right") else -float(pedal.pad_offset)
    pad = float(under_pad(length, offset, pedal.pad_width))
    tube = float(under_tube(pad))
    return Jig(
        name=name,
        arm=arm,
        tube_length=length,
        tube_outside=float(pivot.tube_outside),
        tube_inside=float(pivot.tube_inside),
        bolt=thread(float(pivot.shaft_diameter)),
        pad_radius=float(pedal.pad_radius),
        pad_width=float(pedal.pad_width),
        pad_thick=float(pedal.pad_thickness),
        under_tube=tube,
        under_arm=tube + float(under_arm(length, arm.thickness)),
        under_pad=tube + pad,
        seen=seen,
    )


def jig_drawings(jig: Jig, written: Written = millimetres) -> tuple[Drawing, Drawing]:
    """From above and from the side."""
    outline = polygon(jig.arm.outline, 0.1)
    around = Box.around([*outline, (jig.pad_radius, 0.0)])
    assert around is not None, "an outline has places"
    plate = around.grown(RIM)
    name = f"{jig.name} pedal's jig"
    plan = Drawing(
        name=f"jig-{jig.name}-plan",
        title=f"{name} from above",
        description=f"A plate with a bolt for the tube and dowels for the {jig.name} arm.",
        shapes=tuple(_plan(jig, outline, plate, written)),
    )
    side = Drawing(
        name=f"jig-{jig.name}-side",
        title=f"{name} from the side",
        description=f"Tube on end, {jig.name} arm and pad on packing on the plate.",
        shapes=tuple(_side(jig, plate, written)),
    )
    return plan, side


def _plan(jig: Jig, outline: tuple[XY, ...], plate: Box, written: Written) -> Iterator[Item]:
    yield Polyline(plate.corners, closed=True, part="plate", title="plate")
    yield Polyline(outline, closed=True, tone=Tone.ACCENT, part="arm", title="arm")
    pin = jig.arm.bores[1]
    for radius in (jig.tube_outside / 2, jig.tube_inside / 2):
        yield Circle((0.0, 0.0), radius, part="tube", title="tube")
    yield CentreCross((0.0, 0.0), jig.tube_outside / 2)
    yield Circle(pin.centre, pin.diameter / 2, part="pin", title="dowel in the rod pin's hole")
    yield CentreCross(pin.centre, pin.diameter / 2)
    yield Linear(
        (0.0, 0.0), pin.centre, "horizontal", offset=-9.0, base=plate.bottom, written=written
    )
    if abs(pin.centre[1]) > 0.05:
        yield Linear(
            (0.0, 0.0), pin.centre, "vertical", offset=-9.0, base=plate.left, written=written
        )
    yield Linear(
        (0.0, 0.0),
        (jig.pad_radius, 0.0),
        "horizontal",
        offset=-18.0,
        base=plate.bottom,
        written=written,
    )
    yield CentreCross((jig.pad_radius, 0.0), 6.0)
    yield from _dowels(jig, outline, plate, written)
    yield Leader(
        (0.35 * jig.tube_outside, 0.35 * jig.tube_outside),
        f"bolt {jig.bolt} square in the plate,\n"
        f"two plugs Ø{written(jig.tube_inside, 2)} on it in the tube",
        to=(8.0, 40.0),
    )


def _dowels(jig: Jig, outline: tuple[XY, ...], plate: Box, written: Written) -> Iterator[Item]:
    x, words = DOWELS_AT * jig.pad_radius, f"{{}} to two dowels Ø{written(DOWEL, 1)}"
    above = _edge(outline, x)
    for y in (above + DOWEL / 2, -above - DOWEL / 2):
        yield Circle((x, y), DOWEL / 2, fill=Fill.TINT, part="dowel", title="dowel")
        yield CentreCross((x, y), DOWEL / 2)
    yield Linear(
        (x, above + DOWEL / 2),
        (x, -above - DOWEL / 2),
        "vertical",
        offset=10.0,
        base=plate.right,
        written=written,
    )
    yield Linear(
        (0.0, 0.0), (x, 0.0), "horizontal", offset=8.0, base=plate.top, label=words, written=written
    )


def _edge(outline: tuple[XY, ...], x: float) -> float:
    """Half of the arm's depth at a place along it."""
    heights: list[float] = []
    for (ax, ay), (bx, by) in zip(outline, (*outline[1:], outline[0]), strict=True):
        if min(ax, bx) <= x <= max(ax, bx) and ax != bx:
            heights.append(abs(ay + (by - ay) * (x - ax) / (bx - ax)))
    return max(heights)


def _side(jig: Jig, plate: Box, written: Written) -> Iterator[Item]:
    """Everything stands on the plate's face, at height 0."""
    floor = 0.0
    yield Polyline(_box(plate.left, floor - PLATE, plate.width, PLATE), closed=True, part="plate")
    yield Hatch(_box(plate.left, floor - PLATE, plate.width, PLATE))
    half, thick = jig.tube_outside / 2, jig.arm.thickness
    low = floor + jig.under_tube
    bolt = jig.tube_inside / 2 - 1.0
    yield Polyline(
        _box(-bolt, floor, 2 * bolt, jig.under_tube + jig.tube_length + 12.0),
        closed=True,
        line=Line.THIN,
        part="bolt",
    )
    yield Polyline(
        _box(-half, low, 2 * half, jig.tube_length), closed=True, fill=Fill.PAPER, part="tube"
    )
    box = Box.around(polygon(jig.arm.outline, 0.1))
    assert box is not None, "an outline has places"
    yield Polyline(
        _box(box.left, floor + jig.under_arm, box.width, thick),
        closed=True,
        fill=Fill.TINT,
        tone=Tone.ACCENT,
        part="arm",
    )
    pad = (jig.pad_radius - jig.pad_thick / 2, floor + jig.under_pad)
    yield Polyline(_box(*pad, jig.pad_thick, jig.pad_width), closed=True, part="pad", title="pad")
    yield from _packing(jig, floor, written)
    right = plate.right
    yield Linear(
        (right, floor), (right, floor + jig.under_arm), "vertical", offset=9.0, written=written
    )
    middle = floor + jig.under_arm + thick / 2
    pad_middle = floor + jig.under_pad + jig.pad_width / 2
    if abs(pad_middle - middle) > 0.05:
        yield Linear(
            (jig.pad_radius, middle),
            (jig.pad_radius, pad_middle),
            "vertical",
            offset=20.0,
            base=right,
            label="pad off by {}",
            written=written,
        )
    yield Linear(
        (-half, low),
        (-half, low + jig.tube_length),
        "vertical",
        offset=-9.0,
        base=plate.left,
        written=written,
    )


def _packing(jig: Jig, floor: float, written: Written) -> Iterator[Item]:
    blocks = (
        ("tube", -jig.tube_outside / 2, jig.tube_outside, jig.under_tube, (-6.0, -14.0)),
        ("arm", 0.4 * jig.pad_radius, 0.2 * jig.pad_radius, jig.under_arm, (-5.0, -22.0)),
        ("pad", jig.pad_radius - 12.0, 24.0, jig.under_pad, (6.0, -14.0)),
    )
    for name, left, wide, high, to in blocks:
        if high < SHIM:
            continue
        yield Polyline(_box(left, floor, wide, high), closed=True, line=Line.THIN, part="packing")
        yield Hatch(_box(left, floor, wide, high))
        yield Leader(
            (left + wide / 2, floor + high / 2),
            f"{written(high, 1)} under the {name}",
            to=to,
        )


def _box(left: float, bottom: float, wide: float, high: float) -> tuple[XY, ...]:
    return (
        (left, bottom),
        (left + wide, bottom),
        (left + wide, bottom + high),
        (left, bottom + high),
    )
