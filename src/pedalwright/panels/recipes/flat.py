"""Walls and doublers: flat plates."""

from typing import Literal

from pedalwright.drawing import XY
from pedalwright.panels.faces import Face, Hole
from pedalwright.panels.made import Glued, Held, Made, Panel, Row
from pedalwright.panels.metals import metal
from pedalwright.panels.parts import Doubler, Edge, Glue, Wall
from pedalwright.panels.plane import edges
from pedalwright.panels.recipes.ground import Ground, beside, lying, on, one, place, stacked
from pedalwright.panels.rows import around, rectangle
from pedalwright.shell.parts import Plane


def wall(part: Wall, ground: Ground) -> Made:
    """A rectangle of a surveyed face, its near side on the face, with what holds its edges."""
    thickness = one(part.thickness)
    surface = lying(ground.survey.face(part.face))
    plane = beside(surface, -thickness / 2)
    (ax, ay), (bx, by) = place(plane, part.low), place(plane, part.high)
    low, high = (min(ax, bx), min(ay, by)), (max(ax, bx), max(ay, by))
    outline = (low, (high[0], low[1]), high, (low[0], high[1]))
    holes = tuple(
        Hole(name=f"H{i}", centre=place(plane, hole.at), diameter=one(hole.diameter))
        for i, hole in enumerate(part.openings, 1)
    )
    panel = Panel(
        name=part.name,
        face=Face(name="wall", outline=outline, holes=holes),
        lying=plane,
        thickness=thickness,
        metal=metal(part.metal, thickness),
    )
    sides: tuple[tuple[str, Edge], ...] = (
        ("bottom", part.bottom),
        ("right", part.right),
        ("top", part.top),
        ("left", part.left),
    )
    held: list[Held] = []
    for (name, how), (start, end) in zip(sides, edges(outline), strict=True):
        if how != "free":
            way: Literal["pinned", "built in"] = how
            held.append(
                Held(
                    name=f"{part.name}, {name} edge",
                    part=part.name,
                    start=plane.point(start),
                    end=plane.point(end),
                    how=way,
                )
            )
    return Made(panels=(panel,), held=tuple(held))


def doubler(part: Doubler, ground: Ground) -> Made:
    """A rectangle on another panel, held by a row of fasteners all round or glued."""
    base = ground.panel(part.on, f"box.doublers.{part.name}.on")
    if base is None:
        return Made()
    thickness = one(part.thickness)
    plane = on(base, part.side, thickness)
    middle = place(plane, part.middle)
    width, height = one(part.width), one(part.height)
    outline = rectangle(middle, width, height)
    sheet = f"{part.name}.plate"
    if isinstance(part.joined, Glue):
        panel = _plate(part, outline, plane)
        return Made(panels=(panel,), glued=(Glued(layer=sheet, base=base.sheet()),))
    inset = 2 * one(part.joined.edge)
    line = around(rectangle(middle, width - inset, height - inset), part.joined)
    row = Row(
        name=f"{part.name} on {base.name}",
        joining=part.joined,
        places=tuple(plane.point(at) for at in line),
        through=stacked(base, sheet, part.side),
        stack=thickness + base.thickness,
    )
    panel = _plate(part, outline, plane)
    return Made(panels=(panel,), rows=(row,), touching=((sheet, base.sheet()),))


def _plate(part: Doubler, outline: tuple[XY, ...], plane: Plane) -> Panel:
    thickness = one(part.thickness)
    return Panel(
        name=part.name,
        face=Face(name="plate", outline=outline),
        lying=plane,
        thickness=thickness,
        metal=metal(part.metal, thickness),
    )
