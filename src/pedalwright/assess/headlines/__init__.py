"""The results other tools may lean on: stable names, units, and what each one means.

`docs/results.md` is made from this folder, so every headline is defined once, in the file of its
room.
"""

from pedalwright.assess.headlines.brakes import braking, where_given
from pedalwright.assess.headlines.clutch import releasing
from pedalwright.assess.headlines.driver import sitting
from pedalwright.assess.headlines.headline import Headline
from pedalwright.assess.headlines.hydraulics import stroking
from pedalwright.assess.headlines.linkage import turning
from pedalwright.assess.headlines.structure import giving
from pedalwright.assess.headlines.throttle import opening
from pedalwright.assess.parts import Assessment

__all__ = ["Headline", "headlines"]


def headlines(assessment: Assessment) -> tuple[Headline, ...]:
    """Every headline of an assessment, in the order of the rooms."""
    return (
        *turning(assessment.brake, assessment.clutch),
        *braking(assessment.brake),
        *stroking(assessment.brake),
        *where_given(assessment.brake.result),
        *releasing(assessment.clutch.result),
        *opening(assessment.throttle.result),
        *giving(assessment.brake.strength),
        *(line for placed in assessment.drivers for line in sitting(placed)),
    )
