"""Plan of the footwell: looked down on, front to the left, the car's right up.

Walls are cut at the height of the pad that stands nearest to them, and drawn as far as there are
shoes between them: farther back the car need not go on as straight. Splay of the legs, shoes beside
each other and beside the walls, and how the pads stand along the car are seen here and from nowhere
else.
"""

from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from math import isfinite

from pedalwright.assess import Assessment
from pedalwright.assess.cabin import toe_wall
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.feet import (
    Scene,
    legs,
    pad_corners,
    pads,
    scene,
    shoe_outline,
)
from pedalwright.documents.pictures.views import (
    FROM_ABOVE,
    ROUND,
    Beside,
    box,
    called,
    tube,
    wall,
    words,
)
from pedalwright.drawing import XY, Box, Circle, Drawing, Item, Leader, Line, Linear, Stack, Tone
from pedalwright.survey import Obstacle

#: What is drawn of walls behind the shoes, and beside what stands in the footwell, mm.
BEHIND, BESIDE = 60.0, 30.0


def plan(design: Design, assessment: Assessment, units: Units) -> Drawing:
    """The footwell from above, with everybody's feet on all three pedals at rest."""
    shown = scene(design, assessment)
    window = window_of(shown)
    return Drawing(
        name="plan",
        title="Plan of the footwell, pedals at rest",
        description=(
            "The footwell from above, front to the left: three pedals at rest with the legs of "
            + " and ".join(one.name for one in shown.drivers)
            + "."
        ),
        shapes=(
            *footwell(shown, window),
            *legs(FROM_ABOVE, shown),
            *pads(FROM_ABOVE, shown),
            *names(shown, window),
            *dimensions(shown, window, units),
        ),
    )


def window_of(shown: Scene) -> Box:
    """What the walls are drawn along."""
    seats = [seat for one in shown.drivers for seat in (one.clutch, one.brake, one.throttle)]
    places: list[XY] = [
        FROM_ABOVE(corner)
        for built in shown.pedals
        for corner in pad_corners(built, built.lever.pad)
    ]
    places += [at for seat in seats for at in shoe_outline(FROM_ABOVE, seat.body, seat.rest)]
    low, high = shown.row.left_wall * shown.hand, shown.row.right_wall * shown.hand
    ahead = toe_wall(shown.design)
    front = float(ahead.offset / ahead.normal.x)
    places += [(front, float(low)), (front, float(high))]
    around = Box.around(at for at in places if at == at) or Box(0.0, -300.0, 500.0, 300.0)
    return Box(front, around.bottom - BESIDE, around.right + BEHIND, around.top + BESIDE)


def footwell(shown: Scene, window: Box) -> Iterator[Item]:
    """Walls, tubes, what stands in the way, the wheel's rim."""
    survey, view = shown.design.survey, FROM_ABOVE
    for face in survey.faces:
        depth = float(shown.at_pad(face.plane).z)
        yield from wall(view, face.name, face.plane, depth, window)
    for thing in survey.obstacles:
        yield box(view, thing)
        yield _called_outside(thing, window)
    ends = [view(line.end) for line in survey.lines]
    seen = replace(window, right=max([window.right, *(x for x, _ in ends if isfinite(x))]))
    for line in survey.lines:
        shown_tube = tuple(tube(view, line, seen.grown(ROUND)))
        yield from shown_tube
        yield from called(shown_tube, words(line.name))
    rim = view(survey.mark("rim_bottom"))
    yield Circle(rim, 14.0, line=Line.THIN, part="rim", title="steering wheel rim, lowest point")
    yield Leader(rim, "wheel rim", to=(6.0, -8.0))


def _called_outside(thing: Obstacle, window: Box) -> Item:
    """The name of something in the way, beyond the wall it is nearer to."""
    low, high = FROM_ABOVE(thing.low), FROM_ABOVE(thing.high)
    below = low[1] + high[1] < window.bottom + window.top
    tip, down = (high[0], low[1] if below else high[1]), -1.0 if below else 1.0
    return Leader(tip, words(thing.name), to=(5.0, 8.0 * down), tone=Tone.QUIET)


def names(shown: Scene, window: Box) -> Iterator[Item]:
    """Whose hips and which pedals."""
    for one in shown.drivers:
        hips = (FROM_ABOVE(one.clutch.rest.hip), FROM_ABOVE(one.brake.rest.hip))
        yield Leader(max(hips, key=lambda at: at[1]), f"{one.name}, hip", to=(4.0, 6.0))
    for built in shown.pedals:
        beyond = (window.left, FROM_ABOVE(built.lever.pad)[1])
        yield Beside(beyond, built.name, (-5.0, 0.0), align="end")


def dimensions(shown: Scene, window: Box, units: Units) -> Iterator[Item]:
    """Pads and hips behind the wall."""
    size = partial(Linear, written=units.lengths)
    low = (window.left, window.bottom)
    places = [FROM_ABOVE(built.lever.pad) for built in shown.pedals]
    places += [FROM_ABOVE(one.brake.rest.hip) for one in shown.drivers]
    # what is as far back is dimensioned once, from the one that stands lowest on the paper
    lowest = {units.lengths(at[0], 1): at for at in sorted(places, key=lambda at: -at[1])}
    rows = (size(low, at, "horizontal") for at in lowest.values())
    yield Stack(tuple(rows), side=-1.0, base=window.bottom)
