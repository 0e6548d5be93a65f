"""The handful of figures a builder watches while he works on one pedal."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fnmatch import fnmatchcase

from pedalwright.assess import Headline
from pedalwright.assess.stroke import PedalName
from pedalwright.core.checks import Finding
from pedalwright.documents.outside import Units
from pedalwright.documents.verdict import state, weakest

#: Headline, what it is called here, and the findings that judge it as `code|about`;
#: `*` is the driver looked at.
BRAKE = (
    ("linkage.brake.ratio", "pedal ratio, to 1", ""),
    ("brakes.effort_6_43", "push for a hard stop", "brakes.effort|*"),
    ("brakes.rear_alone_500N", "slows at 500 N, rear circuit alone", "brakes.one_circuit|rear*"),
    ("brakes.pad_travel_hard_stop", "pad travel", "brakes.travel|*"),
    ("structure.give_500N", "pad gives at 500 N", "structure.give|brake*"),
)
CLUTCH = (
    ("linkage.clutch.ratio", "pedal ratio, to 1", ""),
    ("clutch.stop_from", "travel to release", "clutch.release|*"),
    ("clutch.travel_available", "travel there is", ""),
    ("clutch.effort", "push, held down", "clutch.effort|*"),
    ("clutch.master_stroke", "stroke of the cylinder", "clutch.stroke|*"),
)
THROTTLE = (
    ("throttle.spindle_angle", "spindle turns", "throttle.full_opening|*"),
    ("throttle.effort", "push at full throttle", "throttle.effort|*"),
)
LEG = tuple(
    (
        f"driver.{{who}}.{{pedal}}.{place}.{joint}",
        f"{{who}}: {joint}, foot {'up' if place == 'rest' else 'down'}",
        f"{judge}|{{who}}, {{pedal}}, {place}",
    )
    for joint, rest, full in (
        ("knee", "driver.knee_rest", "driver.knee_full"),
        ("ankle", "driver.ankle*", "driver.ankle*"),
    )
    for place, judge in (("rest", rest), ("full", full))
)
OF_PEDAL: Mapping[PedalName, Sequence[tuple[str, str, str]]] = {
    "brake": BRAKE,
    "clutch": CLUTCH,
    "throttle": THROTTLE,
}


@dataclass(frozen=True, slots=True)
class KeyFigure:
    """One figure, what it was before, and how it is judged."""

    label: str
    value: str
    #: Empty where it reads the same.
    was: str
    #: passes, short, fails, unjudged; empty where nobody asks.
    state: str
    #: What it is, in a sentence.
    says: str


def key_figures(
    pedal: PedalName,
    driver: str,
    now: tuple[Sequence[Headline], Sequence[Finding]],
    before: Sequence[Headline],
    units: Units,
) -> Iterator[KeyFigure]:
    """Those of one pedal and one driver's leg on it."""
    lines, findings = now
    by_name = {line.name: line for line in lines}
    old = {line.name: line for line in before}
    wanted = [*OF_PEDAL[pedal], *(LEG if driver else ())]
    for row in wanted:
        name, label, judge = (text.format(who=driver, pedal=pedal) for text in row)
        line = by_name.get(name)
        if line is None:
            continue
        value, was = _said(line, units), _said(old.get(name), units)
        judged = _judged(findings, judge)
        yield KeyFigure(label, value, "" if was == value else was, judged, line.says)


def _said(line: Headline | None, units: Units) -> str:
    return "" if line is None else units.said(line.value, line.unit)


def _judged(findings: Sequence[Finding], judge: str) -> str:
    if not judge:
        return ""
    code, _, about = judge.partition("|")
    begins = code.rstrip("*")
    found = [
        f
        for f in findings
        if f.limit.code.startswith(begins)
        and fnmatchcase(f.limit.code, code)
        and fnmatchcase(f.about, about)
    ]
    return state(weakest(found)) if found else ""
