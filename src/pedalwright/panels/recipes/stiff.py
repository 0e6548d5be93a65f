"""Gussets and stiffeners: what makes a wall stiff with little metal."""

from math import pi

from pedalwright.core.points import Point
from pedalwright.drawing import XY
from pedalwright.panels.faces import Face, Fold
from pedalwright.panels.made import Glued, Made, Panel, Row
from pedalwright.panels.metals import metal
from pedalwright.panels.parts import Glue, Gusset, Joining, Stiffener
from pedalwright.panels.recipes.ground import Ground, one, stacked
from pedalwright.panels.rows import along, rectangle
from pedalwright.shell.parts import Plane

#: A flange begins so far from the corner where the walls meet, in radii and in thicknesses (ours).
CLEAR = 3.0


def stiffener(part: Stiffener, ground: Ground) -> Made:
    """An angle; seen along it from its start, its standing leg is on the right of its foot."""
    base = ground.panel(part.on, f"box.stiffeners.{part.name}.on")
    if base is None:
        return Made()
    thickness = one(part.thickness)
    sense = 1.0 if part.side == "near" else -1.0
    normal = base.lying.normal * sense
    start = _on_face(base, part.start, normal, thickness)
    end = _on_face(base, part.end, normal, thickness)
    run = end - start
    way = run.unit()
    length, foot, height = float(run.length()), one(part.foot), one(part.height)
    leg = Face(name="leg", outline=rectangle((length / 2, height / 2), length, height))
    fold = Fold(
        name="leg",
        start=(length, 0.0),
        end=(0.0, 0.0),
        angle=pi / 2,
        radius=one(part.bend),
        face=leg,
    )
    face = Face(
        name="foot",
        outline=rectangle((length / 2, foot / 2), length, foot),
        folds=(fold,),
    )
    panel = Panel(
        name=part.name,
        face=face,
        lying=Plane(origin=start, along=way, across=normal.cross(way)),
        thickness=thickness,
        metal=metal(part.metal, thickness),
    )
    middle = foot / 2
    joined = _joined(
        part.joined, panel, "foot", base, ((0.0, middle), (length, middle)), near=sense > 0.0
    )
    return Made(panels=(panel,)) + joined


def gusset(part: Gusset, ground: Ground) -> Made:
    """A three-sided plate, its two legs' edges turned to lie on the walls it ties."""
    where = f"box.gussets.{part.name}"
    first, second = (
        ground.panel(part.one, f"{where}.one"),
        ground.panel(part.other, f"{where}.other"),
    )
    if first is None or second is None:
        return Made()
    thickness = one(part.thickness)
    # Along the line where the walls meet; away from each wall is its near side.
    one_out, other_out = first.lying.normal, second.lying.normal
    line = one_out.cross(other_out).unit()
    corner = _meeting(first, second, part.at, line)
    up_one = (line.cross(one_out)).unit()
    up_one = up_one if float(up_one.dot(other_out)) > 0.0 else -up_one
    up_other = (line.cross(other_out)).unit()
    up_other = up_other if float(up_other.dot(one_out)) > 0.0 else -up_other
    # x along one wall, y along the other, so that the flanges turn to the side that was asked.
    a, b, width = one(part.leg_other), one(part.leg_one), one(part.flange)
    plane = Plane(origin=corner, along=up_other, across=up_one)
    if (float(plane.normal.y) > 0.0) != (part.turned == "right"):
        plane = Plane(origin=corner, along=up_one, across=up_other)
        a, b, first, second = b, a, second, first
    begins = CLEAR * thickness + one(part.bend)
    outline = ((begins, 0.0), (a, 0.0), (a, width), (width, b), (0.0, b), (0.0, begins))
    legs = (
        ("other", (a, 0.0), (begins, 0.0), a - begins),
        ("one", (0.0, begins), (0.0, b), b - begins),
    )
    face = Face(
        name="web",
        outline=outline,
        folds=tuple(_turned(part, name, start, end, length) for name, start, end, length in legs),
    )
    panel = Panel(
        name=part.name,
        face=face,
        lying=plane,
        thickness=thickness,
        metal=metal(part.metal, thickness),
    )
    made = Made(panels=(panel,))
    for (name, _, _, length), base in zip(legs, (second, first), strict=True):
        made += _joined(
            part.joined, panel, name, base, ((0.0, width / 2), (length, width / 2)), near=True
        )
    return made


def _turned(part: Gusset, name: str, start: XY, end: XY, length: float) -> Fold:
    width = one(part.flange)
    face = Face(name=name, outline=rectangle((length / 2, width / 2), length, width))
    return Fold(name=name, start=start, end=end, angle=pi / 2, radius=one(part.bend), face=face)


def _on_face(base: Panel, point: Point, normal: Point, thickness: float) -> Point:
    """The foot of a point on a panel, lifted to the middle of a sheet that lies on it."""
    plane = base.lying
    return plane.point(plane.place(point)) + normal * ((base.thickness + thickness) / 2)


def _meeting(first: Panel, second: Panel, at: Point, line: Point) -> Point:
    """Where the near faces of two walls meet, in the plane through `at` square to that line."""
    n, m = first.lying.normal, second.lying.normal
    c = float(n.dot(first.lying.origin)) + first.thickness / 2
    d = float(m.dot(second.lying.origin)) + second.thickness / 2
    e = float(line.dot(at))
    volume = float(n.dot(m.cross(line)))
    return (m.cross(line) * c + line.cross(n) * d + n.cross(m) * e) * (1.0 / volume)


def _joined(
    joining: Joining, panel: Panel, face: str, base: Panel, line: tuple[XY, XY], *, near: bool
) -> Made:
    """One row along a flange that lies on a panel; or glue."""
    sheet = panel.sheet(face)
    if isinstance(joining, Glue):
        return Made(glued=(Glued(layer=sheet, base=base.sheet()),))
    plane = panel.flat(face).plane
    row = Row(
        name=f"{sheet} on {base.name}",
        joining=joining,
        places=tuple(plane.point(at) for at in along(*line, joining)),
        through=stacked(base, sheet, "near" if near else "far"),
        stack=panel.thickness + base.thickness,
    )
    return Made(rows=(row,), touching=((sheet, base.sheet()),))
