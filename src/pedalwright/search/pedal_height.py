"""How high must the pads stand? Each pedal moved up and down with all that hangs on it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from pedalwright.assess.slides import moved
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Mark,
    Outcome,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.batch import pick
from pedalwright.core.checks import Finding
from pedalwright.core.points import UP
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.search.changes import Changes, number, one
from pedalwright.search.cures import step_to
from pedalwright.search.prices import Job
from pedalwright.search.reasons import joined, reason
from pedalwright.search.scan import Scan, Stretch, guessed_legs, many, of_legs, scan, who
from pedalwright.search.tried import alone

PEDALS = ("clutch", "brake", "throttle")
#: Lifts tried, mm.
LIFTS = np.arange(-80.0, 81.0)
MOVE_PEDAL = Job(300.0, "material for a new bracket")
COLUMNS = (
    Column("pad now", "mm"),
    Column("from", "mm"),
    Column("to", "mm"),
    Column("best from", "mm"),
    Column("best to", "mm"),
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Height:
    """One pedal: where its pad stands above the heels at rest, and where it may."""

    pedal: str
    found: Scan
    now: float
    #: Lifts that meet every demand, and those with most joints in their bands.
    bears: Stretch | None
    suits: Stretch | None

    @property
    def lift(self) -> float:
        """How far to move it so that demands are met; 0 where it can stay, or nothing helps."""
        target = self.suits
        return 0.0 if target is None or not self.found.missed(0.0) else target.inside(0.0)

    @property
    def missed(self) -> list[Sentence]:
        """Demands missed as it stands, those first that no height mends."""
        return [*self.hopeless, *self.found.missed(0.0)]

    @property
    def hopeless(self) -> list[Sentence]:
        """Demands that no height meets."""
        i = self.found.index(0.0)
        return [reason(pick(finding, i)) for finding in self.found.hopeless()]


def pedal_height(design: Design) -> Answer:
    """For every pedal the heights above the heels that fit all drivers."""
    heights = [_height(design, pedal) for pedal in PEDALS]
    drivers = heights[0].found.assessment.drivers
    soles = [float(np.ravel(placed.brake.body.heel_to_ball)[0]) for placed in drivers]
    return Answer(
        question="pedal-height",
        title="How high must the pads stand?",
        says=_says(heights, who(drivers)),
        outcome=_outcome(heights),
        columns=COLUMNS,
        rows=tuple(_row(height) for height in heights),
        bars=Bars(
            title="pad centre above the heel's rest, pedal at rest",
            unit="mm",
            bars=tuple(Bar(height.pedal, height.now) for height in heights),
            bound=min(soles, default=np.nan),
            bound_says="the shortest sole to the ball: beyond it a heel lifts",
        ),
        steps=tuple(_steps(design, heights)),
        notes=tuple(_notes(design, heights)),
    )


def lifted_by(design: Design, pedal: str, lift: float) -> Changes:
    """A pedal moved up with its cylinder, relay lever and spring."""
    paths = [f"{pedal}.pedal.pivot.z"]
    if pedal != "throttle":
        part = design.brake if pedal == "brake" else design.clutch
        paths.append(f"{pedal}.rod.socket.z")
        if part.rod.relay is not None:
            ends = ("pivot", "driven_pin", "driving_pin")
            paths += [f"{pedal}.rod.relay.{end}.z" for end in ends]
        if part.return_spring is not None:
            paths += [f"{pedal}.return_spring.{end}.z" for end in ("eye", "anchor")]
    return tuple(Change(path, number(design, path) + lift, "mm") for path in paths)


def _height(design: Design, pedal: str) -> Height:
    found = scan(LIFTS, _lifted(many(design, LIFTS.size), pedal, LIFTS), of_legs((pedal,)))
    place = found.index(0.0)
    made = found.assessment
    clutch, brake, throttle = made.clutch.lever, made.brake.lever, made.throttle.lever
    levers = {"clutch": clutch, "brake": brake, "throttle": throttle}
    rest = design.heel_rest
    heel = one(design.survey.face("floor").offset - rest.drop + rest.plate)
    return Height(
        pedal=pedal,
        found=found,
        now=float(np.ravel(levers[pedal].pad.z)[place]) - heel,
        bears=found.bears(0.0),
        suits=found.suits(0.0),
    )


def _lifted(design: Design, pedal: str, lifts: Num) -> Design:
    up = UP * lifts
    if pedal == "brake":
        return replace(design, brake=moved(design.brake, up))
    if pedal == "clutch":
        return replace(design, clutch=moved(design.clutch, up))
    part = design.throttle
    return replace(
        design, throttle=replace(part, pedal=replace(part.pedal, pivot=part.pedal.pivot + up))
    )


def _outcome(heights: list[Height]) -> Outcome:
    if any(height.missed for height in heights):
        return "fails"
    open_joints = any(height.suits is None or not height.suits.holds(0.0) for height in heights)
    return "short" if open_joints else "passes"


def _says(heights: list[Height], people: str) -> Sentence:
    wrong = [height for height in heights if height.missed]
    if not wrong:
        told = [sentence(f"the {h.pedal} pad at {{}}", (h.now, "mm")) for h in heights]
        lead = sentence(f"All three suit {people}: ") + joined(told, ", ")
        return lead + sentence(" above the heels.")
    words = [
        sentence(f"the {h.pedal} pad stands at {{}}: ", (h.now, "mm")) + h.missed[0] + _range(h)
        for h in wrong
    ]
    return sentence(f"Above the heels of {people} ") + joined(words) + sentence(".")


def _range(height: Height) -> Sentence:
    if height.bears is None or height.hopeless:
        return sentence(", and no height mends that")
    low, high = height.bears.low, height.bears.high
    if low == LIFTS[0]:
        return sentence("; {} would do, or less", (height.now + high, "mm"))
    if high == LIFTS[-1]:
        return sentence("; {} would do, or more", (height.now + low, "mm"))
    ends = ((height.now + low, "mm"), (height.now + high, "mm"))
    return sentence("; {} to {} would do", *ends)


def _row(height: Height) -> Row:
    ends: list[float] = []
    for stretch in (height.bears, height.suits):
        if stretch is None:
            ends += [np.nan, np.nan]
            continue
        ends.append(np.nan if stretch.low == LIFTS[0] else height.now + stretch.low)
        ends.append(np.nan if stretch.high == LIFTS[-1] else height.now + stretch.high)
    bands = height.found.missed(0.0, "should")
    mark: Mark = "fails" if height.missed else "short" if bands else "passes"
    return Row(
        name=height.pedal,
        values=(height.now, *ends),
        mark=mark,
        why=tuple((height.missed or bands)[:3]),
        changes=(),
    )


def _steps(design: Design, heights: list[Height]) -> Iterator[Step]:
    before = alone(design)
    for height in heights:
        lift = height.lift
        if lift == 0.0:
            continue
        way = "up" if lift > 0.0 else "down"
        yield step_to(
            before,
            alone(design, lifted_by(design, height.pedal, lift)),
            sentence(
                f"Move the {height.pedal} pedal {{}} {way}, with all that hangs on it.",
                (abs(lift), "mm"),
            ),
            sentence("its pad at {} above the heels", (height.now + lift, "mm")),
            MOVE_PEDAL,
        )


def _notes(design: Design, heights: list[Height]) -> Iterator[Sentence]:
    yield sentence(
        "A dash is an end that was not found within {} up or down. Best is where most joints are "
        "within their bands.",
        (float(LIFTS[-1]), "mm"),
    )
    yield _step_words(alone(design).assessment.findings)
    yield sentence("All pads at once come down against the heels with packing: ask `floor-drop`.")
    place = heights[1].found.index(0.0)
    yield from guessed_legs(heights[1].found.assessment.drivers, place)


def _step_words(findings: Sequence[Finding]) -> Sentence:
    """How brake and accelerator stand to each other along the car."""
    found = {finding.limit.code: finding for finding in findings}
    rest, cruising, braking = (
        found[f"driver.{code}"] for code in ("step_rest", "step_cruising", "heel_and_toe")
    )
    apart = [(abs(one(step.value)), "mm") for step in (rest, cruising, braking)]
    ways = ["nearer" if one(step.value) > 0.0 else "further away" for step in (rest, cruising)]
    return sentence(
        f"Along the car the brake pad stands {{}} {ways[0]} than the accelerator at rest, {{}} "
        f"{ways[1]} when cruising; 20 to 50 mm nearer is common. Under 500 N the two are {{}} "
        "apart: {} at most for one shoe on both.",
        *apart,
        (one(braking.bound), "mm"),
    )
