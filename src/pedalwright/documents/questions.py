"""The questions that can be asked, in the order in which a builder comes to them."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from typing import TypeAlias

from pedalwright import search
from pedalwright.core.answers import Answer
from pedalwright.core.doubts import Doubt
from pedalwright.core.faults import Fault, InputError
from pedalwright.core.quantity import QuantityError, parse
from pedalwright.design import Design
from pedalwright.documents import lever_answers, push_answers, rod_answers, survey_answers
from pedalwright.fitting import PedalName
from pedalwright.search import box

#: For a car, one of its pedals where the question is about either, and a length in mm.
Answers: TypeAlias = Callable[[Design, PedalName, float | None], Answer]


@dataclass(frozen=True, slots=True)
class Question:
    """One question, in a builder's words, and what answers it."""

    asks: str
    answers: Answers
    #: For a question that rests on how far off each number of the file may be.
    of_doubts: Callable[[Design, Sequence[Doubt]], Answer] | None = None

    def answered(
        self, design: Design, pedal: PedalName, by: float | None, doubts: Sequence[Doubt]
    ) -> Answer:
        """The answer, with the doubts of the file where it rests on them."""
        if self.of_doubts is not None:
            return self.of_doubts(design, doubts)
        return self.answers(design, pedal, by)


def _of_the_car(answers: Callable[[Design], Answer]) -> Answers:
    """A question about one thing only."""

    def answer(design: Design, _pedal: PedalName, _by: float | None) -> Answer:
        return answers(design)

    return answer


def _of_a_pedal(answers: Callable[[Design, PedalName], Answer]) -> Answers:
    """A question about the brake's or the clutch's pedal."""

    def answer(design: Design, pedal: PedalName, _by: float | None) -> Answer:
        return answers(design, pedal)

    return answer


QUESTIONS = {
    "cut": Question("How much can I cut off the pedal?", lever_answers.cut),
    "hole": Question("The pin hole is in the wrong place: what now?", lever_answers.hole),
    "ratio": Question("Which ratio for the pedal?", _of_a_pedal(search.which_ratio)),
    "rod-angle": Question("Is the push rod's angle right?", _of_the_car(rod_answers.rod_angle)),
    "bore": Question("Which bore for the brake?", _of_the_car(search.which_bore)),
    "travel": Question("Why is the brake pedal long?", _of_the_car(search.pedal_travel)),
    "thickness": Question("How thick must the sheet be?", box.thickness),
    "doubler": Question("Will a doubler do?", _of_a_pedal(box.doubler)),
    "rivets": Question("How many rivets or bolts?", box.rivets),
    "weld": Question("How many millimetres of weld?", box.weld),
    "load-path": Question("Which way does the push go?", _of_a_pedal(box.load_path)),
    "spongy": Question("Why is the brake pedal spongy?", _of_the_car(search.pedal_give)),
    "push-test": Question(
        "Push on the brake pad at home: what should move, and what moved?",
        _of_the_car(push_answers.push),
    ),
    "hard": Question("Why is the brake pedal hard?", _of_the_car(search.pedal_effort)),
    "drag": Question("Why do the brakes drag?", _of_the_car(search.brake_drag)),
    "balance": Question("Which wheels lock first?", _of_the_car(search.brake_balance)),
    "clutch": Question(
        "Does the clutch release, and what frees it?", _of_the_car(search.clutch_release)
    ),
    "throttle": Question(
        "Does the throttle open fully, and come back?", _of_the_car(search.full_throttle)
    ),
    "floor-drop": Question(
        "How deep must the floor drop, or how thick a heel plate?",
        _of_the_car(search.floor_drop),
    ),
    "leg-room": Question("What buys leg room?", _of_the_car(search.leg_room)),
    "pedal-height": Question("How high must the pads stand?", _of_the_car(search.pedal_height)),
    "re-measure": Question(
        "Which numbers are worth measuring again?",
        _of_the_car(search.re_measure),
        search.re_measure,
    ),
    "spacing": Question("How far apart must the pads be?", _of_the_car(search.spacing)),
    "trim": Question("What must go back where a frame member is cut?", survey_answers.put_back),
}


def asked(name: str) -> Question:
    """The question of that name."""
    if name in QUESTIONS:
        return QUESTIONS[name]
    near = tuple(get_close_matches(name, QUESTIONS, n=2))
    accepts = f"The questions are {', '.join(QUESTIONS)}."
    raise InputError((Fault(where="question", read=name, accepts=accepts, offers=near),))


def length(text: str | None) -> float | None:
    """A length as it was typed, in mm; None where nothing was."""
    if text is None:
        return None
    try:
        return float(parse(text, "mm").value)
    except QuantityError as error:
        fault = Fault(
            where="--by",
            read=text,
            accepts=f"{error.reason} Accepted: {error.accepts}.",
            offers=error.offers,
        )
        raise InputError((fault,)) from error


def listed() -> list[dict[str, str]]:
    """Every question as data."""
    return [{"question": name, "asks": found.asks} for name, found in QUESTIONS.items()]


def listed_text() -> str:
    """Every question, a line each."""
    lead = max(map(len, QUESTIONS)) + 2
    return "".join(f"  {name:<{lead}}{found.asks}\n" for name, found in QUESTIONS.items())
