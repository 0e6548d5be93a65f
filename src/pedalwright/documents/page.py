"""A page in one file, for any browser: no server, no internet, cautions at its foot."""

from importlib.resources import files
from xml.etree import ElementTree as ET

from pedalwright.documents.cautions import CAUTIONS

SVG = "http://www.w3.org/2000/svg"


class Page:
    """A page that is being filled; `body` is what its makers write into."""

    def __init__(self, title: str) -> None:
        ET.register_namespace("", SVG)
        style = files("pedalwright.documents").joinpath("index_page.css").read_text("utf-8")
        self._html = ET.Element("html", {"lang": "en"})
        head = ET.SubElement(self._html, "head")
        ET.SubElement(head, "meta", {"charset": "utf-8"})
        width = {"name": "viewport", "content": "width=device-width, initial-scale=1"}
        ET.SubElement(head, "meta", width)
        say(head, "title", title)
        say(head, "style", style)
        self.body = ET.SubElement(ET.SubElement(self._html, "body"), "main")

    def written(self) -> bytes:
        """The page with the cautions below what was written into it."""
        say(self.body, "h2", "Cautions")
        cautions = ET.SubElement(self.body, "ul")
        for caution in CAUTIONS:
            say(cautions, "li", caution)
        text: str = ET.tostring(self._html, encoding="unicode", method="html")
        return b"<!doctype html>\n" + text.encode()


def inside(svg: bytes, own: str) -> ET.Element:
    """A picture as part of a page: what its ids name is its own, not another's."""
    root = ET.fromstring(svg)
    for element in root.iter():
        for attribute in ("id", "aria-labelledby"):
            if attribute in element.attrib:
                names = element.attrib[attribute].split()
                element.set(attribute, " ".join(f"{own}-{name}" for name in names))
    return root


def say(parent: ET.Element, tag: str, text: str, attributes: dict[str, str] | None = None) -> None:
    """Words in an element of their own."""
    ET.SubElement(parent, tag, attributes or {}).text = text
