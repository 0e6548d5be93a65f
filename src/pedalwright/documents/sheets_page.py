"""The first page of the folder for the bench: every file in the order of use, and its purpose."""

from collections.abc import Sequence
from typing import Protocol
from xml.etree import ElementTree as ET

from pedalwright.documents.about import About
from pedalwright.documents.page import Page, inside, say
from pedalwright.drawing import Drawing, svg

#: Room for a drawing on the page, mm.
WIDE, HIGH = 200.0, 130.0
#: Files for programs and machines; they stand in a list of their own.
DATA = (".csv", ".json", ".dxf")


class Told(Protocol):
    """A file as the page tells of it."""

    @property
    def file(self) -> str:
        """Its name in the folder."""
        ...

    @property
    def title(self) -> str:
        """What it is called."""
        ...

    @property
    def use(self) -> str:
        """What it is for."""
        ...


def sheets_page(about: About, sheets: Sequence[Told], drawings: Sequence[Drawing]) -> bytes:
    """Papers first, then files for machines, then the drawings to look at."""
    page = Page(f"{about.car}: sheets for the bench")
    body = page.body
    say(body, "h1", f"{about.car}: sheets for the bench")
    say(body, "p", f"{about.note} ({about.file}, {about.date}, pedalwright {about.version})")
    say(
        body,
        "p",
        "Print at 100 %, page scaling off, and lay a steel rule on both check bars before anything "
        "is cut. A change of the project file makes every sheet old: write the folder anew.",
        {"class": "verdict met"},
    )
    papers = [one for one in sheets if not one.file.endswith(DATA)]
    _listed(body, "In the order of use", "ol", papers)
    _listed(body, "For machines", "ul", [one for one in sheets if one not in papers])
    say(body, "h2", "Drawings")
    for number, drawing in enumerate(drawings, start=1):
        figure = ET.SubElement(body, "figure")
        fitted = drawing.fitted(WIDE, HIGH)
        figure.append(inside(svg(fitted, physical=False), f"drawing-{number}"))
        say(figure, "figcaption", f"{drawing.title}; to look at, not to measure")
    return page.written()


def _listed(body: ET.Element, title: str, kind: str, sheets: Sequence[Told]) -> None:
    say(body, "h2", title)
    rows = ET.SubElement(body, kind, {"class": "files"})
    for one in sheets:
        row = ET.SubElement(rows, "li")
        say(row, "a", one.title, {"href": one.file})
        say(row, "span", one.use, {"class": "use"})
        say(row, "small", one.file)
