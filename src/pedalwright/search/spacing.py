"""How far apart must the pads be? The gaps, what the rule and the shoes want, the best joggles."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TypeAlias

import numpy as np

from pedalwright.assess import Assessment, assess
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Mark,
    Outcome,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.checks import Finding
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.driver.row.limits import GAP, SHOE_ROOM
from pedalwright.linkage import Pedal
from pedalwright.search.changes import Changes, number, one
from pedalwright.search.cures import step_to
from pedalwright.search.prices import Job
from pedalwright.search.reasons import joined, reason
from pedalwright.search.scan import many
from pedalwright.search.tried import alone

#: Of clutch, brake and accelerator pad, to the car's right.
Joggles: TypeAlias = tuple[float, float, float]

#: Joggles tried for every pad to either side of where it is, mm.
SHIFTS = np.arange(-25.0, 26.0, 5.0)
PEDALS = ("clutch", "brake", "throttle")
JOGGLE = Job(90.0, "")
#: Millimetres won in all that are worth a joggle (ours).
WORTH = 5.0
#: Findings about the pads side by side and the shoes on them.
GAPS = {"driver.gap_accelerator_brake", "driver.gap_brake_clutch", "driver.gap_clutch_wall"}
SHOES = {"driver.shoes_apart", "driver.shoe_next_pad", "driver.shoe_wall"}
#: Name of a gap, its finding, and whose shoes decide it.
BOTH_FEET = "clutch to brake"
PAIRS = (
    ("wall to clutch", "driver.gap_clutch_wall", "clutch"),
    (BOTH_FEET, "driver.gap_brake_clutch", "brake and clutch"),
    ("brake to accelerator", "driver.gap_accelerator_brake", "brake and accelerator"),
)

COLUMNS = (
    Column("gap", "mm"),
    Column("for a new car", "mm"),
    Column("shoes need", "mm"),
    Column("beside a shoe", "mm"),
)


def spacing(design: Design) -> Answer:
    """Gap by gap what there is, what a rule asks of new cars, and what these shoes need."""
    found = assess(design)
    best = _best(design)
    gaps = [_gap(design, found, *pair, both=pair[0] == BOTH_FEET) for pair in PAIRS]
    missed = [f for f in found.findings if f.limit.code in SHOES and not f.ok]
    missed.sort(key=lambda f: not f.judged)
    return Answer(
        question="spacing",
        title="How far apart must the pads be?",
        says=_says(gaps, missed, best),
        outcome=_outcome(found, missed),
        columns=COLUMNS,
        rows=tuple(gaps),
        bars=Bars(
            title="gaps across the footwell",
            unit="mm",
            bars=tuple(Bar(row.name, row.values[0]) for row in gaps),
            bound=GAP,
            bound_says="UN R35 for new cars, to verify",
        ),
        steps=tuple(_steps(design, best)),
        notes=tuple(_notes(found)),
    )


def joggled(design: Design, shifts: Sequence[float]) -> Changes:
    """Clutch, brake and accelerator pads set so far to the right of where they are."""
    paths = [f"{pedal}.pedal.pad_offset" for pedal in PEDALS]
    return tuple(
        Change(path, number(design, path) + shift, "mm")
        for path, shift in zip(paths, shifts, strict=True)
        if shift
    )


def _gap(design: Design, found: Assessment, name: str, code: str, about: str, *, both: bool) -> Row:
    """One gap: as it is, for a new car, as the widest shoe needs it, what is left beside it."""
    gap = next(one(f.value) for f in found.findings if f.limit.code == code)
    widest = max(one(placed.brake.body.shoe_width) for placed in found.drivers)
    clutch, brake = (one(part.pedal.pad_width) for part in (design.clutch, design.brake))
    overhang = {"clutch": widest - clutch, "brake and accelerator": widest - brake}
    need = widest - (clutch + brake) / 2 if both else overhang[about] / 2
    left = [
        one(f.value)
        for f in found.findings
        if f.limit.code in SHOES and _speaks_of(f, about, both=both)
    ]
    beside = min(left, default=np.nan)
    good, fits = gap >= GAP, beside >= SHOE_ROOM
    mark: Mark = "passes" if good and fits else "short"
    return Row(
        name=name,
        values=(gap, GAP, need + SHOE_ROOM, beside),
        mark=mark,
        why=tuple(
            reason(f)
            for f in found.findings
            if f.limit.code in SHOES and not f.ok and _speaks_of(f, about, both=both)
        ),
    )


def _speaks_of(finding: Finding, about: str, *, both: bool) -> bool:
    """Whether a finding about shoes is about this gap; two shoes at once name no pedal."""
    _, _, pedals = finding.about.partition(", ")
    return pedals == about or (both and not pedals and finding.limit.code == "driver.shoes_apart")


def _best(design: Design) -> Joggles | None:
    """Of the joggles that break nothing else and leave least missing, the least.

    A millimetre to a shoe counts twice as much as one to a rule for new cars. None where none
    helps.
    """
    clutch, brake, throttle = (grid.ravel() for grid in np.meshgrid(SHIFTS, SHIFTS, SHIFTS))
    moved = np.abs(clutch) + np.abs(brake) + np.abs(throttle)
    still = int(np.argmin(moved))
    found = assess(_shifted(many(design, moved.size), clutch, brake, throttle))

    sound = np.ones(moved.shape, dtype=np.bool_)
    for finding in found.findings:
        ok = np.broadcast_to(finding.ok, moved.shape)
        if finding.limit.code not in GAPS | SHOES and ok[still]:
            sound = sound & ok
    missing = np.asarray(_missing(found.findings, SHOES) + _missing(found.findings, GAPS) / 2)
    order = np.lexsort((moved, np.round(missing), np.logical_not(sound)))
    first = int(order[0])
    if missing[still] - missing[first] < WORTH:
        return None
    return float(clutch[first]), float(brake[first]), float(throttle[first])


def _shifted(design: Design, clutch: Num, brake: Num, throttle: Num) -> Design:
    def aside(pedal: Pedal, by: Num) -> Pedal:
        return replace(pedal, pad_offset=pedal.pad_offset + by)

    return replace(
        design,
        clutch=replace(design.clutch, pedal=aside(design.clutch.pedal, clutch)),
        brake=replace(design.brake, pedal=aside(design.brake.pedal, brake)),
        throttle=replace(design.throttle, pedal=aside(design.throttle.pedal, throttle)),
    )


def _says(gaps: Sequence[Row], missed: Sequence[Finding], best: Joggles | None) -> Sentence:
    told = joined([sentence(f"{row.name} {{}}", (row.values[0], "mm")) for row in gaps], ", ")
    close = [reason(finding) for finding in missed if finding.judged]
    if close:
        lead = sentence("Shoes are too close: ") + joined(close[:2])
    elif missed:
        lead = sentence("Not every shoe can be judged, as a leg does not reach its pad")
    elif any(row.values[0] < GAP for row in gaps):
        lead = sentence("The shoes have room, though a new car would have to have more")
    else:
        lead = sentence("The shoes have room, as much as a new car must have")
    whole = lead + sentence(". The gaps: ") + told
    return whole + _joggle_words(best) + sentence(".")


def _joggle_words(best: Joggles | None) -> Sentence:
    if best is None:
        return sentence("; no joggle betters that without breaking something else")
    moves = [
        sentence(f"the {name} pad {{}} to the {'right' if shift > 0.0 else 'left'}",
                 (abs(shift), "mm"))
        for name, shift in zip(("clutch", "brake", "accelerator"), best, strict=True)
        if shift
    ]  # fmt: skip
    return sentence("; better with ") + joined(moves, " and ")


def _outcome(found: Assessment, missed: Sequence[Finding]) -> Outcome:
    """Wishes all: a shoe that catches is short, no gap is a must."""
    gaps = [f for f in found.findings if f.limit.code in GAPS and not f.ok]
    return "short" if missed or gaps else "passes"


def _steps(design: Design, best: Joggles | None) -> Iterator[Step]:
    if best is None:
        return
    before, after = alone(design), alone(design, joggled(design, best))
    words = _joggle_words(best)
    was, now = (
        (one(_missing(candidate.assessment.findings, SHOES | GAPS)), "mm")
        for candidate in (before, after)
    )
    yield step_to(
        before,
        after,
        Sentence(f"Joggle {words.text.removeprefix('; better with ')}.", words.figures),
        sentence("{} missing in all, beside shoes and between pads, instead of {}", now, was),
        JOGGLE,
    )


def _missing(findings: Sequence[Finding], codes: set[str]) -> Num:
    """Millimetres missing in all; what has no value counts as nothing there."""
    missing: Num = 0.0
    for finding in findings:
        if finding.limit.code in codes:
            missing = missing + np.maximum(finding.bound - np.nan_to_num(finding.value), 0.0)
    return missing


def _notes(found: Assessment) -> Iterator[Sentence]:
    named = {f.limit.code: f for f in found.findings}
    rest = named["driver.foot_rest"]
    room = (one(rest.value), "mm")
    if rest.ok:
        yield sentence("The left foot can rest beside the clutch: {} there.", room)
    else:
        yield sentence("There is no rest for the left foot beside the clutch: {} there.", room)
    apart, beside = named["driver.heel_and_toe"], named["driver.gap_accelerator_brake"]
    yield sentence(
        "Heel and toe: under 500 N the pads are {} apart along the car, {} at most, and {} beside "
        "each other, 45 to 60 mm wished.",
        (one(apart.value), "mm"),
        (one(apart.bound), "mm"),
        (one(beside.value), "mm"),
    )
    yield sentence(
        "What shoes need is for the widest one and {} beside it, with the foot straight; what is "
        "beside a shoe counts how the legs turn it and how pads and walls lie over the strokes.",
        (SHOE_ROOM, "mm"),
    )
    yield sentence("Which edges the rule's letters join was not read: to verify.")
