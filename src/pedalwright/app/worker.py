"""The process that does long work, so that a hand that drags never waits for it.

A thread would do the same work in the same interpreter, and a drag would take half as long again;
a process of its own is ended to cancel what it does. It is started when there is first something to
do, keeps what it has learned of a box from one piece of work to the next, and goes with the server:
it says so often that it lives that it notices when nobody listens any more.
"""

import os
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing import get_context
from multiprocessing.connection import Connection
from threading import Lock, Thread
from time import sleep
from typing import Literal, TypeAlias

from pedalwright.app.tasks import Task, done
from pedalwright.core.faults import InputError

#: Seconds between signs of life.
ALIVE = 1.0
#: How far the work steps back behind the page where the machine is short.
NICE = 10


@dataclass(frozen=True, slots=True)
class Told:
    """What the worker says: where it is, or how it came out."""

    kind: Literal["at", "done", "refused", "broken", "alive"]
    says: str = ""
    share: float | None = None
    #: Markup, or a file with its name.
    result: "str | tuple[str, bytes]" = ""


Say: TypeAlias = Callable[[Told], None]


class Worker:
    """The process, and the line to it."""

    def __init__(self) -> None:
        context = get_context("spawn")
        self.line, theirs = context.Pipe()
        self._process = context.Process(target=_work, args=(theirs,), daemon=True)
        self._process.start()
        theirs.close()

    @property
    def alive(self) -> bool:
        """Whether it can be given something to do."""
        return self._process.is_alive()

    def end(self) -> None:
        """At once, whatever it does."""
        self._process.terminate()
        self._process.join(timeout=2.0)
        self.line.close()


def _work(line: Connection) -> None:
    """In the process: one task after the other."""
    with suppress(OSError, AttributeError):  # not every system knows of it
        os.nice(NICE)
    one_at_a_time = Lock()

    def say(told: Told) -> None:
        with one_at_a_time:
            line.send(told)

    Thread(target=_show_life, args=(say,), daemon=True).start()
    with suppress(EOFError, OSError):
        while True:
            task = line.recv()
            assert isinstance(task, Task)
            say(_told(task, say))


def _told(task: Task, say: Say) -> Told:
    """How it came out; a fault in the file is told in its own words, ours without a trace."""
    try:
        return Told("done", result=done(task, lambda says, share: say(Told("at", says, share))))
    except InputError as error:
        return Told("refused", says=" ".join(map(str, error.faults)))
    except (EOFError, OSError):
        raise
    except Exception as error:  # noqa: BLE001 - whatever it was, the page must hear of it
        return Told("broken", says=type(error).__name__)


def _show_life(say: Say) -> None:
    """Until nobody listens."""
    while True:
        sleep(ALIVE)
        try:
            say(Told("alive"))
        except (OSError, ValueError):
            os._exit(0)
