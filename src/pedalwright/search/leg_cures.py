"""Changes that may buy leg room, each by itself."""

from collections.abc import Iterator

import numpy as np

from pedalwright.core.answers import Change, sentence
from pedalwright.design import Design
from pedalwright.search.changes import Changes, number, one
from pedalwright.search.cures import Cure
from pedalwright.search.floor_drop import FOOT_TUB, HEEL_PLATE
from pedalwright.search.levers import cut_by
from pedalwright.search.pedal_height import MOVE_PEDAL, PEDALS, lifted_by
from pedalwright.search.prices import TOE_POCKET, Job

#: How far each change goes, mm and rad (ours: what is easily done).
DEEPER, PLATE, LOWER, BACK, MOVE, POCKET, CUT = 25.0, 15.0, 20.0, 30.0, 25.0, 30.0, 20.0
RAKE = np.deg2rad(25.0)
LOWER_SEAT = Job(120.0, "shorter mounts, bolts")
SEAT_BACK = Job(90.0, "bolts, a longer runner")
SHORTER_ARMS = Job(240.0, "")
RAKED_PADS = Job(90.0, "")


def leg_cures(design: Design) -> Iterator[Cure]:
    """Tub, heel plate, seat, pivots, arms, pads and wall."""
    rest = design.heel_rest
    yield Cure(
        what=sentence("deeper tub, {}", (DEEPER, "mm")),
        changes=(Change("heel_rest.drop", one(rest.drop) + DEEPER, "mm"),),
        job=FOOT_TUB,
    )
    yield Cure(
        what=sentence("thicker heel plate, {}", (PLATE, "mm")),
        changes=(Change("heel_rest.plate", one(rest.plate) + PLATE, "mm"),),
        job=HEEL_PLATE,
    )
    yield Cure(
        what=sentence("seat lower, {}", (LOWER, "mm")),
        changes=_seats(design, "z", -LOWER),
        job=LOWER_SEAT,
    )
    yield Cure(
        what=sentence("seat further back, {}", (BACK, "mm")),
        changes=_seats(design, "x", BACK),
        job=SEAT_BACK,
    )
    for way, by in (("up", MOVE), ("down", -MOVE)):
        yield Cure(
            what=sentence(f"pivots {way}, {{}}", (MOVE, "mm")),
            changes=tuple(c for pedal in PEDALS for c in lifted_by(design, pedal, by)),
            job=MOVE_PEDAL,
        )
    yield Cure(
        what=sentence("arms cut, {}", (CUT, "mm")),
        changes=(*cut_by(design, "brake", CUT), *cut_by(design, "clutch", CUT)),
        job=SHORTER_ARMS,
    )
    yield Cure(
        what=sentence("pads raked, {}", (RAKE, "rad")), changes=_raked(design), job=RAKED_PADS
    )
    yield Cure(
        what=sentence("notch in the front wall, {} deep", (POCKET, "mm")),
        changes=(Change("toe_pocket", one(design.toe_pocket) + POCKET, "mm"),),
        job=TOE_POCKET,
    )


def _seats(design: Design, axis: str, by: float) -> Changes:
    paths = [f"drivers.{driver.name}.hip.{axis}" for driver in design.drivers]
    return tuple(Change(path, number(design, path) + by, "mm") for path in paths)


def _raked(design: Design) -> Changes:
    """The tops of the pads away from the driver, as a sole lies that rests on its heel."""
    changes: list[Change] = []
    for pedal, part in (("brake", design.brake.pedal), ("clutch", design.clutch.pedal)):
        turn = -RAKE if part.hinge == "hanging" else RAKE
        changes.append(Change(f"{pedal}.pedal.pad_face", one(part.pad_face) + turn, "rad"))
    return tuple(changes)
