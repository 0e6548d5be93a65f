"""Where on a drawing a finding is to be seen: the pedal to look at and the parts to mark."""

from fnmatch import fnmatchcase
from functools import cache
from typing import NamedTuple

from pedalwright.assess.stroke import PEDAL_NAMES, PedalName
from pedalwright.core.checks import Finding

#: Code of the finding, and the parts of the drawing; `*` is the driver it is about.
PARTS = (
    ("driver.ankle*", "ankle-* foot-*"),
    ("driver.knee_rim", "knee-* leg-* rim_bottom"),
    ("driver.knee*", "knee-* leg-*"),
    ("driver.hip*", "hip-* leg-*"),
    ("driver.reach*", "leg-* hip-*"),
    ("driver.toe_wall", "foot-* front_wall"),
    ("driver.heel*", "foot-* heel-rest"),
    ("driver.shin_column", "leg-* column"),
    ("driver.instep", "foot-* pivot"),
    ("driver.slide", "foot-* pad"),
    ("driver.pad_rake", "pad foot-*"),
    ("driver.*push", "leg-* pad"),
    ("driver.*", "pad foot-*"),
    ("linkage.rod_angle", "push-rod rod-socket"),
    ("linkage.rod_fits", "push-rod"),
    ("linkage.dead_point", "push-rod arm"),
    ("linkage.clear_shoe", "foot-*"),
    ("linkage.clear*", "arm pad"),
    ("linkage.stop*", "pad-path arm"),
    ("linkage.*", "arm push-rod"),
    ("hydraulics.*", "push-rod rod-socket"),
    ("brakes.*travel", "pad-path pad"),
    ("brakes.*", "push-rod rod-pin"),
    ("clutch.release", "pad-path pad"),
    ("clutch.*", "pad-path push-rod"),
    ("throttle.*", "pad-path arm"),
    ("structure.rod*", "push-rod"),
    ("structure.pin*", "rod-pin"),
    ("structure.pivot*", "pivot"),
    ("structure.*give", "pivot rod-socket"),
    ("structure.*", "arm"),
)
#: Rooms that speak of one pedal, wherever their findings do not say of which.
OF_A_PEDAL: dict[str, PedalName] = {
    "brakes": "brake",
    "hydraulics": "brake",
    "clutch": "clutch",
    "throttle": "throttle",
}


class Where(NamedTuple):
    """What to look at."""

    #: None where it can be seen with any of them.
    pedal: PedalName | None
    parts: tuple[str, ...]


def where(finding: Finding) -> Where:
    """The pedal and the parts a finding is about."""
    words = finding.about.replace(",", " ").split()
    named: PedalName | None = next((name for name in PEDAL_NAMES if name in words), None)
    if finding.room == "survey":
        return Where(None, tuple(words[:1]))
    parts = _parts(finding.limit.code)
    person = words[0] if words and words[0] not in PEDAL_NAMES else ""
    return Where(
        named or OF_A_PEDAL.get(finding.room),
        tuple(part.replace("*", person) for part in parts.split()),
    )


@cache
def _parts(code: str) -> str:
    return next((parts for pattern, parts in PARTS if fnmatchcase(code, pattern)), "")
