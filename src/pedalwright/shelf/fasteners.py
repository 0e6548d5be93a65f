"""Fasteners beside bolts: strength of blind rivets, nuts and washers, lengths one can buy."""

from dataclasses import dataclass

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class RivetStrength:
    """A set open blind rivet in holes of its size; the least its grade allows, N."""

    #: Of the rivet's body: `soft alloy`, `alloy`, `steel`, `stainless`.
    body: str
    diameter: float
    #: To drill, mm.
    hole: float
    shear: float
    pull: float
    #: What its outside is, as in the galvanic table.
    surface: str
    source: str
    mark: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Nut:
    """Heights of nuts and sizes of washers for a thread, mm; nan where none is made."""

    size: str
    plain: float
    #: With a nylon ring or squeezed.
    locking: float
    #: Slotted for a split pin, and that pin's diameter.
    castle: float
    split_pin: float
    washer: float
    washer_outside: float
    penny: float
    penny_outside: float
    source: str
    mark: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ClevisPin:
    """The split pin that goes through a clevis pin, mm."""

    diameter: float
    split_pin: float
    source: str
    mark: str


@dataclass(frozen=True, kw_only=True, slots=True)
class BoltLength:
    """A length bolts are sold in, mm."""

    length: float
    source: str
    mark: str


def rivet_strengths() -> tuple[RivetStrength, ...]:
    """Every body and diameter, weak to strong."""
    return table(RivetStrength, "rivet_strengths")


def rivet_strength(body: str, diameter: float) -> RivetStrength:
    """The row of a body and a diameter."""
    return next(r for r in rivet_strengths() if (r.body, r.diameter) == (body, diameter))


def nuts() -> tuple[Nut, ...]:
    """Every size, small to large."""
    return table(Nut, "nuts")


def nut(size: str) -> Nut:
    """The row of a thread, such as `M8`."""
    return next(row for row in nuts() if row.size == size)


def clevis_pins() -> tuple[ClevisPin, ...]:
    """Every diameter, thin to thick."""
    return table(ClevisPin, "clevis_pins")


def bolt_lengths() -> tuple[BoltLength, ...]:
    """Short to long."""
    return table(BoltLength, "bolt_lengths")
