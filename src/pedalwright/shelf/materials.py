"""Metals a builder can buy, with the strength that may be counted on."""

from dataclasses import dataclass

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class Material:
    """One metal in one form and range of thickness; the least its standard allows.

    A certificate or a test of the piece in hand beats this table.
    """

    name: str
    form: str
    #: Thickness the row holds for: more than `over`, up to and with `up_to`, mm.
    over: float
    up_to: float
    #: Yield strength or 0.2 % proof stress, MPa.
    yield_strength: float
    tensile_strength: float
    #: Elongation at fracture, per cent; nan where not known.
    elongation: float
    elastic: float
    poisson: float
    #: kg/mm³.
    density: float
    source: str
    #: How far the row can be trusted: `seen`, `from memory`, `practice`.
    mark: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Softening:
    """What a MIG weld leaves of an alloy's strength."""

    name: str
    form: str
    over: float
    up_to: float
    #: Share left of the proof stress and of the tensile strength.
    proof_left: float
    tensile_left: float
    source: str
    mark: str


def materials() -> tuple[Material, ...]:
    """Every row of the table."""
    return table(Material, "materials")


def softenings() -> tuple[Softening, ...]:
    """Every alloy whose softening is known."""
    return table(Softening, "softening")


def material(name: str, form: str, thickness: float) -> Material | None:
    """The row for a name, form and thickness; None if the table has none."""
    found = (r for r in materials() if (r.name, r.form) == (name, form) and _fits(r, thickness))
    return next(found, None)


def softening(name: str, form: str, thickness: float) -> Softening | None:
    """The same for the metal beside a weld."""
    found = (r for r in softenings() if (r.name, r.form) == (name, form) and _fits(r, thickness))
    return next(found, None)


def _fits(row: Material | Softening, thickness: float) -> bool:
    return row.over < thickness <= row.up_to
