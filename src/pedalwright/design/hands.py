"""The same car for the other hand of traffic."""

import re
from dataclasses import fields, is_dataclass, replace
from typing import Literal, TypeVar, cast

from pedalwright.core.points import Point
from pedalwright.design.tree import Design
from pedalwright.linkage.parts import Pedal
from pedalwright.panels.parts import Box, Gusset, Stiffener, Wall
from pedalwright.survey.parts import Offset, Survey

T = TypeVar("T")

#: Words that say a side, each with its other.
_SIDES = {
    "left": "right",
    "lh": "rh",
    "nearside": "offside",
}
_OTHER = _SIDES | {other: side for side, other in _SIDES.items()}
_WORD = re.compile(rf"(?<![a-z])({'|'.join(_OTHER)})(?![a-z])", re.IGNORECASE)


def mirrored(design: Design) -> Design:
    """Left for right: y of every point and way negated, and the sides in a survey's names swapped.

    What was read stays as it was read: a tape is as long on the other side.
    """
    turned = _turned(design)
    walls = tuple(_other_edges(wall) for wall in turned.box.walls)
    return replace(
        turned,
        survey=_renamed(turned.survey),
        box=_other_faces(replace(turned.box, walls=walls)),
    )


def _other_edges(wall: Wall) -> Wall:
    """The edges to the left and to the right change places."""
    return replace(wall, left=wall.right, right=wall.left)


def _other_faces(box: Box) -> Box:
    """The survey's names in a box, which are swapped there."""
    return replace(
        box,
        walls=tuple(replace(wall, face=other_side(wall.face)) for wall in box.walls),
        rails=tuple(replace(rail, line=other_side(rail.line)) for rail in box.rails),
    )


def other_side(name: str) -> str:
    """A name with its sides swapped, as it was written: `Left rail` is `Right rail`."""

    def swapped(found: re.Match[str]) -> str:
        word, other = found[0], _OTHER[found[0].lower()]
        if word.isupper():
            return other.upper()
        return other.capitalize() if word[0].isupper() else other

    return _WORD.sub(swapped, name)


def _turned(tree: T) -> T:
    if isinstance(tree, Point):
        return cast("T", tree.mirrored())
    if isinstance(tree, tuple):
        return cast("T", tuple(_turned(item) for item in cast("tuple[object, ...]", tree)))
    if not is_dataclass(tree) or isinstance(tree, type):
        return tree
    below = {field.name: _turned(getattr(tree, field.name)) for field in fields(tree)}
    other = replace(tree, **below)
    if isinstance(other, Pedal):
        return cast("T", replace(other, pad_offset=-other.pad_offset))
    if isinstance(other, Stiffener):  # its standing leg changes sides with its direction
        return cast("T", replace(other, start=other.end, end=other.start))
    if isinstance(other, Gusset):
        turned: Literal["left", "right"] = "left" if other.turned == "right" else "right"
        return cast("T", replace(other, turned=turned))
    if isinstance(other, Offset) and other.right is not None:
        return cast("T", replace(other, right=-other.right))
    if isinstance(other, Survey) and other.roll is not None:
        return cast("T", replace(other, roll=-other.roll))
    return cast("T", other)


def _renamed(tree: T) -> T:
    if isinstance(tree, str):
        return cast("T", other_side(tree))
    if isinstance(tree, tuple):
        return cast("T", tuple(_renamed(item) for item in cast("tuple[object, ...]", tree)))
    if not is_dataclass(tree) or isinstance(tree, type):
        return tree
    below = {field.name: _renamed(getattr(tree, field.name)) for field in fields(tree)}
    return cast("T", replace(tree, **below))
