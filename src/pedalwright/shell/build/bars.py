"""Bars placed: each with ends of its own, bound to what they are fixed to as their fit allows."""

import numpy as np

from pedalwright.core.faults import Fault
from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.build.site import Site
from pedalwright.shell.elements.beam import STATIONS
from pedalwright.shell.mesh import SIX, Flags
from pedalwright.shell.parts import Bar, End, Fit
from pedalwright.shell.sections import stiffness

#: Freedoms that each fit lets go; the first axis is the pin's or the slide's.
FREE: dict[Fit, tuple[int, ...]] = {"weld": (), "pin": (3,), "ball": (3, 4, 5), "slide": (0,)}
#: Of a ball at a rod's second end, when there is one at the first: the rod's own spin is held,
#: which carries nothing, for at the first end it is free.
SECOND_BALL = (4, 5)


def place_bars(site: Site) -> None:
    """Place the bars and bind their ends, those first that others are fixed to."""
    for bar in site.bench.bars:
        material = bar.material
        ends = (site.node(xyz(bar.start.at)), site.node(xyz(bar.end.at)))
        site.points[f"{bar.name}.start"], site.points[f"{bar.name}.end"] = ends
        section = stiffness(bar.section, bar.end_section, material, STATIONS)
        site.bar(ends, site.part(bar.part or bar.name, material), xyz(bar.up), section)
    for bar in site.bench.bars:
        for which, end in (("start", bar.start), ("end", bar.end)):
            if end.to is not None:
                _fix(site, bar, which, end, end.to)


def _fix(site: Site, bar: Bar, which: str, end: End, to: str) -> None:
    free = FREE[end.fit]
    own = f"{bar.name}.{which}"
    if which == "end" and bar.start.fit == bar.end.fit == "ball":
        free = SECOND_BALL
    axis = xyz(bar.end.at) - xyz(bar.start.at) if end.axis is None else xyz(end.axis)
    if not site.link(site.points[own], site.points[to], _axes(axis), _flags(free)):
        site.wrong.append(
            Fault(
                where=f"bar {bar.name}, {which}",
                read=f"fixed to {to}, which goes with something else itself",
                accepts="Fix it to what that one is fixed to.",
            )
        )


def _flags(free: tuple[int, ...]) -> Flags:
    flags = np.zeros(SIX, dtype=np.bool_)
    flags[list(free)] = True
    return flags


def _axes(first: Array) -> Array:
    """Three square axes of which the first is given."""
    x: Array = first / np.linalg.norm(first)
    aside: Array = np.eye(3)[int(np.argmin(np.abs(x)))]
    square: Array = np.cross(x, aside)
    y: Array = square / np.linalg.norm(square)
    return np.stack([x, y, np.cross(x, y)])
