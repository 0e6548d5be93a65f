"""Changing a design by the paths of its project file, so that an answer can say what to type."""

from collections.abc import Sequence
from dataclasses import is_dataclass, replace
from typing import Literal, TypeAlias, cast

import numpy as np

from pedalwright.core.answers import Change
from pedalwright.core.points import Point
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.linkage import lever

PedalName: TypeAlias = Literal["brake", "clutch"]
Changes: TypeAlias = tuple[Change, ...]


def changed(design: Design, changes: Sequence[Change]) -> Design:
    """The design with those numbers in the place of its own."""
    for change in changes:
        design = cast("Design", _put(design, change.path.split("."), change.value))
    return design


def number(design: Design, path: str) -> float:
    """The number a path leads to; nan where it was left out."""
    found: object = design
    for key in path.split("."):
        found = _below(found, key)
    return np.nan if found is None else one(cast("float", found))


def one(value: Num) -> float:
    """A single number, whatever it came as."""
    return float(np.asarray(value))


def pin_at(design: Design, name: PedalName, radius: float) -> Changes:
    """The rod pin at another radius; its cylinder moves with it, so that the rod stays level.

    A cylinder behind a relay lever stays.
    """
    part = design.brake if name == "brake" else design.clutch
    path = f"{name}.pedal.pin_radius"
    changes = (Change(path, radius, "mm"),)
    if part.rod.relay is not None:
        return changes
    moved: Point = lever(replace(part.pedal, pin_radius=radius)).pin - lever(part.pedal).pin
    return changes + tuple(
        Change(f"{name}.rod.socket.{axis}", one(getattr(part.rod.socket + moved, axis)), "mm")
        for axis in ("x", "z")
    )


def _below(tree: object, key: str) -> object:
    if isinstance(tree, tuple):
        items = cast("tuple[object, ...]", tree)
        return items[_place(items, key)]
    found: object = getattr(tree, key)
    return found


def _place(items: tuple[object, ...], key: str) -> int:
    """A place in a tuple, by the item's own name or, as in the file, counted from 1."""
    names = [getattr(item, "name", None) for item in items]
    return names.index(key) if key in names else int(key) - 1


def _put(tree: object, keys: Sequence[str], value: float) -> object:
    if not keys:
        return value
    key, *deeper = keys
    new = _put(_below(tree, key), deeper, value)
    if isinstance(tree, tuple):
        items = cast("tuple[object, ...]", tree)
        place = _place(items, key)
        return (*items[:place], new, *items[place + 1 :])
    assert is_dataclass(tree), f"{key} is below a part"
    assert not isinstance(tree, type)
    return replace(tree, **{key: new})
