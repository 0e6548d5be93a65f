"""The one folder that is open: which project files it holds, and nothing outside of it."""

import re
from pathlib import Path

from pedalwright.app.workspace import Workspace
from pedalwright.core.faults import Fault, InputError
from pedalwright.project import new_file
from pedalwright.project.files import create

#: A project file's name: one plain name, ending in .toml.
NAME = re.compile(r"[^\W_][\w .,()+-]{0,98}\.toml")


class NoSuchFileError(LookupError):
    """There is no such project file in this folder."""


class Folder:
    """Project files side by side, each opened when it is first asked for."""

    def __init__(self, path: Path) -> None:
        self.path = path.resolve()
        self._open: dict[str, Workspace] = {}

    def names(self) -> list[str]:
        """Every project file of the folder."""
        return sorted(file.name for file in self.path.glob("*.toml") if self._own(file.name))

    def workspace(self, name: str) -> Workspace:
        """A project file to work on; raises `NoSuchFileError`, and `InputError` for a bad one."""
        if not self._own(name):
            raise NoSuchFileError(name)
        if name not in self._open:
            self._open[name] = Workspace(self.path / name)
        return self._open[name]

    def opened(self) -> list[Workspace]:
        """Those that somebody works on."""
        return list(self._open.values())

    def add_like(self, name: str, car: str) -> None:
        """A new file like one of the invented cars; never over another."""
        new_file(self._new(name), car)

    def add(self, name: str, text: str) -> None:
        """A new file with a text that was brought; it may have faults to mend."""
        create(self._new(name), text.encode())

    def _new(self, name: str) -> Path:
        if NAME.fullmatch(name) is None:
            accepts = "A name of letters, digits, blanks and - that ends in .toml: my-car.toml."
            raise InputError((Fault(where="file name", read=name[:80], accepts=accepts),))
        return self.path / name

    def _own(self, name: str) -> bool:
        """True for a project file that lies in this folder itself, whatever it is linked to."""
        path = self.path / name
        return NAME.fullmatch(name) is not None and path.is_file() and path.resolve() == path
