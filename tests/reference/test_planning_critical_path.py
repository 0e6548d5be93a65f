"""Critical paths: a textbook's network of seven jobs, and our own of a footwell.

The first is the usual example of courses on network planning; the second was worked forwards and
backwards by hand.
"""

import pytest

from pedalwright.making.planning import Job, order

TEXTBOOK = "A6; B2(A); C2(A); D3(B); F2(C); E4(D,F); G1(E)"
FOOTWELL = (
    "survey 3; mock 2(survey); trial1 1(mock); cutplate 2(trial1); bendtub 3(cutplate); "
    "arm 5(trial1); weldarm 2(arm); bracket 4(trial1); trial2 1(bendtub,weldarm,bracket); "
    "paint 3(trial2); cyl 2(trial2); pipes 4(cyl); rivet 2(paint); bleed 1(pipes,rivet); "
    "comm 2(bleed)"
)


def network(text: str) -> list[Job]:
    jobs = []
    for part in text.split(";"):
        head, _, after = part.strip().rstrip(")").partition("(")
        name, hours = head.split() if " " in head else (head[0], head[1:])
        before = tuple(after.split(",")) if after else ()
        jobs.append(Job(name=name, does=name, hours=float(hours), after=before))
    return jobs


@pytest.mark.parametrize(
    ("text", "hours", "path", "slack"),
    [
        (TEXTBOOK, 16.0, "A B D E G", {"C": 1.0, "F": 1.0}),
        (
            FOOTWELL,
            23.0,
            "survey mock trial1 arm weldarm trial2 cyl pipes bleed comm",
            {"cutplate": 2.0, "bendtub": 2.0, "bracket": 3.0, "paint": 1.0, "rivet": 1.0},
        ),
    ],
)
def test_length_path_and_slack(text: str, hours: float, path: str, slack: dict[str, float]) -> None:
    plan = order(network(text))
    assert plan.hours == hours
    assert plan.critical == tuple(path.split())
    assert {one.job.name: one.slack for one in plan.jobs if not one.critical} == slack
