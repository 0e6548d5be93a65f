"""What is asked of a survey."""

from collections.abc import Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.survey.outcome import Outcome

AGREES = Limit(
    "survey.readings_agree",
    "No reading contradicts the others by more than chance explains.",
    "at most",
    "mm",
    Source("Baarda", "once in a thousand readings by chance", "handbook"),
)
REPEATS = Limit(
    "survey.repeats_agree",
    "Readings of the same length lie as close together as their ± says.",
    "at most",
    "mm",
    Source("Ghilani", "difference of two readings, once in a thousand", "handbook"),
    "should",
)
KNOWN = Limit(
    "survey.mark_known",
    "Each mark is known well enough to build on, nineteen times of twenty.",
    "at most",
    "mm",
    Source("pedalwright", "5 mm: what a clearance keeps for build and play", "ours"),
    "should",
)
CROSSES = Limit(
    "survey.sights_cross",
    "The tapes to each mark come from ways different enough to hold it.",
    "at most",
    "1",
    Source("pedalwright", "3 mm out for each that the tapes are", "ours"),
    "should",
)
CHECKED = Limit(
    "survey.sights_checked",
    "Each mark has a sight more than it needs, so that a slip would show.",
    "at least",
    "1",
    Source("pedalwright", "a tenth of an error must show in the other readings", "ours"),
    "should",
)
STRAIGHT = Limit(
    "survey.marks_in_line",
    "Marks of one face or one tube lie in it, give or take how well they are known.",
    "at most",
    "mm",
    Source("pedalwright", "3 mm of bent sheet, or what chance explains", "ours"),
    "should",
)
TILT = Limit(
    "survey.face_tilt",
    "The marks of a face lie far enough apart, both ways, to hold its tilt.",
    "at most",
    "rad",
    Source("pedalwright", "1.5 degrees: 5 mm over a pedal's height", "ours"),
    "should",
)
#: How far out a mark may be, mm; how badly its sights may cross; how much of an error must show;
#: how bent a sheet may be, mm; how far out a tilt.
WELL_KNOWN, CROSSING, SHOWN, BENT, TILTED = 5.0, 3.0, 0.1, 3.0, np.deg2rad(1.5)


def check(outcome: Outcome | None) -> Iterator[Finding]:
    """Judge a survey by tapes; nothing is asked of one by coordinates."""
    if outcome is None:
        return
    for limit, rows in (
        (AGREES, outcome.agreement),
        (REPEATS, outcome.repeats),
        (KNOWN, outcome.marks),
        (CROSSES, outcome.crossings),
        (CHECKED, outcome.checks),
        (STRAIGHT, outcome.straightness),
        (TILT, outcome.tilts),
    ):
        for row in rows:
            yield limit.check(row.value, row.bound, row.about)
