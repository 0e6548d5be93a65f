"""The flat piece of every panel, with its holes, reliefs and places to mark; walls as they are."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from math import pi

from pedalwright.drawing import XY, Box
from pedalwright.making.bending import (
    FlatHole,
    FlatPattern,
    Sheet,
    bend_order,
    drawn_oval,
    reliefs,
    unfold,
)
from pedalwright.making.bending.formulas import radius_along_grain
from pedalwright.making.box.line import neutral_line
from pedalwright.making.box.parts import Joint, Piece
from pedalwright.making.profiles import Mark, Profile, profile_of
from pedalwright.making.profiles.parts import Bore, Scribed
from pedalwright.panels.faces import Face, Hole
from pedalwright.panels.made import Clamp, Made, Panel
from pedalwright.panels.plane import apart, direction
from pedalwright.shelf.bends import bend_radius
from pedalwright.shelf.stock import Stock

#: Begins the name of a place that is marked and not drilled.
PLACE = "@"
#: Pieces whose edges and holes differ by no more are alike, mm.
ALIKE = 0.15


def pieces(
    made: Made,
    joints: Sequence[Joint],
    stock: Stock,
    *,
    walls: frozenset[str],
    places: Sequence[Clamp] = (),
) -> tuple[Piece, ...]:
    """Every panel of a drilled box; `walls` are there already, `places` are marked beside holes."""
    marks = (*places, *_clamped(made))
    found = [
        _piece(panel, made, joints, stock, there=panel.name in walls, places=marks)
        for panel in made.panels
    ]
    return tuple(_handed(one, found) for one in found)


def _piece(
    panel: Panel,
    made: Made,
    joints: Sequence[Joint],
    stock: Stock,
    *,
    there: bool,
    places: Sequence[Clamp],
) -> Piece:
    metal = panel.metal
    sheet = Sheet(
        metal=metal.name,
        thickness=panel.thickness,
        yield_strength=metal.yield_strength if metal.known else float("nan"),
        elastic=metal.elastic,
    )
    marked = _with_places(panel, places)
    whole = unfold(panel.name, marked, sheet, neutral_line(panel, stock))
    own = tuple(hole for hole in whole.holes if not hole.name.startswith(PLACE))
    pattern = replace(whole, holes=own, sheet=replace(sheet, grain=_grain(whole)))
    relieved = tuple(reliefs(pattern))
    profile = _profile(panel, pattern, relieved, joints, there=there)
    marks = tuple(
        Mark(name=hole.name[1:], at=hole.centre)
        for hole in whole.holes
        if hole.name.startswith(PLACE)
    )
    return Piece(
        panel=panel,
        there=there,
        pattern=pattern,
        profile=replace(
            profile,
            marks=marks,
            scribed=tuple(_scribed(panel, made)) if there else (),
            count=panel.count,
        ),
        steps=bend_order(pattern),
        lies_on=tuple(_lies_on(panel, made)),
    )


def _with_places(panel: Panel, places: Sequence[Clamp]) -> Face:
    """The panel's faces with a place for all that is fixed to them without holes of its own."""
    planes = {panel.sheet(flat.face.name): flat.plane for flat in panel.flats()}

    def marked(face: Face) -> Face:
        plane = planes[panel.sheet(face.name)]
        new: list[Hole] = []
        for clamp in places:
            if clamp.sheet == panel.sheet(face.name):
                x, y = plane.place(clamp.centre)
                at = float(x), float(y)
                new.append(Hole(name=f"{PLACE}{_called(clamp, panel)}", centre=at, diameter=1.0))
        folds = tuple(replace(fold, face=marked(fold.face)) for fold in face.folds)
        return replace(face, holes=(*face.holes, *new), folds=folds)

    return marked(panel.face)


def _called(clamp: Clamp, panel: Panel) -> str:
    """What stands beside the place: on the part itself its own name says nothing."""
    own = clamp.name.startswith(panel.name)
    return f"to {clamp.name.rpartition(' on ')[2]}" if own else clamp.name


def _clamped(made: Made) -> Iterator[Clamp]:
    """What tubes hold on to."""
    for tube in made.tubes:
        for clamp in (tube.start_on, tube.end_on, *tube.carries):
            if clamp is not None:
                yield clamp


def _profile(
    panel: Panel,
    pattern: FlatPattern,
    relieved: tuple[FlatHole, ...],
    joints: Sequence[Joint],
    *,
    there: bool,
) -> Profile:
    by_mark = {joint.mark: joint for joint in joints}
    bores = [
        _bore(panel, pattern, hole, by_mark.get(hole.name.partition(".")[0]), there=there)
        for hole in pattern.holes
    ]
    bores += [
        Bore(
            name=f"R.{i}",
            centre=hole.centre,
            diameter=hole.diameter,
            use="relief, before bending",
        )
        for i, hole in enumerate(relieved, 1)
    ]
    return replace(profile_of(pattern), bores=tuple(bores))


def _bore(
    panel: Panel, pattern: FlatPattern, hole: FlatHole, joint: Joint | None, *, there: bool
) -> Bore:
    plain = Bore(name=hole.name, centre=hole.centre, diameter=hole.diameter)
    if joint is None:
        use = "opening" if there else "pivot's shaft" if hole.name == "shaft" else "opening"
        after = not there and drawn_oval(pattern, hole)
        return replace(plain, use=use, after_bending=after)
    others = [part for part in joint.parts if part != panel.name]
    return replace(
        plain,
        use=f"{_singular(joint.what)} {joint.diameter:g}",
        matched=" and ".join(others),
        after_bending=not there and drawn_oval(pattern, hole),
    )


def _singular(what: str) -> str:
    return what.removesuffix("s")


def _grain(pattern: FlatPattern) -> float | None:
    """Which way the rolling direction has to lie: only where a bend along it would crack."""
    row = bend_radius(pattern.sheet.metal, pattern.sheet.thickness)
    if row is None:
        return None
    least = float(radius_along_grain(max(row.thicknesses, 0.5) * pattern.sheet.thickness))
    sharp = [bend for bend in pattern.bends if bend.radius < least]
    if not sharp:
        return None
    level = sum(apart(*b.near) for b in sharp if abs(direction(*b.near)[0]) > 0.7)
    upright = sum(apart(*b.near) for b in sharp) - level
    return pi / 2 if level > upright else 0.0


def _lies_on(panel: Panel, made: Made) -> Iterator[str]:
    """Parts that were there before this one: it is laid on them."""
    order = [one.name for one in made.panels]
    found: set[str] = set()
    pairs = [row.through for row in made.rows] + [(g.base, g.layer) for g in made.glued]
    for through in pairs:
        parts = [sheet.rpartition(".")[0] for sheet in through]
        if panel.name in parts:
            found |= {p for p in parts if order.index(p) < order.index(panel.name)}
    yield from (name for name in order if name in found)


def _scribed(wall: Panel, made: Made) -> Iterator[Scribed]:
    """The outlines of what lies on a wall, and what a tray asks to be cut out of it."""
    for row in made.rows:
        if wall.sheet() not in row.through:
            continue
        for sheet in row.through:
            name, _, face = sheet.rpartition(".")
            part = made.panel(name)
            if part is None or name == wall.name:
                continue
            flat = part.flat(face)
            outline = tuple(_foot(wall, flat.plane.point(corner)) for corner in flat.face.outline)
            yield Scribed(name=name, outline=outline)
    for part in made.panels:
        if part.face.name == "bottom" and wall.name in _lies_on(part, made):
            bottom = part.flat("bottom")
            corners = tuple(_foot(wall, bottom.plane.point(c)) for c in bottom.face.outline)
            yield Scribed(name=f"{part.name}: cut out", outline=corners, cut=True)


def _foot(wall: Panel, point: object) -> XY:
    x, y = wall.lying.place(point)  # type: ignore[arg-type]
    return float(x), float(y)


def _handed(one: Piece, others: Iterable[Piece]) -> Piece:
    """Which pieces are made just like it, and which the other hand of it.

    A piece that is turned over has its outline mirrored and its bends down for up.
    """
    if one.there:
        return one
    mine = _shape(one.pattern, 0, hand=1.0, bends=1.0)
    alike: list[str] = []
    mirrored: list[str] = []
    for other in others:
        if other.there or other.name == one.name or other.panel.metal != one.panel.metal:
            continue
        if other.panel.thickness != one.panel.thickness:
            continue
        if _any_way(mine, other.pattern, 1.0, 1.0) or _any_way(mine, other.pattern, -1.0, -1.0):
            alike.append(other.name)
        elif _any_way(mine, other.pattern, -1.0, 1.0):
            mirrored.append(other.name)
    return replace(one, alike=tuple(alike), mirrored=tuple(mirrored))


#: Places from the lower left of what is around them, and a size or sense of each.
Shape = tuple[tuple[float, ...], ...]


def _any_way(mine: Shape, other: FlatPattern, hand: float, bends: float) -> bool:
    """Whether another pattern is this one in any of its four ways to lie."""
    return any(_same(mine, _shape(other, turn, hand=hand, bends=bends)) for turn in range(4))


def _shape(pattern: FlatPattern, turn: int, *, hand: float, bends: float) -> Shape:
    c, s = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[turn]

    def lies(at: XY) -> XY:
        x, y = hand * at[0], at[1]
        return c * x - s * y, s * x + c * y

    box = Box.around(map(lies, pattern.outline))
    assert box is not None, "an outline has places"
    marked = [
        *((at, 0.0) for at in pattern.outline),
        *((hole.centre, hole.diameter) for hole in pattern.holes),
        *((end, bends * 1e3 * bend.angle) for bend in pattern.bends for end in bend.middle),
    ]
    placed = [(lies(at), what) for at, what in marked]
    return tuple(
        sorted(
            (round(what, 2), round(x - box.left, 1), round(y - box.bottom, 1))
            for (x, y), what in placed
        )
    )


def _same(one: Shape, other: Shape) -> bool:
    """Sorted places one by one; rounding may swap neighbours, then the nearest one counts."""
    return len(one) == len(other) and all(
        any(max(abs(a - b) for a, b in zip(place, near, strict=True)) < ALIKE for near in other)
        for place in one
    )
