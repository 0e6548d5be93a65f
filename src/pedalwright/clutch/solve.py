"""From the bearing's lift to pad travel and effort; from the room there is to the lift reached."""

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from pedalwright.clutch.formulas import (
    bearing_travel,
    bore_of,
    least_master_area,
    lift_after,
    line_ratio,
    master_stroke,
    pedal_effort,
    release_pressure,
    slave_stroke,
    travel_at_ratio,
)
from pedalwright.clutch.parts import (
    Budget,
    CableFork,
    ClutchResult,
    ConcentricBearing,
    Fluid,
    Need,
    Release,
    SlaveCylinder,
)
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Ratio, mm, mm2, mm_N
from pedalwright.core.working import subject, unrecorded
from pedalwright.hydraulics import Cylinder
from pedalwright.hydraulics.formulas import bore_area

#: A slave has a master cylinder, even if nobody wrote it down.
_UNMEASURED = Cylinder(bore=np.nan, stroke=np.nan)
#: The trade's rule of thumb for a fluid clutch; shown as a figure, never a demand.
RULE_OF_THUMB = 6.0


def need(release: Release, master: Cylinder | None) -> Need:
    """Travel the release asks of the master piston, split by cause; no master for a cable."""
    chain = _Chain.of(release, master)
    whole = master_stroke(
        slave_stroke(release.bearing_lift, release.free_play, chain.fork),
        chain.line,
        release.line_growth,
        release.dead_stroke,
    )
    per_lift = chain.fork * chain.line
    return Need(
        dead_stroke=release.dead_stroke,
        free_play=release.free_play * per_lift,
        lift=release.bearing_lift * per_lift,
        line_growth=(release.bearing_lift + release.free_play) * per_lift * release.line_growth,
        master=whole,
    )


def budget(needed: Need, pad: Callable[[mm], mm]) -> Budget:
    """Pad travel by cause, in the order in which the foot meets them; the sum is exact.

    `pad` is the pad's arc for a master travel. The structure is rigid here; `respond` adds its
    give, for which it knows the effort.
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
        structure=0.0,
        total=arcs[3],
    )


@no_answer_is_nan
def respond(
    release: Release,
    master: Cylinder | None,
    *,
    travel: Budget,
    available: mm,
    mean_ratio: Ratio,
    stroke_at_wall: mm,
    give_per_newton: mm_N = 0.0,
) -> ClutchResult:
    """All that can be said about the clutch.

    `travel` is the pad's need by cause, `available` the pad's arc before the toes meet the wall,
    `stroke_at_wall` the master travel there, `give_per_newton` the give of arm, rod and mounts
    at the pad. The piston goes no further than its cylinder lets it.
    """
    with unrecorded():
        chain = _Chain.of(release, master)
        needed = need(release, master).master
    effort = pedal_effort(
        release.release_load,
        chain.fork,
        chain.fork_efficiency,
        chain.line,
        release.line_efficiency,
        mean_ratio,
    )
    give = effort * give_per_newton
    with subject("pedal to the wall"):
        at_wall = chain.lift(stroke_at_wall)
    with unrecorded():
        reached = np.minimum(chain.lift(stroke_at_wall - give / mean_ratio), release.bearing_lift)
    return ClutchResult(
        travel_needed=travel.total,
        travel_available=available,
        budget=replace(travel, structure=give, total=travel.total + give),
        master_stroke=needed,
        mean_ratio=mean_ratio,
        effort=effort,
        fluid=chain.fluid(stroke_at_wall - give / mean_ratio),
        lift_reached=reached,
        lift_needed=release.bearing_lift,
        lift_at_wall=at_wall,
        travel_at_six=travel_at_ratio(RULE_OF_THUMB, needed),
    )


@dataclass(frozen=True, slots=True)
class _Chain:
    """Fork and line between bearing and master; a ring piston has no fork, a cable no fluid."""

    release: Release
    master: Cylinder | None
    fork: Ratio
    fork_efficiency: Ratio
    #: Area of the slave's piston; None for a cable.
    slave: mm2 | None
    #: Master travel over slave travel.
    line: Ratio

    @classmethod
    def of(cls, release: Release, master: Cylinder | None) -> "_Chain":
        actuator = release.actuator
        if isinstance(actuator, CableFork):
            assert master is None, "a cable has no master cylinder"
            return cls(release, None, actuator.fork_ratio, actuator.fork_efficiency, None, 1.0)
        master = master or _UNMEASURED
        fork, efficiency = (
            (1.0, 1.0)
            if isinstance(actuator, ConcentricBearing)
            else (actuator.fork_ratio, actuator.fork_efficiency)
        )
        slave = _area(actuator)
        with subject("master"):
            line = line_ratio(slave, bore_area(master.bore))
        return cls(release, master, fork, efficiency, slave, line)

    def lift(self, stroke: mm) -> mm:
        """Bearing lift for a master travel; the piston bottoms in its cylinder."""
        if self.master is not None:
            stroke = np.minimum(stroke, self.master.stroke)
        release = self.release
        travel = bearing_travel(
            stroke, release.dead_stroke, self.line, release.line_growth, self.fork
        )
        return lift_after(travel, release.free_play)

    def fluid(self, stroke: mm) -> Fluid | None:
        """Pressure, and the bore that would release with the master travel there is."""
        if self.master is None or self.slave is None:
            return None
        release = self.release
        with unrecorded():
            slave = slave_stroke(release.bearing_lift, release.free_play, self.fork)
        with subject("smallest bore"):
            least = bore_of(
                least_master_area(
                    slave, self.slave, release.line_growth, stroke, release.dead_stroke
                )
            )
        return Fluid(
            cylinder_stroke=self.master.stroke,
            slave_pressure=release_pressure(
                release.release_load, self.fork, self.fork_efficiency, self.slave
            ),
            least_bore=least,
        )


def _area(actuator: SlaveCylinder | ConcentricBearing) -> mm2:
    if isinstance(actuator, ConcentricBearing):
        return actuator.area
    with subject("slave"):
        return bore_area(actuator.bore)
