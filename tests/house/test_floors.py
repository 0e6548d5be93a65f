"""The import contract knows every room, and names each below the edge as free of the edge."""

from configparser import ConfigParser
from pathlib import Path

import pytest

EDGE = {"app", "cli", "documents", "project"}


@pytest.fixture
def contract(checkout: Path) -> ConfigParser:
    contract = ConfigParser()
    contract.read(checkout / ".importlinter")
    return contract


@pytest.fixture
def rooms(checkout: Path) -> set[str]:
    package = checkout / "src" / "pedalwright"
    modules = {path.parent.name for path in package.glob("*/__init__.py")}
    return modules | {path.stem for path in package.glob("*.py") if path.stem[0] != "_"}


def floors(contract: ConfigParser) -> list[set[str]]:
    lines = contract["importlinter:contract:floors"]["layers"].split("\n")
    return [{room.strip(" ()") for room in line.split("|")} for line in lines if line]


def test_every_room_stands_on_one_floor(contract: ConfigParser, rooms: set[str]) -> None:
    standing = [room for floor in floors(contract) for room in floor]
    assert len(standing) == len(set(standing))
    assert rooms <= set(standing)
    assert contract["importlinter:contract:floors"].getboolean("exhaustive")


def test_rooms_that_exist_are_not_called_planned(contract: ConfigParser, rooms: set[str]) -> None:
    text = contract["importlinter:contract:floors"]["layers"]
    assert {room for room in rooms if f"({room})" in text} == set()


def test_every_room_below_the_edge_is_kept_from_files_and_screens(
    contract: ConfigParser, rooms: set[str]
) -> None:
    numbers = contract["importlinter:contract:numbers"]["source_modules"].split()
    assert {name.removeprefix("pedalwright.") for name in numbers} == rooms - EDGE
