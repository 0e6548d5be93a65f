"""Templates as PDF, read back line by line: true on every sheet, both ways, for any printer."""

import re
from collections.abc import Iterator
from io import BytesIO
from math import dist

import pypdf
import pytest
from pypdf.generic import ContentStream, IndirectObject, StreamObject

from pedalwright.documents.tiles import Origin, Template, templates_pdf
from pedalwright.drawing import Circle, Drawing, Polyline
from pedalwright.making.tiling import A4, LETTER, Paper, Printer, tiled

Matrix = tuple[float, float, float, float, float, float]
Piece = tuple[tuple[float, float], tuple[float, float]]

ORIGIN = Origin(car="Testcar", file="testcar.toml", date="2026-01-01", version="0.1")
#: Holes of 10 at the corners of a rectangle that no sheet holds whole.
HOLES = [(30.0, 30.0), (350.0, 30.0), (350.0, 230.0), (30.0, 230.0)]
PLATE = Drawing(
    name="plate",
    title="Plate",
    shapes=(
        Polyline(((0.0, 0.0), (380.0, 0.0), (380.0, 260.0), (0.0, 260.0)), closed=True),
        *(Circle(place, 5.0) for place in HOLES),
    ),
)
POINT = 25.4 / 72


def times(a: Matrix, b: Matrix) -> Matrix:
    return (
        a[0] * b[0] + a[1] * b[2],
        a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2],
        a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4],
        a[4] * b[1] + a[5] * b[3] + b[5],
    )


def run(
    content: ContentStream, resources: dict, reader: pypdf.PdfReader, at: Matrix
) -> Iterator[list[tuple[float, float]]]:
    """Every path that is drawn, its points in mm from the page's lower left corner."""
    stack: list[Matrix] = []
    path: list[tuple[float, float]] = []
    for operands, operator in content.operations:
        numbers = [float(x) for x in operands if isinstance(x, int | float)]
        if operator == b"q":
            stack.append(at)
        elif operator == b"Q":
            at = stack.pop()
        elif operator == b"cm":
            at = times((*numbers,), at)  # type: ignore[arg-type]
        elif operator in (b"m", b"l", b"c"):
            if operator == b"m":
                path = []
            x, y = numbers[-2:]
            path.append(
                (
                    (x * at[0] + y * at[2] + at[4]) * POINT,
                    (x * at[1] + y * at[3] + at[5]) * POINT,
                )
            )
        elif operator in (b"h", b"s") and path:
            path.append(path[0])
        if operator in (b"S", b"s", b"f", b"B"):
            yield path
        if operator == b"Do":
            form = resources["/XObject"][operands[0]]
            form = form.get_object() if isinstance(form, IndirectObject) else form
            assert isinstance(form, StreamObject)
            inner = times(tuple(map(float, form.get("/Matrix", (1, 0, 0, 1, 0, 0)))), at)
            own = form.get("/Resources", {})
            own = own.get_object() if isinstance(own, IndirectObject) else own
            yield from run(ContentStream(form, reader), own, reader, inner)


def paths(pdf: bytes) -> list[list[list[tuple[float, float]]]]:
    """Paths of each page."""
    reader = pypdf.PdfReader(BytesIO(pdf))
    return [
        list(
            run(
                ContentStream(page.get_contents(), reader),
                page["/Resources"].get_object(),
                reader,
                (1.0, 0.0, 0.0, 1.0, 0.0, 0.0),
            )
        )
        for page in reader.pages
    ]


def straight(page: list[list[tuple[float, float]]]) -> list[Piece]:
    return [(path[0], path[1]) for path in page if len(path) == 2]


def bars(page: list[list[tuple[float, float]]], length: float, *, level: bool) -> list[float]:
    """Lengths of straight pieces that are about as long as a bar should be."""
    found = [
        dist(a, b) for a, b in straight(page) if abs(a[1] - b[1] if level else a[0] - b[0]) < 1e-3
    ]
    return [one for one in found if abs(one - length) < 0.5]


def holes(page: list[list[tuple[float, float]]]) -> list[tuple[float, float]]:
    """Centres of round paths about 10 wide."""
    found = []
    for path in page:
        xs, ys = [x for x, _ in path], [y for _, y in path]
        wide, high = max(xs) - min(xs), max(ys) - min(ys)
        if len(path) > 3 and abs(wide - 10.0) < 0.5 and abs(high - 10.0) < 0.5:
            found.append(((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2))
    return found


@pytest.mark.parametrize("paper", [A4, LETTER], ids=["A4", "Letter"])
@pytest.mark.parametrize(
    "printer", [Printer(), Printer(bar_x=98.4, bar_y=99.1), Printer(bar_x=101.2)]
)
def test_both_bars_are_true_on_every_sheet(paper: Paper, printer: Printer) -> None:
    """What the printer makes of them is 100 mm, within 0.02."""
    pages = paths(templates_pdf([Template(drawing=PLATE)], ORIGIN, paper=paper, printer=printer))
    tiling = tiled(PLATE, paper, printer)
    assert tiling.landscape
    assert len(pages) == len(tiling.tiles) == 4
    for page in pages:
        (level,) = bars(page, 100.0 * tiling.stretch_x, level=True)
        (upright,) = bars(page, 100.0 * tiling.stretch_y, level=False)
        assert level * printer.bar_y / 100.0 == pytest.approx(100.0, abs=0.02)
        assert upright * printer.bar_x / 100.0 == pytest.approx(100.0, abs=0.02)


@pytest.mark.parametrize("printer", [Printer(), Printer(bar_x=98.4, bar_y=99.1)])
def test_holes_are_true_from_sheet_to_sheet(printer: Printer) -> None:
    """Laid cross on cross, the sheets put each hole within 0.02 mm of its place."""
    pages = paths(templates_pdf([Template(drawing=PLATE)], ORIGIN, printer=printer))
    tiling = tiled(PLATE, A4, printer)
    found = []
    for tile, page in zip(tiling.tiles, pages, strict=True):
        for x, y in holes(page):
            right = (x - 22.0) / tiling.stretch_x + tile.window.left
            down = (tiling.height - y - 12.0) / tiling.stretch_y
            found.append((right, tile.window.top - down))
    for place in HOLES:
        assert min(dist(place, other) for other in found) < 0.02
    assert all(min(dist(place, other) for place in HOLES) < 0.02 for other in found)


def test_viewers_are_told_not_to_scale() -> None:
    reader = pypdf.PdfReader(BytesIO(templates_pdf([Template(drawing=PLATE)], ORIGIN)))
    assert reader.viewer_preferences is not None
    assert reader.viewer_preferences.print_scaling == "/None"
    assert len(reader.pages) == 4
    assert reader.xref  # the table of places was read, not rebuilt


def test_each_sheet_says_what_it_is_and_how_it_lies() -> None:
    template = Template(
        drawing=PLATE,
        way_up="up in the car",
        face="seen from the cabin",
        hand="left; turn over for the right",
        made_of="5251-H22, 1.6 mm",
    )
    pdf = templates_pdf([template], ORIGIN)
    for number, page in enumerate(pypdf.PdfReader(BytesIO(pdf)).pages, 1):
        words = re.sub(r"\s+", " ", page.extract_text())
        for said in (
            f"sheet {number} of 4",
            "seen from the cabin",
            "left; turn over for the right",
            "5251-H22, 1.6 mm",
            "up in the car",
            "joins here",
            "Testcar, testcar.toml, 2026-01-01",
            "need sign-off",
            "bar X: 100 mm",
        ):
            assert said in words, said


def test_a_corrected_sheet_says_for_which_printer() -> None:
    pdf = templates_pdf([Template(drawing=PLATE)], ORIGIN, printer=Printer(bar_x=98.4, bar_y=99.1))
    words = re.sub(r"\s+", " ", pypdf.PdfReader(BytesIO(pdf)).pages[0].extract_text())
    assert "corrected for bars of 98.4 (X) and 99.1 (Y)" in words


def test_the_same_template_gives_the_same_bytes() -> None:
    assert templates_pdf([Template(drawing=PLATE)], ORIGIN) == templates_pdf(
        [Template(drawing=PLATE)], ORIGIN
    )
