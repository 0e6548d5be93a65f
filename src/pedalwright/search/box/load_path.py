"""Which way does the push go? What every part bears at a hard stop, and where the loop closes."""

import numpy as np

from pedalwright.assess.box import seats_of, walls_and_tubes
from pedalwright.assess.stroke import PedalName
from pedalwright.core.answers import Answer, Bar, Bars, Column, Row, Sentence, Step, sentence
from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.design import Design
from pedalwright.search.box.built import case_of, in_box
from pedalwright.search.box.cures import box_cures, words
from pedalwright.search.box.none import no_box
from pedalwright.search.changes import one
from pedalwright.search.cures import ranked
from pedalwright.search.tried import Candidate, alone
from pedalwright.structure.box.bench import COARSE
from pedalwright.structure.box.full import Full, full
from pedalwright.structure.box.limits import JOINTS

COLUMNS = (
    Column("rearward", "N"),
    Column("to the right", "N"),
    Column("up", "N"),
    Column("in all", "N"),
)
TITLE = "Which way does the push go?"


def load_path(design: Design, pedal: PedalName) -> Answer:
    """The forces from foot to frame, each on the part it acts on; at a hard stop's push."""
    now = alone(design)
    give = in_box(now.assessment, pedal)
    if give is None:
        return no_box("load-path", TITLE, pedal)
    (seat,) = (seat for seat in seats_of(design) if seat.pedal == pedal)
    case = case_of(now, pedal, "effort")
    found = full(design.box, walls_and_tubes(design), (seat,), (case,), size=COARSE)
    if not isinstance(found, Full):
        return no_box("load-path", TITLE, pedal)
    push, on = one(case.push), case.on
    rows = (
        _row("foot on the pad", (on.flange + on.pivot) * push),
        _row(f"rod on {words(seat.cylinder_on)}", on.flange * push),
        _row(f"shaft on {words(seat.pivot_on)}", on.pivot * push),
        *(
            _row(f"frame on {own.name.replace('_', ' ')}", _point(own.force[0]))
            for own in found.borne
        ),
    )
    in_frame = max((float(np.linalg.norm(own.force[0])) for own in found.borne), default=0.0)
    closed = one(give.joints) <= JOINTS
    begins = sentence(
        f"At {{}} on the pad the rod pushes {words(seat.cylinder_on)} with {{}}; ",
        (push, "N"),
        (one(on.flange.length()) * push, "N"),
    )
    return Answer(
        question="load-path",
        title=TITLE,
        says=begins + (_closed(one(give.joints), in_frame) if closed else _open(in_frame)),
        outcome="passes" if closed else "fails",
        columns=COLUMNS,
        rows=rows,
        bars=Bars(
            title=f"forces at {push:.0f} N on the pad",
            unit="N",
            bars=tuple(Bar(row.name, row.values[3]) for row in rows),
        ),
        steps=() if closed else _cures(design, now, pedal),
        notes=(
            sentence("What the frame bears sums up to the foot's own push: {}.", (push, "N")),
            sentence(
                "Inside the loop go several times the push; where it is open, they go out through "
                "thin sheet to the frame and back."
            ),
        ),
    )


def _cures(design: Design, now: Candidate, pedal: PedalName) -> tuple[Step, ...]:
    return ranked(
        design,
        [cure for cure in box_cures(design, now.assessment, pedal) if cure.made is not None],
        lambda candidate: _total(candidate, pedal),
        lambda before, after: sentence(
            "the pad sinks {} instead of {}",
            (_total(after, pedal), "mm"),
            (_total(before, pedal), "mm"),
        ),
        lambda after: _is_closed(after, pedal),
    )


def _is_closed(candidate: Candidate, pedal: PedalName) -> bool:
    give = in_box(candidate.assessment, pedal)
    return give is not None and one(give.joints) <= JOINTS


def _total(candidate: Candidate, pedal: PedalName) -> float:
    give = in_box(candidate.assessment, pedal)
    return float("nan") if give is None else one(give.total)


def _row(name: str, force: Point) -> Row:
    sizes = one(force.x), one(force.y), one(force.z)
    return Row(name=name, values=(*sizes, float(np.linalg.norm(sizes))))


def _point(force: Array) -> Point:
    return Point(*(float(size) for size in force))


def _closed(joints: float, in_frame: float) -> Sentence:
    places = {0.0: "in the same piece of metal", 1.0: "one joint further on"}
    where = places.get(joints, f"{joints:.0f} joints further on")
    return sentence(
        f"the pivot pulls back {where}, so the loop is closed and the frame bears no more than "
        "{} at any place.",
        (in_frame, "N"),
    )


def _open(in_frame: float) -> Sentence:
    return sentence(
        "the loop is open: nothing but the frame ties it to the pivot's carrier, which is pulled "
        "the other way. The frame bears up to {} at one place.",
        (in_frame, "N"),
    )
