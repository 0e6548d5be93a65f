"""Metric coarse bolts: thread, head, holes; and their property classes."""

from dataclasses import dataclass

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class Bolt:
    """One size of bolt, all in mm."""

    size: str
    diameter: float
    pitch: float
    hole_fine: float
    hole_medium: float
    hole_coarse: float
    tap_drill: float
    across_flats: float
    across_corners: float
    #: Outer edge of the head's bearing face.
    head_face: float
    source: str
    mark: str


@dataclass(frozen=True, kw_only=True, slots=True)
class PropertyClass:
    """Strength of a class of bolts, MPa, for sizes up to M16."""

    name: str
    tensile_strength: float
    yield_strength: float
    proof_stress: float
    #: Per cent; nan where the standard does not state it.
    elongation: float
    source: str
    mark: str


def bolts() -> tuple[Bolt, ...]:
    """Every size, small to large."""
    return table(Bolt, "bolts")


def bolt(size: str) -> Bolt:
    """The row of a size, such as `M8`."""
    return next(row for row in bolts() if row.size == size)


def property_classes() -> tuple[PropertyClass, ...]:
    """Every property class, weak to strong."""
    return table(PropertyClass, "property_classes")


def property_class(name: str) -> PropertyClass:
    """The row of a class, such as `8.8`."""
    return next(row for row in property_classes() if row.name == name)
