"""Covers, foot-tubs and heel plates: made and counted, but no load is led through them."""

from math import pi

from pedalwright.core.faults import Fault
from pedalwright.core.points import Point
from pedalwright.core.units import mm
from pedalwright.drawing import XY
from pedalwright.panels.faces import Face, Fold
from pedalwright.panels.made import Made, Panel, Row
from pedalwright.panels.metals import metal
from pedalwright.panels.parts import Cover, FootTub, HeelPlate, Side, Spaced
from pedalwright.panels.plane import apart, edges
from pedalwright.panels.recipes.ground import Ground, beside, on, one, place, stacked
from pedalwright.panels.rows import around, oval, rectangle
from pedalwright.shell.parts import Plane

#: Beside another fold one begins so many thicknesses beyond its radius (ours).
CLEAR = 3.0


def cover(part: Cover, ground: Ground) -> Made:
    """A lid on a wall, its edges turned away from it."""
    where = f"box.covers.{part.name}"
    base = ground.panel(part.on, f"{where}.on")
    if base is None:
        return Made()
    depth = one(part.depth)
    if part.shape == "round" and depth > 0.0:
        ground.wrong.append(
            Fault(
                where=f"{where}.depth",
                read=f"{depth:g} mm on a round lid",
                accepts="0: a folder turns straight edges only. A round one is beaten over a "
                "former, or stiffened with a ring.",
            )
        )
        return Made()
    lying = on(base, part.side, one(part.thickness))
    middle, width, height = place(lying, part.middle), one(part.width), one(part.height)
    shape = oval if part.shape == "round" else rectangle
    outline = shape(middle, width, height)
    up = pi / 2 if part.side == "near" else -pi / 2
    folds = _turned_edges(outline, depth, one(part.bend), one(part.thickness), up) if depth else ()
    panel = _plate(part.name, "lid", outline, folds, lying, one(part.thickness), part.metal)
    inset = 2 * (one(part.joined.edge) + (one(part.bend) + panel.thickness if depth else 0.0))
    line = shape(middle, width - inset, height - inset)
    return Made(panels=(panel,), rows=(_row(part.joined, panel, base, line, near=part.side),))


def heel_plate(part: HeelPlate, ground: Ground) -> Made:
    """A plate on the floor, its rear edge turned up for the heels."""
    base = ground.panel(part.on, f"box.heel_plates.{part.name}.on")
    if base is None:
        return Made()
    lying = on(base, "near", one(part.thickness))
    middle, length, width = place(lying, part.middle), one(part.length), one(part.width)
    outline = rectangle(middle, width, length)
    lip = one(part.lip)
    folds: tuple[Fold, ...] = ()
    if lip:
        rear = edges(outline)[0]
        folds = (_edge("lip", rear, lip, one(part.bend), pi / 2),)
    panel = _plate(part.name, "plate", outline, folds, lying, one(part.thickness), part.metal)
    inset = 2 * one(part.joined.edge)
    line = rectangle(middle, width - inset, length - inset)
    return Made(panels=(panel,), rows=(_row(part.joined, panel, base, line, near="near"),))


def foot_tub(part: FootTub, ground: Ground) -> Made:
    """A tray through the floor: a bottom, four sides, a flange on each that lies on the floor."""
    base = ground.panel(part.on, f"box.foot_tubs.{part.name}.on")
    if base is None:
        return Made()
    thickness, depth, flange = one(part.thickness), one(part.depth), one(part.flange)
    top = on(base, "near", thickness)
    # The flange's far face lies on the floor; the tray's outside is so deep below that.
    lying = beside(top, thickness - depth)
    middle, length, width = place(lying, part.middle), one(part.length), one(part.width)
    outline = rectangle(middle, width, length)
    names = ("rear", "right side", "front", "left side")
    folds = tuple(
        _side(name, edge, depth, flange, part.bend, thickness, corners=name.endswith("side"))
        for name, edge in zip(names, edges(outline), strict=True)
    )
    panel = _plate(part.name, "bottom", outline, folds, lying, thickness, part.metal)
    around_it = 2 * (flange - one(part.joined.edge))
    line = around(rectangle(middle, width + around_it, length + around_it), part.joined)
    places = tuple(top.point(at) for at in line)
    rows = tuple(
        Row(
            name=f"{panel.sheet(f'{name} flange')} on {base.name}",
            joining=part.joined,
            places=own,
            through=stacked(base, panel.sheet(f"{name} flange"), "near"),
            stack=thickness + base.thickness,
            counted=False,
        )
        for name, own in _shared(places, top, middle, (width, length), names)
    )
    return Made(panels=(panel,), rows=rows)


def _shared(
    places: tuple[Point, ...],
    top: Plane,
    middle: XY,
    size: tuple[float, float],
    names: tuple[str, ...],
) -> list[tuple[str, tuple[Point, ...]]]:
    """Which flange each place is on: those on the long sides reach round the corners."""
    found: dict[str, list[Point]] = {name: [] for name in names}
    for point in places:
        x, y = place(top, point)
        if abs(x - middle[0]) > size[0] / 2:
            found[names[1] if x > middle[0] else names[3]].append(point)
        else:
            found[names[0] if y < middle[1] else names[2]].append(point)
    return [(name, tuple(own)) for name, own in found.items() if own]


def _side(
    name: str,
    edge: tuple[XY, XY],
    depth: float,
    flange: float,
    bend: mm,
    thickness: float,
    *,
    corners: bool,
) -> Fold:
    """A side of the tray and its flange, turned outward; at `corners` it reaches round them."""
    length = apart(*edge)
    # Drawn from its mould line, which is on the tray's inside: so it stands `flange` outside.
    flange += thickness
    clear = one(bend) + CLEAR * thickness
    outline: tuple[XY, ...] = rectangle((length / 2, flange / 2), length, flange)
    if corners:
        low, high = -flange, length + flange
        outline = ((0.0, 0.0), (length, 0.0), (length, clear), (high, clear), (high, flange),
                   (low, flange), (low, clear), (0.0, clear))  # fmt: skip
    lies = Face(name=f"{name} flange", outline=outline)
    wall = Face(
        name=name,
        outline=rectangle((length / 2, depth / 2), length, depth),
        folds=(
            Fold(
                name=f"{name} flange",
                start=(0.0, depth),
                end=(length, depth),
                angle=-pi / 2,
                radius=one(bend),
                face=lies,
            ),
        ),
    )
    start, end = edge
    return Fold(name=name, start=end, end=start, angle=pi / 2, radius=one(bend), face=wall)


def _turned_edges(
    outline: tuple[XY, ...], depth: float, bend: float, thickness: float, angle: float
) -> tuple[Fold, ...]:
    """Edges turned all round a rectangle; those of the short sides begin clear of the long ones."""
    clear = bend + CLEAR * thickness
    names = ("lower edge", "right edge", "upper edge", "left edge")
    longest = max(apart(*edge) for edge in edges(outline))
    return tuple(
        _edge(name, edge, depth, bend, angle, 0.0 if apart(*edge) > longest - 1e-6 else clear)
        for name, edge in zip(names, edges(outline), strict=True)
    )


def _edge(
    name: str, edge: tuple[XY, XY], depth: float, bend: float, angle: float, clear: float = 0.0
) -> Fold:
    (ax, ay), (bx, by) = edge
    length = apart(*edge)
    share = clear / length
    start = bx + (ax - bx) * share, by + (ay - by) * share
    end = ax + (bx - ax) * share, ay + (by - ay) * share
    face = Face(
        name=name,
        outline=rectangle(((length - 2 * clear) / 2, depth / 2), length - 2 * clear, depth),
    )
    return Fold(name=name, start=start, end=end, angle=angle, radius=bend, face=face)


def _plate(
    name: str,
    face: str,
    outline: tuple[XY, ...],
    folds: tuple[Fold, ...],
    lying: Plane,
    thickness: float,
    called: str,
) -> Panel:
    return Panel(
        name=name,
        face=Face(name=face, outline=outline, folds=folds),
        lying=lying,
        thickness=thickness,
        metal=metal(called, thickness),
        counted=False,
    )


def _row(joining: Spaced, panel: Panel, base: Panel, line: tuple[XY, ...], *, near: Side) -> Row:
    return Row(
        name=f"{panel.name} on {base.name}",
        joining=joining,
        places=tuple(panel.lying.point(at) for at in around(line, joining)),
        through=stacked(base, panel.sheet(), near),
        stack=panel.thickness + base.thickness,
        counted=False,
    )
