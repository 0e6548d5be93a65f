"""What buys leg room? Each change to the footwell tried by itself, and told driver by driver.

What a change gives a driver is told by his tightest joint and his tightest clearance: how far each
is within its demand or band, after less before.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.assess import Placed, assess
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Column,
    Mark,
    Outcome,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.checks import Finding
from pedalwright.design import Design
from pedalwright.driver.yardsticks import sitting
from pedalwright.search.changes import one
from pedalwright.search.cures import Cure
from pedalwright.search.leg_cures import leg_cures
from pedalwright.search.prices import missed_more, price
from pedalwright.search.reasons import joined, reason
from pedalwright.search.tried import Candidate, tried

#: What a millimetre counts for beside a degree: a knee turns by so much with the seat, in rad.
RAD_PER_MM = np.deg2rad(0.28)
#: Less is arithmetic.
ROUNDING = 1e-3

JOINTS = {
    "driver.ankle_min",
    "driver.ankle_max",
    "driver.knee_rest",
    "driver.knee_full",
    "driver.hip",
}
CLEARANCES = {
    "driver.knee_rim",
    "driver.shin_column",
    "driver.toe_wall",
    "driver.toe_height",
    "driver.instep",
    "driver.heel_lift",
    "driver.heel_lift_clutch",
    "driver.reach",
}
#: What is told of each driver.
PARTS = (("joint", "rad"), ("room", "mm"))


@dataclass(frozen=True, kw_only=True, slots=True)
class Bought:
    """What one change gives each driver: his tightest joint, his tightest clearance."""

    cure: Cure
    candidate: Candidate
    joints: tuple[float, ...]
    rooms: tuple[float, ...]
    #: The worst angle between a sole and its pad.
    sole: float
    #: Demands missed, less those missed before.
    more_missed: int

    @property
    def worth(self) -> float:
        """All drivers together, in rad; worth nothing where a leg is lost."""
        told = float(np.sum(self.joints) + RAD_PER_MM * np.sum(self.rooms))
        return told if np.isfinite(told) else -np.inf


def leg_room(design: Design) -> Answer:
    """Candidates in a row, those first that mend most and give most."""
    cures = list(leg_cures(design))
    before, *after = tried(design, [(), *(cure.changes for cure in cures)]).all()
    names = [driver.name for driver in design.drivers]
    bought = [
        _bought(cure, before, candidate, names)
        for cure, candidate in zip(cures, after, strict=True)
    ]
    bought.sort(key=lambda b: (b.more_missed, -b.worth))
    columns = [Column(f"{name} {what}", unit) for name in names for what, unit in PARTS]
    return Answer(
        question="leg-room",
        title="What buys leg room?",
        says=_says(bought, before, names),
        outcome=_outcome(before),
        columns=(*columns, Column("sole on pad", "rad")),
        rows=tuple(_row(change, bought[0], before) for change in bought),
        bars=Bars(
            title="degrees won for the tightest joint of whoever wins least",
            unit="rad",
            bars=tuple(Bar(_name(b.cure), _least(b.joints)) for b in bought),
        ),
        steps=tuple(_steps(bought, before)),
        notes=tuple(_notes(assess(design).drivers)),
    )


def _bought(cure: Cure, before: Candidate, after: Candidate, names: Sequence[str]) -> Bought:
    def won(codes: set[str], name: str) -> float:
        return _won(before, after, codes, name)

    return Bought(
        cure=cure,
        candidate=after,
        joints=tuple(won(JOINTS, name) for name in names),
        rooms=tuple(won(CLEARANCES, name) for name in names),
        sole=won({"driver.pad_rake"}, ""),
        more_missed=len(_missed(after)) - len(_missed(before)),
    )


def _won(before: Candidate, after: Candidate, codes: set[str], name: str) -> float:
    """What the tightest demand has more in hand, in its own unit; nan where a leg is lost.

    What could not be judged before is left out.
    """
    was, now = _in_hand(before, codes, name), _in_hand(after, codes, name)
    known = [key for key, hand in was.items() if np.isfinite(hand)]
    if not known:
        return np.nan
    gained = float(np.min([now[key] for key in known]) - np.min([was[key] for key in known]))
    return gained if abs(gained) > ROUNDING or np.isnan(gained) else 0.0


def _in_hand(candidate: Candidate, codes: set[str], name: str) -> dict[tuple[str, str], float]:
    """How far a driver's demands are met, each in its own unit; negative: missed."""
    return {
        (f.limit.code, f.about): one(f.margin * np.abs(f.bound))
        for f in candidate.assessment.findings
        if f.limit.code in codes and f.about.startswith(f"{name}, " if name else "")
    }


def _missed(candidate: Candidate) -> list[Finding]:
    """Demands on legs that are missed, those with a value first."""
    found = candidate.assessment.findings
    musts = [f for f in found if f.room == "driver" and f.limit.weight == "must" and not f.ok]
    return sorted(musts, key=lambda f: not f.judged)


def _least(values: Sequence[float]) -> float:
    known = [value for value in values if np.isfinite(value)]
    return min(known, default=np.nan)


def _name(cure: Cure) -> str:
    """What is changed, without how far."""
    return cure.what.text.split(",")[0]


def _row(bought: Bought, best: Bought, before: Candidate) -> Row:
    values = [value for pair in zip(bought.joints, bought.rooms, strict=True) for value in pair]
    breaks = missed_more(before.assessment, bought.candidate.assessment)
    mark: Mark = "passes" if bought.worth > 0.0 and not _missed(bought.candidate) else "short"
    if breaks:
        mark = "fails"
    elif bought is best and mark == "passes":
        mark = "take"
    return Row(
        name=_name(bought.cure),
        values=(*values, bought.sole),
        mark=mark,
        why=(*_mended(before, bought.candidate), *breaks[:2]),
        changes=bought.cure.changes,
    )


def _mended(before: Candidate, after: Candidate) -> list[Sentence]:
    """Demands and wishes of legs that are met now and were not, as they were."""
    met = {(f.limit.code, f.about) for f in after.assessment.findings if f.ok}
    mended = [
        reason(f)
        for f in before.assessment.findings
        if f.room == "driver" and not f.ok and (f.limit.code, f.about) in met
    ]
    return [sentence("mends ") + joined(mended[:3])] if mended else []


def _says(bought: Sequence[Bought], before: Candidate, names: Sequence[str]) -> Sentence:
    best = bought[0]
    missed = _missed(before)
    lead = sentence("")
    if missed:
        lead = sentence("As it is ") + joined(_told(missed)) + sentence(". ")
    if best.worth <= 0.0:
        return lead + sentence("None of these changes gives a leg more than it takes.")
    given = joined(
        [
            _gives(joint, "rad", f"the tightest joint of {name}")
            + sentence(" and ")
            + _gives(room, "mm", "the tightest clearance")
            for name, joint, room in zip(names, best.joints, best.rooms, strict=True)
        ],
        ", ",
    )
    bought_with = sentence("Most is bought with ") + best.cure.what + sentence(": it ")
    return lead + bought_with + given + sentence(".")


def _told(missed: Sequence[Finding]) -> list[Sentence]:
    """The first two with a value; where none has one, that it has none."""
    judged = [reason(f) for f in missed if f.judged]
    return judged[:2] or [sentence("a leg cannot be placed")]


def _gives(won: float, unit: str, thing: str) -> Sentence:
    if won >= 0.0:
        return sentence(f"gives {{}} to {thing}", (won, unit))
    return sentence(f"takes {{}} from {thing}", (-won, unit))


def _outcome(before: Candidate) -> Outcome:
    if _missed(before):
        return "fails"
    tight = [
        f for f in before.assessment.findings if f.limit.code in JOINTS | CLEARANCES and not f.ok
    ]
    return "short" if tight else "passes"


def _steps(bought: Sequence[Bought], before: Candidate) -> Iterator[Step]:
    """What gives something and breaks nothing, most for an hour's work first."""
    good = [b for b in bought if b.worth > 0.0 or (b.worth == 0.0 and b.sole > 0.0)]
    for change in sorted(good, key=lambda b: -b.worth / b.cure.job.minutes):
        after = change.candidate
        if missed_more(before.assessment, after.assessment):
            continue
        what = change.cure.what
        yield Step(
            what=Sentence(f"{what.text[0].upper()}{what.text[1:]}.", what.figures),
            brings=_brings(change),
            price=price(change.cure.job, before.assessment, after.assessment),
            changes=change.cure.changes,
        )


def _brings(change: Bought) -> Sentence:
    if change.worth == 0.0:
        return sentence("soles {} flatter on their pads at the worst", (change.sole, "rad"))
    return sentence(
        "{} for the tightest joint and {} for the tightest clearance of whoever wins least",
        (_least(change.joints), "rad"),
        (_least(change.rooms), "mm"),
    )


def _notes(drivers: Sequence[Placed]) -> Iterator[Sentence]:
    yield sentence(
        "Joint and room are what a driver's tightest joint and tightest clearance have in hand "
        "with the change, less what they have without it; negative: it takes from them. Changes "
        "add up roughly, not exactly."
    )
    yield sentence(
        "Raking a pad moves no leg: it lays the face against the sole. A notch is a pocket for the "
        "toes in the wall; a frame member is cut only if its load finds another way: ask `trim`."
    )
    for driver in drivers:
        seat = sitting(driver.throttle)
        if np.isfinite(seat.half):
            yield sentence(
                f"{driver.name}'s hip is {{}} behind the ball of the foot and {{}} above the heel. "
                "In ordinary cars half of all drivers sit at least {} behind it at that height, "
                "one in twenty {} (SAE J1517, second-hand): a yardstick, not a demand.",
                (one(seat.behind), "mm"),
                (one(seat.height), "mm"),
                (one(seat.half), "mm"),
                (one(seat.most), "mm"),
            )
