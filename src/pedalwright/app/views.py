"""What one tab looks at. It is the tab's own, stands in its address, and changes no number."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import cast
from urllib.parse import urlencode

from pedalwright.app.stages import BY_KEY, OVERVIEW
from pedalwright.assess.stroke import PEDAL_NAMES, PedalName
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.space import TIPS, TURNS, USUAL_TIP, USUAL_TURN
from pedalwright.documents.pictures.stroke import Look, SideName, paper

#: Where one can look from, and what it is called.
SIDES = {
    "side": "Side",
    "plan": "Plan",
    "front": "Front",
    "space": "3-D",
    "box": "Box",
}
#: Those in which nothing can be taken hold of.
IN_SPACE = ("space", "box")

#: Pixels of a drawing when nobody says how large it is; the least and the most that are drawn.
USUAL, LEAST, MOST = (720, 460), 120, 4000


@dataclass(frozen=True, kw_only=True, slots=True)
class View:
    """Stage, pedal, foot, drivers, and the size of the place for the drawing."""

    stage: str
    pedal: PedalName
    #: Per cent of the stroke.
    down: int
    close: bool
    #: Where one looks from: one of `SIDES`.
    side: str
    #: Layers over the drawing: where shoes go, what room is left.
    sweep: bool
    room: bool
    #: Of the look in space: steps round the car, and up.
    turn: int
    tip: int
    #: Names; the first is the one whose figures are shown.
    drivers: tuple[str, ...]
    #: Pixels.
    size: tuple[int, int]

    def look(self, units: Units) -> Look:
        """The same for the picture."""
        return Look(
            pedal=self.pedal,
            down=self.down,
            drivers=self.drivers,
            close=self.close,
            paper=paper(self.size),
            side="side" if self.side in IN_SPACE else cast("SideName", self.side),
            sweep=self.sweep,
            room=self.room,
            units=units,
        )

    @property
    def most_tip(self) -> int:
        """Steps up, or down, as far as one can look from."""
        return TIPS

    @property
    def has_handles(self) -> bool:
        """Whether the paper lies square in the car, so that a place on it is one in the car."""
        return self.side not in IN_SPACE

    def address(self, **other: object) -> str:
        """The same view in an address, with something else in it."""
        said = {
            "stage": self.stage,
            "pedal": self.pedal,
            "side": self.side,
            "down": self.down,
            "close": "1" if self.close else "",
            "sweep": "1" if self.sweep else "",
            "room": "1" if self.room else "",
            "turn": self.turn,
            "tip": self.tip,
            "drivers": "|".join(self.drivers),
        }
        return f"?{urlencode(said | other)}"

    @property
    def driver(self) -> str:
        """Whose figures are shown; empty where nobody is."""
        return self.drivers[0] if self.drivers else ""


def view(asked: Mapping[str, str], design: Design) -> View:
    """The view an address asks for; what it does not say, or says wrongly, is as usual."""
    stage = BY_KEY.get(asked.get("stage", ""), OVERVIEW)
    names = tuple(person.name for person in design.drivers)
    chosen = tuple(name for name in asked.get("drivers", "").split("|") if name in names)
    pedal: PedalName | None = next((p for p in PEDAL_NAMES if p == asked.get("pedal")), None)
    return View(
        stage=stage.key,
        pedal=pedal or stage.pedal or "brake",
        down=max(0, min(100, _whole(asked.get("down"), 0))),
        close=asked.get("close") == "1",
        side=asked.get("side", "") if asked.get("side") in SIDES else "side",
        sweep=asked.get("sweep") == "1",
        room=asked.get("room") == "1",
        turn=_whole(asked.get("turn"), USUAL_TURN) % TURNS,
        tip=max(-TIPS, min(TIPS, _whole(asked.get("tip"), USUAL_TIP))),
        drivers=chosen or names,
        size=(_pixels(asked.get("wide"), USUAL[0]), _pixels(asked.get("high"), USUAL[1])),
    )


def _pixels(text: str | None, usual: int) -> int:
    return max(LEAST, min(MOST, _whole(text, usual)))


def _whole(text: str | None, otherwise: int) -> int:
    try:
        return round(float(text or ""))
    except (ValueError, OverflowError):
        return otherwise
