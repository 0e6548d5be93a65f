"""One page to look at a car's attempts in any browser, with no server and no internet.

Drawings are inside the page, so it can be copied to a phone as one file.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from importlib.resources import files
from xml.etree import ElementTree as ET

from pedalwright.core.checks import Finding
from pedalwright.documents.about import About
from pedalwright.documents.cautions import CAUTIONS
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures import Picture
from pedalwright.documents.verdict import Row, by_room, compared, percent, state, verdict

SVG = "http://www.w3.org/2000/svg"


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
    ET.register_namespace("", SVG)
    style = files("pedalwright.documents").joinpath("index_page.css").read_text("utf-8")
    html = ET.Element("html", {"lang": "en"})
    head = ET.SubElement(html, "head")
    ET.SubElement(head, "meta", {"charset": "utf-8"})
    ET.SubElement(
        head, "meta", {"name": "viewport", "content": "width=device-width, initial-scale=1"}
    )
    _say(head, "title", "pedalwright: " + ", ".join(a.about.car for a in attempts))
    _say(head, "style", style)
    body = ET.SubElement(ET.SubElement(html, "body"), "main")
    for number, attempt in enumerate(attempts, start=1):
        _attempt(body, attempt, f"attempt-{number}")
    _say(body, "h2", "Cautions")
    cautions = ET.SubElement(body, "ul")
    for caution in CAUTIONS:
        _say(cautions, "li", caution)
    text: str = ET.tostring(html, encoding="unicode", method="html")
    return b"<!doctype html>\n" + text.encode()


def _attempt(body: ET.Element, attempt: Attempt, own: str) -> None:
    judged = verdict(attempt.findings)
    _say(body, "h1", attempt.about.car)
    _say(body, "p", f"{attempt.about.note} ({attempt.about.file}, {attempt.about.date})")
    _say(body, "p", str(judged), {"class": "verdict " + ("met" if judged.ok else "fails")})
    links = ET.SubElement(body, "p")
    for name, says in (
        ("dossier.pdf", "dossier for an inspector"),
        ("working.txt", "working"),
        ("results.json", "results as data"),
    ):
        _say(links, "a", says, {"href": f"{attempt.folder}/{name}"})
    _findings(body, attempt.findings, attempt.about.units)
    for picture in attempt.drawings:
        figure = ET.SubElement(body, "figure")
        figure.append(_inside(picture, own))
        _say(figure, "figcaption", picture.title)


def _inside(picture: Picture, own: str) -> ET.Element:
    """A picture as part of the page: what its ids name is this attempt's, not another's."""
    root = ET.fromstring(picture.svg)
    for element in root.iter():
        for attribute in ("id", "aria-labelledby"):
            if attribute in element.attrib:
                names = element.attrib[attribute].split()
                element.set(attribute, " ".join(f"{own}-{name}" for name in names))
    return root


def _findings(body: ET.Element, findings: Sequence[Finding], units: Units) -> None:
    for room, rows in by_room(findings):
        failing = sum(not row.finding.ok for row in rows)
        part = ET.SubElement(body, "details", {"open": ""} if failing else {})
        _say(part, "summary", f"{room}: {failing} short" if failing else f"{room}: all met")
        for row in rows:
            _finding(part, row, units)


def _finding(part: ET.Element, row: Row, units: Units) -> None:
    finding = row.finding
    line = ET.SubElement(part, "p", {"class": f"finding {state(finding)}"})
    _say(line, "b", state(finding))
    _say(line, "span", percent(finding.margin), {"class": "margin"})
    _say(line, "span", units.prose(finding.limit.asks))
    about = units.prose(f" [{row.about}]") if row.about else ""
    _say(line, "span", compared(finding, units) + about, {"class": "figures"})


def _say(parent: ET.Element, tag: str, text: str, attributes: dict[str, str] | None = None) -> None:
    ET.SubElement(parent, tag, attributes or {}).text = text
