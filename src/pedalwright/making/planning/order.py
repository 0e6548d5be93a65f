"""The order of work from what waits for what: how long, what is critical, what one does next.

What has to be reached is tightened before it is shut in: that is added to what waits for what. Of
jobs that are ready, one that can be undone goes before one that cannot, and a gate before both.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from graphlib import CycleError, TopologicalSorter

from pedalwright.making.planning.parts import Job, Order, Timed

#: Hours that differ by less are equal.
EQUAL = 1e-9


def order(jobs: Sequence[Job]) -> Order:
    """The plan; where jobs wait in a circle, only the circle."""
    complete = [_waiting_for_reach(job, jobs) for job in jobs]
    by_name = {job.name: job for job in complete}
    assert len(by_name) == len(complete), "two jobs have the same name"
    unknown = {name for job in complete for name in job.after} - set(by_name)
    assert not unknown, f"nobody does {sorted(unknown)}"
    try:
        run = list(TopologicalSorter({job.name: job.after for job in complete}).static_order())
    except CycleError as circle:
        names: list[str] = circle.args[1]
        return Order(jobs=(), hours=float("nan"), critical=(), circle=tuple(names))
    timed = _timed(by_name, run)
    hours = max((one.end for one in timed.values()), default=0.0)
    return Order(
        jobs=tuple(timed[name] for name in _one_pair_of_hands(timed)),
        hours=hours,
        critical=_critical_path(timed, hours),
    )


def ancestors(jobs: Iterable[Job], name: str) -> frozenset[str]:
    """All jobs that are done before this one, directly or not."""
    after = {job.name: job.after for job in jobs}
    found: set[str] = set()
    ahead = list(after[name])
    while ahead:
        before = ahead.pop()
        if before not in found:
            found.add(before)
            ahead += after[before]
    return frozenset(found)


def _waiting_for_reach(job: Job, jobs: Sequence[Job]) -> Job:
    """A job that shuts something in waits for those who have to reach it, where it can."""
    reaching = [
        other.name
        for other in jobs
        if set(other.reaches) & set(job.hides)
        and other.name != job.name
        and job.name not in ancestors(jobs, other.name)
    ]
    return replace(job, after=tuple(dict.fromkeys((*job.after, *reaching))))


def _timed(jobs: Mapping[str, Job], run: Sequence[str]) -> dict[str, Timed]:
    end: dict[str, float] = {}
    for name in run:
        job = jobs[name]
        end[name] = max((end[before] for before in job.after), default=0.0) + job.hours
    whole = max(end.values(), default=0.0)
    latest_end = dict.fromkeys(run, whole)
    for name in reversed(run):
        begin = latest_end[name] - jobs[name].hours
        for before in jobs[name].after:
            latest_end[before] = min(latest_end[before], begin)
    return {
        name: Timed(
            job=jobs[name],
            start=end[name] - jobs[name].hours,
            end=end[name],
            latest=latest_end[name] - jobs[name].hours,
        )
        for name in run
    }


def _critical_path(timed: Mapping[str, Timed], hours: float) -> tuple[str, ...]:
    """From the job that ends last back to one that begins first, each ending as the next begins."""
    path: list[str] = []
    ends = hours
    here = [one for one in timed.values() if abs(one.end - hours) < EQUAL]
    while here:
        one = here[0]
        path.append(one.job.name)
        ends = one.start
        here = [timed[name] for name in one.job.after if abs(timed[name].end - ends) < EQUAL]
    return tuple(reversed(path))


def _one_pair_of_hands(timed: Mapping[str, Timed]) -> list[str]:
    sorter = TopologicalSorter({name: one.job.after for name, one in timed.items()})
    sorter.prepare()
    ready: list[str] = list(sorter.get_ready())
    place = {name: i for i, name in enumerate(timed)}
    done: list[str] = []
    while ready:
        name = min(ready, key=lambda n: (*_patience(timed[n]), place[n]))
        ready.remove(name)
        done.append(name)
        sorter.done(name)
        ready += sorter.get_ready()
    return done


def _patience(one: Timed) -> tuple[bool, bool, float]:
    """Gates first, what can be undone before what cannot, the most urgent before the rest."""
    return not one.job.gate, one.job.one_way, one.latest
