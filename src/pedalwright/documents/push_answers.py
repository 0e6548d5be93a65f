"""The question of the push test: what should move at home, what moved, and what that tells."""

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
from pedalwright.fitting import Explained, PushTestResult, push_test
from pedalwright.search.changes import one

#: Readings that are out by less than this many of their own SD are as expected.
AS_EXPECTED = 2.0
#: Belief in one cause from which on it is named alone (ours).
SURE = 0.6

#: Where to look, and how long that takes, for each cause.
LOOK = {
    "the arm": ("Look at the arm for a crack, a splice, a bend at the pin hole", 15.0),
    "the push rod": ("Feel for play at clevis, pin and socket; look whether the rod bows", 15.0),
    "the relay lever": ("Feel for play on the relay lever's shaft; look at its arms", 20.0),
    "the linings": ("Look at the linings for taper, glaze and a seat that is not flat", 60.0),
    "the callipers": ("See whether slides stick and a calliper rocks on its bracket", 60.0),
    "the hoses": ("Have somebody push while you hold each hose; old ones are felt to swell", 15.0),
    "the fluid": ("Bleed, every wheel, and push again", 45.0),
    "the cylinder's mount": ("Put the dial on the cylinder's flange and push again", 20.0),
    "the pivot's mount": ("Put the dial on the pivot's bracket and push again", 20.0),
    "air in the fluid": ("Bleed, every wheel, and push again", 45.0),
}


def push(design: Design) -> Answer:
    """What to expect of pushes at home, and which cause fits what was read."""
    result = push_test(design)
    return Answer(
        question="push-test",
        title="Push on the brake pad at home: what should move, and what moved?",
        says=_says(result),
        outcome=_outcome(result),
        columns=(Column("pad", "mm"), Column("flange", "mm"), Column("bracket", "mm")),
        rows=tuple(
            Row(
                name=f"{one(each.push):.0f} N",
                values=(one(each.pad), one(each.flange), one(each.bracket)),
            )
            for each in result.expected
        ),
        bars=_beliefs(result) if _outcome(result) == "short" else _sinks(result),
        steps=tuple(_look(cause) for cause in _suspected(result)),
        notes=(
            sentence(
                "Engine off. Push until the linings touch, set dial and rule to nought, then push "
                "to each weight on a bathroom scale between shoe and pad."
            ),
            sentence("The dial stands on the frame, not on the panel that it measures."),
            sentence(
                "Type what you read as [[brake.push_tests]] with push, pad and, by dial, flange "
                "and bracket; one cause at a time is tried."
            ),
        ),
    )


def _outcome(result: PushTestResult) -> Outcome:
    if not result.causes:
        return "open"
    return "passes" if one(result.off_by) < AS_EXPECTED else "short"


def _says(result: PushTestResult) -> Sentence:
    hardest = result.expected[-1]
    told = sentence(
        "Under {} the pad should sink {} from where the linings touch, the cylinder's flange {}, "
        "the pivot's bracket {}",
        (one(hardest.push), "N"),
        (one(hardest.pad), "mm"),
        (one(hardest.flange), "mm"),
        (one(hardest.bracket), "mm"),
    )
    if not result.causes:
        return told + sentence("; nothing was measured yet.")
    if one(result.off_by) < AS_EXPECTED:
        return told + sentence("; what you read agrees with that.")
    likely = result.causes[0]
    return told + sentence(
        f"; what you read does not agree, and {likely.name} explains it best: {{}} at {{}} instead "
        "of {} ({} of belief, one cause at a time).",
        (one(likely.found), "mm"),
        (one(hardest.push), "N"),
        (one(likely.expected), "mm"),
        (one(likely.belief), "share"),
    )


def _sinks(result: PushTestResult) -> Bars:
    return Bars(
        title="how far the pad should sink",
        unit="mm",
        bars=tuple(Bar(f"{one(each.push):.0f} N", one(each.pad)) for each in result.expected),
    )


def _beliefs(result: PushTestResult) -> Bars:
    return Bars(
        title="belief that it is this one",
        unit="share",
        bars=tuple(Bar(cause.name, one(cause.belief)) for cause in result.causes),
    )


def _suspected(result: PushTestResult) -> tuple[Explained, ...]:
    """The likeliest causes, until most of the belief is spent."""
    if _outcome(result) != "short":
        return ()
    spent, found = 0.0, list[Explained]()
    for cause in result.causes:
        if spent >= SURE:
            break
        spent += one(cause.belief)
        found.append(cause)
    return tuple(found)


def _look(cause: Explained) -> Step:
    what, minutes = LOOK[cause.name]
    return Step(
        what=sentence(f"{what}."),
        brings=sentence(
            f"{cause.name}: {{}} ± {{}} where {{}} was expected",
            (one(cause.found), "mm"),
            (one(cause.found_spread), "mm"),
            (one(cause.expected), "mm"),
        ),
        price=Price(minutes=minutes, buy="", worse=()),
    )
