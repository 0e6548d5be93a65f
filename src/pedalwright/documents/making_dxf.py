"""DXF of a flat part: closed outline, bends, holes and marks, each on its layer, in millimetres.

What is written is read back and measured before anyone gets it: a shop cuts what the file says. The
same part gives the same bytes. Loading the library takes half a second, so import this module where
a file is wanted, not before.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from io import StringIO
from math import atan2, degrees
from typing import Protocol

from ezdxf import options  # type: ignore[attr-defined]  # exported, though not for mypy
from ezdxf.document import Drawing as Document
from ezdxf.entities.circle import Circle
from ezdxf.entities.line import Line
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.filemanagement import new, read

from pedalwright.drawing import XY
from pedalwright.making.profiles import Corner, Profile, area, bend_line_words, bore_words

#: Layers, their colours and lines; shops keep CUT and DRILL and drop the others.
CUT, DRILL, BEND_UP, BEND_DOWN, MARK = "CUT", "DRILL", "BEND_UP", "BEND_DOWN", "MARK"
_LAYERS = {
    CUT: (7, "CONTINUOUS"),
    DRILL: (5, "CONTINUOUS"),
    BEND_UP: (3, "DASHDOT"),
    BEND_DOWN: (1, "DASHED"),
    MARK: (8, "CONTINUOUS"),
}
#: Holes wider than a common drill are cut, not drilled.
DRILLED = 13.0
#: How far a file may be from the part, mm.
TRUE = 0.001
LETTERS = 3.0


class _Layers(Protocol):
    def add(self, name: str, *, color: int, linetype: str) -> object: ...


class _Space(Protocol):
    """What is drawn on; the library leaves the keys of its attributes untyped."""

    def add_lwpolyline(
        self,
        points: Iterable[tuple[float, float, float]],
        format: str,  # noqa: A002 (the library's word)
        *,
        close: bool,
        dxfattribs: dict[str, str],
    ) -> object: ...

    def add_circle(self, center: XY, radius: float, dxfattribs: dict[str, str]) -> object: ...

    def add_line(self, start: XY, end: XY, dxfattribs: dict[str, str]) -> object: ...

    def add_point(self, location: XY, dxfattribs: dict[str, str]) -> object: ...

    def add_text(
        self, text: str, *, height: float, rotation: float, dxfattribs: dict[str, object]
    ) -> object: ...


@dataclass(frozen=True, kw_only=True, slots=True)
class Read:
    """What a DXF file holds, measured."""

    #: 4 is millimetres.
    units: int
    outlines: tuple[tuple[Corner, ...], ...]
    closed: bool
    #: Centre and diameter.
    holes: tuple[tuple[XY, float], ...]
    bends: tuple[tuple[XY, XY], ...]
    layers: frozenset[str]
    #: What the library's own audit found wrong.
    faults: int


def dxf(profile: Profile) -> bytes:
    """The file of a part, read back and measured."""
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True  # no clock, no random names
    try:
        document = new("R2000", setup=["linetypes"], units=4)
        _add_layers(document.layers)
        _draw(document.modelspace(), profile)
        text = StringIO()
        document.write(text)
    finally:
        options.write_fixed_meta_data_for_testing = before
    written = text.getvalue().encode(document.output_encoding, errors="replace")
    faults = list(unlike(profile, read_back(written)))
    assert not faults, f"{profile.name}: the file is not the part: {faults}"
    return written


def read_back(written: bytes) -> Read:
    """Open a file again and measure what a shop would see."""
    document: Document = read(StringIO(written.decode("cp1252")))
    space = document.modelspace()
    outlines = [e for e in space.query(f'LWPOLYLINE[layer=="{CUT}"]') if isinstance(e, LWPolyline)]
    circles = [e for e in space.query("CIRCLE") if isinstance(e, Circle)]
    lines = [e for e in space.query("LINE") if isinstance(e, Line)]
    return Read(
        units=document.units,
        outlines=tuple(
            tuple(
                Corner(at=(float(x), float(y)), bulge=float(bulge))
                for x, y, bulge in outline.get_points("xyb")
            )
            for outline in outlines
        ),
        closed=all(outline.closed for outline in outlines),
        holes=tuple(((c.dxf.center.x, c.dxf.center.y), 2.0 * float(c.dxf.radius)) for c in circles),
        bends=tuple(
            ((b.dxf.start.x, b.dxf.start.y), (b.dxf.end.x, b.dxf.end.y))
            for b in lines
            if b.dxf.layer in (BEND_UP, BEND_DOWN)
        ),
        layers=frozenset(layer.dxf.name for layer in document.layers),
        faults=len(document.audit().errors),
    )


def unlike(profile: Profile, read: Read) -> Iterator[str]:
    """How a file differs from the part it should be; nothing where it is true."""
    if read.units != 4:
        yield "its units are not millimetres"
    if len(read.outlines) != 1 or not read.closed:
        yield "its outline is not one closed line"
        return
    if abs(area(read.outlines[0]) - area(profile.outline)) > TRUE:
        yield "its area is another"
    if not _alike(
        [corner.at for corner in read.outlines[0]], [corner.at for corner in profile.outline]
    ):
        yield "its outline lies elsewhere"
    if not _alike(
        [(*centre, size) for centre, size in read.holes],
        [(*bore.centre, bore.diameter) for bore in profile.bores],
    ):
        yield "its holes are others"
    if not _alike(
        [(*start, *end) for start, end in read.bends],
        [(*bend.start, *bend.end) for bend in profile.bends],
    ):
        yield "its bends are others"
    if read.faults:
        yield f"the audit finds {read.faults} faults"


def _alike(found: list[tuple[float, ...]], wanted: list[tuple[float, ...]]) -> bool:
    return len(found) == len(wanted) and all(
        abs(a - b) < TRUE
        for one, other in zip(found, wanted, strict=True)
        for a, b in zip(one, other, strict=True)
    )


def _add_layers(layers: _Layers) -> None:
    for name, (colour, line) in _LAYERS.items():
        layers.add(name, color=colour, linetype=line)


def _draw(space: _Space, profile: Profile) -> None:
    space.add_lwpolyline(
        [(*corner.at, corner.bulge) for corner in profile.outline],
        format="xyb",
        close=True,
        dxfattribs={"layer": CUT},
    )
    for bore in profile.bores:
        layer = DRILL if bore.diameter <= DRILLED else CUT
        space.add_circle(bore.centre, bore.diameter / 2, dxfattribs={"layer": layer})
        _write(space, bore_words(bore), (bore.centre[0] + bore.diameter / 2 + 1, bore.centre[1]))
    for bend in profile.bends:
        layer = BEND_UP if bend.way == "up" else BEND_DOWN
        space.add_line(bend.start, bend.end, dxfattribs={"layer": layer})
        along = degrees(_angle(bend.start, bend.end))
        _write(space, bend_line_words(bend), bend.start, along)
    for mark in profile.marks:
        space.add_point(mark.at, dxfattribs={"layer": MARK})
        _write(space, mark.name, (mark.at[0] + 1.0, mark.at[1] + 1.0))
    low = min(corner.at[1] for corner in profile.outline)
    left = min(corner.at[0] for corner in profile.outline)
    made = f"{profile.metal} {profile.thickness:g} mm, {profile.count} off" if profile.metal else ""
    for row, words in enumerate((f"{profile.name}: all sizes in mm", made)):
        if words:
            _write(space, words, (left, low - 8.0 - 5.0 * row))


def _write(space: _Space, words: str, at: XY, angle: float = 0.0) -> None:
    where: dict[str, object] = {"layer": MARK, "insert": at}
    space.add_text(words, height=LETTERS, rotation=angle, dxfattribs=where)


def _angle(start: XY, end: XY) -> float:
    return atan2(end[1] - start[1], end[0] - start[0])
