"""Fold a flat piece up again: where its places come to lie on the bent part.

The check on every flat pattern. It knows nothing of mould lines and setbacks: it takes the flat
piece as cut and marked and turns what lies beyond each bend, the last bend first.
"""

from math import cos, sin

from pedalwright.core.points import Point
from pedalwright.drawing import XY
from pedalwright.making.bending.parts import FlatBend, FlatPattern
from pedalwright.panels.plane import direction


def folded(pattern: FlatPattern, face: str, place: XY) -> Point:
    """Where a place of a face's middle plane lies when all is bent.

    x and y of the flat piece stay where they are on the first face; z is towards the shown side.
    """
    chain = next(f.bends for f in pattern.faces if f.name == face)
    bends = {bend.name: bend for bend in pattern.bends}
    point = Point(place[0], place[1], 0.0)
    for name in reversed(chain):
        point = _turned_over(point, bends[name], pattern.sheet.thickness)
    return point


def _turned_over(point: Point, bend: FlatBend, thickness: float) -> Point:
    """A point that moves with all beyond a bend, or lies in it."""
    (ax, ay), (bx, by) = bend.near[0], bend.near[1]
    c, s = direction((ax, ay), (bx, by))
    along = c * (point.x - ax) + s * (point.y - ay)
    across = c * (point.y - ay) - s * (point.x - ax)
    sense = 1.0 if bend.up else -1.0
    turn = abs(bend.angle) * min(1.0, max(0.0, across / bend.allowance))
    spare = across - min(bend.allowance, max(0.0, across))
    # seen along the bend: `out` away from the near side, `up` to the side it folds to
    height = bend.radius + thickness / 2
    arm = height - sense * point.z
    out = spare * cos(turn) + arm * sin(turn)
    up = height + spare * sin(turn) - arm * cos(turn)
    return Point(ax + c * along - s * out, ay + s * along + c * out, sense * up)
