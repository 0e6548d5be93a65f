"""Numbers tried out, as while a handle is dragged: no text is read anew, no file is touched."""

from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from math import isfinite
from typing import cast

from pedalwright.core.points import Point
from pedalwright.core.quantity import parse, write
from pedalwright.design.tree import Design
from pedalwright.project import paths
from pedalwright.project.edits import Change
from pedalwright.project.entries import Entry
from pedalwright.project.errors import FileFault, ProjectError, fault
from pedalwright.project.projects import Project
from pedalwright.project.provenance import Provenance
from pedalwright.project.quantities import bare_unit, quantity
from pedalwright.project.sanity import clashes

#: Said of a number nobody has measured yet.
CHOSEN = "chosen on the page"
#: What a hand can set, in the unit a number was typed in (ours).
GRAIN = {"mm": 0.1, "cm": 0.01, "m": 0.0001, "in": 0.01, "deg": 0.05}


def tried(project: Project, numbers: Mapping[str, float]) -> Project:
    """The project with other numbers (inside units), each as a builder would type it.

    Its design is the one that `changed` would read from the texts in its provenance. Its own text
    is still the old one: what is tried is saved by changing the entries, not by writing this.
    Raises `ProjectError` for what `changed` would refuse.
    """
    design, provenance = project.design, dict(project.provenance)
    faults: list[FileFault] = []
    for path, number in numbers.items():
        assert isfinite(number), f"{path} is tried with no number"
        found = quantity(_said(provenance[path], number), _shape(path), provenance[path].unit)
        faults += [fault("", None, path, t.read, t.accepts, t.offers) for t in found.troubles]
        design = cast("Design", _with(design, paths.split(path), found.value))
        provenance[path] = found.told
    for clash in () if faults else clashes(design):
        text = provenance[clash.path].text
        faults.append(fault("", None, clash.path, text, clash.accepts, clash.offers))
    if faults:
        raise ProjectError(tuple(faults))
    return replace(project, design=design, provenance=provenance)


def chosen(told: Provenance, text: str) -> Change:
    """A number that was picked and not measured; what was said about the old one's ± stays.

    The builder's own words about an assumption stay too.
    """
    note = told.note if told.tag == "assumed" and told.note else CHOSEN
    return Change(value=text, tag="assumed", note=note, plus_minus=_around(told, text))


def measured(told: Provenance, text: str) -> Change:
    """A number as a tape found it; what was only assumed of it is forgotten."""
    note = told.note if told.tag == "measured" else ""
    return Change(value=text, tag="measured", note=note, plus_minus=_around(told, text))


def _around(told: Provenance, text: str) -> str:
    """The ± a builder gave beside the number; empty where it is ours, or stands in the text."""
    if told.plus_minus_why or not told.plus_minus or "±" in text or "+-" in text:
        return ""
    return write(told.plus_minus, told.unit)


def _said(told: Provenance, number: float) -> Entry:
    """The number as an entry of the file."""
    change = chosen(told, typed_like(told, number))
    return Entry(str(change.value), change.tag, change.note, change.plus_minus or None)


def typed_like(told: Provenance, number: float) -> str:
    """A number in the hand of the one it replaces, no finer than a hand can set it."""
    like = told.like if told.like in GRAIN else bare_unit(told.unit)
    grain = GRAIN.get(like)
    if grain is not None:
        size = parse(f"1 {like}", told.unit).value
        number = round(number / size / grain) * grain * size
        number = parse(f"{number / size:.6g} {like}", told.unit).value
    own = told.plus_minus if "±" in told.text or "+-" in told.text else None
    return write(number, told.unit, like=like, plus_minus=own)


def _shape(path: str) -> str:
    """The path as the rules call it: `*` for what a builder named."""
    keys = paths.split(path)
    if keys[0] in {"drivers"}:
        return ".".join((keys[0], "*", *keys[2:]))
    if keys[0] == "survey":
        return ".".join((*keys[:2], "*", *keys[3:]))
    return ".".join("*" if key.isdecimal() else key for key in keys)


def _with(tree: object, keys: tuple[str, ...], value: float) -> object:
    """The tree with one number changed, everything else shared."""
    if not keys:
        return value
    key, below = keys[0], keys[1:]
    if isinstance(tree, tuple):
        things = cast("tuple[object, ...]", tree)
        return tuple(
            _with(thing, below, value) if key in {getattr(thing, "name", ""), str(n)} else thing
            for n, thing in enumerate(things, 1)
        )
    if isinstance(tree, Point):
        x, y, z = (
            value if key == axis else old
            for axis, old in zip("xyz", (tree.x, tree.y, tree.z), strict=True)
        )
        return Point(x, y, z)
    assert is_dataclass(tree), f"there is nothing below {tree}"
    assert not isinstance(tree, type), f"{tree} is a class, not a part of a design"
    assert key in {field.name for field in fields(tree)}, f"{tree} has no {key}"
    return replace(tree, **{key: _with(cast("object", getattr(tree, key)), below, value)})
