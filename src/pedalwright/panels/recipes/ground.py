"""What a recipe stands on: the survey, what is made already, and what is wrong so far."""

from dataclasses import dataclass, field

from pedalwright.core.faults import Fault
from pedalwright.core.points import RIGHT, UP, Point
from pedalwright.core.points import Plane as Surface
from pedalwright.core.units import mm
from pedalwright.drawing import XY
from pedalwright.panels.made import Clamp, Made, Panel, Tube
from pedalwright.panels.parts import Side
from pedalwright.shell.parts import Plane
from pedalwright.survey.parts import Survey

#: A surface whose normal is this near to upright is a floor.
LEVEL = 0.9


@dataclass(slots=True)
class Ground:
    """Shared by the recipes of one box while it is made."""

    survey: Survey
    made: Made = field(default_factory=Made)
    wrong: list[Fault] = field(default_factory=list[Fault])

    #: What hangs on each tube.
    carried: dict[str, list[Clamp]] = field(default_factory=dict[str, list[Clamp]])

    def carry(self, tube: str, clamp: Clamp) -> None:
        """Hang something on a tube."""
        self.carried.setdefault(tube, []).append(clamp)

    def panel(self, name: str, where: str) -> Panel | None:
        """A panel that another part names; a fault and None where there is none."""
        found = self.made.panel(name)
        if found is None:
            names = ", ".join(panel.name for panel in self.made.panels) or "none is described"
            self.wrong.append(Fault(where=where, read=name, accepts=f"A part there is: {names}."))
        return found

    def tube(self, name: str, where: str) -> Tube | None:
        """A rail that another part names; a fault and None where there is none."""
        found = next((tube for tube in self.made.tubes if tube.name == name), None)
        if found is None:
            names = ", ".join(tube.name for tube in self.made.tubes) or "none is described"
            self.wrong.append(Fault(where=where, read=name, accepts=f"A rail there is: {names}."))
        return found


def lying(surface: Surface) -> Plane:
    """Axes on a surveyed surface: to the right and up as the driver sees it.

    Of a floor, which he looks down on, up is forward.
    """
    normal = surface.normal
    if abs(float(normal.z)) > LEVEL:
        along = (RIGHT - normal * normal.dot(RIGHT)).unit()
        across = normal.cross(along)
    else:
        across = (UP - normal * normal.dot(UP)).unit()
        along = across.cross(normal)
    return Plane(origin=normal * surface.offset, along=along, across=across)


def beside(plane: Plane, by: float) -> Plane:
    """The same axes on a plane that lies so far on the near side."""
    return Plane(origin=plane.origin + plane.normal * by, along=plane.along, across=plane.across)


def on(panel: Panel, side: Side, thickness: float) -> Plane:
    """Where a sheet lies that lies on the first face of another, on that side of it."""
    away = (panel.thickness + thickness) / 2
    return beside(panel.lying, away if side == "near" else -away)


def stacked(panel: Panel, sheet: str, side: Side) -> tuple[str, str]:
    """Both faces in the order of the stack, from the far side to the near side."""
    return (panel.sheet(), sheet) if side == "near" else (sheet, panel.sheet())


def place(plane: Plane, point: Point) -> XY:
    """The foot of a point on a plane, as plain numbers."""
    x, y = plane.place(point)
    return float(x), float(y)


def one(value: mm) -> float:
    """A number of a part; a part is made once, so it is never a batch here."""
    return float(value)
