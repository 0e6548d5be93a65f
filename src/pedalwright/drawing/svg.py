"""SVG of a drawing, for the page, for Typst and for printing at true size.

One unit is one mm of the real thing, y turned down: a place (x, y) of the drawing is (x, -y)
of the file. Looks are plain attributes, which every reader understands and every style sheet
may overrule by class. The same drawing gives the same bytes.
"""

import re
from collections.abc import Iterable, Mapping
from math import degrees, pi
from xml.etree import ElementTree as ET

from pedalwright.drawing.box import XY, polar
from pedalwright.drawing.lines import Fill, Line, Tone
from pedalwright.drawing.shapes import CAPITAL, Arc, Circle, Group, Item, Look, Polyline, Text
from pedalwright.drawing.sheet import Drawing

#: Ships with Typst, so a PDF has the very letters the boxes were measured with.
FONT = "DejaVu Sans Mono, monospace"

COLOURS: Mapping[Tone, str] = {
    Tone.INK: "#1d2329",
    Tone.QUIET: "#68717a",
    Tone.ACCENT: "#0b5f6b",
}
#: Rim of paper round letters, mm on paper.
RIM = 0.9
PAPER, TINT, PALE = "#ffffff", "#e4e8ea", "#cfd5d9"
#: What does not go with the tone of a shape's line.
FILLS: Mapping[Fill, str] = {
    Fill.PAPER: PAPER,
    Fill.TINT: TINT,
    Fill.SHADE_1: "#e6f1f2",
    Fill.SHADE_2: "#b9d9dc",
    Fill.SHADE_3: "#7db4ba",
    Fill.SHADE_4: "#3d838d",
    Fill.SHADE_5: "#0e4a55",
}


def svg(drawing: Drawing, *, physical: bool) -> bytes:
    """The drawing as a file; `physical` gives it its size on paper, else it fills its place."""
    layout, scale = drawing.laid_out(), drawing.scale
    window = layout.window
    size = {"width": window.width * scale, "height": window.height * scale} if physical else {}
    view = " ".join(number(x) for x in (window.left, -window.top, window.width, window.height))
    ids = f"{drawing.name}-title {drawing.name}-description"
    root = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            **{name: f"{number(length)}mm" for name, length in size.items()},
            "viewBox": view,
            "class": f"drawing {drawing.name}",
            "role": "img",
            "aria-labelledby": ids if drawing.description else f"{drawing.name}-title",
            "fill": "none",
            "stroke-linecap": "butt",
            "stroke-linejoin": "round",
            "font-family": FONT,
        },
    )
    ET.SubElement(root, "title", {"id": f"{drawing.name}-title"}).text = _clean(drawing.title)
    if drawing.description:
        about = ET.SubElement(root, "desc", {"id": f"{drawing.name}-description"})
        about.text = _clean(drawing.description)
    _add(root, layout.shapes, scale)
    written: str = ET.tostring(root, encoding="unicode")  # a third of the time that bytes take
    return written.encode()


def number(value: float) -> str:
    """A coordinate to 0.001 mm; never -0."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _add(parent: ET.Element, shapes: Iterable[Item], scale: float) -> None:
    for shape in shapes:
        match shape:
            case Group():
                element = ET.SubElement(parent, "g", _names("group", shape))
                _title(element, shape)
                _add(element, shape.shapes, scale)
            case Polyline():
                tag = "polygon" if shape.closed else "polyline"
                places = {"points": " ".join(_place(point) for point in shape.points)}
                _title(ET.SubElement(parent, tag, places | _look(shape, scale)), shape)
            case Circle():
                x, y = shape.centre
                places = {"cx": number(x), "cy": number(-y), "r": number(shape.radius)}
                _title(ET.SubElement(parent, "circle", places | _look(shape, scale)), shape)
            case Arc():
                places = {"d": _arc(shape)}
                _title(ET.SubElement(parent, "path", places | _look(shape, scale)), shape)
            case Text():
                element = ET.SubElement(parent, "text", _lettering(shape, scale))
                element.text = _clean(shape.text)
                _title(element, shape)
            case _:
                raise AssertionError(f"{shape} was not made plain before it was written")


def _look(shape: Polyline | Circle | Arc, scale: float) -> dict[str, str]:
    """Line and fill of a shape, as classes and as plain attributes."""
    colour = COLOURS[shape.tone]
    fill = Fill.NONE if isinstance(shape, Arc) else shape.fill
    attributes = _names(f"{shape.line} {shape.tone} fill-{fill}", shape)
    if fill is not Fill.NONE:
        attributes["fill"] = FILLS.get(fill, colour)
    if shape.line is not Line.NONE:
        attributes["stroke"] = PALE if shape.line is Line.GRID else colour
        attributes["stroke-width"] = number(shape.line.width / scale)
    if shape.line.dashes:
        attributes["stroke-dasharray"] = " ".join(number(x / scale) for x in shape.line.dashes)
    return attributes


def _lettering(text: Text, scale: float) -> dict[str, str]:
    """Letters on a rim of paper, so that a line behind them does not cross them out."""
    x, y = text.foot(scale)
    attributes = {
        "x": number(x),
        "y": number(-y),
        "font-size": number(text.height / CAPITAL / scale),
        "text-anchor": text.align,
        "fill": COLOURS[text.tone],
        "stroke": PAPER,
        "stroke-width": number(RIM / scale),
        "paint-order": "stroke",
        **_names(f"text {text.tone}", text),
    }
    if text.angle:
        turned = number(-degrees(text.angle))
        attributes["transform"] = f"rotate({turned} {number(x)} {number(-y)})"
    return attributes


def _arc(arc: Arc) -> str:
    """Anticlockwise for the reader, who sees y up."""
    large = int(arc.end - arc.start > pi)
    r = number(arc.radius)
    start, end = (_place(polar(arc.centre, arc.radius, a), " ") for a in (arc.start, arc.end))
    return f"M {start} A {r} {r} 0 {large} 0 {end}"


def _place(point: XY, between: str = ",") -> str:
    return f"{number(point[0])}{between}{number(-point[1])}"


def _names(classes: str, shape: Look) -> dict[str, str]:
    return {"class": classes} | ({"data-part": shape.part} if shape.part else {})


def _title(element: ET.Element, shape: Look) -> None:
    if shape.title:
        ET.SubElement(element, "title").text = _clean(shape.title)


def _clean(text: str) -> str:
    """Text without the characters that no XML file may hold."""
    return _FORBIDDEN.sub("\N{REPLACEMENT CHARACTER}", text)


_FORBIDDEN = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
