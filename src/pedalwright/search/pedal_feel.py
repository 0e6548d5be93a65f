"""Too long, spongy, hard: where the brake pedal's travel and push go, and what buys them back."""

from collections.abc import Iterator
from dataclasses import fields

from pedalwright.brakes.formulas import DESIGN_PUSH
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Column,
    Outcome,
    Price,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.design import Design
from pedalwright.search.bores import HARD_BRAKING, STRONG_PUSH, full_push, hard_push
from pedalwright.search.box.cures import box_cures
from pedalwright.search.brake_cures import (
    closer_linings,
    grippier_linings,
    less_dead_stroke,
    new_hoses,
    other_bore,
    other_pin,
    stiffer_arm,
    stiffer_mounts,
)
from pedalwright.search.changes import one
from pedalwright.search.cures import ranked
from pedalwright.search.prices import SERVO
from pedalwright.search.reasons import joined, reason
from pedalwright.search.tried import Candidate, Concerns, about_pedal, alone, both, named

TRAVEL = named("brakes.travel", "brakes.lost_travel", "hydraulics.stroke")
GIVE = both(named("structure.give", "structure.flange_give"), about_pedal("brake"))
EFFORT = named("brakes.effort", "brakes.touchy")

#: Parts of a box that give less than this share of it are told together.
SMALL = 0.005
#: A flange that moves further than this sits on sheet that bulges by more than it is thick, mm.
NET = 3.0
#: Causes of pad travel in a builder's words.
CAUSES = {
    "free_play": "the rod's play before the piston",
    "dead_stroke": "the dead stroke up to the port",
    "front_lift": "the front linings' lift",
    "rear_lift": "the rear linings' lift",
    "linings": "linings squeezed",
    "callipers": "callipers opening",
    "hoses": "hoses swelling",
    "fluid": "fluid squeezed",
    "structure": "arm, rod and mounts giving",
    "arm_bending": "the arm bending",
    "arm_shear": "the arm shearing",
    "arm_twist": "the arm twisting",
    "push_rod": "the rod shortening",
    "cylinder_mount": "the cylinder's mount giving",
    "pivot_mount": "the pivot's mount giving",
    "relay": "the relay lever giving",
    "total": "in all",
}
SHARES = (Column("pad travel", "mm"), Column("share", "share"))


def pedal_travel(design: Design) -> Answer:
    """Why is the brake pedal long? Pad travel by cause, and what shortens it most for an hour."""
    now = alone(design)
    causes = _there(_causes(now))
    total, room = _travel(now), one(now.assessment.brake.room)
    name, largest = max(causes, key=lambda cause: cause[1])
    missed = _missed(now, TRAVEL)
    says = sentence(
        f"At 500 N the brake pad goes {{}} of the {{}} there are; the most of it, {{}}, is {name}",
        (total, "mm"),
        (room, "mm"),
        (largest, "mm"),
    )
    return Answer(
        question="travel",
        title="Why is the brake pedal long?",
        says=says + (sentence("; ") + joined(missed) if missed else sentence("")) + sentence("."),
        outcome=_outcome(now, TRAVEL),
        columns=SHARES,
        rows=_rows(causes, total),
        bars=Bars(
            title="pad travel at 500 N, by cause",
            unit="mm",
            bars=tuple(Bar(*cause) for cause in (*causes, ("in all", total))),
            bound=room,
            bound_says="where the toes meet the wall",
        ),
        steps=ranked(
            design,
            [
                *less_dead_stroke(design),
                *closer_linings(design),
                *new_hoses(design),
                *other_bore(design, larger=True),
                *other_pin(design, further=True),
                *stiffer_mounts(design),
            ],
            _travel,
            _shorter,
        ),
        notes=(sentence("What is best comes first: millimetres won for an hour of work."),),
    )


def pedal_give(design: Design) -> Answer:
    """Why is the pedal spongy? What gives under the push, and what stiffens it."""
    now = alone(design)
    causes = _there([*_give(now), *_squeezed(now)])
    total = _soft(now)
    name, largest = max(causes, key=lambda cause: cause[1])
    missed = _missed(now, GIVE)
    bound = next(f for f in now.assessment.findings if f.limit.code == "structure.give")
    says = sentence(
        f"Under 500 N the pad sinks {{}} once the linings touch; the most of it, {{}}, is {name}",
        (total, "mm"),
        (largest, "mm"),
    )
    return Answer(
        question="spongy",
        title="Why is the brake pedal spongy?",
        says=says + (sentence("; ") + joined(missed) if missed else sentence("")) + sentence("."),
        outcome=_outcome(now, GIVE),
        columns=SHARES,
        rows=_rows(causes, total),
        bars=Bars(
            title="pad travel from the linings' touch to 500 N, by cause",
            unit="mm",
            bars=tuple(Bar(*cause) for cause in (*causes, ("in all", total))),
            bound=one(bound.bound),
            bound_says="all that arm, rod and mounts may give",
        ),
        steps=ranked(
            design,
            [
                *new_hoses(design),
                *stiffer_mounts(design),
                *box_cures(design, now.assessment, "brake"),
                *stiffer_arm(design),
                *other_bore(design, larger=True),
                *other_pin(design, further=True),
            ],
            _soft,
            _firmer,
        ),
        notes=(
            *_bulging(now),
            sentence(
                "The stiffness of the mounts is what decides: push the pad with {} on a bathroom "
                "scale, engine off, and watch flange and bracket with a dial or a rule.",
                (DESIGN_PUSH, "N"),
            ),
            sentence("Air in the fluid is not counted: bleed first, it costs half an hour."),
        ),
    )


def pedal_effort(design: Design) -> Answer:
    """Why is the pedal hard? The push it takes, and what makes it lighter at which price."""
    now = alone(design)
    pushes = (
        ("full stop", full_push(now), DESIGN_PUSH),
        ("0.9 g", hard_push(now), STRONG_PUSH),
        ("one circuit lost", _lost_push(now), DESIGN_PUSH),
    )
    missed = _missed(now, EFFORT)
    outcome = _outcome(now, EFFORT)
    hard = hard_push(now) > STRONG_PUSH
    says = sentence(
        "A full stop takes {} on the pad, 0.9 g takes {}",
        (pushes[0][1], "N"),
        (pushes[1][1], "N"),
    )
    tail = joined(missed) if missed else _verdict(hard)
    return Answer(
        question="hard",
        title="Why is the brake pedal hard?",
        says=says + sentence("; ") + tail + sentence("."),
        outcome="short" if outcome == "passes" and hard else outcome,
        columns=(Column("push", "N"), Column("at most", "N")),
        rows=tuple(
            Row(name=name, values=(push, most), mark="passes" if push <= most else "short")
            for name, push, most in pushes
        ),
        bars=Bars(
            title="push on the pad",
            unit="N",
            bars=tuple(Bar(name, push) for name, push, _ in pushes),
            bound=DESIGN_PUSH,
            bound_says="the most a rule allows",
        ),
        steps=(
            *ranked(
                design,
                [
                    *other_bore(design, larger=False),
                    *other_pin(design, further=False),
                    *grippier_linings(design),
                ],
                full_push,
                _lighter,
            ),
            *_servo(now),
        ),
        notes=(
            sentence(
                "The pedal is {}:1 at the hard stop.",
                (one(now.assessment.brake.hard_stop.ratio), "1"),
            ),
            sentence("Friction of the linings decides as much as the bore: know what is fitted."),
        ),
    )


def _causes(candidate: Candidate) -> list[tuple[str, float]]:
    budget = candidate.assessment.brake.budget
    names = [field.name for field in fields(budget) if field.name != "total"]
    return [(_called(name), one(getattr(budget, name))) for name in names]


def _give(candidate: Candidate) -> list[tuple[str, float]]:
    strength = candidate.assessment.brake.strength
    give, box = strength.give, strength.box
    mounts = ("cylinder_mount", "pivot_mount") if box is not None else ()
    names = [f.name for f in fields(give) if f.name not in {"push", "total", *mounts}]
    parts = () if box is None else box.by_part
    every = [(f"the {own.part.replace('_', ' ')}", one(own.give)) for own in parts]
    worth = SMALL * sum(cause[1] for cause in every)
    in_box = sorted((cause for cause in every if cause[1] >= worth), key=lambda cause: -cause[1])
    rest = sum(cause[1] for cause in every if cause[1] < worth)
    return [
        *in_box,
        ("the rest of the box", rest),
        *((_called(name), one(getattr(give, name))) for name in names),
    ]


def _bulging(candidate: Candidate) -> Iterator[Sentence]:
    """Where the sums no longer hold: a wall that moves far carries like a net and gives less."""
    box = candidate.assessment.brake.strength.box
    if box is not None and one(box.flange_moves) > NET:
        yield sentence(
            "The flange moves {}: sheet that bends so far begins to carry like a net, so that the "
            "real give is less than this, though far too much still.",
            (one(box.flange_moves), "mm"),
        )


def _there(causes: list[tuple[str, float]]) -> list[tuple[str, float]]:
    """Without the causes that no number was given for."""
    return [cause for cause in causes if cause[1] != 0.0]


def _called(name: str) -> str:
    return CAUSES.get(name, name.replace("_", " "))


def _rows(causes: list[tuple[str, float]], total: float) -> tuple[Row, ...]:
    return tuple(
        Row(name=name, values=(travel, travel / total))
        for name, travel in (*causes, ("in all", total))
    )


def _travel(candidate: Candidate) -> float:
    return one(candidate.assessment.brake.budget.total)


def _squeezed(candidate: Candidate) -> list[tuple[str, float]]:
    """What swells and is squeezed behind the master cylinder, at the pad."""
    budget = candidate.assessment.brake.budget
    names = ("linings", "callipers", "hoses", "fluid")
    return [(_called(name), one(getattr(budget, name))) for name in names]


def _soft(candidate: Candidate) -> float:
    """What gives at 500 N once the linings touch."""
    give = one(candidate.assessment.brake.strength.give.total)
    return give + sum(travel for _, travel in _squeezed(candidate))


def _lost_push(candidate: Candidate) -> float:
    """Push for what is asked with one circuit lost, the better one."""
    result = candidate.assessment.brake.result
    return max(one(result.effort_front_alone), one(result.effort_rear_alone))


def _missed(now: Candidate, concerns: Concerns) -> list[Sentence]:
    return [reason(f) for f in (*now.fails(concerns), *now.fails(concerns, "should"))]


def _outcome(now: Candidate, concerns: Concerns) -> Outcome:
    if now.fails(concerns):
        return "fails"
    return "short" if now.fails(concerns, "should") else "passes"


def _verdict(hard: bool) -> Sentence:
    if hard:
        return sentence("that is more than a strong push, {}", (STRONG_PUSH, "N"))
    return sentence("both are within a strong push, {}", (STRONG_PUSH, "N"))


def _shorter(before: Candidate, after: Candidate) -> Sentence:
    was, now = _travel(before), _travel(after)
    return sentence("{} shorter: {} instead of {}", (was - now, "mm"), (now, "mm"), (was, "mm"))


def _firmer(before: Candidate, after: Candidate) -> Sentence:
    was, now = _soft(before), _soft(after)
    return sentence("sinks {} less: {} instead of {}", (was - now, "mm"), (now, "mm"), (was, "mm"))


def _lighter(before: Candidate, after: Candidate) -> Sentence:
    return sentence(
        "a full stop with {} instead of {}, 0.9 g with {}",
        (full_push(after), "N"),
        (full_push(before), "N"),
        (hard_push(after), "N"),
    )


def _servo(candidate: Candidate) -> Iterator[Step]:
    """The help a servo would have to give; only where the push is hard."""
    push = hard_push(candidate)
    if push > STRONG_PUSH:
        yield Step(
            what=sentence("Fit a servo."),
            brings=sentence(
                "it has to multiply the push by {} to bring {} with {}",
                (push / STRONG_PUSH, "1"),
                (HARD_BRAKING, "g"),
                (STRONG_PUSH, "N"),
            ),
            price=Price(
                minutes=SERVO.minutes,
                buy=SERVO.buy,
                worse=(
                    sentence("without vacuum 0.9 g takes {} as it does now", (push, "N")),
                    sentence("room before the wall, and a source of vacuum, are not in the file"),
                ),
            ),
        )
