"""How each bend is made, and which comes first."""

from dataclasses import dataclass
from math import isnan

from pedalwright.core.working import subject
from pedalwright.making.bending.formulas import overbend, springback, sprung_radius
from pedalwright.making.bending.parts import FlatBend, FlatPattern, Sheet
from pedalwright.panels.plane import apart


@dataclass(frozen=True, kw_only=True, slots=True)
class BendStep:
    """One line of the bend card."""

    number: int
    bend: FlatBend
    length: float
    #: How far to turn it over a tool of the bend's radius, so that its angle is left.
    turn_to: float
    #: Inside radius that is then left; nan where the metal's strength is not known.
    left_radius: float


def bend_order(pattern: FlatPattern) -> tuple[BendStep, ...]:
    """Outermost bends first, short ones before long ones.

    What is bent first must not stand in the way of what comes later: returns before flanges,
    flanges before the fold they end on. Try the order on card before metal.
    """
    depth = {face.name: len(face.bends) for face in pattern.faces}
    ordered = sorted(pattern.bends, key=lambda bend: (-depth[bend.to_face], apart(*bend.near)))
    return tuple(_step(i, bend, pattern.sheet) for i, bend in enumerate(ordered, 1))


def _step(number: int, bend: FlatBend, sheet: Sheet) -> BendStep:
    turn = abs(bend.angle)
    with subject(bend.name):
        share = springback(bend.radius, sheet.yield_strength, sheet.elastic, sheet.thickness)
        left = float(sprung_radius(bend.radius, share))
        turn_to = float(overbend(turn, bend.radius, left, sheet.thickness))
    return BendStep(
        number=number,
        bend=bend,
        length=apart(*bend.near),
        turn_to=turn if isnan(turn_to) else turn_to,
        left_radius=left,
    )
