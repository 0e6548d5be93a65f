"""Sketches of how to measure: for the right entries, all on their paper."""

import pytest

from pedalwright.documents.pictures.hints import HINTS, PAPER, hint, sketch
from pedalwright.drawing import Text, svg
from pedalwright.project import car_text, read
from pedalwright.project.paths import split


def test_every_sketch_is_of_a_number_some_car_has() -> None:
    told = [path for car in ("larkfield-first",) for path in read(car_text(car)).provenance]
    found = {id(hint(split(path))) for path in told}
    assert {id(one) for one in HINTS.values()} <= found
    assert hint(split("brake.masters.bore")) is None
    assert hint(split("stock.arms.brake.pad_radius")) is None
    assert hint(split("drivers.D1.hip.z")) is HINTS["hip"]


@pytest.mark.parametrize("name", HINTS)
def test_no_word_of_a_sketch_is_off_its_paper(name: str) -> None:
    drawing = sketch(HINTS[name], "how")
    words = [shape for shape in drawing.laid_out().shapes if isinstance(shape, Text)]
    assert words
    for text in words:
        left = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.align] * text.width
        if text.angle == 0.0:
            assert text.at[0] - left >= PAPER.left, text.text
            assert text.at[0] - left + text.width <= PAPER.right, text.text
        assert PAPER.bottom <= text.at[1] <= PAPER.top, text.text
    assert b"nan" not in svg(drawing, physical=False)
