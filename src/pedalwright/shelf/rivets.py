"""Blind rivets: which length grips what."""

from dataclasses import dataclass

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class Grip:
    """Sheets, all together, that one length of rivet holds, mm."""

    diameter: float
    length: float
    least: float
    most: float
    source: str
    mark: str


def grips() -> tuple[Grip, ...]:
    """Every length of every diameter, thin to long."""
    return table(Grip, "rivet_grips")


def rivet_for(diameter: float, total: float) -> Grip | None:
    """The shortest rivet whose grip takes in the total thickness; None if there is none."""
    fitting = (g for g in grips() if g.diameter == diameter and g.least <= total <= g.most)
    return min(fitting, key=lambda g: g.length, default=None)
