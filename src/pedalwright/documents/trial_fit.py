"""Paper for the trial in card: both levers at full size as they stand, and every pad."""

from collections.abc import Iterator

from pedalwright.assess import Assessment
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.lever import lever_layout
from pedalwright.documents.pictures.shown import PEDALS
from pedalwright.documents.tiles import Template
from pedalwright.drawing import XY, CentreCross, Drawing, Item, Linear, Polyline, Text

#: Between two pads on their sheet, mm.
APART = 25.0


def trial_fit(design: Design, assessment: Assessment, units: Units) -> Iterator[Template]:
    """Brake and clutch, then all pads; the accelerator's arm is none of the file's."""
    for which in PEDALS:
        yield Template(
            drawing=lever_layout(design, assessment, which, units),
            way_up="up in the car",
            face="seen from the car's left, front to the left",
            made_of="card: cut round arm and pad, holes at the crosses",
        )
    yield Template(
        drawing=pads(design, units),
        way_up="along the arm, to the pivot",
        face="seen by the driver",
        made_of="card, 1 off each: tape them to their arms",
    )


def pads(design: Design, units: Units) -> Drawing:
    """The pads side by side, each with its middle."""
    return Drawing(
        name="pads",
        title="Pads of brake, clutch and throttle",
        description="Three rectangles as wide and as high as the pads, their middles marked.",
        shapes=tuple(_pads(design, units)),
    )


def _pads(design: Design, units: Units) -> Iterator[Item]:
    left = 0.0
    named = (
        ("brake", design.brake.pedal),
        ("clutch", design.clutch.pedal),
        ("throttle", design.throttle.pedal),
    )
    for which, pedal in named:
        wide, high = float(pedal.pad_width), float(pedal.pad_height)
        low, top = -high / 2, high / 2
        corners: tuple[XY, ...] = (
            (left, low),
            (left + wide, low),
            (left + wide, top),
            (left, top),
        )
        written = units.lengths
        yield Polyline(corners, closed=True, part=f"pad-{which}", title=f"{which} pad")
        yield CentreCross((left + wide / 2, 0.0), 6.0)
        yield Linear(corners[0], corners[1], "horizontal", offset=-9.0, written=written)
        yield Linear(corners[1], corners[2], "vertical", offset=8.0, written=written)
        yield Text((left + wide / 2, top + 6.0), which)
        left += wide + APART
