"""Everything that a fastener really goes through.

A row names the two faces it joins. Where one of them is a plate that lies on a wall, the drill goes
on through the wall, and the bolt is as much longer.
"""

from collections.abc import Iterator
from dataclasses import replace

from pedalwright.core.points import Point
from pedalwright.panels.made import Made, Panel, Row, named
from pedalwright.panels.plane import apart, inside
from pedalwright.panels.spread import Flat

#: Faces by the names they go by among all.
Faces = dict[str, tuple[Panel, Flat]]


def through_all(made: Made) -> Made:
    """The same box, its rows through every face there is."""
    faces = {name: (panel, flat) for name, panel, flat in named(made.panels)}
    return replace(made, rows=tuple(_longer(row, made, faces) for row in made.rows))


def _longer(row: Row, made: Made, faces: Faces) -> Row:
    """A face is added where every fastener of the row meets its metal.

    What is laid on later has no hole: there the heads stand in its way, which is told.
    """
    first, last = row.through[0], row.through[-1]
    order = [panel.name for panel in made.panels]
    own = max(order.index(faces[face][0].name) for face in row.through)

    def there(face: str) -> bool:
        """Whether a face was there when the row was drilled, and has metal for all of it."""
        return order.index(faces[face][0].name) < own and _meets(row.places, *faces[face])

    below = [face for face in _under(first, made) if there(face)]
    above = [face for face in _over(last, made) if there(face)]
    new = [face for face in (*below, *above) if face not in row.through]
    return replace(
        row,
        through=(
            *(face for face in below if face in new),
            *row.through,
            *(face for face in above if face in new),
        ),
        stack=row.stack + sum(faces[face][0].thickness for face in new),
    )


def _under(face: str, made: Made) -> Iterator[str]:
    """What lies on the far side of a face: a wall behind a plate."""
    for row in made.rows:
        if row.through[-1] == face:
            yield row.through[0]
    for glued in made.glued:
        if glued.layer == face:
            yield glued.base


def _over(face: str, made: Made) -> Iterator[str]:
    """What lies on the near side of a face.

    A plate on the cabin's side of a wall, where something is fixed to it from the engine's side.
    """
    for row in made.rows:
        if row.through[0] == face:
            yield row.through[-1]


def _meets(places: tuple[Point, ...], panel: Panel, flat: Flat) -> bool:
    """Whether every place has metal of a face under it."""
    for place in places:
        x, y = flat.plane.place(place)
        at = float(x), float(y)
        if not inside(at, flat.outline) or any(
            apart(at, hole.centre) < hole.diameter / 2 for hole in flat.face.holes
        ):
            return False
    return bool(places) and panel.thickness > 0.0
