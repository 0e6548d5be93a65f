"""The questions that can be asked, in the order in which a builder comes to them."""

from collections.abc import Callable
from dataclasses import dataclass
from difflib import get_close_matches

from pedalwright import search
from pedalwright.core.answers import Answer
from pedalwright.core.faults import Fault, InputError
from pedalwright.design import Design


@dataclass(frozen=True, slots=True)
class Question:
    """One question, in a builder's words, and what answers it."""

    asks: str
    answers: Callable[[Design], Answer]


QUESTIONS = {
    "bore": Question("Which bore for the brake?", search.which_bore),
    "travel": Question("Why is the brake pedal long?", search.pedal_travel),
    "spongy": Question("Why is the brake pedal spongy?", search.pedal_give),
    "hard": Question("Why is the brake pedal hard?", search.pedal_effort),
    "drag": Question("Why do the brakes drag?", search.brake_drag),
    "balance": Question("Which wheels lock first?", search.brake_balance),
    "clutch": Question("Does the clutch release, and what frees it?", search.clutch_release),
    "throttle": Question("Does the throttle open fully, and come back?", search.full_throttle),
}


def asked(name: str) -> Question:
    """The question of that name."""
    if name not in QUESTIONS:
        known = ", ".join(QUESTIONS)
        raise InputError(
            (
                Fault(
                    where="question",
                    read=name,
                    accepts=f"The questions are {known}.",
                    offers=tuple(get_close_matches(name, QUESTIONS, n=2)),
                ),
            )
        )
    return QUESTIONS[name]


def listed() -> list[dict[str, str]]:
    """Every question as data."""
    return [{"question": name, "asks": found.asks} for name, found in QUESTIONS.items()]


def listed_text() -> str:
    """Every question, a line each."""
    lead = max(map(len, QUESTIONS)) + 2
    return "".join(f"  {name:<{lead}}{found.asks}\n" for name, found in QUESTIONS.items())
