"""From the bearing's lift to pad travel and effort; from the room there is to the lift reached."""

from collections.abc import Callable

import numpy as np

from pedalwright.clutch.formulas import (
    lift_from,
    master_stroke,
    pedal_effort,
    release_pressure,
    slave_stroke,
    travel_at_ratio,
)
from pedalwright.clutch.parts import Actuator, Budget, ClutchResult, Need, Release, SlaveCylinder
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Ratio, mm, mm2
from pedalwright.core.working import subject
from pedalwright.hydraulics import Cylinder
from pedalwright.hydraulics.formulas import bore_area

#: The trade's rule of thumb for a fluid clutch; shown as a figure, never a demand.
RULE_OF_THUMB = 6.0


def need(release: Release, master: Cylinder) -> Need:
    """Travel the release asks of the master piston, split by cause."""
    slave, fork, _ = _actuator(release.actuator)
    with subject("master"):
        area = bore_area(master.bore)
    whole = master_stroke(
        slave_stroke(release.bearing_lift, release.free_play, fork),
        slave,
        area,
        release.line_growth,
        release.dead_stroke,
    )
    per_lift = fork * slave / area
    return Need(
        dead_stroke=release.dead_stroke,
        free_play=release.free_play * per_lift,
        lift=release.bearing_lift * per_lift,
        line_growth=(release.bearing_lift + release.free_play) * per_lift * release.line_growth,
        master=whole,
    )


def budget(needed: Need, pad: Callable[[mm], mm]) -> Budget:
    """Pad travel by cause, in the order in which the foot meets them; the sum is exact.

    `pad` is the pad's arc for a master travel.
    """
    stroke = needed.dead_stroke
    arcs = [pad(stroke)]
    for step in (needed.free_play, needed.lift, needed.line_growth):
        stroke = stroke + step
        arcs.append(pad(stroke))
    return Budget(
        dead_stroke=arcs[0],
        free_play=arcs[1] - arcs[0],
        lift=arcs[2] - arcs[1],
        line_growth=arcs[3] - arcs[2],
        total=arcs[3],
    )


@no_answer_is_nan
def respond(
    release: Release,
    master: Cylinder,
    *,
    travel: Budget,
    available: mm,
    mean_ratio: Ratio,
    stroke_at_wall: mm,
) -> ClutchResult:
    """All that can be said about the clutch.

    `travel` is the pad's need by cause, `available` the pad's arc before the toes meet the wall,
    `stroke_at_wall` the master travel there.
    """
    slave, fork, eta_fork = _actuator(release.actuator)
    area = bore_area.rule(master.bore)
    chain = (slave, area, release.line_growth, fork, release.free_play)
    stroke = need(release, master).master
    with subject("pedal to the wall"):
        at_wall = lift_from(stroke_at_wall, release.dead_stroke, *chain)
    return ClutchResult(
        travel_needed=travel.total,
        travel_available=available,
        budget=travel,
        master_stroke=stroke,
        cylinder_stroke=master.stroke,
        mean_ratio=mean_ratio,
        effort=pedal_effort(
            release.release_load, fork, eta_fork, slave, area, release.line_efficiency, mean_ratio
        ),
        slave_pressure=release_pressure(release.release_load, fork, eta_fork, slave),
        lift_reached=np.minimum(at_wall, release.bearing_lift),
        lift_needed=release.bearing_lift,
        lift_at_wall=at_wall,
        travel_at_six=travel_at_ratio(RULE_OF_THUMB, stroke),
    )


def _actuator(actuator: Actuator) -> tuple[mm2, Ratio, Ratio]:
    """Area, fork ratio and fork efficiency; a concentric bearing has no fork."""
    if isinstance(actuator, SlaveCylinder):
        with subject("slave"):
            area = bore_area(actuator.bore)
        return area, actuator.fork_ratio, actuator.fork_efficiency
    return actuator.area, 1.0, 1.0
