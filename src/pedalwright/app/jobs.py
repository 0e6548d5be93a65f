"""Long work and how it stands: one piece at a time, and any of it can be given up."""

from collections import deque
from collections.abc import Iterator
from contextlib import AbstractContextManager, suppress
from dataclasses import dataclass, field
from threading import Condition, Event, Lock, Thread
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
    lock: AbstractContextManager[object] = field(default_factory=Lock)

    @property
    def id(self) -> str:
        """Its name in an address."""
        return self.task.key

    @property
    def is_open(self) -> bool:
        """Whether it still waits or runs."""
        return self.state in {"waits", "runs"}

    def begun(self) -> bool:
        """Whether it was still wanted when its turn came."""
        with self.lock:
            if self.state != "waits":
                return False
            self.state, self.says = "runs", "starting"
            return True

    def ended(self, state: State, says: str, result: "str | tuple[str, bytes]" = "") -> None:
        """How it came out; what came out already stays."""
        with self.lock:
            if self.is_open:
                self.says, self.share, self.result, self.state = says, None, result, state
                self.over.set()

    def heard(self, told: Told) -> bool:
        """Put down what the worker says; whether that was its last word on it."""
        match told.kind:
            case "at":
                self.says, self.share = told.says, told.share
            case "done":
                self.ended("done", "done", told.result)
            case "refused":
                self.ended("failed", told.says)
            case "broken":
                self.ended("failed", f"Something is broken in pedalwright itself ({told.says}).")
            case "alive":
                pass
        return told.kind in {"done", "refused", "broken"}


class Jobs:
    """All work of one server: questions do not wait behind what takes long."""

    def __init__(self) -> None:
        self._jobs: dict[str, Job] = {}
        self._lock = Lock()
        self._questions, self._others = Lane(), Lane()

    def ask(self, task: Task) -> Job:
        """The work for this state of the car: begun, running, or done already."""
        with self._lock:
            known = self._jobs.get(task.key)
            if known is not None and known.state in {"waits", "runs", "done"}:
                return known
            job = Job(task=task)
            self._jobs.pop(task.key, None)
            self._jobs[task.key] = job
            self._forget()
        lane = self._questions if task.kind == "ask" else self._others
        lane.add(job)
        return job

    def find(self, key: str) -> Job | None:
        """A piece of work by its name."""
        return self._jobs.get(key)

    def of(self, file: str) -> list[Job]:
        """What was asked for one car, the newest first."""
        with self._lock:
            return [job for job in reversed(self._jobs.values()) if job.task.file == file]

    def cancel(self, job: Job) -> None:
        """Give it up; what runs ends within a moment."""
        job.ended("cancelled", "cancelled")

    def close(self) -> None:
        """With the server: nothing goes on by itself."""
        with self._lock:
            for job in self._jobs.values():
                job.ended("cancelled", "the server was stopped")
        for lane in (self._questions, self._others):
            lane.close()

    def _forget(self) -> None:
        """The oldest that are over."""
        over = [key for key, job in self._jobs.items() if not job.is_open]
        for key in over[: max(0, len(self._jobs) - KEPT)]:
            del self._jobs[key]


class Lane:
    """Work that is done one piece after the other, by a thread that hands it to a process."""

    def __init__(self) -> None:
        self.worker: Worker | None = None
        self._waiting: deque[Job] = deque()
        self._news = Condition()
        self._closed = False
        self._thread: Thread | None = None

    def add(self, job: Job) -> None:
        """Behind what is there."""
        with self._news:
            self._waiting.append(job)
            if self._thread is None:
                self._thread = Thread(target=self._run, daemon=True)
                self._thread.start()
            self._news.notify()

    def close(self) -> None:
        """Begin nothing more, and end what runs."""
        with self._news:
            self._closed = True
            self._news.notify()
        if self._thread is not None:
            self._thread.join(timeout=5.0)

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
            if job.begun():
                yield job

    def _do(self, job: Job) -> None:
        if self.worker is None or not self.worker.alive:
            self.worker = Worker()
        line = self.worker.line
        line.send(job.task)
        while job.is_open:
            if line.poll(LOOK):
                told = line.recv()
                assert isinstance(told, Told)
                if job.heard(told):
                    return
        self._end()  # it was given up, and the process is still at it

    def _end(self) -> None:
        if self.worker is not None:
            with suppress(OSError):
                self.worker.end()
            self.worker = None
