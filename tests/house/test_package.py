"""What is installed is what is in the checkout."""

import importlib
import pkgutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pedalwright

LEFT_BEHIND = {".pyc"}


def test_every_file_of_the_package_ships_in_the_wheel(checkout: Path, tmp_path: Path) -> None:
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)]
    subprocess.run(command, cwd=checkout, check=True, capture_output=True, timeout=120)
    (wheel,) = tmp_path.glob("*.whl")
    shipped = {name for name in zipfile.ZipFile(wheel).namelist() if ".dist-info/" not in name}
    source = checkout / "src"
    held = {
        path.relative_to(source).as_posix()
        for path in (source / "pedalwright").rglob("*")
        if path.is_file() and path.suffix not in LEFT_BEHIND
    }
    assert "pedalwright/py.typed" in held
    assert shipped == held


def test_every_module_can_be_imported_and_says_what_it_is() -> None:
    silent = []
    for found in pkgutil.walk_packages(pedalwright.__path__, "pedalwright."):
        module = importlib.import_module(found.name)
        if not (module.__doc__ or "").strip():
            silent.append(found.name)
    assert silent == []
