"""Metals by the name a builder gives: what the table of metals says of them as sheet."""

from dataclasses import dataclass
from functools import cache

from pedalwright.shelf.materials import Material, materials

#: In which a name is looked up, the first that has it.
FORMS = ("sheet", "plate", "tube", "bright bar", "bar", "extrusion")


@dataclass(frozen=True, kw_only=True, slots=True)
class Metal:
    """What one piece is made of, as far as its strength goes; MPa."""

    name: str
    elastic: float
    poisson: float
    yield_strength: float
    tensile_strength: float
    #: False where the name is in no table: then the softest alloy is counted on.
    known: bool = True

    @property
    def steel(self) -> bool:
        """Whether it is a steel, by how stiff it is."""
        return self.elastic > 150_000.0


@cache
def metal(name: str, thickness: float) -> Metal:
    """A metal in a thickness; the softest sheet of the table where the name is in none.

    A thickness between or beyond the rows of a known metal takes its weakest row.
    """
    rows = [row for form in FORMS for row in materials() if (row.name, row.form) == (name, form)]
    fits = [row for row in rows if row.over < thickness <= row.up_to]
    if fits:
        return _metal(name, fits[0], known=True)
    if rows:
        return _metal(name, min(rows, key=lambda row: row.yield_strength), known=True)
    sheets = [row for row in materials() if row.form == "sheet"]
    return _metal(name, min(sheets, key=lambda row: row.yield_strength), known=False)


def _metal(name: str, row: Material, *, known: bool) -> Metal:
    return Metal(
        name=name,
        elastic=row.elastic,
        poisson=row.poisson,
        yield_strength=row.yield_strength,
        tensile_strength=row.tensile_strength,
        known=known,
    )
