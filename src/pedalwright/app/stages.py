"""The stages of the job, in its order: what each asks of the file and which findings it has."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from pedalwright.assess.stroke import PedalName
from pedalwright.core.checks import Finding
from pedalwright.documents.about import About
from pedalwright.documents.helps import helpful
from pedalwright.documents.questions import QUESTIONS
from pedalwright.documents.verdict import state


@dataclass(frozen=True, kw_only=True, slots=True)
class Stage:
    """One stage."""

    key: str
    title: str
    #: What is done in it, in a sentence.
    says: str
    #: Rooms whose findings are shown in it.
    rooms: tuple[str, ...] = ()
    #: Beginnings of the paths of its entries.
    entries: tuple[str, ...] = ()
    #: Whether its numbers are read off a tape or a scale; others are picked until they are made.
    by_tape: bool = False
    #: Names of the charts that go with it.
    charts: tuple[str, ...] = ()
    #: The pedal that is looked at when one comes to it; None where it may stay.
    pedal: PedalName | None = None


#: A pedal's own parts, without what it drives and what carries it.
_LEVER = ("pedal", "rod", "stop", "rest_stop", "rod_ends", "return_spring")

STAGES = (
    Stage(
        key="survey",
        by_tape=True,
        title="Survey",
        says="The footwell as your tape found it: walls, floor, tubes, and where the heels rest.",
        rooms=("survey",),
        entries=("survey", "heel_rest", "toes_to_wall", "toe_pocket", "slide"),
    ),
    Stage(
        key="driver",
        by_tape=True,
        title="Driver",
        says="Who drives, where he sits, and how his legs come to stand on the pedals.",
        rooms=("driver",),
        entries=("drivers",),
    ),
    Stage(
        key="levers",
        title="Levers",
        says="Pivots, arms, pads, pins and rods, over the whole stroke.",
        rooms=("linkage",),
        entries=(
            *(f"{pedal}.{part}" for pedal in ("brake", "clutch") for part in _LEVER),
            "throttle.pedal",
        ),
        charts=("ratio", "rod-angle"),
    ),
    Stage(
        key="brakes",
        title="Brakes",
        says="From the pad to the road: cylinders, fluid, callipers or drums, and the car.",
        rooms=("hydraulics", "brakes"),
        entries=("car", "brake.masters", "brake.plumbing", "brake.front", "brake.rear"),
        charts=("brake-travel", "force-travel", "balance", "front-share"),
        pedal="brake",
    ),
    Stage(
        key="clutch",
        title="Clutch",
        says="Whether it releases with the travel there is, and how hard it is to hold down.",
        rooms=("clutch",),
        entries=("clutch.release", "clutch.master", "clutch.pad_room", "clutch.heel"),
        charts=("clutch-travel",),
        pedal="clutch",
    ),
    Stage(
        key="throttle",
        title="Throttle",
        says="Whether it opens fully, and whether it comes back.",
        rooms=("throttle",),
        entries=("throttle.opening",),
        charts=("opening",),
        pedal="throttle",
    ),
    Stage(
        key="strength",
        title="Strength",
        says="Arms, pins, rods, pivots and what they are bolted to: what holds, and what gives.",
        rooms=("structure", "shell"),
        entries=("brake.carrier", "clutch.carrier", "box"),
        charts=("give",),
    ),
    Stage(
        key="making",
        title="Making",
        says="Drawings at true size to lay the arms on, and the papers to take along.",
        entries=("stock",),
    ),
    Stage(
        key="build",
        by_tape=True,
        title="Build",
        says="What is measured on the car as it is built: push on the pad and see what moves.",
        entries=("brake.push_tests",),
    ),
)
#: Everything that fails, whatever stage it belongs to.
OVERVIEW = Stage(
    key="overview",
    title="All that fails",
    says="What is not met anywhere, the worst first.",
    rooms=tuple(room for stage in STAGES for room in stage.rooms),
)
BY_KEY: Mapping[str, Stage] = {stage.key: stage for stage in (OVERVIEW, *STAGES)}
STAGE_OF_ROOM: Mapping[str, Stage] = {room: s for s in STAGES for room in s.rooms}


@dataclass(frozen=True, slots=True)
class Count:
    """How a stage stands."""

    stage: Stage
    #: Musts that fail, shoulds that do, and what could not be judged.
    fails: int
    short: int
    unjudged: int
    #: Numbers of the file nobody has given.
    missing: int


def stage_of(path: str) -> Stage | None:
    """The stage an entry belongs to: that of the longest beginning which fits."""
    found = [
        (len(begins), stage)
        for stage in STAGES
        for begins in stage.entries
        if path == begins or path.startswith(f"{begins}.")
    ]
    return max(found, key=lambda one: one[0])[1] if found else None


def counts(about: About, findings: Sequence[Finding]) -> list[Count]:
    """Every stage with its counts."""
    states = [(STAGE_OF_ROOM[finding.room].key, state(finding)) for finding in findings]
    missing = [stage_of(path) for path, _ in about.tagged("missing")]
    return [
        Count(
            stage,
            fails=states.count((stage.key, "fails")),
            short=states.count((stage.key, "short")),
            unjudged=states.count((stage.key, "unjudged")),
            missing=missing.count(stage),
        )
        for stage in STAGES
    ]


@dataclass(frozen=True, slots=True)
class Next:
    """The next sensible step: a stage to go to, or a question to ask."""

    says: str
    stage: str = ""
    question: str = ""


def next_steps(about: About, findings: Sequence[Finding]) -> Iterator[Next]:
    """What helps most, first: missing numbers, then the question about the worst that fails."""
    missing = about.tagged("missing")
    if missing:
        stage = stage_of(missing[0][0])
        if stage is not None:
            says = f"Measure what is missing in {stage.title.lower()}."
            yield Next(says, stage=stage.key)
    for question, missed in list(helpful(findings).items())[:3]:
        demands = "one demand" if missed == 1 else f"{missed} demands"
        yield Next(f"{QUESTIONS[question].asks} ({demands} not met)", question=question)
    if not missing and all(finding.ok for finding in findings):
        yield Next("Everything asked is met: print the dossier.", stage="making")
