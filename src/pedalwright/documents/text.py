"""The findings as a table of text, with a bar for each margin."""

import textwrap
from collections.abc import Iterator, Sequence

from pedalwright.core.answers import Sentence
from pedalwright.core.checks import Finding
from pedalwright.documents.about import About
from pedalwright.documents.answers import said
from pedalwright.documents.cautions import FIRST_CAUTION
from pedalwright.documents.helps import helpful
from pedalwright.documents.outside import Units
from pedalwright.documents.questions import QUESTIONS
from pedalwright.documents.verdict import Row, asked_by, by_room, compared, percent, state, verdict

WIDTH = 100
#: Cells of a margin bar: short of the bound to the left of the mark, in hand to the right.
SHORT, IN_HAND = 5, 10
#: Where the words of a finding begin.
INDENT = 35


def findings_text(about: About, findings: Sequence[Finding], worth: Sequence[Sentence] = ()) -> str:
    """Everything that was judged, worst first in each room, and what the judgement rests on.

    `worth` says which numbers are most worth measuring again.
    """
    return "\n".join(_lines(about, findings, worth)) + "\n"


def bar(margin: float) -> str:
    """A margin as a bar: `  ██│` fails by two fifths or more, `│████` has four tenths in hand."""
    if margin < 0:
        return "█" * max(1, round(min(-margin, 1.0) * SHORT)) + "│"
    return "│" + "█" * round(min(margin, 1.0) * IN_HAND)


def _lines(about: About, findings: Sequence[Finding], worth: Sequence[Sentence]) -> Iterator[str]:
    yield f"{about.car}   ({about.file}, {about.date}; pedalwright {about.version})"
    yield str(verdict(findings))
    for room, members in by_room(findings):
        yield ""
        yield room.upper()
        for row in members:
            yield from _row(row, about.units)
    yield ""
    yield from _ask_next(about, findings)
    yield from _given(about)
    yield from _worth(about, worth)
    yield ""
    yield from textwrap.wrap(FIRST_CAUTION, WIDTH)


def _worth(about: About, worth: Sequence[Sentence]) -> Iterator[str]:
    """The numbers on which verdicts hang most, within their ±."""
    if worth:
        yield ""
        yield "MOST WORTH MEASURING AGAIN:"
    for number, one in enumerate(worth, start=1):
        lead = f"  {number}. "
        words = said(one, about.units)
        yield from textwrap.wrap(words, WIDTH, initial_indent=lead, subsequent_indent="     ")


def _ask_next(about: About, findings: Sequence[Finding]) -> Iterator[str]:
    """The questions that help with what is not met, the most pressing first."""
    questions = helpful(findings)
    if not questions:
        return
    yield "WHAT HELPS:"
    longest = max(len(name) for name in questions)
    for name, missed in questions.items():
        asks = f"{QUESTIONS[name].asks} ({missed} not met)"
        yield f"  pedalwright ask {about.file} {name:<{longest}}  {asks}"
    yield ""


def _row(row: Row, units: Units) -> Iterator[str]:
    """What fails takes three lines: what is asked, how far it is off, who asks; the rest one."""
    finding = row.finding
    left, right = _split(bar(float(finding.margin))) if finding.judged else ("", "│")
    gauge = f"{left:>{SHORT}}{right:<{IN_HAND + 1}}"
    lead = f"  {state(finding):<8} {gauge} {percent(finding.margin):>6}  "
    asks = units.prose(finding.limit.asks)
    figures = compared(finding, units) + (f" [{units.prose(row.about)}]" if row.about else "")
    if state(finding) == "passes":
        yield from _told(lead, f"{asks} {figures}")
    else:
        yield from _told(lead, asks)
        yield from _told(" " * INDENT, figures)
        yield from _told(" " * INDENT, f"asked by {asked_by(finding)}")


def _told(lead: str, text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=lead, subsequent_indent=" " * INDENT)


def _split(gauge: str) -> tuple[str, str]:
    left, right = gauge.split("│")
    return left, "│" + right


def _given(about: About) -> Iterator[str]:
    missing = about.tagged("missing")
    if missing:
        yield "MISSING, so what rests on it is not judged:"
        yield from (f"  {path}" for path, _ in missing)
    for tag, heading in (("assumed", "ASSUMED, to be measured:"), ("default", "BY DEFAULT:")):
        told = about.tagged(tag)
        if told:
            yield heading
            for path, number in told:
                note = f"  ({number.note})" if number.note else ""
                yield from textwrap.wrap(
                    f"{path} = {about.units.read_back(number.shown, number.unit)}{note}",
                    WIDTH,
                    initial_indent="  ",
                    subsequent_indent="      ",
                )
