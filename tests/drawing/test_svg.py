"""The file is read back: true lengths, true text, nothing a reader would trip over."""

import io
import itertools
import math
import re
from xml.etree import ElementTree as ET

import pypdf
import pytest
import typst

from pedalwright.drawing.box import Box
from pedalwright.drawing.dimension import Linear, Stack
from pedalwright.drawing.hatch import Hatch
from pedalwright.drawing.leader import Leader
from pedalwright.drawing.lines import Fill, Line, Tone
from pedalwright.drawing.rounds import Angular, CentreCross, diameter, radius
from pedalwright.drawing.shapes import Arc, Circle, Group, Item, Polyline, Text
from pedalwright.drawing.sheet import SCALES, Drawing
from pedalwright.drawing.svg import svg

SVG = "{http://www.w3.org/2000/svg}"
NASTY = 'Ø8 <b> & "q" \N{GRINNING FACE} \x07 \ud800 é'

PLATE = ((0.0, 0.0), (120.0, 0.0), (120.0, 60.0), (0.0, 60.0))
EVERYTHING: tuple[Item, ...] = (
    Polyline(PLATE, closed=True, part="plate", title=NASTY, fill=Fill.TINT),
    Hatch(PLATE),
    Group((Circle((30.0, 30.0), 8.0), CentreCross((30.0, 30.0), 8.0)), part="hole", title="hole"),
    Arc((30.0, 30.0), 20.0, -0.3, 1.2, line=Line.CENTRE),
    Polyline(((0.0, -0.0001), (math.nan, 1.0), (3.0, 4.0), (5.0, 6.0)), line=Line.OTHER_POSITION),
    Text((60.0, 30.0), NASTY, angle=0.3, tone=Tone.ACCENT),
    Stack((Linear((0.0, 0.0), (30.0, 30.0), "horizontal"), Linear(*PLATE[:2], "horizontal")), -1.0),
    Linear((0.0, 0.0), (30.0, 30.0), "aligned", label="{} ±0.2"),
    Angular((30.0, 30.0), 0.0, 0.8, 25.0),
    diameter((30.0, 30.0), 16.0, 0.5),
    radius((30.0, 30.0), 20.0, 2.0),
    Leader((100.0, 50.0), "two\nlines", end="arrow"),
)


def read(*shapes: Item, scale: float = 1.0, physical: bool = True) -> ET.Element:
    drawing = Drawing(name="test", title="Test", shapes=shapes, scale=scale)
    return ET.fromstring(svg(drawing, physical=physical))


def places(element: ET.Element | None) -> list[tuple[float, float]]:
    assert element is not None
    pairs = (pair.split(",") for pair in element.attrib["points"].split())
    return [(float(x), float(y)) for x, y in pairs]


def test_y_is_turned_down_and_nothing_else_is_moved() -> None:
    root = read(Polyline(((10.0, 20.0), (110.0, -5.5))), Circle((1.0, 2.0), 3.0))
    assert places(root.find(f"{SVG}polyline")) == [(10.0, -20.0), (110.0, 5.5)]
    circle = root.find(f"{SVG}circle")
    assert circle is not None
    assert [circle.attrib[name] for name in ("cx", "cy", "r")] == ["1", "-2", "3"]


@pytest.mark.parametrize("scale", SCALES)
def test_a_physical_drawing_has_its_size_on_paper(scale: float) -> None:
    root = read(Polyline(((0.0, 0.0), (100.0, 0.0))), scale=scale)
    left, top, width, height = (float(x) for x in root.attrib["viewBox"].split())
    assert root.attrib["width"].endswith("mm")
    on_paper = float(root.attrib["width"].removesuffix("mm"))
    # 100 mm and a margin of 3 mm on paper at each end
    assert on_paper == pytest.approx(100.0 * scale + 6.0, abs=5e-4)
    assert on_paper / width == pytest.approx(scale, rel=1e-5)
    assert (left, top) == pytest.approx((-3.0 / scale, -3.0 / scale))
    assert float(root.attrib["height"].removesuffix("mm")) == pytest.approx(height * scale)


def test_on_the_page_it_fills_its_place() -> None:
    assert {"width", "height"}.isdisjoint(read(*EVERYTHING, physical=False).attrib)


def test_lines_and_letters_keep_their_size_on_paper_at_any_scale() -> None:
    for scale in SCALES:
        root = read(Polyline(((0.0, 0.0), (9.0, 0.0))), Text((0.0, 0.0), "x"), scale=scale)
        line, text = root.find(f"{SVG}polyline"), root.find(f"{SVG}text")
        assert line is not None
        assert text is not None
        assert float(line.attrib["stroke-width"]) * scale == pytest.approx(0.5)
        # capital height of DejaVu Sans Mono: 1493 of 2048 units
        capital = float(text.attrib["font-size"]) * scale * 1493 / 2048
        assert capital == pytest.approx(2.5, rel=1e-3)


def test_dashes_are_those_of_the_kind_of_line() -> None:
    kinds = [Line.VISIBLE, Line.HIDDEN, Line.CENTRE, Line.OTHER_POSITION]
    root = read(*(Polyline(((0.0, 0.0), (9.0, 0.0)), line=kind) for kind in kinds), scale=0.5)
    dashes = [e.get("stroke-dasharray", "").split() for e in root.findall(f"{SVG}polyline")]
    assert [len(d) for d in dashes] == [0, 2, 4, 6]
    assert dashes[1] == ["6", "1.5"]


def test_an_arc_runs_anticlockwise_for_the_reader() -> None:
    small = read(Arc((0.0, 0.0), 10.0, 0.0, math.pi / 2)).find(f"{SVG}path")
    large = read(Arc((0.0, 0.0), 10.0, 0.0, math.pi * 1.5)).find(f"{SVG}path")
    assert small is not None
    assert large is not None
    assert small.attrib["d"] == "M 10 0 A 10 10 0 0 0 0 -10"
    assert large.attrib["d"] == "M 10 0 A 10 10 0 1 0 0 10"


def test_text_of_a_user_comes_back_as_text() -> None:
    root = read(*EVERYTHING)
    shown = NASTY.replace("\x07", "\N{REPLACEMENT CHARACTER}")
    shown = shown.replace("\ud800", "\N{REPLACEMENT CHARACTER}")
    assert shown in [text.text for text in root.iter(f"{SVG}text")]
    assert root.find(f".//{SVG}b") is None
    titled = root.find(f"{SVG}polygon[@data-part='plate']/{SVG}title")
    assert titled is not None
    assert titled.text == shown


def test_upright_text_is_turned_against_the_clock() -> None:
    text = read(Text((5.0, 7.0), "up", angle=math.pi / 2)).find(f"{SVG}text")
    assert text is not None
    assert text.attrib["transform"] == "rotate(-90 5 -7)"


def test_letters_stand_on_a_rim_of_paper_so_that_lines_do_not_cross_them_out() -> None:
    text = read(Text((5.0, 7.0), "rim"), scale=0.5).find(f"{SVG}text")
    assert text is not None
    assert text.attrib["paint-order"] == "stroke"
    assert (text.attrib["stroke"], text.attrib["stroke-width"]) == ("#ffffff", "1.8")


def test_a_reader_who_cannot_see_it_hears_title_and_description() -> None:
    drawing = Drawing(name="side", title="A & B", description="Two <things>.", shapes=())
    root = ET.fromstring(svg(drawing, physical=False))
    assert root.attrib["role"] == "img"
    heard = [
        element.text
        for name in root.attrib["aria-labelledby"].split()
        for element in root
        if element.get("id") == name
    ]
    assert heard == ["A & B", "Two <things>."]


def test_the_file_holds_nothing_a_reader_trips_over() -> None:
    for scale in SCALES:
        drawing = Drawing(name="all", title="All", shapes=EVERYTHING, scale=scale)
        text = svg(drawing, physical=True).decode()
        assert "nan" not in text
        assert not re.search(r"var\(|vector-effect|textLength|<style|@media", text)
        numbers = re.findall(r'(?<=[ ",(])-?[\d.]+(?=[ ",)]|mm)', text)
        assert len(numbers) > 200
        assert "-0" not in numbers
        assert all(len(n.partition(".")[2]) <= 3 for n in numbers)


def test_what_has_no_place_leaves_a_gap() -> None:
    points = (
        (0.0, 0.0),
        (1.0, 0.0),
        (math.nan, 0.0),
        (3.0, 0.0),
        (4.0, 0.0),
        (math.nan, 1.0),
        (9, 9),
    )
    lines = read(Polyline(points)).findall(f"{SVG}polyline")
    assert [places(line) for line in lines] == [[(0, 0), (1, 0)], [(3, 0), (4, 0)]]
    gone = read(
        Polyline(points, closed=True),
        Circle((math.nan, 0.0), 1.0),
        Linear((math.nan, 0.0), (1.0, 0.0), "horizontal"),
        Leader((math.nan, 0.0), "lost"),
    )
    assert [child.tag for child in gone] == [f"{SVG}title"]


def test_the_same_drawing_gives_the_same_bytes() -> None:
    first, second = (Drawing(name="a", title="A", shapes=EVERYTHING) for _ in range(2))
    assert svg(first, physical=True) == svg(second, physical=True)


def test_a_window_is_shown_as_asked() -> None:
    window = Box(10.0, 20.0, 60.0, 50.0)
    drawing = Drawing(name="w", title="W", shapes=EVERYTHING, window=window, scale=0.5)
    root = ET.fromstring(svg(drawing, physical=True))
    assert root.attrib["viewBox"] == "10 -50 50 30"
    assert (root.attrib["width"], root.attrib["height"]) == ("25mm", "15mm")


def test_a_bar_of_100_mm_is_printed_100_mm_long() -> None:
    bars = (((0.0, 0.0), (100.0, 0.0)), ((0.0, 0.0), (0.0, 100.0)))
    drawing = Drawing(name="bars", title="Bars", shapes=tuple(Polyline(bar) for bar in bars))
    page = b'#set page(width: 200mm, height: 200mm)\n#image(bytes(sys.inputs.svg), format: "svg")'
    inputs = {"svg": svg(drawing, physical=True).decode()}
    pdf = pypdf.PdfReader(io.BytesIO(typst.compile(page, sys_inputs=inputs, format="pdf")))
    strokes: list[tuple[bytes, float, float]] = []

    def note(operator: bytes, operands: list[float], cm: list[float], _: list[float]) -> None:
        if operator in (b"m", b"l"):
            x, y = (float(value) for value in operands)
            strokes.append((operator, cm[0] * x + cm[4], cm[3] * y + cm[5]))

    pdf.pages[0].extract_text(visitor_operand_before=note)
    lengths = [
        math.hypot(b[1] - a[1], b[2] - a[2]) / 72 * 25.4
        for a, b in itertools.pairwise(strokes[-4:])
        if b[0] == b"l"
    ]
    assert lengths == pytest.approx([100.0, 100.0], rel=1e-6)


def test_typst_draws_everything() -> None:
    drawing = Drawing(name="all", title="All", shapes=EVERYTHING)
    page = b'#image(bytes(sys.inputs.svg), format: "svg")'
    inputs = {"svg": svg(drawing, physical=True).decode()}
    drawn = typst.compile(page, sys_inputs=inputs, format="svg")
    empty = {"svg": svg(Drawing(name="e", title="E", shapes=()), physical=True).decode()}
    assert len(drawn) > 5 * len(typst.compile(page, sys_inputs=empty, format="svg"))
