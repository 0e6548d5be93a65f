"""Front view of the footwell as the driver sees it: pads side by side, shoes on them, walls.

Walls, floor and roof are cut at the pad that stands nearest to them.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise

from pedalwright.assess import Assessment
from pedalwright.core.points import UP, Plane
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.feet import Scene, legs, pad_corners, pads, scene
from pedalwright.documents.pictures.views import (
    FROM_THE_SEAT,
    ROUND,
    SKIN,
    Beside,
    InTheMargin,
    box,
    called,
    tube,
    wall,
    words,
)
from pedalwright.drawing import XY, Box, Circle, Drawing, Item, Leader, Line, Linear, Stack

#: What is drawn beyond what stands in the footwell, mm.
BESIDE = 30.0


def front_view(design: Design, assessment: Assessment, units: Units) -> Drawing:
    """The footwell from the seat, with everybody's feet on all three pedals at rest."""
    shown = scene(design, assessment)
    window = window_of(shown)
    return Drawing(
        name="front-view",
        title="Footwell from the seat, pedals at rest",
        description=(
            "The footwell as the driver sees it: three pedals at rest with the legs of "
            + " and ".join(one.name for one in shown.drivers)
            + "."
        ),
        shapes=(
            *footwell(shown, window),
            *legs(FROM_THE_SEAT, shown),
            *pads(FROM_THE_SEAT, shown),
            *names(shown, window),
            *dimensions(shown, window, units),
        ),
    )


def window_of(shown: Scene) -> Box:
    """What the walls are drawn along."""
    places: list[XY] = [
        FROM_THE_SEAT(corner)
        for built in shown.pedals
        for corner in (*pad_corners(built, built.lever.pad), built.tube.start, built.tube.end)
    ]
    for one in shown.drivers:
        for seat in (one.clutch, one.brake, one.throttle):
            places += [FROM_THE_SEAT(seat.rest.hip), FROM_THE_SEAT(seat.rest.knee)]
    low, high = shown.row.left_wall * shown.hand, shown.row.right_wall * shown.hand
    places += [(float(low), shown.heel), (float(high), shown.heel)]
    around = Box.around(at for at in places if at == at) or Box(-300.0, 0.0, 300.0, 500.0)
    return Box(around.left - BESIDE, shown.heel, around.right + BESIDE, around.top + BESIDE)


def footwell(shown: Scene, window: Box) -> Iterator[Item]:
    """Walls, tubes, what stands in the way, the wheel's rim."""
    survey, view = shown.design.survey, FROM_THE_SEAT
    for face in survey.faces:
        if face.name not in {"floor", "ground"}:
            depth = float(shown.at_pad(face.plane).x)
            yield from wall(view, face.name, face.plane, depth, window)
    yield from wall(view, "heel-rest", Plane(normal=UP, offset=shown.heel), 0.0, window)
    for thing in survey.obstacles:
        yield box(view, thing)
    # what lies below the heels is behind the floor
    above = replace(window.grown(ROUND), bottom=window.bottom)
    for line in survey.lines:
        shown_tube = tuple(tube(view, line, above))
        yield from shown_tube
        yield from called(shown_tube, words(line.name))
    rim = view(survey.mark("rim_bottom"))
    yield Circle(rim, 14.0, line=Line.THIN, part="rim", title="steering wheel rim, lowest point")
    yield Leader(rim, "wheel rim", to=(7.0, 7.0))


def names(shown: Scene, window: Box) -> Iterator[Item]:
    """Whose knee is where, out beyond the walls: the left one's to the left of them."""
    for way, edge in ((-1.0, window.left), (1.0, window.right)):
        named = [
            (FROM_THE_SEAT(knee), f"{one.name}, knee")
            for one in shown.drivers
            for knee in (one.clutch.rest.knee if way < 0.0 else one.brake.rest.knee,)
        ]
        yield InTheMargin(tuple(named), edge, way)


@dataclass(frozen=True, slots=True)
class NamedRow:
    """Dimensions along the row of pedals, and under them the names of the pedals."""

    stack: Stack
    names: tuple[tuple[float, str], ...]

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """The names stand below the lowest dimension line."""
        lines = [row.base + row.offset / scale for row in self.stack.placed(scale) if row.base]
        lowest = min(lines, default=self.stack.base or 0.0)
        names = (Beside((x, lowest), name, (0.0, -6.0)) for x, name in self.names)
        return (self.stack, *names)


def dimensions(shown: Scene, window: Box, units: Units) -> Iterator[Item]:
    """Along the row from wall to wall; how high the pads are above the heels' rest."""
    size = partial(Linear, written=units.lengths)
    row, hand, floor = shown.row, shown.hand, shown.heel
    edges = [
        float(edge) * hand
        for edge in (
            row.left_wall,
            *(
                side
                for pad in (row.clutch, row.brake, row.accelerator)
                for side in (pad.left, pad.right)
            ),
            row.right_wall,
        )
    ]
    along = tuple(size((a, floor), (b, floor), "horizontal") for a, b in pairwise(edges))
    yield NamedRow(
        Stack(along, side=-1.0, base=floor - SKIN),
        tuple((FROM_THE_SEAT(built.lever.pad)[0], built.name) for built in shown.pedals),
    )
    in_order = sorted(
        (FROM_THE_SEAT(built.lever.pad) for built in shown.pedals), key=lambda at: at[0]
    )
    for some, side, base in (
        (in_order[:2], -1.0, window.left),
        (in_order[2:], 1.0, window.right),
    ):
        heights = {written: at for at in some if (written := units.lengths(at[1] - floor, 1))}
        rows = (size((at[0], floor), at, "vertical") for at in heights.values())
        yield Stack(tuple(rows), side=side, base=base)
