"""Metals in salt water: which one is eaten where two touch."""

from dataclasses import dataclass

from pedalwright.shelf.materials import Material
from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class Surface:
    """A metal, or the coat that it shows to the water."""

    surface: str
    #: In sea water, mV; of two that touch the lower one is eaten.
    potential: float
    source: str
    mark: str


def surfaces() -> tuple[Surface, ...]:
    """Every row."""
    return table(Surface, "galvanic")


def surface(name: str) -> Surface:
    """The row of a metal or coat."""
    return next(row for row in surfaces() if row.surface == name)


def bare(material: Material) -> str:
    """What a metal of the table of metals shows, unpainted: light is aluminium."""
    if material.density < 4e-6:
        return "aluminium"
    return "304 active" if material.name.startswith("1.4") else "steel"
