"""Plates with an eye for a pivot's shaft, and what a shaft and a rail hold of them."""

from typing import Protocol

from pedalwright.core.points import Point
from pedalwright.core.units import mm
from pedalwright.drawing import XY
from pedalwright.panels.faces import Hole
from pedalwright.panels.made import Clamp, Panel


class Straight(Protocol):
    """Whatever runs from a start to an end."""

    @property
    def start(self) -> Point:
        """Its beginning."""
        ...

    @property
    def end(self) -> Point:
        """Its end."""
        ...


#: Of the metal round an eye: what the shaft's hole takes, and what its collar covers (ours).
BORE, COLLAR = 0.6, 1.4


def eye(centre: XY, round_pivot: mm) -> Hole:
    """The hole for the shaft."""
    return Hole(name="shaft", centre=centre, diameter=BORE * float(round_pivot))


def collar(panel: Panel, face: str, pivot: Point, round_pivot: mm) -> Clamp:
    """The metal that goes with the shaft."""
    plane = panel.flat(face).plane
    return Clamp(
        name=f"{panel.name}, {face} eye",
        sheet=panel.sheet(face),
        centre=plane.point(plane.place(pivot)),
        width=COLLAR * float(round_pivot),
    )


def foot_on(tube: Straight, point: Point) -> Point:
    """The place on a tube's middle that is nearest to a point."""
    way = (tube.end - tube.start).unit()
    return tube.start + way * (point - tube.start).dot(way)
