"""A dependency earns its line, is pinned, and is declared where it is used."""

import ast
import re
import sys
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement

Declared = dict[str, Requirement]
Pins = dict[str, str]


def by_name(texts: list[str]) -> Declared:
    return {requirement.name: requirement for requirement in map(Requirement, texts)}


def pins(lock: Path) -> Pins:
    return dict(re.findall(r"^([a-z0-9._-]+)==([^\s;]+)", lock.read_text(), re.MULTILINE))


@pytest.fixture
def run(checkout: Path) -> Declared:
    pyproject = tomllib.loads((checkout / "pyproject.toml").read_text())
    return by_name(pyproject["project"]["dependencies"])


@pytest.fixture
def tools(checkout: Path) -> Declared:
    pyproject = tomllib.loads((checkout / "pyproject.toml").read_text())
    return by_name([text for group in pyproject["dependency-groups"].values() for text in group])


def test_every_dependency_has_its_line_and_every_line_its_dependency(
    checkout: Path, run: Declared, tools: Declared
) -> None:
    page = (checkout / "docs" / "decisions" / "0002-dependencies.md").read_text()
    lines = re.findall(r"^- \*\*(.+?)\*\*: \S", page, re.MULTILINE)
    assert sorted(lines) == sorted([*run, *tools])


def test_the_source_imports_only_what_is_declared_to_run(checkout: Path, run: Declared) -> None:
    imported: set[str] = set()
    for path in (checkout / "src").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.Import):
                imported |= {alias.name.split(".")[0] for alias in node.names}
            elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
                imported.add(node.module.split(".")[0])
    assert "numpy" in imported
    assert imported - sys.stdlib_module_names - {"pedalwright"} - set(run) == set()


@pytest.mark.parametrize("name", ["run", "dev"])
def test_the_lock_is_pinned_by_hash_and_names_no_registry(checkout: Path, name: str) -> None:
    text = (checkout / "requirements" / f"{name}.txt").read_text()
    starts = re.findall(r"^\S.*$", text, re.MULTILINE)
    assert [line for line in starts if "==" not in line] == []
    entries = re.split(r"\n(?=\S)", text.strip())
    assert [entry for entry in entries if "--hash=sha256:" not in entry] == []
    assert "://" not in text


def test_the_locks_fit_what_is_declared(checkout: Path, run: Declared, tools: Declared) -> None:
    run_pins = pins(checkout / "requirements" / "run.txt")
    dev_pins = pins(checkout / "requirements" / "dev.txt")
    for requirement in run.values():
        assert run_pins[requirement.name] in requirement.specifier
    for requirement in (run | tools).values():
        assert dev_pins[requirement.name] in requirement.specifier


def test_tools_do_not_change_what_the_program_runs_with(checkout: Path) -> None:
    run_pins = pins(checkout / "requirements" / "run.txt")
    dev_pins = pins(checkout / "requirements" / "dev.txt")
    assert {name: dev_pins.get(name) for name in run_pins} == run_pins
