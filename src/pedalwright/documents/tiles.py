"""Templates at true size on the builder's own paper: tiled, with check bars, crosses and a map.

Python works out where everything stands; the template places it from the paper's corner, in mm. A
printer that stretches is corrected here, by what a rule reads on its check bars.
"""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.resources import files
from typing import Any

from pedalwright.documents.cautions import FIRST_CAUTION
from pedalwright.drawing import Box, Drawing, svg
from pedalwright.drawing.svg import number
from pedalwright.making.tiling import A4, Paper, Printer, Tile, Tiling, tiled
from pedalwright.making.tiling.parts import BAR, LEFT, MARGIN

#: As it comes from a printer nobody has measured.
UNCORRECTED = Printer()
#: What typst writes for how a viewer opens the file, and the same with page scaling off.
_VIEWER = b"/ViewerPreferences<</Direction/L2R>>"
_TRUE_SIZE = b"/ViewerPreferences<</Direction/L2R/PrintScaling/None>>"


@dataclass(frozen=True, kw_only=True, slots=True)
class Template:
    """A drawing that is cut out, or pricked through, at true size."""

    drawing: Drawing
    #: What the top of the sheet points to when the part is in its place, e.g. `up in the car`.
    way_up: str = ""
    #: Which face one looks at (`seen from the cabin`), which hand (`left; turn over for the
    #: right`).
    face: str = ""
    hand: str = ""
    #: Material, thickness, how many.
    made_of: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Origin:
    """Where the numbers come from; stands on every sheet."""

    car: str
    file: str
    date: str
    version: str


def templates_pdf(
    templates: Sequence[Template],
    origin: Origin,
    *,
    paper: Paper = A4,
    printer: Printer = UNCORRECTED,
) -> bytes:
    """All templates, sheet after sheet; the same input gives the same bytes."""
    import typst  # 30 ms: only when a PDF is wanted

    laid = [(template, tiled(template.drawing, paper, printer)) for template in templates]
    content = {
        "car": origin.car,
        "foot": f"{origin.file}, {origin.date}, pedalwright {origin.version}",
        "caution": FIRST_CAUTION,
        "sheets": [
            sheet for i, one in enumerate(laid) for sheet in _sheets(f"d{i}", *one, printer)
        ],
    }
    drawings = {
        f"d{i}": svg(template.drawing, physical=True).decode()
        for i, (template, _) in enumerate(laid)
    }
    pdf = typst.compile(
        files("pedalwright.documents").joinpath("tiles.typ").read_bytes(),
        format="pdf",
        ignore_system_fonts=True,
        timestamp=0,
        sys_inputs={"data": json.dumps(content)} | drawings,
    )
    return _print_at_true_size(pdf)


def _print_at_true_size(pdf: bytes) -> bytes:
    """Tell printers not to fit pages to paper, the commonest way to ruin a template.

    The catalogue is the last thing before the table of places, so only the table itself moves.
    """
    assert pdf.count(_VIEWER) == 1, "typst writes its catalogue differently: look again"
    body, table = pdf.rsplit(b"startxref\n", 1)
    place, end = table.split(b"\n", 1)
    catalogue = body.index(_VIEWER)
    assert body.rindex(b" obj\n", 0, int(place)) < catalogue < int(place), "nothing stands after it"
    moved = int(place) + len(_TRUE_SIZE) - len(_VIEWER)
    return body.replace(_VIEWER, _TRUE_SIZE) + b"startxref\n%d\n" % moved + end


def _sheets(key: str, template: Template, tiling: Tiling, printer: Printer) -> list[dict[str, Any]]:
    whole = template.drawing.laid_out().window
    return [_sheet(key, template, (tiling, whole), tile, printer) for tile in tiling.tiles]


def _sheet(
    key: str, template: Template, laid: tuple[Tiling, Box], tile: Tile, printer: Printer
) -> dict[str, Any]:
    """One sheet; lengths in mm from the paper's upper left corner, stretched for the printer."""
    tiling, whole = laid
    x, y = tiling.stretch_x, tiling.stretch_y
    box = tile.window
    left, top = MARGIN + LEFT, MARGIN
    return {
        "drawing": key,
        "title": template.drawing.title,
        "says": [words for words in (template.made_of, template.face, template.hand) if words],
        "way_up": template.way_up,
        "alt": template.drawing.description or template.drawing.title,
        "name": tile.name,
        "of": f"sheet {tiling.tiles.index(tile) + 1} of {len(tiling.tiles)}",
        "width": _mm(tiling.width),
        "height": _mm(tiling.height),
        "left": _mm(left),
        "top": _mm(top),
        "wide": _mm(box.width * x),
        "high": _mm(box.height * y),
        "shift_x": _mm((whole.left - box.left) * x),
        "shift_y": _mm((box.top - whole.top) * y),
        "image_wide": _mm(whole.width * x),
        "image_high": _mm(whole.height * y),
        "crosses": [
            {
                "name": cross.name,
                "x": _mm((cross.at[0] - box.left) * x),
                "y": _mm((box.top - cross.at[1]) * y),
            }
            for cross in tile.crosses
        ],
        "joins": _joins(tiling, tile),
        "bar_x": _mm(BAR * x),
        "bar_y": _mm(BAR * y),
        # the level bar lies along the paper's short edge only while the sheet stands upright
        "level": "Y" if tiling.landscape else "X",
        "upright": "X" if tiling.landscape else "Y",
        "correction": (
            f"corrected for bars of {number(printer.bar_x)} (X) and {number(printer.bar_y)} (Y)"
            if printer.corrected
            else "not corrected: if a bar is not 100 mm, print again with what the rule reads"
        ),
        "map": [
            {
                "name": other.name,
                "row": other.row,
                "column": other.column,
                "here": other is tile,
            }
            for other in tiling.tiles
        ],
        "rows": tiling.rows,
        "columns": tiling.columns,
    }


def _joins(tiling: Tiling, tile: Tile) -> dict[str, str]:
    """The sheets that go on each side, by side."""
    names = {(other.row, other.column): other.name for other in tiling.tiles}
    beside = {
        "left": (tile.row, tile.column - 1),
        "right": (tile.row, tile.column + 1),
        "above": (tile.row - 1, tile.column),
        "below": (tile.row + 1, tile.column),
    }
    return {side: names[place] for side, place in beside.items() if place in names}


def _mm(length: float) -> str:
    """For the template, fine enough for a hundredth of a millimetre over a metre."""
    return f"{length:.5f}mm"
