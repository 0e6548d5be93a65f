"""The order of work: jobs, what each waits for, what it shuts in, and whether it can be undone."""

from dataclasses import dataclass

#: Hands on a nut, by the name of the nut.
Access = str


@dataclass(frozen=True, kw_only=True, slots=True)
class Job:
    """One step of the work."""

    #: Short name without blanks, unique.
    name: str
    #: What is done, one sentence.
    does: str
    #: How long it takes, by the builder's own guess, h.
    hours: float
    #: Jobs that have to be done before.
    after: tuple[str, ...] = ()
    #: Whether it is a stop: sit in it, clamp it, measure, and go on only if all is right.
    gate: bool = False
    #: How to undo it and what that costs; empty for what cannot be undone.
    undo: str = ""
    #: Whether undoing loses metal, paint or strength: cutting, drilling, welding, riveting.
    one_way: bool = False
    #: Nuts and bolts that are tightened in it, so have to be within reach.
    reaches: tuple[Access, ...] = ()
    #: Nuts and bolts that nobody reaches any more once it is done.
    hides: tuple[Access, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Timed:
    """A job in the plan; all in hours from the beginning, as many hands as one likes."""

    job: Job
    start: float
    end: float
    #: How late it may begin without making the whole later.
    latest: float

    @property
    def slack(self) -> float:
        """How long it can wait."""
        return max(0.0, self.latest - self.start)

    @property
    def critical(self) -> bool:
        """Whether it cannot wait at all."""
        return self.slack < 1e-9


@dataclass(frozen=True, kw_only=True, slots=True)
class Order:
    """The whole plan."""

    #: In the order for one pair of hands.
    jobs: tuple[Timed, ...]
    #: With as many hands as one likes, h.
    hours: float
    #: The jobs that make it so long, first to last.
    critical: tuple[str, ...]
    #: Jobs that wait for each other in a circle; then there is no plan.
    circle: tuple[str, ...] = ()

    @property
    def alone(self) -> float:
        """With one pair of hands, h."""
        return sum(timed.job.hours for timed in self.jobs)

    def next_step(self, done: frozenset[str]) -> Timed | None:
        """The first job that is not done."""
        return next((timed for timed in self.jobs if timed.job.name not in done), None)


@dataclass(frozen=True, kw_only=True, slots=True)
class RivetStep:
    """A hole of a row in the order it is filled."""

    hole: int
    #: Whether a skin pin holds it until all others are set.
    pinned: bool
