"""What the answers read of an assessment: the three pedals and the findings."""

from dataclasses import dataclass

from pedalwright.assess import Assessment, BrakePedal, ClutchPedal, ThrottlePedal
from pedalwright.core.checks import Finding


@dataclass(frozen=True, kw_only=True, slots=True)
class Judged:
    """The part of an assessment that is taken out of a batch, candidate by candidate.

    Drivers and clearances speak through their findings; leaving them in the batch halves the
    work.
    """

    brake: BrakePedal
    clutch: ClutchPedal
    throttle: ThrottlePedal
    findings: tuple[Finding, ...]

    @classmethod
    def of(cls, assessment: Assessment) -> "Judged":
        """That part of an assessment."""
        return cls(
            brake=assessment.brake,
            clutch=assessment.clutch,
            throttle=assessment.throttle,
            findings=assessment.findings,
        )
