"""One page to look at a car's attempts in any browser, with no server and no internet.

Drawings are inside the page, so it can be copied to a phone as one file.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from xml.etree import ElementTree as ET

from pedalwright.core.checks import Finding
from pedalwright.documents.about import About
from pedalwright.documents.outside import Units
from pedalwright.documents.page import Page, inside, say
from pedalwright.documents.pictures import Picture
from pedalwright.documents.verdict import Row, by_room, compared, percent, state, verdict


@dataclass(frozen=True, slots=True)
class Attempt:
    """One attempt at a car, as the page shows it."""

    about: About
    findings: Sequence[Finding]
    drawings: Sequence[Picture]
    #: Where the other documents of this attempt lie, seen from the page.
    folder: str


def index_page(attempts: Sequence[Attempt]) -> bytes:
    """The page: for each attempt its verdict, findings, drawings and documents."""
    page = Page("pedalwright: " + ", ".join(a.about.car for a in attempts))
    body = page.body
    for number, attempt in enumerate(attempts, start=1):
        _attempt(body, attempt, f"attempt-{number}")
    return page.written()


def _attempt(body: ET.Element, attempt: Attempt, own: str) -> None:
    judged = verdict(attempt.findings)
    say(body, "h1", attempt.about.car)
    say(body, "p", f"{attempt.about.note} ({attempt.about.file}, {attempt.about.date})")
    say(body, "p", str(judged), {"class": "verdict " + ("met" if judged.ok else "fails")})
    links = ET.SubElement(body, "p")
    for name, says in (
        ("dossier.pdf", "dossier for an inspector"),
        ("working.txt", "working"),
        ("results.json", "results as data"),
    ):
        say(links, "a", says, {"href": f"{attempt.folder}/{name}"})
    _findings(body, attempt.findings, attempt.about.units)
    for picture in attempt.drawings:
        figure = ET.SubElement(body, "figure")
        figure.append(inside(picture.svg, own))
        say(figure, "figcaption", picture.title)


def _findings(body: ET.Element, findings: Sequence[Finding], units: Units) -> None:
    for room, rows in by_room(findings):
        failing = sum(not row.finding.ok for row in rows)
        part = ET.SubElement(body, "details", {"open": ""} if failing else {})
        say(part, "summary", f"{room}: {failing} short" if failing else f"{room}: all met")
        for row in rows:
            _finding(part, row, units)


def _finding(part: ET.Element, row: Row, units: Units) -> None:
    finding = row.finding
    line = ET.SubElement(part, "p", {"class": f"finding {state(finding)}"})
    say(line, "b", state(finding))
    say(line, "span", percent(finding.margin), {"class": "margin"})
    say(line, "span", units.prose(finding.limit.asks))
    about = units.prose(f" [{row.about}]") if row.about else ""
    say(line, "span", compared(finding, units) + about, {"class": "figures"})
