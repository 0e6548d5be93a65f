"""What is asked of the order of work."""

from collections.abc import Iterator, Mapping, Sequence

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.making.planning.order import ancestors
from pedalwright.making.planning.parts import Access, Job, Order

GATE_FIRST = Limit(
    "making.gate_first",
    "Before a step that cannot be undone somebody has sat in it and measured.",
    "at least",
    "1",
    Source("common practice", "no source: fit in card, clamp, sit, then cut", "trade"),
)
REACHED = Limit(
    "making.reached",
    "Every nut can be reached when it is tightened.",
    "at least",
    "1",
    Source("pedalwright", "from what hides it and what comes before", "ours"),
)
SERVICED = Limit(
    "making.serviced",
    "What has to be undone in later years is not shut in for ever.",
    "at least",
    "1",
    Source("pedalwright", "nothing riveted, welded or glued may hide it", "ours"),
)
NO_CIRCLE = Limit(
    "making.no_circle",
    "No two jobs wait for each other.",
    "at least",
    "1",
    Source("pedalwright", "share of the jobs that can be done at all", "ours"),
)

#: What to do where a demand is not met.
CURES: Mapping[str, str] = {
    GATE_FIRST.code: "put a trial fit before it: card or clamps, the driver in the seat",
    REACHED.code: "make it a captive nut (rivet nut, weld nut, anchor nut) or turn the bolt",
    SERVICED.code: "captive nut, an access hole with a grommet, or screws instead of rivets",
    NO_CIRCLE.code: "one of them has to be split: fit loosely first, tighten later",
}


def check(
    jobs: Sequence[Job], plan: Order, *, serviced: Sequence[Access] = ()
) -> Iterator[Finding]:
    """Judge a plan; `serviced` are the nuts that have to come undone in later years."""
    yield NO_CIRCLE.check(
        1.0 - len(set(plan.circle)) / max(1, len(jobs)), 1.0, " - ".join(plan.circle)
    )
    if plan.circle:
        return
    gates = {job.name for job in jobs if job.gate}
    in_order = [timed.job for timed in plan.jobs]
    for job in in_order:
        if job.one_way:
            before = ancestors(in_order, job.name) & gates
            yield GATE_FIRST.check(float(len(before)), 1.0, job.does)
    for nut in dict.fromkeys(nut for job in jobs for nut in job.reaches):
        yield _reached(in_order, nut)
    for nut in serviced:
        shut = [job for job in jobs if job.one_way and nut in job.hides]
        yield SERVICED.check(0.0 if shut else 1.0, 1.0, _once(nut, shut))


def _reached(in_order: Sequence[Job], nut: Access) -> Finding:
    """Whether anything that hides it comes before somebody who has to reach it."""
    hidden: list[Job] = []
    for job in in_order:
        if nut in job.reaches and hidden:
            return REACHED.check(0.0, 1.0, _once(nut, hidden))
        if nut in job.hides:
            hidden.append(job)
    return REACHED.check(1.0, 1.0, nut)


def _once(nut: Access, jobs: Sequence[Job]) -> str:
    return f"{nut}, once this is done: {jobs[0].does}" if jobs else nut
