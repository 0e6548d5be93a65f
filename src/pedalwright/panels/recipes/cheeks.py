"""A channel on a wall: its base lies on the wall, its two sides carry the pivot's shaft."""

from math import pi

from pedalwright.drawing import XY
from pedalwright.panels.faces import Face, Fold
from pedalwright.panels.made import Clamp, Glued, Made, Panel, Row, Shaft
from pedalwright.panels.metals import metal
from pedalwright.panels.outlines import round_eyes
from pedalwright.panels.parts import Cheeks, Glue
from pedalwright.panels.recipes.eyes import collar, eye, foot_on
from pedalwright.panels.recipes.ground import Ground, on, one, place, stacked
from pedalwright.panels.rows import along, rectangle

#: Least metal of a flange beyond what the rail bears on, mm.
EDGE = 2.0
#: A fold begins so many thicknesses beyond the radius of the one beside it, so that a folder can
#: hold what is between them (ours).
CLEAR = 5.0
#: Below its flange a cheek keeps its depth so far, mm: a folder holds that much (ours).
STRAIGHT = 30.0


def cheeks(part: Cheeks, ground: Ground) -> Made:
    """One piece of sheet: base, two cheeks, and a flange on each where there is a rail."""
    base = ground.panel(part.on, f"box.cheeks.{part.name}.on")
    if base is None:
        return Made()
    thickness = one(part.thickness)
    lying = on(base, "near", thickness)
    pivot = place(lying, part.pivot)
    middle = pivot if part.cylinder is None else place(lying, part.cylinder)
    low, high = middle[1] - one(part.below), middle[1] + one(part.above)
    half = one(part.spacing) / 2 + thickness
    left, right = pivot[0] - half, pivot[0] + half
    # The mould line of a fold towards the feet is on the wall's side.
    stands = float(lying.height(part.pivot)) + thickness / 2
    face = Face(
        name="base",
        outline=((left, low), (right, low), (right, high), (left, high)),
        folds=(
            _fold(part, (left, low), (left, high), _left(part, pivot[1] - low, stands, high - low)),
            _fold(
                part, (right, high), (right, low), _right(part, high - pivot[1], stands, high - low)
            ),
        ),
    )
    panel = Panel(
        name=part.name,
        face=face,
        lying=lying,
        thickness=thickness,
        metal=metal(part.metal, thickness),
    )
    shaft = Shaft(
        name=part.name,
        one=collar(panel, "left", part.pivot, part.round_pivot),
        other=collar(panel, "right", part.pivot, part.round_pivot),
    )
    _carried(part, panel, ground)
    on_wall = _on_wall(part, panel, base, ((left, low), (right, high)))
    return Made(panels=(panel,), shafts=(shaft,)) + on_wall


def _left(part: Cheeks, along: float, stands: float, length: float) -> Face:
    """The cheek on the left; x runs from its lower end up, y off the wall."""
    begins, deep = _flange_ends(part)
    top = length + one(part.rise)
    lower = ((0.0, 0.0), (0.0, one(part.depth_below)))
    upper = ((length, 0.0), (top, begins), (top, deep), (top - STRAIGHT, deep))
    return _cheek(part, "left", (along, stands), (*lower, *upper), (top, deep), (top, begins))


def _right(part: Cheeks, along: float, stands: float, length: float) -> Face:
    """The cheek on the right; x runs from its upper end down."""
    begins, deep = _flange_ends(part)
    top = -one(part.rise)
    lower = ((length, 0.0), (length, one(part.depth_below)))
    upper = ((0.0, 0.0), (top, begins), (top, deep), (top + STRAIGHT, deep))
    return _cheek(part, "right", (along, stands), (*lower, *upper), (top, begins), (top, deep))


def _flange_ends(part: Cheeks) -> tuple[float, float]:
    """Where a flange at the upper end begins and ends, off the wall."""
    return one(part.bend) + CLEAR * one(part.thickness), one(part.depth_above)


def _cheek(part: Cheeks, name: str, pivot: XY, corners: tuple[XY, ...], start: XY, end: XY) -> Face:
    """A cheek with its eye, and its flange turned outward, if it has one."""
    around_eye = (pivot, one(part.round_pivot))
    outline = round_eyes([*((corner, 0.0) for corner in corners), around_eye])
    hole = eye(pivot, part.round_pivot)
    if not part.flange:
        return Face(name=name, outline=outline, holes=(hole,))
    begins, ends = _flange_ends(part)
    flange = f"{name} flange"
    size = ends - begins, one(part.flange)
    face = Face(name=flange, outline=rectangle((size[0] / 2, size[1] / 2), *size))
    fold = Fold(name=flange, start=start, end=end, angle=-pi / 2, radius=one(part.bend), face=face)
    return Face(name=name, outline=outline, holes=(hole,), folds=(fold,))


def _fold(part: Cheeks, start: XY, end: XY, face: Face) -> Fold:
    return Fold(
        name=face.name, start=start, end=end, angle=pi / 2, radius=one(part.bend), face=face
    )


def _on_wall(part: Cheeks, panel: Panel, base: Panel, corners: tuple[XY, XY]) -> Made:
    """The base plate's fasteners, round it and clear of the folds; or glue."""
    sheet = panel.sheet()
    if isinstance(part.joined, Glue):
        return Made(glued=(Glued(layer=sheet, base=base.sheet()),))
    (left, low), (right, high) = corners
    aside = panel.thickness + one(part.joined.edge)
    line = (
        *along((left + aside, low), (left + aside, high), part.joined),
        *along((right - aside, low), (right - aside, high), part.joined),
    )
    row = Row(
        name=f"{part.name} on {base.name}",
        joining=part.joined,
        places=tuple(panel.lying.point(at) for at in line if not _under_flange(part, panel, at)),
        through=stacked(base, sheet, "near"),
        stack=panel.thickness + base.thickness,
    )
    return Made(rows=(row,), touching=((sheet, base.sheet()),))


def _under_flange(part: Cheeks, panel: Panel, at: XY) -> bool:
    """Whether a fastener would be under the cylinder's flange, whose own bolts go through there."""
    if part.cylinder is None or isinstance(part.joined, Glue):
        return False
    middle = place(panel.lying, part.cylinder)
    return abs(at[1] - middle[1]) < one(part.flange_height) / 2 + one(part.joined.diameter)


def _carried(part: Cheeks, panel: Panel, ground: Ground) -> None:
    """Each flange is bolted to the rail where they cross."""
    if not part.rail:
        return
    tube = ground.tube(part.rail, f"box.cheeks.{part.name}.rail")
    if tube is None or not part.flange:
        return
    for face in ("left flange", "right flange"):
        flat = panel.flat(face)
        length, width = flat.face.outline[2]
        at = place(flat.plane, foot_on(tube, flat.plane.point((length / 2, width / 2))))
        # The bolt draws the flange against the rail, which bears on it as wide as it is.
        wide = min(tube.width, 0.8 * length)
        inside = min(max(at[0], wide / 2 + EDGE), length - wide / 2 - EDGE), width / 2
        ground.carry(
            tube.name,
            Clamp(
                name=f"{part.name}, {face} on {tube.name}",
                sheet=panel.sheet(face),
                centre=flat.plane.point(inside),
                width=wide,
                height=0.7 * width,
            ),
        )
