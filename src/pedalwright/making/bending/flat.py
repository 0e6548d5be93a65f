"""From a folded part to the flat piece it is cut from.

Each face is trimmed back to where its bends begin, by the setback. Between two trimmed faces
lies the strip of sheet that goes into the bend, as wide as the bend's allowance. So a face beyond
a fold lies the bend's deduction nearer on the flat piece than on the bent part.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

from pedalwright.core.working import subject
from pedalwright.drawing import XY
from pedalwright.making.bending.formulas import bend_allowance, bend_deduction, setback
from pedalwright.making.bending.parts import (
    FlatBend,
    FlatFace,
    FlatHole,
    FlatPattern,
    Neutral,
    Sheet,
)
from pedalwright.panels.faces import Face, Fold
from pedalwright.panels.plane import (
    SAME,
    Frame,
    apart,
    crossing,
    direction,
    edges,
    from_segment,
    inward,
    straightened,
    without_repeats,
)

#: Width of the notch beside a flange that ends short of its edge, so that the bend does not tear.
RELIEF = 2.0


def unfold(
    name: str,
    face: Face,
    sheet: Sheet,
    neutral: Callable[[float], Neutral],
    *,
    relief: float = RELIEF,
) -> FlatPattern:
    """The flat piece of a part; `neutral` tells the neutral line for an inside radius.

    The first face keeps its coordinates.
    """
    found = _Found(sheet, neutral, relief)
    outline = _walk(face, Frame((0.0, 0.0), 0.0), found, root=None, chain=())
    return FlatPattern(
        name=name,
        sheet=sheet,
        outline=straightened(without_repeats(outline)),
        faces=tuple(found.faces),
        bends=tuple(found.bends),
        holes=tuple(found.holes),
    )


@dataclass(frozen=True, slots=True)
class _Found:
    """What the whole walk round the tree shares, and what it finds on its way."""

    sheet: Sheet
    neutral: Callable[[float], Neutral]
    relief: float
    faces: list[FlatFace] = field(default_factory=list[FlatFace])
    bends: list[FlatBend] = field(default_factory=list[FlatBend])
    holes: list[FlatHole] = field(default_factory=list[FlatHole])


@dataclass(frozen=True, slots=True)
class _Opened:
    """A fold with its lengths worked out."""

    fold: Fold
    neutral: Neutral
    setback: float
    allowance: float
    deduction: float
    #: Whether it reaches the ends of its side, the first one walked and the last one.
    to_first: bool = True
    to_last: bool = True


@dataclass(frozen=True, slots=True)
class _Side:
    """A side of a face, and how far the metal beside its ends is trimmed back."""

    start: XY
    end: XY
    folds: tuple[_Opened, ...]
    trim_start: float
    trim_end: float


def _walk(
    face: Face, frame: Frame, found: _Found, *, root: _Opened | None, chain: tuple[str, ...]
) -> list[XY]:
    """Round a face and all beyond it on the flat piece.

    Round a face that hangs on a fold, the walk begins and ends beside that fold.
    """
    sides = _sides(face, found, root)
    corners = [_corner(before, side) for before, side in zip([sides[-1], *sides], sides)]  # noqa: B905
    place = frame.place
    found.holes.extend(
        FlatHole(name=hole.name, face=face.name, centre=place(hole.centre), diameter=hole.diameter)
        for hole in face.holes
    )
    own = FlatFace(name=face.name, outline=(), bends=chain)
    at = len(found.faces)
    found.faces.append(own)  # a face comes before what hangs on it
    around: list[XY] = []
    rim: list[XY] = []
    for i, side in enumerate(sides):
        here, there = corners[i], corners[(i + 1) % len(sides)]
        if not (i == 0 and root is not None):
            around += map(place, here)
        rim += map(place, here)
        for opened in side.folds:
            before, beyond, after = _beyond(
                opened, here[-1], there[0], frame, found, face.name, chain
            )
            rim += [*before, *after]
            around += [*before, *beyond, *after]
    if root is not None:
        around += map(place, corners[0])
    found.faces[at] = FlatFace(name=face.name, outline=without_repeats(rim), bends=chain)
    return around


def _sides(face: Face, found: _Found, root: _Opened | None) -> list[_Side]:
    """The sides of a face, first the one it hangs on."""
    left = list(face.folds)
    sides: list[_Side] = []
    hung = 0
    for i, (start, end) in enumerate(edges(face.outline)):
        if root is not None and abs(start[1]) < SAME and abs(end[1]) < SAME:
            hung = i
            sides.append(_Side(start, end, (), root.setback, root.setback))
            continue
        mine = [
            fold
            for fold in left
            if from_segment(fold.start, start, end) < SAME
            and from_segment(fold.end, start, end) < SAME
        ]
        left = [fold for fold in left if fold not in mine]
        mine.sort(key=lambda fold: apart(fold.end, start))
        opened = tuple(_opened(fold, found, start, end) for fold in mine)
        sides.append(
            _Side(
                start,
                end,
                opened,
                opened[0].setback if opened and opened[0].to_first else 0.0,
                opened[-1].setback if opened and opened[-1].to_last else 0.0,
            )
        )
    assert not left, f"{face.name}: {[fold.name for fold in left]} lie on none of its sides"
    return [*sides[hung:], *sides[:hung]]


def _opened(fold: Fold, found: _Found, start: XY, end: XY) -> _Opened:
    """The lengths of a fold; a fold runs against the walk round the face it grows from."""
    turn = abs(fold.angle)
    neutral = found.neutral(fold.radius)
    with subject(fold.name):
        back = float(setback(turn, fold.radius, found.sheet.thickness))
        allowance = float(bend_allowance(turn, fold.radius, neutral.share, found.sheet.thickness))
        deduction = float(bend_deduction(back, allowance))
    return _Opened(
        fold=fold,
        neutral=neutral,
        setback=back,
        allowance=allowance,
        deduction=deduction,
        to_first=apart(fold.end, start) < SAME,
        to_last=apart(fold.start, end) < SAME,
    )


def _corner(before: _Side, after: _Side) -> list[XY]:
    """The corner between two sides, both trimmed: one place, or two where they are in line."""
    vertex = after.start
    one, two = direction(before.start, before.end), direction(after.start, after.end)
    first, last = inward(vertex, one, before.trim_end), inward(vertex, two, after.trim_start)
    met = crossing(first, one, last, two)
    return [first, last] if met is None else [met]


def _beyond(
    opened: _Opened,
    here: XY,
    there: XY,
    frame: Frame,
    found: _Found,
    from_face: str,
    chain: tuple[str, ...],
) -> tuple[list[XY], list[XY], list[XY]]:
    """What a fold adds to the walk: the rim before it, all beyond it, the rim after it.

    In the coordinates beyond the fold the walk comes from large x and goes to small x.
    """
    fold = opened.fold
    beyond = frame.within(fold.start, fold.end)
    child = beyond.moved(0.0, -opened.deduction)
    length = apart(fold.start, fold.end)
    place_in_list = len(found.bends)  # a bend comes before those beyond it
    walk = _walk(fold.face, child, found, root=opened, chain=(*chain, fold.name))
    reach = [beyond.read(frame.place(p))[0] for p in (here, there)]
    first = min(reach[0] if opened.to_first else length, child.read(walk[0])[0])
    last = max(reach[1] if opened.to_last else 0.0, child.read(walk[-1])[0])
    back, far = -opened.setback, opened.setback - opened.deduction
    near = beyond.place((first, back)), beyond.place((last, back))
    farther = beyond.place((first, far)), beyond.place((last, far))
    found.bends.insert(
        place_in_list,
        FlatBend(
            name=fold.name,
            near=(near[1], near[0]),
            far=(farther[1], farther[0]),
            angle=fold.angle,
            radius=fold.radius,
            allowance=opened.allowance,
            deduction=opened.deduction,
            neutral=opened.neutral,
            from_face=from_face,
            to_face=fold.face.name,
        ),
    )
    before, after = [near[0]], [near[1]]
    if not opened.to_first:
        notch = first + found.relief
        before = [beyond.place((notch, 0.0)), beyond.place((notch, back)), *before]
    if not opened.to_last:
        notch = last - found.relief
        after += [beyond.place((notch, back)), beyond.place((notch, 0.0))]
    return before, [farther[0], *walk, farther[1]], after
