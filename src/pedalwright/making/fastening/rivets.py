"""Rivets: the length that grips, and what may stand in for them."""

from collections.abc import Iterator

from pedalwright.making.fastening.formulas import as_strong
from pedalwright.making.fastening.parts import RivetRow, SetRivet, Substitute
from pedalwright.shelf.bolts import bolt, property_class
from pedalwright.shelf.fasteners import RivetStrength, rivet_strength, rivet_strengths
from pedalwright.shelf.rivets import rivet_for
from pedalwright.structure.formulas.bolts import bolt_shear, stress_area

#: Bolts that may stand in for rivets of a diameter.
_BOLTS = {3.2: "M4", 4.0: "M4", 4.8: "M5", 6.4: "M6"}


def set_rivet(row: RivetRow) -> SetRivet:
    """Length, hole and strength of a row's rivets."""
    total = sum(layer.thickness for layer in row.layers)
    grip = rivet_for(row.diameter, total)
    strength = rivet_strength(row.body, row.diameter)
    return SetRivet(
        row=row,
        total=total,
        length=row.length if row.length is not None else grip.length if grip else None,
        hole=strength.hole,
        shear=strength.shear,
        pull=strength.pull,
    )


def substitutes(row: RivetRow) -> Iterator[Substitute]:
    """What may go in instead, strongest last: other rivets that grip, and a bolt with its nut."""
    total = sum(layer.thickness for layer in row.layers)
    here = rivet_strength(row.body, row.diameter)
    for other in sorted(rivet_strengths(), key=lambda r: r.shear):
        grip = rivet_for(other.diameter, total)
        if other != here and grip is not None:
            yield Substitute(
                instead=f"blind rivet {other.diameter:g} × {grip.length:g}, {other.body}",
                strength=other.shear / here.shear,
                count=int(as_strong(float(row.count), here.shear, other.shear)),
                hole=other.hole,
                remark=_remark(here, other),
            )
    thread = bolt(_BOLTS[row.diameter])
    ultimate = property_class("8.8").tensile_strength
    shear = float(bolt_shear(0.6, ultimate, stress_area(thread.diameter, thread.pitch), 1.0))
    yield Substitute(
        instead=f"bolt {thread.size}, 8.8, with a locking nut",
        strength=shear / here.shear,
        count=int(as_strong(float(row.count), here.shear, shear)),
        hole=thread.hole_fine,
        remark="needs a hand behind the sheet; the sheet's own bearing then governs",
    )


def _remark(here: RivetStrength, other: RivetStrength) -> str:
    said: list[str] = []
    if other.diameter > here.diameter:
        said.append("larger holes: check the edge distance")
    if other.surface != here.surface:
        said.append(f"{other.surface} in the joint: keep it apart from other metals")
    if other.shear < here.shear:
        said.append("weaker: more of them, or a shorter pitch")
    return "; ".join(said)
