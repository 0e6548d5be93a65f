"""What is asked of the box's parts before anything is cut."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from math import nan

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.faults import Fault
from pedalwright.drawing import XY
from pedalwright.making import bending
from pedalwright.making.bending.limits import HOLE_TO_BEND
from pedalwright.making.box.line import strips_of
from pedalwright.making.box.parts import Joint, Piece
from pedalwright.making.box.rows import NEAR
from pedalwright.making.fastening.parts import RivetRow
from pedalwright.panels.faces import Fold
from pedalwright.panels.made import Made, named
from pedalwright.panels.plane import SAME, edges, from_segment, inside
from pedalwright.shelf.rivets import grips
from pedalwright.shelf.stock import Folder, Stock, StockRivets

DESCRIBED = Limit(
    "making.box_described",
    "Every part of the box is described so that it can be made.",
    "at least",
    "1",
    Source("pedalwright", "parts that are not there, sizes that are missing", "ours"),
)
COUNTED = Limit(
    "making.holes_counted",
    "Each fastener has its hole in every part it goes through.",
    "at least",
    "1",
    Source("pedalwright", "holes on the drill cards over fasteners", "ours"),
)
CLEAR_OF_HEADS = Limit(
    "making.head_under_part",
    "No fastener's head stands under a part that is to lie flat on it.",
    "at least",
    "1",
    Source("common practice", "no source: a part does not lie on heads", "trade"),
)
GRIPS_IN_BOX = Limit(
    "making.rivets_there_grip",
    "The rivets on the shelf grip what they are wanted for.",
    "at least",
    "1",
    Source("ISO 15981", "recommended grip ranges", "standard"),
    "should",
)

#: What to do where a demand is not met.
CURES: Mapping[str, str] = {
    DESCRIBED.code: "correct what is said of it in the file; nothing of the box is on these sheets",
    COUNTED.code: "move the part, or the opening, so that each fastener has metal under it",
    CLEAR_OF_HEADS.code: "move those rivets, countersink them, or let the part's own fasteners "
    "take their place",
    GRIPS_IN_BOX.code: "buy the length that is listed, or put a washer under the far head so that "
    "the longer one grips",
}


def check_described(faults: Sequence[Fault]) -> Iterator[Finding]:
    """What keeps a box from being made, each by itself."""
    for fault in faults:
        said = f"{fault.where}: {fault.read}; wanted: {fault.accepts}"
        yield DESCRIBED.check(0.0, 1.0, said)


def not_foldable(made: Made) -> Iterator[Fault]:
    """Flanges that begin within the metal of their face, not at its edge."""
    for panel in made.panels:
        for face in panel.face.all():
            for fold in face.folds:
                if not any(_along(fold, side) for side in edges(face.outline)):
                    yield Fault(
                        where=f"box: {panel.name}, fold {fold.name}",
                        read="a fold that does not lie on the edge of its face",
                        accepts="A part whose flange begins where the metal ends: move what stands "
                        "beyond it, such as an eye, or make the face reach farther.",
                    )


def _along(fold: Fold, side: tuple[XY, XY]) -> bool:
    return max(from_segment(fold.start, *side), from_segment(fold.end, *side)) < SAME


def check_pieces(pieces: Sequence[Piece], stock: Stock) -> Iterator[Finding]:
    """Bends and holes of what is made; what is there already is only drilled.

    Of what fails alike on one piece only the worst is told, and how many there are.
    """
    for piece in pieces:
        if not piece.there:
            yield from _once(piece.name, list(_of_piece(piece, stock)))


def _of_piece(piece: Piece, stock: Stock) -> Iterator[Finding]:
    for finding in bending.check(
        piece.pattern,
        folder_least=_of(stock.folder, "least_flange"),
        folder_width=_of(stock.folder, "longest"),
    ):
        # a hole beside a bend waits for the bend, as its drill card says; one in it cannot
        if finding.limit is not HOLE_TO_BEND or float(finding.value) < 0.0:
            yield finding
    for strip in strips_of(piece.panel, stock) if piece.steps else ():
        radius = min(step.bend.radius for step in piece.steps)
        yield from bending.check_strip(strip, radius=radius, thickness=piece.panel.thickness)


def _once(name: str, findings: list[Finding]) -> Iterator[Finding]:
    for code in dict.fromkeys(finding.limit.code for finding in findings):
        alike = [finding for finding in findings if finding.limit.code == code]
        failed = sorted((one for one in alike if not one.ok), key=lambda one: float(one.margin))
        if not failed:
            yield min(alike, key=lambda one: float(one.margin))
            continue
        what = failed[0].about.removeprefix(f"{name}: ")
        more = f" and {len(failed) - 1} more" if len(failed) > 1 else ""
        about = f"{name}: {what}{more}" if what != name else name
        yield replace(failed[0], about=about)


def check_counted(joints: Sequence[Joint], pieces: Sequence[Piece]) -> Iterator[Finding]:
    """Holes on the cards against fasteners."""
    holes = {piece.name: list(_in_metal(piece)) for piece in pieces}
    for joint in joints:
        if joint.what == "welds":
            continue
        for part in joint.parts:
            there = sum(name.partition(".")[0] == joint.mark for name in holes.get(part, ()))
            yield COUNTED.check(there / joint.count, 1.0, f"{joint.name}: {part}")


def _in_metal(piece: Piece) -> Iterator[str]:
    """Holes that have metal round their middle; a corner cut away has none."""
    for bore in piece.profile.bores:
        if inside(bore.centre, piece.pattern.outline):
            yield bore.name


def check_heads(made: Made) -> Iterator[Finding]:
    """Heads of one row under a face that the row does not go through."""
    faces = {name: (panel, flat) for name, panel, flat in named(made.panels)}
    for row in made.rows:
        laid = {other.through[-1] for other in made.rows if row.through[-1] in other.through[:-1]}
        for face in sorted(laid - set(row.through)):
            flat = faces[face][1]
            at = [flat.plane.place(place) for place in row.places]
            under = sum(inside((float(x), float(y)), flat.outline) for x, y in at)
            about = f"{under} of {row.name}, under {face.rpartition('.')[0]}"
            if under:
                yield CLEAR_OF_HEADS.check(1.0 - under / len(at), 1.0, about)


def check_shelf(rows: Sequence[RivetRow], stock: Stock) -> Iterator[Finding]:
    """Tins of the right diameter whose rivets do not grip a row: refused."""
    for tin in stock.rivets:
        refused: dict[float, list[str]] = {}
        for row in rows:
            total = round(sum(layer.thickness for layer in row.layers), 3)
            if abs(float(tin.diameter) - row.diameter) < NEAR and not _grips(tin, total):
                refused.setdefault(total, []).append(row.name.partition(":")[0])
        for total, names in refused.items():
            size = f"{float(tin.diameter):g} × {float(tin.length):g}"
            about = f"{tin.name}, {size}, on {total:g} mm of sheet: {', '.join(names)}"
            yield GRIPS_IN_BOX.check(0.0, 1.0, about)


def _grips(tin: StockRivets, total: float) -> bool:
    return any(
        grip.least <= total <= grip.most
        for grip in grips()
        if abs(grip.diameter - float(tin.diameter)) < NEAR and grip.length == float(tin.length)
    )


def _of(folder: Folder | None, what: str) -> float:
    value = getattr(folder, what, None)
    return nan if value is None else float(value)
