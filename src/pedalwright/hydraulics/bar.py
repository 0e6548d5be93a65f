"""How far a balance bar tilts: at the hard stop, and with a circuit lost."""

import numpy as np

from pedalwright.core.units import mm
from pedalwright.core.working import subject
from pedalwright.hydraulics.formulas import bar_tilt, clevis_draw, tube_tilt
from pedalwright.hydraulics.parts import BarTilt, Masters, Strokes, Twin


def bar(masters: Masters, found: Strokes) -> BarTilt | None:
    """Tilt of the bar against the tilt its tube allows; None where there is no bar.

    Both rods are taken to travel alike until one presses, so the tilt grows over the stroke and
    the hard stop is the most of it. A lost circuit's rod runs to the end of its cylinder.
    """
    if not isinstance(masters, Twin):
        return None
    spacing, tube = masters.bar.spacing, masters.bar.tube
    with subject("hard stop"):
        hard_stop = bar_tilt(found.front_piston, found.rear_piston, spacing)
    with subject("rear circuit lost"):
        rear_lost = bar_tilt(found.front_piston, masters.rear.stroke, spacing)
    with subject("front circuit lost"):
        front_lost = bar_tilt(masters.front.stroke, found.rear_piston, spacing)
    if tube is None:
        return BarTilt(hard_stop=hard_stop, rear_lost=rear_lost, front_lost=front_lost)
    largest = np.maximum(np.abs(rear_lost), np.abs(front_lost))
    return BarTilt(
        hard_stop=hard_stop,
        rear_lost=rear_lost,
        front_lost=front_lost,
        allowed=tube_tilt(tube.bore, _reach(tube.length, masters.bar.offset), tube.bar_diameter),
        drawn_in=clevis_draw(spacing, largest),
        end_float=tube.end_float,
    )


def _reach(length: mm, offset: mm) -> mm:
    """The tube as long as its longer side beyond the bearing makes it."""
    return length + 2.0 * np.abs(offset)
