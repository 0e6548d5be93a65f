"""Files on the disk: read whole, written whole or not at all, never over somebody else's work."""

import os
import tempfile
from pathlib import Path

from pedalwright.project.errors import (
    AlreadyThereError,
    ChangedMeanwhileError,
    FileTroubleError,
    fault,
)
from pedalwright.project.syntax import MOST_CHARACTERS


def read_bytes(path: Path) -> bytes:
    """All of a file."""
    try:
        with path.open("rb") as file:
            return file.read(4 * MOST_CHARACTERS + 1)
    except OSError as error:
        read = error.strerror or str(error)
        trouble = fault(str(path), None, "", read, "Name a project file that can be read.")
        raise FileTroubleError((trouble,)) from error


def create(path: Path, data: bytes) -> None:
    """Write a new file; one that is there is never written over."""
    try:
        with path.open("xb") as file:
            _out(file.fileno(), data)
    except FileExistsError as error:
        accepts = "Name a file that is not there yet, or move this one away."
        trouble = fault(str(path), None, "", "a file that exists", accepts)
        raise AlreadyThereError((trouble,)) from error
    except OSError as error:
        raise _cannot_write(path, error) from error


def replace(path: Path, before: bytes, after: bytes, *, backup: bool = True) -> Path | None:
    """Write a file anew, whole or not at all; the old one stays beside it, numbered.

    `before` is what was read: a file that has changed since is left alone. Answers with the
    name of the old one's copy, None where no backup is wanted.
    """
    path = path.resolve()
    if read_bytes(path) != before:
        accepts = "Open it again and repeat the change; nothing was written."
        trouble = fault(str(path), None, "", "a file that changed since it was read", accepts)
        raise ChangedMeanwhileError((trouble,))
    try:
        copy = _backed_up(path, before) if backup else None
        _swapped_in(path, after)
    except OSError as error:
        raise _cannot_write(path, error) from error
    return copy


def _backed_up(path: Path, data: bytes) -> Path:
    number = 1
    while True:
        backup = path.with_name(f"{path.name}.{number}.bak")
        try:
            with backup.open("xb") as file:
                _out(file.fileno(), data)
        except FileExistsError:
            number += 1
        else:
            return backup


def _swapped_in(path: Path, data: bytes) -> None:
    """A full new file takes the old one's name in one step."""
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".new")
    new = Path(name)
    try:
        try:
            _out(handle, data)
        finally:
            os.close(handle)
        new.chmod(path.stat().st_mode)
        new.replace(path)
    except BaseException:
        new.unlink(missing_ok=True)
        raise
    _settle(path.parent)


def _out(handle: int, data: bytes) -> None:
    """Through to the disk."""
    view = memoryview(data)
    while view:
        view = view[os.write(handle, view) :]
    os.fsync(handle)


def _settle(folder: Path) -> None:
    """Let the folder know the new name for good; not every system can."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        return
    try:
        os.fsync(handle)
    except OSError:
        pass
    finally:
        os.close(handle)


def _cannot_write(path: Path, error: OSError) -> FileTroubleError:
    read = error.strerror or str(error)
    accepts = "Name a file that can be written; what was there is unchanged."
    return FileTroubleError((fault(str(path), None, "", read, accepts),))
