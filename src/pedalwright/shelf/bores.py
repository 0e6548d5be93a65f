"""Bores in which hydraulic cylinders are made."""

from dataclasses import dataclass

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class Bore:
    """One bore, as cast on the cylinder and in mm."""

    name: str
    diameter: float
    source: str
    mark: str


def bores() -> tuple[Bore, ...]:
    """Every bore, small to large."""
    return table(Bore, "bores")
