"""The box of a design changed: a part made otherwise, added, or taken away."""

from dataclasses import fields, replace
from typing import Any

from pedalwright.assess.full import cases_of
from pedalwright.assess.stroke import PedalName
from pedalwright.design import Carrier, Design
from pedalwright.panels.parts import Box, Cheeks, Doubler, Gusset, Hanger, Stiffener, Tie, Wall
from pedalwright.search.changes import one
from pedalwright.search.judged import Judged
from pedalwright.search.tried import Candidate
from pedalwright.structure import Strength
from pedalwright.structure.box.full import Case, Kind
from pedalwright.structure.box.parts import BoxGive

#: Parts that can be added.
Part = Wall | Doubler | Cheeks | Hanger | Gusset | Stiffener | Tie
#: The list of a box that each kind of part stands in.
LISTS: dict[type, str] = {
    Wall: "walls",
    Doubler: "doublers",
    Cheeks: "cheeks",
    Hanger: "hangers",
    Gusset: "gussets",
    Stiffener: "stiffeners",
    Tie: "ties",
}
#: Thicknesses that sheet and plate are sold in, mm (common practice).
GAUGES = (0.8, 1.0, 1.2, 1.5, 1.6, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0)


def carrier(design: Design, pedal: PedalName) -> Carrier:
    """What carries a pedal."""
    return design.brake.carrier if pedal == "brake" else design.clutch.carrier


def strength(assessment: Judged, pedal: PedalName) -> Strength:
    """How a pedal fares."""
    return assessment.brake.strength if pedal == "brake" else assessment.clutch.strength


def in_box(assessment: Judged, pedal: PedalName) -> BoxGive | None:
    """What the box gives under a pedal; None where none carries it."""
    return strength(assessment, pedal).box


def part(box: Box, name: str) -> Any:  # noqa: ANN401 - it may be of any kind
    """A part by its name; None where there is none."""
    every = [one for kind in fields(box) for one in getattr(box, kind.name)]
    return next((one for one in every if one.name == name), None)


def with_part(design: Design, made: Part) -> Design:
    """The design with a part added, or made otherwise where one of that name is there."""
    key = LISTS[type(made)]
    others = [one for one in getattr(design.box, key) if one.name != made.name]
    return replace(design, box=replace(design.box, **{key: (*others, made)}))


def without_parts(design: Design, *names: str) -> Design:
    """The design without some parts."""
    box = design.box
    for kind in fields(box):
        kept = tuple(one for one in getattr(box, kind.name) if one.name not in names)
        box = replace(box, **{kind.name: kept})
    return replace(design, box=box)


def hung_on(design: Design, pedal: PedalName, cylinder_on: str, pivot_on: str) -> Design:
    """The design with a pedal's cylinder and pivot on other parts."""
    own = design.brake if pedal == "brake" else design.clutch
    mount = replace(own.carrier.mount, cylinder_on=cylinder_on, pivot_on=pivot_on)
    made: Any = replace(own, carrier=replace(own.carrier, mount=mount))
    return replace(design, **{pedal: made})


def wall_under(design: Design, pedal: PedalName) -> Wall | None:
    """The wall that a pedal's cylinder is bolted to, itself or through a plate on it."""
    name = carrier(design, pedal).mount.cylinder_on
    for _ in range(len(design.box.walls) + len(design.box.doublers) + 2):
        found = part(design.box, name)
        if found is None or isinstance(found, Wall):
            return found
        name = getattr(found, "on", "")
    return None


def bound_of(candidate: Candidate, code: str, pedal: PedalName) -> float:
    """What a demand allows one pedal."""
    found = (f for f in candidate.assessment.findings if f.limit.code == code)
    return one(next(f for f in found if f.about.startswith(pedal)).bound)


def case_of(candidate: Candidate, pedal: PedalName, kind: Kind) -> Case:
    """One load case of one pedal of a candidate."""
    both = candidate.assessment.brake, candidate.assessment.clutch
    cases = cases_of(candidate.design, *both)
    return next(case for case in cases if (case.pedal, case.kind) == (pedal, kind))


def thicker(thickness: float) -> float | None:
    """The next gauge above."""
    return next((gauge for gauge in GAUGES if gauge > thickness + 0.05), None)
