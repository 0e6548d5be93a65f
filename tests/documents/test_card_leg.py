"""The card leg as PDF, read back: bars, pivots from sheet to sheet, and what the pieces say."""

from io import BytesIO
from math import dist

import numpy as np
import pypdf
import pytest
from documents.test_tiles import bars, paths

from pedalwright.assess import Placed, assess
from pedalwright.documents.card_leg import HOLE, card_leg_pdf, card_legs, shank, shoe, thigh
from pedalwright.documents.outside import INCH
from pedalwright.documents.tiles import Origin
from pedalwright.drawing import Circle, Drawing, Linear, Polyline
from pedalwright.making.tiling import A4, LETTER, Paper, Printer, tiled
from pedalwright.making.tiling.parts import LEFT, MARGIN
from pedalwright.project import car_text, changed, read

ORIGIN = Origin(car="Larkfield", file="larkfield.toml", date="2024-05-18", version="0.1")
CAR = read(car_text("larkfield-improved"))
DRIVERS = assess(CAR.design).drivers


def holes(drawing: Drawing) -> dict[str, tuple[float, float]]:
    found = [shape for shape in drawing.shapes if isinstance(shape, Circle)]
    assert all(shape.radius == HOLE for shape in found)
    return {shape.part.removeprefix("pivot-"): shape.centre for shape in found}


def on_paper(page: list[list[tuple[float, float]]]) -> list[tuple[float, float]]:
    """Middles of the holes on a sheet, from its lower left corner."""
    found = []
    for path in page:
        xs, ys = [x for x, _ in path], [y for _, y in path]
        wide, high = max(xs) - min(xs), max(ys) - min(ys)
        if len(path) > 3 and abs(wide - 2 * HOLE) < 0.3 and abs(high - 2 * HOLE) < 0.3:
            found.append(((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2))
    return found


@pytest.mark.parametrize("paper", [A4, LETTER], ids=["A4", "Letter"])
@pytest.mark.parametrize("printer", [Printer(), Printer(bar_x=98.4, bar_y=99.1)])
def test_bars_and_bones_are_true_from_sheet_to_sheet(paper: Paper, printer: Printer) -> None:
    """Both bars within 0.02 mm of 100 on every sheet, and every bone within 0.02 mm as laid."""
    pages = iter(paths(card_leg_pdf(CAR.design, ORIGIN, paper=paper, printer=printer)))
    for placed in DRIVERS:
        body = placed.brake.body
        lengths = (float(body.thigh), float(body.shank), None)
        for drawing, length in zip(
            (thigh(placed), shank(placed), shoe(placed)), lengths, strict=True
        ):
            tiling = tiled(drawing, paper, printer)
            pivots: list[tuple[float, float]] = []
            for tile in tiling.tiles:
                page = next(pages)
                (level,) = bars(page, 100.0 * tiling.stretch_x, level=True)
                (upright,) = bars(page, 100.0 * tiling.stretch_y, level=False)
                assert level / tiling.stretch_x == pytest.approx(100.0, abs=0.02)
                assert upright / tiling.stretch_y == pytest.approx(100.0, abs=0.02)
                box = tile.window
                for x, y in on_paper(page):
                    at = (
                        box.left + (x - MARGIN - LEFT) / tiling.stretch_x,
                        box.top - (tiling.height - y - MARGIN) / tiling.stretch_y,
                    )
                    if all(dist(at, other) > 1.0 for other in pivots):
                        pivots.append(at)
            if length is not None:
                (one, other) = pivots
                assert dist(one, other) == pytest.approx(length, abs=0.02)
            else:
                (ankle,) = pivots
                expected = (float(body.ankle_forward), float(body.ankle_height))
                assert ankle == pytest.approx(expected, abs=0.02)
    assert next(pages, None) is None


def test_pivots_are_as_far_apart_as_the_bones_are_long() -> None:
    for placed in DRIVERS:
        ends = holes(thigh(placed))
        assert dist(ends["hip"], ends["knee"]) == pytest.approx(float(placed.brake.body.thigh))
        ends = holes(shank(placed))
        assert dist(ends["knee"], ends["ankle"]) == pytest.approx(float(placed.brake.body.shank))
        (ankle,) = holes(shoe(placed)).values()
        body = placed.brake.body
        assert ankle == (float(body.ankle_forward), float(body.ankle_height))


def outline(drawing: Drawing) -> np.ndarray:
    (found,) = [s for s in drawing.shapes if isinstance(s, Polyline) and s.closed]
    return np.array(found.points)


def test_a_piece_is_as_thick_as_the_clearances_take_it_to_be() -> None:
    """58 round the knee, 48 round the ankle: the outline keeps that far from the bone's ends."""
    placed: Placed = DRIVERS[0]
    length = float(placed.brake.body.shank)
    points = outline(shank(placed))
    assert points[:, 0].min() == pytest.approx(-58.0, abs=0.2)
    assert points[:, 0].max() == pytest.approx(length + 48.0, abs=0.2)
    assert points[:, 1].max() == pytest.approx(58.0, abs=0.5)
    assert outline(shoe(placed))[:, 0].max() == float(placed.brake.body.shoe_length)


def test_every_piece_says_whose_it_is_and_whether_it_was_measured() -> None:
    words = [page.extract_text() for page in pypdf.PdfReader(
        BytesIO(card_leg_pdf(CAR.design, ORIGIN))).pages]  # fmt: skip
    assert sum("D1's thigh" in text for text in words) == 3
    assert all("sign-off" in text.replace("\n", " ") for text in words)
    assert "guessed, ± 21 mm (1 SD)" in words[0].replace("\n", " ")
    measured = changed(CAR, {"drivers.D1.person.thigh": "402 mm"})
    (first, *_) = card_legs(measured.design)
    assert first.drawing.title == "D1's thigh, 402 mm, as measured"
    assert "hip pinned at x 1000 mm, z 120 mm" in first.face


def test_a_leg_is_dimensioned_in_what_its_car_is_typed_in() -> None:
    """A shoe of 9.6 in, a hip 42 1/2 in behind the wall; the pieces themselves do not change."""
    car = read(car_text("saltmarsh-improved"))
    long, _, boot, *_ = card_legs(car.design, INCH)
    assert boot.drawing.title == "D1's shoe, 9.6 in long"
    assert "hip pinned at x 42.5 in" in long.face
    (size,) = [shape for shape in long.drawing.shapes if isinstance(shape, Linear)]
    assert float(size.text.rstrip("″")) == pytest.approx(size.length / 25.4, abs=0.001)
    in_mm, *_ = card_legs(car.design)
    assert np.array_equal(outline(long.drawing), outline(in_mm.drawing))


def test_the_same_input_gives_the_same_bytes() -> None:
    assert card_leg_pdf(CAR.design, ORIGIN) == card_leg_pdf(CAR.design, ORIGIN)
