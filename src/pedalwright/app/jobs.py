"""Long work and how it stands: one piece at a time, and any of it can be given up."""

from collections import deque
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from threading import Condition, Event, Thread
from typing import Literal, TypeAlias

from pedalwright.app.tasks import Task
from pedalwright.app.worker import Told, Worker

State: TypeAlias = Literal["waits", "runs", "done", "failed", "cancelled"]
#: Answers that are kept; older ones are worked out anew.
KEPT = 24
#: Seconds between two looks at whether it was cancelled.
LOOK = 0.1


@dataclass(kw_only=True, slots=True)
class Job:
    """One piece of work, as far as it has come."""

    task: Task
    state: State = "waits"
    says: str = "waiting for its turn"
    #: 0 to 1; None where nobody can say.
    share: float | None = None
    result: "str | tuple[str, bytes]" = ""
    over: Event = field(default_factory=Event)

    @property
    def id(self) -> str:
        """Its name in an address."""
        return self.task.key

    @property
    def is_open(self) -> bool:
        """Whether it still waits or runs."""
        return self.state in {"waits", "runs"}

    def ended(self, state: State, says: str, result: "str | tuple[str, bytes]" = "") -> None:
        """How it came out."""
        self.says, self.share, self.result, self.state = says, None, result, state
        self.over.set()


class Jobs:
    """All work of one server; a thread of its own hands it to the worker."""

    def __init__(self) -> None:
        self._jobs: dict[str, Job] = {}
        self._waiting: deque[Job] = deque()
        self._news = Condition()
        self._worker: Worker | None = None
        self._closed = False
        self._thread: Thread | None = None

    def ask(self, task: Task) -> Job:
        """The work for this state of the car: begun, running, or done already."""
        with self._news:
            known = self._jobs.get(task.key)
            if known is not None and known.state in {"waits", "runs", "done"}:
                return known
            job = Job(task=task)
            self._jobs.pop(task.key, None)
            self._jobs[task.key] = job
            self._forget()
            self._waiting.append(job)
            if self._thread is None:
                self._thread = Thread(target=self._run, daemon=True)
                self._thread.start()
            self._news.notify()
            return job

    def find(self, key: str) -> Job | None:
        """A piece of work by its name."""
        return self._jobs.get(key)

    def of(self, file: str) -> list[Job]:
        """What was asked for one car, the newest first."""
        with self._news:
            return [job for job in reversed(self._jobs.values()) if job.task.file == file]

    def cancel(self, job: Job) -> None:
        """Give it up; what runs ends within a moment."""
        with self._news:
            if job.is_open:
                job.ended("cancelled", "cancelled")

    def close(self) -> None:
        """With the server: nothing goes on by itself."""
        with self._news:
            self._closed = True
            for job in self._jobs.values():
                if job.is_open:
                    job.ended("cancelled", "the server was stopped")
            self._news.notify()
        if self._thread is not None:
            self._thread.join(timeout=5.0)

    def _forget(self) -> None:
        """The oldest that are over."""
        over = [key for key, job in self._jobs.items() if not job.is_open]
        for key in over[: max(0, len(self._jobs) - KEPT)]:
            del self._jobs[key]

    def _run(self) -> None:
        for job in self._wanted():
            try:
                self._do(job)
            except (EOFError, OSError):
                job.ended("failed", "the process that worked on it has ended; ask again")
                self._end()
        self._end()

    def _wanted(self) -> Iterator[Job]:
        """One after the other, until the server goes."""
        while True:
            with self._news:
                self._news.wait_for(lambda: self._closed or self._waiting)
                if self._closed:
                    return
                job = self._waiting.popleft()
            if job.is_open:
                yield job

    def _do(self, job: Job) -> None:
        if self._worker is None or not self._worker.alive:
            self._worker = Worker()
        line = self._worker.line
        job.state, job.says = "runs", "starting"
        line.send(job.task)
        heard = False
        while job.is_open:
            if not line.poll(LOOK):
                continue
            told = line.recv()
            assert isinstance(told, Told)
            heard = self._heard(job, told)
        if job.over.is_set() and not heard:
            self._end()

    def _heard(self, job: Job, told: Told) -> bool:
        """Put down what the worker says; whether that was its last word on it."""
        with self._news:
            if not job.is_open:
                return False
            match told.kind:
                case "at":
                    job.says, job.share = told.says, told.share
                case "done":
                    job.ended("done", "done", told.result)
                case "refused":
                    job.ended("failed", told.says)
                case "broken":
                    says = f"Something is broken in pedalwright itself ({told.says})."
                    job.ended("failed", says)
                case "alive":
                    pass
            return not job.is_open

    def _end(self) -> None:
        if self._worker is not None:
            with suppress(OSError):
                self._worker.end()
            self._worker = None
