"""From a design to the box's parts on the bench: pieces, rows of fasteners, work."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from pedalwright.assess.box import seats_of, walls_and_tubes
from pedalwright.core.checks import Finding
from pedalwright.core.faults import Fault, InputError
from pedalwright.design import Design
from pedalwright.making.box.flat import pieces
from pedalwright.making.box.limits import (
    check_counted,
    check_described,
    check_heads,
    check_pieces,
    check_shelf,
    not_foldable,
)
from pedalwright.making.box.parts import Piece
from pedalwright.making.box.rows import Rows, rows
from pedalwright.making.box.through import through_all
from pedalwright.making.box.work import panel_work
from pedalwright.making.car.jobs import PanelWork
from pedalwright.panels.box import made
from pedalwright.panels.drilled import drilled
from pedalwright.panels.made import Clamp, Made


@dataclass(frozen=True, kw_only=True, slots=True)
class BoxWork:
    """Everything that a box asks to be made."""

    made: Made
    pieces: tuple[Piece, ...]
    rows: Rows
    work: tuple[PanelWork, ...]
    findings: tuple[Finding, ...]
    faults: tuple[Fault, ...] = ()


def box_work(design: Design) -> BoxWork:
    """All of a design's box; nothing but the faults of one that cannot be made as it is said."""
    try:
        box = made(design.box, walls_and_tubes(design))
    except InputError as told:
        return _nothing(tuple(told.faults))
    if faults := tuple(not_foldable(box)):
        return _nothing(faults)
    whole = drilled(through_all(box))
    walls = frozenset(wall.name for wall in design.box.walls)
    fastened = rows(whole, design.stock, walls)
    flat = pieces(
        whole,
        fastened.joints,
        design.stock,
        walls=walls,
        places=tuple(_cylinders(design, whole)),
    )
    return BoxWork(
        made=whole,
        pieces=flat,
        rows=fastened,
        work=tuple(panel_work(whole, flat, fastened.joints)),
        findings=(
            *check_pieces(flat, design.stock),
            *check_counted(fastened.joints, flat),
            *check_heads(whole),
            *check_shelf(fastened.rivets, design.stock),
        ),
    )


def _nothing(faults: tuple[Fault, ...]) -> BoxWork:
    return BoxWork(
        made=Made(),
        pieces=(),
        rows=Rows(joints=(), rivets=(), bolts=(), others={}, open=()),
        work=(),
        findings=tuple(check_described(faults)),
        faults=faults,
    )


def _cylinders(design: Design, box: Made) -> Iterator[Clamp]:
    """The middle of each cylinder's flange, on what carries it and on what that lies on."""
    for seat in seats_of(design):
        panel = box.panel(seat.cylinder_on)
        if panel is None:
            continue
        own = Clamp(
            name=f"{seat.pedal} cylinder",
            sheet=panel.sheet(),
            centre=seat.cylinder,
            width=float(seat.flange_width),
            height=float(seat.flange_height),
        )
        yield own
        below = {
            sheet
            for row in box.rows
            if own.sheet in row.through
            for sheet in row.through[: row.through.index(own.sheet)]
        }
        yield from (replace(own, sheet=sheet) for sheet in sorted(below))
