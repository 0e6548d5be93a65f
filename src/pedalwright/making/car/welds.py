"""Welds that a design asks for: what, how heavy, how long, in which order, and where none may be.

How heavy is common practice, no source: a fillet whose leg is the thinner part's thickness. Whoever
welds decides; a weld by hand needs sign-off.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import nan

from pedalwright.design import Design
from pedalwright.design.tree import BrakeDesign, ClutchDesign
from pedalwright.hydraulics.parts import Twin
from pedalwright.making.car.donors import Shortened, shortened
from pedalwright.making.car.formulas import (
    bore_round,
    fillet_leg,
    runs_beside,
    usual_leg,
    wall,
    weld_round,
)
from pedalwright.making.car.plates import STEEL
from pedalwright.structure.fixings.parts import Welded
from pedalwright.structure.trims import trimmed

#: Holes nearer than this many diameters, middle to middle, do not stand side by side; EN 1993-1-8.
NEAR = 2.2


@dataclass(frozen=True, kw_only=True, slots=True)
class Weld:
    """One weld, in the order of the card."""

    part: str
    joins: str
    #: Of the fillet; nan where the thinner part is none of the design's.
    leg: float
    #: All runs together.
    length: float
    how: str
    #: Why it must not be done, or not yet; empty where it may.
    forbidden: str = ""


def car_welds(design: Design) -> tuple[Weld, ...]:
    """Pedal by pedal, then what stands on the frame."""
    donors = {one.pedal: one for one in shortened(design)}
    return (
        *_pedal("brake", design.brake, donors.get("brake")),
        *_pedal("clutch", design.clutch, donors.get("clutch")),
        *_trims(design),
    )


def _pedal(name: str, part: BrakeDesign | ClutchDesign, donor: Shortened | None) -> Iterator[Weld]:
    arm, pivot = part.carrier.arm, part.carrier.pivot
    said = _forbidden(donor, alloy=float(arm.elastic) < STEEL)
    thick = float(arm.thickness)
    if donor is not None and donor.redrilled and _near(donor):
        hole = float(donor.donor.pin_hole)
        yield Weld(
            part=f"{name} arm",
            joins=f"old hole {hole:g}, filled with a plug of the same steel",
            leg=nan,
            length=2 * float(bore_round(hole)),
            how="chamfer both faces, weld each round, let it cool, file flush; then the new hole",
            forbidden=said,
        )
    yield Weld(
        part=f"{name} arm",
        joins="pivot tube through the arm, all round on both faces",
        leg=float(usual_leg(thick, wall(pivot.tube_outside, pivot.tube_inside))),
        length=float(weld_round(pivot.tube_outside)),
        how="bushes out, in the jig; four tacks, then quarters by turns, face by face; ream after",
        forbidden=said,
    )
    if isinstance(part, BrakeDesign) and isinstance(part.masters, Twin):
        bar = part.masters.bar.tube
        leg = float(usual_leg(thick, wall(arm.pin_hole, bar.bore))) if bar else nan
        yield Weld(
            part=f"{name} arm",
            joins="balance bar's tube through the arm, all round on both faces",
            leg=leg,
            length=float(weld_round(arm.pin_hole)),
            how="bar and bearing out; quarters by turns; the bearing must slide in afterwards",
            forbidden=said,
        )
    yield Weld(
        part=f"{name} arm",
        joins="pad's plate on the arm's edge, both sides",
        leg=nan,
        length=float(runs_beside(part.pedal.pad_height)),
        how="only after the trial in metal; leg as thick as the plate; side by side by turns",
        forbidden=said,
    )
    yield from _relay(name, part)
    for what, fixing in (
        (f"{name} cylinder's flange", part.carrier.mount.flange),
        (f"{name} pivot's bracket", part.carrier.mount.bracket),
    ):
        if isinstance(fixing, Welded):
            runs = [float((run.end - run.start).length()) for run in fixing.runs]
            yield Weld(
                part=what,
                joins=f"to what carries it, {len(runs)} runs as in the file",
                leg=float(fillet_leg(fixing.throat)),
                length=sum(runs),
                how="tack the ends of every run, check it square, then the run farthest first",
            )


def _relay(name: str, part: BrakeDesign | ClutchDesign) -> Iterator[Weld]:
    arms = part.carrier.relay
    if part.rod.relay is None or arms is None:
        return
    faces = 1 if float(arms.spacing) == 0.0 else 2
    yield Weld(
        part=f"{name} relay",
        joins="tube through its lever" if faces == 1 else "tube through both arms",
        leg=float(usual_leg(arms.thickness, wall(arms.tube_outside, arms.tube_inside))),
        length=faces * float(weld_round(arms.tube_outside)),
        how="both pins in their holes to hold the angle; quarters by turns",
        forbidden=_forbidden(None, alloy=float(arms.elastic) < STEEL),
    )


def _trims(design: Design) -> Iterator[Weld]:
    lines = {line.name: line for line in design.survey.lines}
    for trim in design.trims:
        if trim.member in lines and trim.put_back is not None:
            found = trimmed(lines[trim.member], trim)
            yield Weld(
                part=trim.name,
                joins=f"what goes back on the {trim.member}, along both edges",
                leg=float(usual_leg(trim.put_back.thickness, lines[trim.member].wall or nan)),
                length=float(found.weld),
                how="one side on before the member is cut; short runs by turns, none across it",
            )


def _forbidden(donor: Shortened | None, *, alloy: bool) -> str:
    metal = donor.donor.metal if donor is not None else "alloy" if alloy else "steel"
    return {
        "steel": "",
        "cast": "FORBIDDEN: cast metal cracks beside the weld; make the arm of plate",
        "alloy": "FORBIDDEN: heat takes half an alloy's strength; bolt it, or make it of steel",
        "unknown": "NOT YET: unknown steel; file it, weld a coupon, bend it flat; else no weld",
    }[metal]


def _near(donor: Shortened) -> bool:
    return abs(donor.apart) < NEAR * float(donor.donor.pin_hole)
