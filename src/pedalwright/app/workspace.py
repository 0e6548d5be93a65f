"""One project file being worked on: as it was, as it is, and as it would be.

Every change makes a new project from the changed text and is saved at once; undoing goes back to
an earlier text. What is dragged is a trial beside it, until it is dropped. The file may be saved
by an editor at any time: that is noticed, becomes a change like any other, and is never written
over blindly.
"""

from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

from pedalwright.app.seen import Seen, seen
from pedalwright.core.faults import Fault, InputError
from pedalwright.project import (
    Change,
    ChangedMeanwhileError,
    FileTroubleError,
    Project,
    Provenance,
    changed,
    chosen,
    files,
    measured,
    read,
    save,
    tried,
)


class Workspace:
    """The states of one project file; only the newest is assessed, and its trial."""

    def __init__(self, path: Path) -> None:
        self.path = path
        #: Counts every change of what is shown, trials too.
        self.revision = 0
        #: What is wrong with the file as somebody else left it; until then nothing is saved.
        self.faults: tuple[Fault, ...] = ()
        #: The footwell as it was drawn last, under what it was drawn from.
        self.ground: tuple[tuple[object, ...], str] | None = None
        self._now = seen(read(path))
        self._before: Seen | None = None
        self._trial: Seen | None = None
        self._typed: dict[str, str] = {}
        self._texts = [self._now.project.text]
        self._at = 0
        self._backed_up = False
        self._stamp = _stamp(path)
        self._listeners: list[Callable[[], None]] = []

    @property
    def shown(self) -> Seen:
        """What is shown: the trial while there is one."""
        return self._trial or self._now

    @property
    def settled(self) -> Seen:
        """What is in the file."""
        return self._now

    @property
    def before(self) -> Seen | None:
        """What better and worse are told against; None where nothing was changed yet."""
        return self._now if self._trial else self._before

    @property
    def can_undo(self) -> bool:
        """Whether there is something to go back to."""
        return self._at > 0

    @property
    def can_redo(self) -> bool:
        """Whether something was undone."""
        return self._at + 1 < len(self._texts)

    @property
    def trying(self) -> bool:
        """Whether something is being dragged."""
        return self._trial is not None

    def listen(self, heard: Callable[[], None]) -> Callable[[], None]:
        """Be told of every new revision; answers with the way to stop it."""
        self._listeners.append(heard)
        return lambda: self._listeners.remove(heard)

    def try_out(self, numbers: Mapping[str, float]) -> None:
        """Show other numbers without saving them; raises `InputError` and keeps the last ones."""
        trial = tried(self.shown.project, numbers)
        self._trial = seen(trial)
        self._typed |= {path: trial.provenance[path].text for path in numbers}
        self._revised()

    def drop(self) -> None:
        """Keep what was tried: one change, however long the drag."""
        was, trial = self._now.project.provenance, self._trial
        typed, self._typed, self._trial = self._typed, {}, None
        if trial is None:
            return
        told = trial.project.provenance
        moved = {path: text for path, text in typed.items() if told[path].shown != was[path].shown}
        if moved:
            self.change({path: chosen(was[path], text) for path, text in moved.items()})
        else:
            self._revised()

    def cancel(self) -> None:
        """Forget what was tried."""
        if self._trial is not None:
            self._trial, self._typed = None, {}
            self._revised()

    def change(self, changes: Mapping[str, str | Change]) -> None:
        """Change entries, on top of what is in the file by now, and save."""
        self.make(lambda project: changed(project, changes))

    def make(self, new: Callable[[Project], Project]) -> None:
        """Make another project of what is in the file by now, and save it."""
        self.refresh()
        self._let_nothing_be_lost()
        self.cancel()
        after = new(self._now.project)
        if after.text == self._now.project.text:
            return
        self._save(after)
        self._texts[self._at + 1 :] = [after.text]
        self._go(self._at + 1, after)

    def choose(self, changes: Mapping[str, str | Change]) -> None:
        """Change entries to what was picked: a plain number is assumed until it is measured."""
        self._say(changes, chosen)

    def measure(self, changes: Mapping[str, str | Change]) -> None:
        """Change entries to what a tape found."""
        self._say(changes, measured)

    def _say(
        self, changes: Mapping[str, str | Change], how: Callable[[Provenance, str], Change]
    ) -> None:
        """Words, directions and what is taken out are neither measured nor assumed."""
        told = self._now.project.provenance

        def said(path: str, new: str | Change) -> str | Change:
            if isinstance(new, Change) or path not in told or new == "?" or not told[path].unit:
                return new
            return how(told[path], new)

        self.change({path: said(path, new) for path, new in changes.items()})

    def undo(self) -> None:
        """Back to the state before."""
        self._go_by(-1)

    def redo(self) -> None:
        """Forward again."""
        self._go_by(1)

    def refresh(self) -> bool:
        """Read the file again if somebody else saved it; True where something is new."""
        stamp = _stamp(self.path)
        if stamp == self._stamp:
            return False
        self._stamp = stamp
        try:
            theirs = read(self.path)
        except InputError as error:
            self.faults = error.faults
            self._revised()
            return True
        mended, self.faults = bool(self.faults), ()
        if theirs.text == self._now.project.text:
            if mended:
                self._revised()
            return mended
        self._texts[self._at + 1 :] = [theirs.text]
        self._trial, self._typed = None, {}
        self._go(self._at + 1, theirs)
        return True

    def overwrite(self) -> None:
        """Put back what is shown here over what somebody else left; theirs is kept as a backup."""
        mine = self._now.project.text.encode()
        if self.path.exists():
            files.replace(self.path, files.read_bytes(self.path), mine)
        else:
            files.create(self.path, mine)
        self._stamp, self.faults = _stamp(self.path), ()
        self._revised()

    def _go_by(self, steps: int) -> None:
        self.refresh()
        self._let_nothing_be_lost()
        self.cancel()
        at = self._at + steps
        if not 0 <= at < len(self._texts):
            return
        then = changed(replace(self._now.project, text=self._texts[at]), {})
        self._save(then)
        self._go(at, then)

    def _go(self, at: int, project: Project) -> None:
        self._before, self._now, self._at = self._now, seen(project), at
        self._revised()

    def _save(self, after: Project) -> None:
        try:
            save(self._now.project, after, backup=not self._backed_up)
        except ChangedMeanwhileError:
            self.refresh()
            raise
        self._backed_up = True
        self._stamp = _stamp(self.path)

    def _let_nothing_be_lost(self) -> None:
        if self.faults:
            accepts = "Mend the file in your editor, or put back what this page shows."
            read_as = "changed by somebody else, and it cannot be read as it is"
            raise FileTroubleError((Fault(where=self.path.name, read=read_as, accepts=accepts),))

    def _revised(self) -> None:
        self.revision += 1
        for heard in list(self._listeners):
            with suppress(RuntimeError):  # a tab that has just gone
                heard()


def _stamp(path: Path) -> tuple[int, int, int] | None:
    """What tells that a file was saved; None where there is none."""
    try:
        state = path.stat()
    except OSError:
        return None
    return state.st_mtime_ns, state.st_size, state.st_ino
