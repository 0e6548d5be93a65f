"""How the hints of a dataclass become the shape of a file."""

import tomllib
from dataclasses import dataclass
from typing import Literal

import pytest

from pedalwright.core.points import Plane, Point
from pedalwright.core.units import Ratio, mm, rad
from pedalwright.project.reader import read_tables
from pedalwright.project.report import Report
from pedalwright.project.schema import kind_of, leaves, schema


@dataclass(frozen=True, kw_only=True)
class LongRod:
    length: mm


@dataclass(frozen=True, kw_only=True)
class Cable:
    slack: mm
    turns: Ratio = 2.0


@dataclass(frozen=True, kw_only=True)
class Hook:
    name: str
    at: Point
    axis: Point


@dataclass(frozen=True, kw_only=True)
class Thing:
    way: Literal["push", "pull"]
    lean: rad
    joint: LongRod | Cable
    hooks: tuple[Hook, ...] = ()
    chain: tuple[LongRod | Cable, ...]
    wall: Plane
    spare: Cable | None = None


def test_every_entry_of_a_tree_is_listed() -> None:
    assert {path for path, _ in leaves(schema(Thing))} == {
        *("way", "lean", "joint.length", "joint.slack", "joint.turns"),
        *("hooks.*.at.x", "hooks.*.at.y", "hooks.*.at.z", "hooks.*.axis"),
        *("chain.*.length", "chain.*.slack", "chain.*.turns"),
        *("wall.normal", "wall.offset", "wall.through.x", "wall.through.y", "wall.through.z"),
        *("spare.slack", "spare.turns"),
    }


def test_kinds_are_class_names_in_small_letters() -> None:
    assert [kind_of(made) for made in (LongRod, Cable)] == ["long-rod", "cable"]
    assert kind_of(Cable(slack=1.0)) == "cable"


def test_a_hint_nobody_can_read_is_a_mistake_of_the_program() -> None:
    @dataclass
    class Odd:
        when: complex

    with pytest.raises(AssertionError, match="no way to read"):
        schema(Odd)


TEXT = """
way = "pull"
lean = "10 deg"
wall = { normal = "rearward", offset = "5 mm" }
joint = { kind = "long-rod", length = "3 in" }
[hooks.top]
at = ["1 mm", "2 mm", "3 mm"]
axis = [0, 3, 4]
[[chain]]
kind = "cable"
slack = "1 mm"
[[chain]]
kind = "long-rod"
length = "1 m"
"""


def read(text: str) -> tuple[Thing, Report]:
    report = Report("thing.toml", text)
    thing = read_tables(report, schema(Thing), tomllib.loads(text))
    assert isinstance(thing, Thing)
    return thing, report


def test_a_tree_is_built_from_its_file() -> None:
    thing, report = read(TEXT)
    assert report.faults == []
    assert thing.way == "pull"
    assert thing.joint == LongRod(length=76.2)
    assert thing.hooks == (Hook(name="top", at=Point(1, 2, 3), axis=Point(0, 0.6, 0.8)),)
    assert thing.chain == (Cable(slack=1.0, turns=2.0), LongRod(length=1000.0))
    assert thing.wall == Plane(normal=Point(1, 0, 0), offset=5.0)
    assert thing.spare is None
    assert report.words == {
        "way": "pull",
        "joint.kind": "long-rod",
        "chain.1.kind": "cable",
        "chain.2.kind": "long-rod",
    }


def test_a_part_that_may_be_absent_is_read_when_it_is_there() -> None:
    thing, _ = read(TEXT + "[spare]\nslack = '2 mm'\n")
    assert thing.spare == Cable(slack=2.0)


def test_wrong_shapes_are_told_and_the_rest_is_read() -> None:
    text = TEXT.replace("[hooks.top]", "[[hooks]]").replace("[[chain]]", "[chain]", 1)
    text = text.replace("[[chain]]", "[chain2]")
    thing, report = read(text)
    assert {fault.key for fault in report.faults} == {"hooks", "chain", "chain2"}
    assert thing.joint == LongRod(length=76.2)
