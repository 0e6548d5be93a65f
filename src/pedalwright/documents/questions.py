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
