"""The wiring diagram: each room is handed what it needs, and nothing else."""

from pedalwright import brakes, clutch, linkage, structure, survey, throttle
from pedalwright.assess.box import box_findings, boxed
from pedalwright.assess.cabin import (
    around,
    driver_findings,
    footwell,
    placed,
    row_findings,
    shoes,
    toe_wall,
    treads,
)
from pedalwright.assess.members import member_findings
from pedalwright.assess.parts import Assessment
from pedalwright.assess.pedals import (
    brake_pedal,
    clutch_pedal,
    hydraulic_findings,
    throttle_pedal,
)
from pedalwright.assess.settings import settings
from pedalwright.assess.slides import foremost, slid
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.working import subject
from pedalwright.design import Design


@no_answer_is_nan
def assess(design: Design) -> Assessment:
    """All that can be said about a design, or about a batch of them; pure."""
    front = foremost(design)
    design = slid(design, front)
    wall, box = toe_wall(design), boxed(design)
    with subject("brake"):
        brake = brake_pedal(design, wall, box.brake)
    with subject("clutch"):
        released = clutch_pedal(design, wall, box.clutch)
    with subject("throttle"):
        accelerator = throttle_pedal(design)
    near = around(design, brake, released, accelerator)  # before the legs: both are large
    feet, room = treads(design, brake, released, accelerator), footwell(design)
    drivers = placed(design, front, feet, room)
    worn = linkage.shoe_clearances(shoes(drivers), design.survey.lines)
    findings = (
        *survey.check(design.survey.outcome),
        *member_findings(design),
        *driver_findings(drivers, brake.result.effort_6_43),
        *row_findings(design, drivers, feet),
        *linkage.check(brake.stroke, "brake"),
        *linkage.check(released.stroke, "clutch"),
        *linkage.check_clearances(near),
        *linkage.check_shoes(worn),
        *settings(design, brake, released),
        *hydraulic_findings(design.brake, brake),
        *brakes.check(brake.result, brake.room),
        *clutch.check(released.result),
        *throttle.check(accelerator.result),
        *box_findings(box),
        *structure.check(brake.strength, "brake"),
        *structure.check_clutch(released.strength, "clutch"),
    )
    return Assessment(
        brake=brake,
        clutch=released,
        throttle=accelerator,
        drivers=drivers,
        clearances=near,
        shoes=worn,
        box_faults=box.faults,
        findings=findings,
    )
