"""Threads by their size: as a shop calls what the design gives in mm."""

from pedalwright.shelf.bolts import Bolt, bolts, property_classes
from pedalwright.structure.formulas.bolts import core_diameter

#: Diameters that differ by less are one, mm.
NEAR = 0.02
#: Metric threads too large for the table of bolts.
_LARGE = (14, 16, 18, 20, 24)


def metric(diameter: float) -> Bolt | None:
    """The metric coarse thread of a diameter, if it is one."""
    return next((row for row in bolts() if abs(row.diameter - diameter) < NEAR), None)


def thread(diameter: float) -> str:
    """A thread by its size; what is not metric by its diameter."""
    row = metric(diameter)
    if row is None and abs(diameter - round(diameter)) < NEAR and round(diameter) in _LARGE:
        return f"M{round(diameter)}"
    return row.size if row else f"Ø{diameter:.4g}"


def by_core(core: float) -> Bolt | None:
    """The metric coarse thread with this core; a rod threaded along its length has no more."""
    return next(
        (r for r in bolts() if abs(float(core_diameter.rule(r.diameter, r.pitch)) - core) < NEAR),
        None,
    )


def grade_for(tensile_strength: float) -> str:
    """The weakest class of bolts that is as strong as the design counts on."""
    rows = property_classes()
    found = (row.name for row in rows if row.tensile_strength >= tensile_strength)
    return next(found, rows[-1].name)
