"""A drawing: shapes with a name, a scale and the window one looks through."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import pi

from pedalwright.drawing.box import Box
from pedalwright.drawing.leader import Leader
from pedalwright.drawing.shapes import Group, Item, Mark, Shape, Text, extent, plain

#: Reduction scales of ISO 5455, largest first.
SCALES = (1.0, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50)


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """Shapes in mm of the real thing; `scale` is mm on paper for each of them (1 to 5 is 0.2)."""

    #: Short name without blanks, e.g. `side-elevation`.
    name: str
    #: What a reader calls it.
    title: str
    #: One sentence for those who cannot see it.
    description: str = ""
    shapes: tuple[Item, ...]
    scale: float = 1.0
    #: What is shown; without one, everything with a margin.
    window: Box | None = None
    #: Margin round everything, mm on paper.
    margin: float = 3.0

    def laid_out(self) -> "Layout":
        """Plain shapes and the window they are seen through.

        Notes on leaders move to where no text stands yet. They, and the letters of all other
        marks, come last, so that no line crosses them out.
        """
        leaders: list[Leader] = []
        letters: list[Text] = []

        def draw(mark: Mark) -> Iterator[Item]:
            if isinstance(mark, Leader):
                leaders.append(mark)
                return
            for item in mark.drawn(self.scale):
                if isinstance(item, Text):
                    letters.append(item)
                else:
                    yield item

        shapes = list(plain(self.shapes, draw))
        letters = [text for text in plain(letters, draw) if isinstance(text, Text)]
        taken = _rooms([*shapes, *letters], self.scale)
        for leader in leaders:
            moved = _in_free_place(leader, taken, self.scale)
            shapes += plain(moved.drawn(self.scale), draw)
        shapes += letters
        return Layout(tuple(shapes), self.window or self._around(shapes))

    def _around(self, shapes: Iterable[Shape]) -> Box:
        box = extent(shapes, self.scale) or Box(0.0, 0.0, 0.0, 0.0)
        return box.grown(self.margin / self.scale)

    def fitted(self, width: float, height: float) -> "Drawing":
        """The same at the largest usual scale that fits a space on paper, mm.

        If even 1 : 50 is too large, 1 : 50.
        """
        for scale in SCALES:
            sized = replace(self, scale=scale)
            window = sized.laid_out().window
            if window.width * scale <= width and window.height * scale <= height:
                return sized
        return replace(self, scale=SCALES[-1])

    @property
    def scale_text(self) -> str:
        """The scale as a title block writes it: 1:5."""
        if self.scale > 1.0:
            return f"{self.scale:g}:1"
        return f"1:{1 / self.scale:g}"


@dataclass(frozen=True, slots=True)
class Layout:
    """A drawing ready to be written: plain shapes, the last on top, and the window on them."""

    shapes: tuple[Shape, ...]
    window: Box


def _rooms(shapes: Iterable[Item], scale: float) -> list[Box]:
    """Boxes of all texts."""
    rooms: list[Box] = []
    for shape in shapes:
        if isinstance(shape, Group):
            rooms += _rooms(shape.shapes, scale)
        elif isinstance(shape, Text) and (box := extent([shape], scale)):
            rooms.append(box)
    return rooms


def _in_free_place(leader: Leader, taken: list[Box], scale: float) -> Leader:
    """The leader, longer or turned until its note covers no other text; its place is then taken.

    The shortest free place wins. If there is none it stays as it was.
    """
    for factor, turn in _TRIES:
        moved = leader.moved(factor, turn)
        room = moved.room(scale)
        if room and not any(room.grown(APART / scale).meets(other) for other in taken):
            taken.append(room)
            return moved
    return leader


#: Least distance of a note from other letters, mm on paper.
APART = 0.8

#: Ways to move a note: up to three times as far out, up to 60 degrees to either side.
_TRIES = [
    (factor, sixths * pi / 6)
    for factor in (1.0, 1.5, 2.0, 2.5, 3.0)
    for sixths in (0, 1, -1, 2, -2)
]
