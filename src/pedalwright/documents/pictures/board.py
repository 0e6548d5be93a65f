"""The big drawing of the page: the car from one of three sides, one pedal pressed, some drivers.

What stands still is drawn apart from what a hand moves, so that a drag draws only the second.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import isfinite

from pedalwright.assess import Assessment
from pedalwright.assess.stroke import Pressed
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures import front, plan, stroke
from pedalwright.documents.pictures.feet import Scene, legs, pads, pressed_scene
from pedalwright.documents.pictures.layers import room, sweep
from pedalwright.documents.pictures.stroke import Look, heel_level
from pedalwright.documents.pictures.views import FROM_ABOVE, FROM_THE_LEFT, FROM_THE_SEAT, View
from pedalwright.drawing import XY, Box, Drawing, Item

#: Paper round a drawing for its dimensions, its names, or neither, mm: left, below, right, above.
MEASURED, NAMED, PLAIN = (34.0, 38.0, 30.0, 6.0), (30.0, 6.0, 26.0, 6.0), (6.0, 6.0, 6.0, 6.0)
#: Paper lower than this has no room for rows of dimensions, mm.
ROOM_FOR_ROWS = 115.0


@dataclass(frozen=True, slots=True)
class _Side:
    """One side from which all three pedals are seen."""

    view: View
    says: str
    window: Callable[[Scene], Box]
    footwell: Callable[[Scene, Box], Iterator[Item]]
    names: Callable[[Scene, Box], Iterator[Item]]
    dimensions: Callable[[Scene, Box, Units], Iterator[Item]]


_SIDES = {
    "plan": _Side(
        FROM_ABOVE, "from above, front to the left",
        plan.window_of, plan.footwell, plan.names, plan.dimensions,
    ),
    "front": _Side(
        FROM_THE_SEAT, "from the seat",
        front.window_of, front.footwell, front.names, front.dimensions,
    ),
}  # fmt: skip


@dataclass(frozen=True, kw_only=True, slots=True)
class Board:
    """One car as it is looked at."""

    design: Design
    assessment: Assessment
    now: Pressed
    look: Look

    @property
    def view(self) -> View:
        """Which way the paper lies in the car."""
        return FROM_THE_LEFT if self.look.side == "side" else _SIDES[self.look.side].view

    @property
    def scene(self) -> Scene:
        """All three pedals, the one that is looked at pressed."""
        look = self.look
        return pressed_scene(self.design, self.assessment, look.pedal, self.now, look.drivers)

    def window(self) -> Box:
        """What is seen, of the shape of the paper."""
        if self.look.side == "side":
            return stroke.window(self.design, self.now, self.look)
        shown = self.scene
        places = [*self._side.window(shown).corners, *self._far(shown)]
        around = Box.around(at for at in places if isfinite(sum(at)))
        return _on_paper(around or Box(0.0, 0.0, 500.0, 500.0), self.look)

    def ground(self, window: Box) -> Drawing:
        """What stands still: walls, floor, tubes."""
        if self.look.side == "side":
            return stroke.footwell_picture(self.design, self.look, window)
        shown = self.scene
        return Drawing(
            name=f"footwell-{self.look.side}",
            title=f"The footwell {self._side.says}",
            shapes=tuple(self._side.footwell(shown, self._side.window(shown))),
            scale=_scale(self.look, window),
            window=window,
        )

    def stands_still(self, window: Box) -> tuple[object, ...]:
        """What the ground is drawn from: while it is the same, so is the ground."""
        design, look = self.design, self.look
        own = (design.brake.pedal, design.clutch.pedal, design.throttle.pedal, look.drivers)
        return (self.walls(window), None if look.side == "side" else own)

    def walls(self, window: Box) -> tuple[object, ...]:
        """The same without what a wall is cut at."""
        look = self.look
        return (look.side, look.notes, window, heel_level(self.design), self.design.survey)

    def moving(self, window: Box) -> Drawing:
        """Pedals and legs."""
        if self.look.side == "side":
            drawing = stroke.stroke_picture(self.design, self.now, self.look, window)
        else:
            drawing = self._moving(window)
        return _over(drawing, under=self._under(), on_top=self._on_top())

    def _moving(self, window: Box) -> Drawing:
        shown, side, look = self.scene, self._side, self.look
        edges = side.window(shown)
        notes = tuple(side.names(shown, edges)) if look.notes else ()
        if _measured(look):
            notes += tuple(side.dimensions(shown, edges, look.units))
        return Drawing(
            name=f"{look.side}-view",
            title=f"All three pedals {side.says}, the {look.pedal} {stroke.where(look.down)}",
            description=(
                f"Three pedals {side.says}; the {look.pedal} pedal {stroke.where(look.down)}."
            ),
            shapes=(*legs(side.view, shown), *pads(side.view, shown), *notes),
            scale=_scale(look, window),
            window=window,
        )

    def _under(self) -> tuple[Item, ...]:
        if not self.look.sweep:
            return ()
        return tuple(sweep(self.view, self.design, self.assessment, self.look))

    def _on_top(self) -> tuple[Item, ...]:
        if not self.look.room:
            return ()
        return tuple(room(self.view, self.scene, self.now.pad, self.assessment, self.look))

    @property
    def _side(self) -> _Side:
        return _SIDES[self.look.side]

    def _far(self, shown: Scene) -> Iterator[XY]:
        """What is seen of people, where one does not stand close."""
        if self.look.close:
            return
        for one in shown.drivers:
            for which in ("clutch", "brake", "throttle"):
                posture = shown.posture(one, which)
                yield self.view(posture.hip)
                yield self.view(posture.knee)


def _on_paper(box: Box, look: Look) -> Box:
    """Round it room for notes, and of the shape of the paper."""
    named = NAMED if look.notes else PLAIN
    left, below, right, above = MEASURED if _measured(look) else named
    wide, high = look.paper[0] - left - right, look.paper[1] - below - above
    scale = min(wide / box.width, high / box.height)
    across, up = wide / scale - box.width, high / scale - box.height
    return Box(
        box.left - left / scale - across / 2.0,
        box.bottom - below / scale - up / 2.0,
        box.right + right / scale + across / 2.0,
        box.top + above / scale + up / 2.0,
    )


def _measured(look: Look) -> bool:
    return look.notes and look.paper[1] >= ROOM_FOR_ROWS


def _scale(look: Look, window: Box) -> float:
    return min(look.paper[0] / window.width, look.paper[1] / window.height)


def _over(drawing: Drawing, *, under: Sequence[Item], on_top: Sequence[Item]) -> Drawing:
    return replace(drawing, shapes=(*under, *drawing.shapes, *on_top))
