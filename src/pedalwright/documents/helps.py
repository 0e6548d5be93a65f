"""Which question helps where a finding is not met: the first row that fits counts."""

from collections import Counter
from collections.abc import Sequence
from fnmatch import fnmatchcase

from pedalwright.core.checks import Finding

#: Code of the finding, and what it must be about; then the question.
HELPS = (
    ("brakes.effort", "*", "bore"),
    ("brakes.touchy", "*", "bore"),
    ("brakes.firm", "*", "bore"),
    ("brakes.one_circuit", "*", "bore"),
    ("brakes.servo_lost", "*", "bore"),
    ("brakes.hot_stop", "*", "hard"),
    ("brakes.lock_order", "*", "balance"),
    ("brakes.adhesion", "*", "balance"),
    ("brakes.*travel", "*", "travel"),
    ("hydraulics.stroke", "*", "bore"),
    ("hydraulics.residual_drag", "*", "drag"),
    ("hydraulics.drain_back", "*", "drag"),
    ("linkage.rod_angle", "*", "rod-angle"),
    ("linkage.rod_fits", "*", "rod-angle"),
    ("linkage.dead_point", "*", "ratio"),
    ("linkage.stop_*", "clutch", "clutch"),
    ("linkage.stop_*", "brake", "travel"),
    ("clutch.*", "*", "clutch"),
    ("throttle.*", "*", "throttle"),
    ("driver.ankle_*", "*", "floor-drop"),
    ("driver.knee_rest", "*", "floor-drop"),
    ("driver.knee_full", "*", "floor-drop"),
    ("driver.heel_lift*", "*", "pedal-height"),
    ("driver.gap_*", "*", "spacing"),
    ("driver.shoes_apart", "*", "spacing"),
    ("structure.load_loop", "*", "load-path"),
    ("structure.panel_*", "*", "thickness"),
    ("structure.row*", "*", "rivets"),
    ("structure.give", "brake*", "spongy"),
    ("structure.flange_give", "brake*", "spongy"),
    ("structure.flange_give", "clutch*", "doubler"),
    ("structure.give", "clutch*", "clutch"),
)


def helpful(findings: Sequence[Finding]) -> dict[str, int]:
    """Questions that help, each with how many findings not met it is about; the worst first.

    What must be met goes before what should be.
    """
    missed = [finding for finding in findings if not finding.ok]
    missed.sort(key=lambda finding: (finding.limit.weight != "must", finding.margin))
    questions = (question_for(finding) for finding in missed)
    return dict(Counter(question for question in questions if question is not None))


def question_for(finding: Finding) -> str | None:
    """The question to ask about a finding; None where no question is about such a one."""
    return next(
        (
            question
            for code, about, question in HELPS
            if fnmatchcase(finding.limit.code, code) and fnmatchcase(finding.about, about)
        ),
        None,
    )
