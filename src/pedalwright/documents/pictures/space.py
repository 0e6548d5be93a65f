"""Pedals, legs and box in space, seen from anywhere round the car, with hidden lines left out.

A parallel view, so that what is as long in the same direction is as long on the paper. Tubes,
arms, rods and bones are flat strips turned to the reader, which is how a round thing looks.
"""

from collections.abc import Iterator, Sequence
from math import cos, isfinite, pi, sin

from pedalwright.assess import Placed
from pedalwright.assess.stroke import PedalName
from pedalwright.core.faults import InputError
from pedalwright.core.points import Point
from pedalwright.documents.pictures.board import Board
from pedalwright.documents.pictures.feet import Scene, pad_halves_of, seat_of, shoe_corners
from pedalwright.documents.pictures.hidden import Edge, Solid, seen_of
from pedalwright.documents.pictures.stroke import where
from pedalwright.documents.pictures.views import View
from pedalwright.drawing import Box, Drawing, Leader, Line, Tone
from pedalwright.panels import box as panels
from pedalwright.panels.parts import Box as BoxParts

#: Steps once round the car, and from level to nearly overhead or underneath.
TURNS, TIPS = 24, 5
#: From the driver's right shoulder.
USUAL_TURN, USUAL_TIP = 3, 2
#: One step.
_STEP = 2.0 * pi / TURNS
#: Width of an arm, a rod and a bone as they are drawn, mm.
ARM, ROD, BONE = 12.0, 8.0, 14.0
#: Corners of a ring at the end of a tube.
RING = 16


def from_there(turn: int, tip: int) -> View:
    """From behind at no turn, then round by the car's right; from above with a tip upwards."""
    a, e = turn * _STEP, tip * _STEP
    right = Point(-sin(a), cos(a), 0.0)
    up = Point(-sin(e) * cos(a), -sin(e) * sin(a), cos(e))
    return View(right, up)


def space(board: Board, turn: int, tip: int) -> Drawing:
    """Everything there is in the footwell, one pedal pressed as far as one looks at it."""
    view, shown, look = from_there(turn, tip), board.scene, board.look
    solids = (*_box(board, view), *_pedals(shown, view), *_rods(board, view), *_people(board, view))
    lines = tuple(seen_of(solids, view))
    window = _window(board, view, [at for line in lines for at in line.points])
    return Drawing(
        name="space",
        title=f"Pedals, legs and box in space, the {look.pedal} {where(look.down)}",
        description=(
            "All three pedals with the legs on them and the sheet-metal box, in a parallel view "
            f"{turn * 360 // TURNS} degrees round the car from behind."
        ),
        shapes=(*lines, *(_called(shown, view) if look.notes else ())),
        scale=min(look.paper[0] / window.width, look.paper[1] / window.height),
        window=window,
    )


def _window(board: Board, view: View, places: Sequence[tuple[float, float]]) -> Box:
    """Round everything, or round pads and shoes, of the shape of the paper."""
    if board.look.close:
        shown = board.scene
        pads = [shown.pad(built) for built in shown.pedals]
        tubes = [end for built in shown.pedals for end in (built.tube.start, built.tube.end)]
        places = [view(at) for at in (*pads, *tubes)]
    around = Box.around(at for at in places if isfinite(sum(at))) or Box(0.0, 0.0, 500.0, 500.0)
    around = around.grown(0.06 * max(around.width, around.height))
    wide, high = board.look.paper
    width = max(around.width, around.height * wide / high)
    height = max(around.height, around.width * high / wide)
    x, y = (around.left + around.right - width) / 2.0, (around.bottom + around.top - height) / 2.0
    return Box(x, y, x + width, y + height)


def _box(board: Board, view: View) -> Iterator[Solid]:
    """Sheets and tubes of the box; none where it is not described, or cannot be made."""
    design = board.design
    try:
        made = panels.made(design.box, design.survey)
    except InputError:
        made = panels.made(type(design.box)(), design.survey)
    for panel in made.panels:
        for flat in panel.flats():
            corners = tuple(flat.plane.point(place) for place in flat.outline)
            edge = Edge(points=(*corners, corners[0]), part="box", title=panel.name)
            yield Solid((_cut_out(corners, panel.name, design.box),), (edge,))
    for tube in made.tubes:
        yield _strip(view, (tube.start, tube.end), tube.width, title=tube.name)
    for line in design.survey.lines:
        if line.name not in {tube.name for tube in made.tubes}:
            yield _strip(view, (line.start, line.end), float(line.diameter), title=line.name)


def _cut_out(corners: tuple[Point, ...], name: str, box: BoxParts) -> tuple[Point, ...]:
    """A face less the openings for trays, as one outline that comes back by the way it went."""
    outline = corners
    for tub in box.foot_tubs:
        if tub.on == name:
            x, y = float(tub.length) / 2.0, float(tub.width) / 2.0
            opening = [tub.middle + Point(a * x, b * y, 0.0) for a, b in _ROUND]
            outline = (*outline, corners[0], *opening, opening[0])
    return outline


_ROUND = ((1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0))


def _pedals(shown: Scene, view: View) -> Iterator[Solid]:
    for built in shown.pedals:
        tone, pad = Tone.ACCENT, shown.pad(built)
        tube = built.tube
        if float(tube.diameter) > 0.0:
            yield _strip(view, (tube.start, tube.end), float(tube.diameter), tone=tone)
        foot = built.joggle_from(pad)
        for ends in ((built.lever.pivot, foot), (foot, pad)):
            yield _strip(view, ends, ARM, line=Line.VISIBLE, tone=tone, title=f"{built.name} arm")
        up, back, across = pad_halves_of(built, pad)
        yield _block(pad, (up, back, across), tone, f"{built.name} pad")


def _rods(board: Board, view: View) -> Iterator[Solid]:
    """The push rod of the pedal that is looked at; another's is seen when one looks at that."""
    now = board.now
    if now.rod is None or now.position is None:
        return
    at, relay = now.position, now.position.relay
    ways = [(at.pin, at.socket)]
    if relay is not None and now.rod.relay is not None:
        ways = [(at.pin, relay.driven_pin), (relay.driving_pin, at.socket)]
        ways += [(now.rod.relay.pivot, pin) for pin in (relay.driven_pin, relay.driving_pin)]
    ways.append((now.lever.pivot, at.pin))
    for ends in ways:
        yield _strip(view, ends, ROD, line=Line.VISIBLE, tone=Tone.ACCENT, title="push rod")


def _people(board: Board, view: View) -> Iterator[Solid]:
    shown = board.scene
    right: PedalName = "throttle" if shown.on == "throttle" else "brake"
    feet: tuple[PedalName, ...] = ("clutch", right)
    for i, one in enumerate(shown.drivers):
        tone = Tone.QUIET if i else Tone.INK
        for which in feet:
            yield from _leg(shown, one, which, view, tone)


def _leg(shown: Scene, one: Placed, which: PedalName, view: View, tone: Tone) -> Iterator[Solid]:
    posture = shown.posture(one, which)
    title = f"leg of {one.name}"
    for ends in ((posture.hip, posture.knee), (posture.knee, posture.ankle)):
        yield _strip(view, ends, BONE, tone=tone, title=title)
    corners = shoe_corners(seat_of(one, which).body, posture)
    yield _prism(corners, tone, f"shoe of {one.name}")


def _called(shown: Scene, view: View) -> Iterator[Leader]:
    for built in shown.pedals:
        yield Leader(view(shown.pad(built)), built.name, to=(7.0, -7.0))


def _strip(
    view: View,
    ends: tuple[Point, Point],
    width: float,
    *,
    line: Line = Line.THIN,
    tone: Tone = Tone.INK,
    title: str = "",
) -> Solid:
    """Something round and long: a strip turned to the reader, and a ring at either end."""
    start, end = ends
    across = (end - start).cross(view.towards)
    size = float(across.dot(across)) ** 0.5
    if not size > 1e-6:
        return Solid((), (_ring(start, view.right, view.up, width, line, tone, title),))
    side = across * (width / 2.0 / size)
    corners = (start + side, end + side, end - side, start - side)
    way = (end - start).unit()
    other = way.cross(side).unit() * (width / 2.0)
    edges = (
        Edge(points=(corners[0], corners[1]), line=line, tone=tone, title=title),
        Edge(points=(corners[2], corners[3]), line=line, tone=tone, title=title),
        *(_ring(at, side, other, 2.0, line, tone, title) for at in ends),
    )
    return Solid((corners,), edges)


def _ring(
    middle: Point, one: Point, other: Point, width: float, line: Line, tone: Tone, title: str
) -> Edge:
    """A circle through two half axes, of which the width is that of the axes as they come."""
    turns = (2.0 * pi * step / RING for step in range(RING + 1))
    half = width / 2.0
    points = tuple(middle + one * (cos(t) * half) + other * (sin(t) * half) for t in turns)
    return Edge(points=points, line=line, tone=tone, title=title)


def _block(middle: Point, halves: tuple[Point, Point, Point], tone: Tone, title: str) -> Solid:
    a, b, c = halves
    low = tuple(middle - b + a * i + c * j for i, j in ((1, 1), (1, -1), (-1, -1), (-1, 1)))
    return _prism((low, tuple(corner + b * 2.0 for corner in low)), tone, title, Line.VISIBLE)


def _prism(
    ends: tuple[tuple[Point, ...], tuple[Point, ...]],
    tone: Tone,
    title: str,
    line: Line = Line.THIN,
) -> Solid:
    """Two outlines of as many corners, and the sides between them."""
    low, high = ends
    sides = [
        (low[i - 1], low[i], high[i], high[i - 1]) for i in range(len(low))
    ]  # from the last corner on
    faces = (low, high, *sides)
    rounds = ((*low, low[0]), (*high, high[0]), *zip(low, high, strict=True))
    edges = tuple(Edge(points=points, line=line, tone=tone, title=title) for points in rounds)
    return Solid(faces, edges)
