"""Every leg at more places of the strokes than it is judged at: for drawings, and to look at."""

from pedalwright.assess.cabin import footwell, placed, treads
from pedalwright.assess.parts import Assessment, Placed
from pedalwright.assess.slides import foremost, slid
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.working import unrecorded
from pedalwright.design import Design


@no_answer_is_nan
def legs(design: Design, assessment: Assessment) -> tuple[Placed, ...]:
    """The drivers of an assessment, also where linings touch and a clutch bites, and cruising."""
    front = foremost(design)
    moved = slid(design, front)
    pedals = (assessment.brake, assessment.clutch, assessment.throttle)
    with unrecorded():
        return placed(moved, front, treads(moved, *pedals, between=True), footwell(moved))
