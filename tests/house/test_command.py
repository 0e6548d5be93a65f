"""The command answers at once, and every command says what it does."""

import subprocess
import sys
from collections.abc import Iterator

import click
import pytest

from pedalwright import __version__
from pedalwright.cli import main

HEAVY = {"numpy", "typst"}


def commands(command: click.Command, name: str = "pedalwright") -> Iterator[tuple[str, str]]:
    """Every command and its help text, the group itself first."""
    yield name, command.help or ""
    if isinstance(command, click.Group):
        context = click.Context(command, info_name=name)
        for below in command.list_commands(context):
            found = command.get_command(context, below)
            assert found is not None, f"{name} lists {below} but cannot find it"
            yield from commands(found, f"{name} {below}")


def python(*arguments: str) -> str:
    ran = subprocess.run(
        [sys.executable, *arguments], capture_output=True, text=True, check=True, timeout=60
    )
    return ran.stdout


def test_every_command_says_what_it_does() -> None:
    assert [name for name, text in commands(main) if not text.strip()] == []


def test_help_waits_for_nothing_heavy() -> None:
    program = (
        "import sys; from pedalwright.cli import main;"
        "main(['--help'], standalone_mode=False); print('loaded:', *sys.modules)"
    )
    text, loaded = python("-c", program).split("loaded:")
    assert text.startswith("Usage:")
    assert HEAVY & set(loaded.split()) == set()


@pytest.mark.parametrize("way", [["-m", "pedalwright"], ["-c", "import pedalwright.__main__"]])
def test_the_module_is_the_command_when_it_is_run_and_only_then(way: list[str]) -> None:
    said = python(*way, "--version")
    assert (__version__ in said) == (way[0] == "-m")
