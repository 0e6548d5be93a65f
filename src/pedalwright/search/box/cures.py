"""What makes a box stiffer: thicker sheet, an angle, a plate, more or other fasteners, a channel.

Each is built into the design and assessed; nothing is said of what was not tried.
"""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from pedalwright.assess.stroke import PedalName
from pedalwright.core.answers import Change, Sentence, sentence
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.panels.parts import (
    Bolts,
    Cheeks,
    Doubler,
    Gusset,
    Hanger,
    RivetNuts,
    Rivets,
    Stiffener,
    Wall,
)
from pedalwright.panels.recipes.ground import lying, place
from pedalwright.search.box.additions import (
    BOLTED,
    CLEAR_OF_EDGE,
    RIVETED,
    channel_for,
    plate,
)
from pedalwright.search.box.built import (
    LISTS,
    carrier,
    hung_on,
    in_box,
    part,
    thicker,
    wall_under,
    with_part,
    without_parts,
)
from pedalwright.search.changes import one
from pedalwright.search.cures import Cure
from pedalwright.search.judged import Judged
from pedalwright.search.prices import Job

#: A part is worth a cure from this share of the give on; so many parts are looked at.
SHARE, PARTS = 0.08, 3
#: Work at home, careful first-timers (ours).
NEW_WALL = Job(720.0, "sheet, rivets, sealant")
NEW_PLATE = Job(150.0, "plate, fasteners")
ANGLE = Job(120.0, "angle or strip of sheet, rivets")
MORE_FASTENERS = Job(60.0, "fasteners, a drill")
THROUGH_BOLTS = Job(90.0, "bolts, locking nuts, penny washers")
CHANNEL = Job(480.0, "3 mm steel plate, fasteners")
GUSSETS = Job(240.0, "2 mm steel sheet, fasteners")
NEW_RAIL = Job(360.0, "rectangular tube, welding rod or gas")
#: A plate reaches so far beyond the flange, mm.
BEYOND = 110.0


def box_cures(design: Design, assessment: Judged, pedal: PedalName) -> Iterator[Cure]:
    """Everything worth trying; none where the pedal hangs on no box."""
    give = in_box(assessment, pedal)
    if give is None:
        return
    total = max(one(give.total), 1e-9)
    worst = sorted(give.by_part, key=lambda own: -one(own.give))[:PARTS]
    for own in worst:
        if one(own.give) > SHARE * total:
            yield from _of_part(design, own.part, pedal)
    yield from _plates(design, pedal)
    yield from _fasteners(design, pedal)
    if not np.isfinite(give.joints):
        yield from channel(design, pedal)
        yield from _gussets(design, pedal)


def _of_part(design: Design, name: str, pedal: PedalName) -> Iterator[Cure]:
    found = part(design.box, name)
    if found is not None and hasattr(found, "thickness"):
        gauge = thicker(one(found.thickness))
        if gauge is not None:
            yield Cure(
                what=sentence(f"Make {words(name)} of {{}} instead of {{}}.", (gauge, "mm"),
                              (one(found.thickness), "mm")),
                changes=(Change(f"box.{LISTS[type(found)]}.{name}.thickness", gauge, "mm"),),
                made=with_part(design, replace(found, thickness=gauge)),
                job=NEW_WALL if isinstance(found, Wall) else NEW_PLATE,
            )  # fmt: skip
    if isinstance(found, Wall):
        yield from _angle(design, found, pedal)
    rail = next((rail for rail in design.box.rails if rail.name == name), None)
    if rail is not None:
        yield from _heavier(design, rail.line, name)


def _angle(design: Design, wall: Wall, pedal: PedalName) -> Iterator[Cure]:
    """An angle on the far side, from edge to edge past the cylinder."""
    rod = design.brake.rod if pedal == "brake" else design.clutch.rod
    plane = lying(design.survey.face(wall.face))
    low, high = place(plane, wall.low), place(plane, wall.high)
    left, right = sorted((low[0], high[0]))
    level = place(plane, rod.socket)[1] - 45.0
    made = Stiffener(
        name=f"{pedal}_angle",
        on=wall.name,
        start=plane.point((left + CLEAR_OF_EDGE, level)),
        end=plane.point((right - CLEAR_OF_EDGE, level)),
        height=30.0,
        foot=30.0,
        thickness=2.0,
        metal="DC01",
        side="far",
        joined=RIVETED,
    )
    yield Cure(
        what=sentence(
            f"Rivet an angle of {{}} x {{}} x {{}} across the far side of {words(wall.name)}, "
            "below the cylinder.",
            (30.0, "mm"), (30.0, "mm"), (2.0, "mm"),
        ),
        changes=(),
        made=with_part(design, made),
        job=ANGLE,
    )  # fmt: skip


def _heavier(design: Design, line: str, name: str) -> Iterator[Cure]:
    """The rail a size deeper: 5 mm more each way, as thick."""
    tube = design.survey.line(line)
    wider = one(tube.diameter) + 5.0
    deeper = None if tube.height is None else one(tube.height) + 5.0
    lines = tuple(
        replace(own, diameter=wider, height=deeper) if own.name == line else own
        for own in design.survey.lines
    )
    changes = [Change(f"survey.lines.{line}.diameter", wider, "mm")]
    if deeper is not None:
        changes.append(Change(f"survey.lines.{line}.height", deeper, "mm"))
    yield Cure(
        what=sentence(f"Make {words(name)} {{}} wide instead of {{}}, its wall as thick.",
                      (wider, "mm"), (one(tube.diameter), "mm")),
        changes=tuple(changes),
        made=replace(design, survey=replace(design.survey, lines=lines)),
        job=NEW_RAIL,
    )  # fmt: skip


def _plates(design: Design, pedal: PedalName) -> Iterator[Cure]:
    """A plate under a cylinder that sits on bare sheet, or a larger one."""
    mount, wall = carrier(design, pedal).mount, wall_under(design, pedal)
    held_by = part(design.box, mount.cylinder_on)
    if wall is None or isinstance(held_by, Cheeks):
        return
    made = plate(design, pedal, wall, one(mount.flange_width) + 2 * BEYOND, 3.0)
    if made is None:
        return
    changed = with_part(design, made)
    if not isinstance(held_by, Doubler):
        changed = hung_on(changed, pedal, made.name, mount.pivot_on)
    yield Cure(
        what=sentence(f"Rivet a plate of {{}} x {{}} x {{}} to {words(wall.name)} under the "
                      "cylinder.", (one(made.width), "mm"), (one(made.height), "mm"), (3.0, "mm")),
        changes=(),
        made=changed,
        job=NEW_PLATE,
    )  # fmt: skip


def _fasteners(design: Design, pedal: PedalName) -> Iterator[Cure]:
    """Twice as many, and bolts through instead of hollow ones, of what carries the push."""
    mount = carrier(design, pedal).mount
    for name in dict.fromkeys((mount.cylinder_on, mount.pivot_on)):
        found = part(design.box, name)
        joined = getattr(found, "joined", None)
        if found is None or not isinstance(joined, (Rivets, Bolts, RivetNuts)):
            continue
        closer = replace(joined, pitch=one(joined.pitch) / 2)
        yield Cure(
            what=sentence(f"Twice as many fasteners round {words(name)}, {{}} apart.",
                          (one(closer.pitch), "mm")),
            changes=(
                Change(f"box.{LISTS[type(found)]}.{name}.joined.pitch", one(closer.pitch), "mm"),
            ),
            made=with_part(design, replace(found, joined=closer)),
            job=MORE_FASTENERS,
        )  # fmt: skip
        if not isinstance(joined, Bolts):
            bolts = Bolts(diameter=6.0, pitch=one(joined.pitch), edge=max(one(joined.edge), 10.0))
            yield Cure(
                what=sentence(f"Bolts of {{}} through {words(name)} instead of "
                              f"{_kind(joined)}.", (6.0, "mm")),
                changes=(),
                made=with_part(design, replace(found, joined=bolts)),
                job=THROUGH_BOLTS,
            )  # fmt: skip


def channel(design: Design, pedal: PedalName) -> Iterator[Cure]:
    """Cylinder and pivot in one channel of 3 mm steel on the wall, bolted to the rail above."""
    made = channel_for(design, pedal)
    if made is None:
        return
    mount = carrier(design, pedal).mount
    old = [
        name
        for name in (mount.cylinder_on, mount.pivot_on)
        if isinstance(part(design.box, name), (Doubler, Hanger))
    ]
    changed = with_part(without_parts(design, *old), made)
    yield Cure(
        what=_channel_says(made),
        changes=(),
        made=hung_on(changed, pedal, made.name, made.name),
        job=CHANNEL,
    )


def _gussets(design: Design, pedal: PedalName) -> Iterator[Cure]:
    """Two plates from the wall of the cylinder to the floor of the bracket."""
    mount, wall = carrier(design, pedal).mount, wall_under(design, pedal)
    bracket = part(design.box, mount.pivot_on)
    if wall is None or not isinstance(bracket, Cheeks) or bracket.on == wall.name:
        return
    base = part(design.box, bracket.on)
    if not isinstance(base, Wall):
        return
    changed, half = design, one(bracket.spacing) / 2 + 25.0
    for side, by in (("left", -half), ("right", half)):
        changed = with_part(
            changed,
            Gusset(
                name=f"{side}_gusset",
                one=wall.name,
                other=base.name,
                at=Point(0.0, bracket.pivot.y + by, 0.0),
                leg_one=170.0,
                leg_other=min(260.0, float(bracket.pivot.x) + 70.0),
                flange=25.0,
                turned="left" if side == "left" else "right",
                thickness=2.0,
                metal="S275",
                joined=BOLTED,
            ),
        )
    yield Cure(
        what=sentence(f"Tie {words(wall.name)} and {words(base.name)} by two plates of {{}}, one "
                      "on each side of the pedal.", (2.0, "mm")),
        changes=(),
        made=changed,
        job=GUSSETS,
    )  # fmt: skip


def _channel_says(made: Cheeks) -> Sentence:
    tail = ", bolted to the rail above" if made.rail else ""
    return sentence(
        f"Carry cylinder and pivot in one channel of {{}} steel{tail}: the loop closes in it.",
        (3.0, "mm"),
    )


def words(name: str) -> str:
    """A part by its name, in a sentence."""
    return f"“{name.replace('_', ' ')}”"


def _kind(joined: Rivets | Bolts | RivetNuts) -> str:
    return {Rivets: "rivets", Bolts: "bolts", RivetNuts: "rivet nuts"}[type(joined)]
