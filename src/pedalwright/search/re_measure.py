"""Which numbers are worth measuring again? What each is worth, and what it would settle."""

from collections.abc import Iterator, Sequence
from dataclasses import fields, is_dataclass
from typing import cast

import numpy as np

from pedalwright.core.answers import Answer, Bar, Bars, Column, Price, Row, Sentence, Step, sentence
from pedalwright.core.doubts import Doubt, Move
from pedalwright.design import Design
from pedalwright.search.reasons import joined
from pedalwright.search.worth import Worth, Worths, worth_measuring

#: Numbers that are shown, and those that are named.
SHOWN, NAMED = 10, 3
#: Minutes to measure one number again with care (ours).
MINUTES = 20.0
#: What every number is supposed to be known to where nobody gave a ± (ours).
SUPPOSED = 0.01


def re_measure(design: Design, doubts: Sequence[Doubt] = ()) -> Answer:
    """The answer; without doubts every number is supposed to be known to one in a hundred."""
    supposed = not doubts
    found = worth_measuring(design, doubts or tuple(_supposed(design)))
    shown = found.numbers[:SHOWN]
    return Answer(
        question="re-measure",
        title="Which numbers are worth measuring again?",
        says=_says(found),
        outcome="open" if found.turns else "passes",
        columns=(Column("worth", "share"), Column("of a verdict", "share")),
        rows=tuple(_row(each) for each in shown),
        bars=Bars(
            title="share of the doubt in the verdicts that may turn",
            unit="share",
            bars=tuple(Bar(each.doubt.name, float(each.share)) for each in shown),
        ),
        steps=tuple(_step(each) for each in shown[:NAMED]),
        notes=tuple(_notes(found, supposed=supposed)),
    )


def worth_lines(found: Worths) -> tuple[Sentence, ...]:
    """The few numbers most worth measuring again, a sentence each."""
    return tuple(_told(each) for each in found.numbers[:NAMED])


def _says(found: Worths) -> Sentence:
    if not found.numbers:
        return sentence("No number of the file has a ± that reaches any verdict.")
    first = found.numbers[:NAMED]
    names = joined([sentence(_clean(each.doubt.name)) for each in first], ", ")
    share = sum(float(each.share) for each in first)
    verdicts = float(len(found.open))
    if found.turns:
        tail = sentence(
            ": they carry {} of the doubt in {} verdicts that may turn within the ± given.",
            (share, "share"),
            (verdicts, "1"),
        )
    else:
        tail = sentence(
            ": no verdict turns within the ± given, and these carry {} of the doubt in the {} "
            "nearest to it.",
            (share, "share"),
            (verdicts, "1"),
        )
    return sentence("Measure again ") + names + tail


def _row(each: Worth) -> Row:
    return Row(
        name=each.doubt.name,
        values=(float(each.share), float(each.decides_share)),
        why=(_told(each),),
    )


def _told(each: Worth) -> Sentence:
    """`drivers.D1.hip.x, ± 15 mm: moves what is asked by 14.8 mm, D1, clutch: ...`."""
    doubt, finding = each.doubt, each.decides
    path = f" ({_clean(doubt.path)})" if doubt.path != doubt.name else ""
    why = f", {_clean(doubt.why)}" if doubt.why else ""
    about = f" [{_clean(finding.about)}]" if finding.about else ""
    return sentence(
        f"{_clean(doubt.name)}{path}, ± {{}}{why}: worth {{}} of “"
        f"{_clean(finding.limit.asks).rstrip('.')}”{about}, {{}} where it is {finding.limit.sense} "
        "{}",
        (doubt.plus_minus, doubt.unit),
        (each.moves, finding.limit.unit),
        (float(np.asarray(finding.value)), finding.limit.unit),
        (float(np.asarray(finding.bound)), finding.limit.unit),
    )


def _step(each: Worth) -> Step:
    halved = 1.0 - float(np.sqrt(1.0 - 0.75 * float(each.decides_share)))
    finding = each.decides
    about = f" [{_clean(finding.about)}]" if finding.about else ""
    return Step(
        what=sentence(f"Measure {_clean(each.doubt.name)} again, to half its ± of {{}}.", (
            each.doubt.plus_minus, each.doubt.unit,
        )),
        brings=sentence(
            f"{{}} less doubt in “{_clean(finding.limit.asks).rstrip('.')}”{about}",
            (halved, "share"),
        ),
        price=Price(minutes=MINUTES, buy="", worse=()),
        assumed=each.doubt.tag != "measured",
    )  # fmt: skip


def _notes(found: Worths, *, supposed: bool) -> Iterator[Sentence]:
    yield sentence(
        "Each number is moved by its ± up and down, one at a time; what they do to a verdict is "
        "added as squares. A verdict is open where that reaches its bound; a wish counts half."
    )
    if supposed:
        yield sentence("No ± was given, so each number is supposed to be known to 1 in 100.")
    for finding in found.open[:SHOWN]:
        about = f" [{_clean(finding.about)}]" if finding.about else ""
        yield sentence(
            f"{'Open' if found.turns else 'Nearest'}: {_clean(finding.limit.asks)}{about} {{}}, "
            f"{finding.limit.sense} {{}}",
            (float(np.asarray(finding.value)), finding.limit.unit),
            (float(np.asarray(finding.bound)), finding.limit.unit),
        )


def _clean(text: str) -> str:
    """A builder's words, which may hold braces."""
    return text.replace("{}", "()")


def _supposed(design: Design) -> Iterator[Doubt]:
    """Every number of a design, known to one in a hundred."""
    for path, value in _numbers(design, ()):
        if np.isfinite(value) and value != 0.0 and not path.startswith("survey.outcome"):
            width = SUPPOSED * abs(value)
            yield Doubt(
                path=path,
                name=path,
                plus_minus=width,
                unit="1",
                tag="default",
                why="1 in 100 supposed",
                moves=(Move(path=path, by=width),),
            )


def _numbers(tree: object, path: tuple[str, ...]) -> Iterator[tuple[str, float]]:
    if isinstance(tree, (int, float)) and not isinstance(tree, bool):
        yield ".".join(path), float(tree)
    elif isinstance(tree, tuple):
        for place, thing in enumerate(cast("tuple[object, ...]", tree), start=1):
            yield from _numbers(thing, (*path, str(getattr(thing, "name", place))))
    elif is_dataclass(tree):
        for field in fields(tree):
            yield from _numbers(getattr(tree, field.name), (*path, field.name))
