"""What can go wrong with a project file, drawn as a tree.

    core.faults.InputError (ValueError)         input that a person gave and can mend
        ProjectError                            what is written in the file, every fault of it
        FileTroubleError (OSError)              the file: not there, not readable, not writable
            AlreadyThereError (FileExistsError)     a new file would be written over another
            ChangedMeanwhileError                   saved by somebody else since it was read

Nothing else is raised for what a builder did. A programmer's mistake is an `assert`.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches

from pedalwright.core.faults import Fault, InputError


@dataclass(frozen=True, kw_only=True, slots=True)
class FileFault(Fault):
    """One thing in a project file that cannot be read as it stands."""

    #: Counted from 1; None for what stands on no line, because it is not there.
    line: int | None
    #: Path of the entry, such as `brake.pedal.pin_radius`; empty where no key is reached.
    key: str


def fault(
    file: str,
    line: int | None,
    key: str,
    read: str,
    accepts: str,
    offers: tuple[str, ...] = (),
) -> FileFault:
    """A fault that says where it stands in words: `car.toml, line 12, car.wheelbase`."""
    places = (file, f"line {line}" if line else "", plain(key))
    where = ", ".join(place for place in places if place)
    return FileFault(
        where=where, read=plain(read), accepts=accepts, offers=offers, line=line, key=key
    )


class ProjectError(InputError):
    """What is written in the file cannot be read as it stands; carries every fault found."""

    def __init__(self, faults: tuple[FileFault, ...]) -> None:
        super().__init__(faults)
        #: The same faults, with line and key.
        self.in_file = faults


class FileTroubleError(InputError, OSError):
    """The file itself cannot be read or written."""


class AlreadyThereError(FileTroubleError, FileExistsError):
    """A new file would be written over one that is there."""


class ChangedMeanwhileError(FileTroubleError):
    """The file was saved by somebody else after it was read here."""


_LONGEST = 80


def plain(text: str) -> str:
    """Somebody's text, fit for one line of a message: short, and nothing hidden in it."""
    seen = "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in text)
    return seen if len(seen) <= _LONGEST else f"{seen[: _LONGEST - 1]}…"


def nearest(word: str, words: Iterable[str]) -> tuple[str, ...]:
    """The known word that somebody may have meant, if one is close."""
    return tuple(get_close_matches(word, list(words), n=1))
