"""Tubes that carry and tie, and the straps that hang a shaft from one."""

from pedalwright.core.faults import Fault
from pedalwright.core.points import UP
from pedalwright.panels.faces import Face
from pedalwright.panels.made import Clamp, Made, Panel, Shaft, Tube
from pedalwright.panels.metals import metal
from pedalwright.panels.outlines import round_eyes
from pedalwright.panels.parts import Hanger, Rail, Tie
from pedalwright.panels.recipes.eyes import collar, eye, foot_on
from pedalwright.panels.recipes.ground import Ground, one
from pedalwright.shell.parts import Plane

#: Of a strap's width, or of the tube if that is less, what the weld or bolt to a tube makes stiff.
WELDED = 0.9


def rail(part: Rail, ground: Ground) -> Made:
    """A surveyed tube; its wall is measured with it."""
    line = ground.survey.line(part.line)
    if line.wall is None:
        ground.wrong.append(
            Fault(
                where=f"survey.lines.{part.line}.wall",
                read="nothing",
                accepts=f"The wall of the tube that carries as {part.name}, such as 2 mm.",
            )
        )
        return Made()
    tube = Tube(
        name=part.name,
        start=line.start,
        end=line.end,
        width=one(line.diameter),
        depth=0.0 if line.height is None else one(line.height),
        wall=one(line.wall),
        metal=metal(part.metal, one(line.wall)),
        start_held=part.start,
        end_held=part.end,
    )
    return Made(tubes=(tube,))


def tie(part: Tie, ground: Ground) -> Made:
    """A tube or bar from a part to the frame or to another part."""
    outside, inside = one(part.outside), one(part.inside)
    ends: list[Clamp | None] = []
    for which, name, at in (
        ("start", part.start_on, part.start),
        ("end", part.end_on, part.end),
    ):
        panel = ground.panel(name, f"box.ties.{part.name}.{which}_on") if name else None
        if panel is None:
            ends.append(None)
            continue
        plane = panel.lying
        ends.append(
            Clamp(
                name=f"{part.name}, {which}",
                sheet=panel.sheet(),
                centre=plane.point(plane.place(at)),
                width=max(outside, 12.0),
            )
        )
    wall = (outside - inside) / 2 if inside else 0.0
    tube = Tube(
        name=part.name,
        start=part.start,
        end=part.end,
        width=outside,
        depth=0.0,
        wall=wall,
        metal=metal(part.metal, wall or outside),
        start_held="free" if part.start_on else "pinned",
        end_held="free" if part.end_on else "pinned",
        start_on=ends[0],
        end_on=ends[1],
        turns=part.ends == "bolted",
    )
    return Made(tubes=(tube,))


def hanger(part: Hanger, ground: Ground) -> Made:
    """Two straps alike, square to the tube they hang from."""
    tube = ground.tube(part.rail, f"box.hangers.{part.name}.rail")
    if tube is None:
        return Made()
    thickness = one(part.thickness)
    way = (tube.end - tube.start).unit()
    top = foot_on(tube, part.pivot)
    across = (UP - way * way.dot(UP)).unit()
    along = across.cross(way)
    reach = part.pivot - top
    pivot = float(reach.dot(along)), float(reach.dot(across))
    outline = round_eyes([((0.0, 0.0), one(part.width) / 2), (pivot, one(part.round_pivot))])
    half = (one(part.spacing) + thickness) / 2
    panels = tuple(
        Panel(
            name=f"{part.name}, {side}",
            face=Face(name="strap", outline=outline, holes=(eye(pivot, part.round_pivot),)),
            lying=Plane(origin=top + way * by, along=along, across=across),
            thickness=thickness,
            metal=metal(part.metal, thickness),
        )
        for side, by in (("one", -half), ("other", half))
    )
    for panel in panels:
        ground.carry(
            tube.name,
            Clamp(
                name=f"{panel.name} on {tube.name}",
                sheet=panel.sheet(),
                centre=panel.lying.origin,
                width=WELDED * min(tube.width, one(part.width)),
            ),
        )
    one_eye, other_eye = (collar(panel, "strap", part.pivot, part.round_pivot) for panel in panels)
    return Made(panels=panels, shafts=(Shaft(name=part.name, one=one_eye, other=other_eye),))
