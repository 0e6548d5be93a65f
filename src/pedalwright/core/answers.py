"""What an answer to a builder's question is made of: figures, sentences, a row of candidates.

A sentence carries its figures beside its words, so that the edge can write them as a reader
wants them and hand them on as data. Figures are in inside units, and two more: `g` is gravity,
`share` a part of one.
"""

from dataclasses import dataclass
from typing import Literal

#: `take`: what the answer says to do. `now`: as it stands. Both: `keep`.
Mark = Literal["take", "now", "keep", "passes", "short", "fails"]
#: How the car as it stands comes out of the question; `open` where it cannot be said.
Outcome = Literal["passes", "short", "fails", "open"]


@dataclass(frozen=True, slots=True)
class Figure:
    """A number with its unit; nan where there is none."""

    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Sentence:
    """Plain words; each `{}` stands for the next figure."""

    text: str
    figures: tuple[Figure, ...] = ()

    def __add__(self, other: "Sentence") -> "Sentence":
        return Sentence(self.text + other.text, self.figures + other.figures)


def sentence(text: str, *figures: tuple[float, str]) -> Sentence:
    """A sentence from its words and (value, unit) for each `{}`."""
    assert text.count("{}") == len(figures), f"{len(figures)} figures for {text!r}"
    return Sentence(text, tuple(Figure(float(value), unit) for value, unit in figures))


@dataclass(frozen=True, slots=True)
class Change:
    """One number of the project file and what it becomes; the path is the file's."""

    path: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a table."""

    head: str
    unit: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Row:
    """One line of a table: a candidate or a case, its figures in the order of the columns."""

    name: str
    values: tuple[float, ...]
    mark: Mark | None = None
    #: Why it loses, or what it is chosen for.
    why: tuple[Sentence, ...] = ()
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, slots=True)
class Bar:
    """One bar of a small drawing."""

    name: str
    value: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Bars:
    """Bars to one scale, and the bound they are seen against."""

    title: str
    unit: str
    bars: tuple[Bar, ...]
    bound: float | None = None
    bound_says: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Price:
    """What a cure costs."""

    #: Of work; ours, an estimate for a builder at home.
    minutes: float
    #: Parts to buy; empty for none.
    buy: str
    #: What gets worse.
    worse: tuple[Sentence, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Step:
    """Something to do next, what it brings and what it costs."""

    what: Sentence
    brings: Sentence
    price: Price
    changes: tuple[Change, ...] = ()
    #: The figure behind it was not measured but supposed: say so beside it.
    assumed: bool = False
    #: Demands that must be met and that this step would miss, newly or by more than before.
    breaks: tuple[Sentence, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Answer:
    """The answer to one question about one car."""

    question: str
    title: str
    #: The answer, in one plain sentence.
    says: Sentence
    outcome: Outcome
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    bars: Bars | None = None
    #: Best first.
    steps: tuple[Step, ...] = ()
    #: What the answer rests on, and what it cannot know.
    notes: tuple[Sentence, ...] = ()
