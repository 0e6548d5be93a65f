"""From the bearing's lift to pad travel and effort; from the room there is to the lift reached."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from pedalwright.clutch.formulas import (
    bearing_travel,
    bends_efficiency,
    bore_of,
    cable_pull,
    cable_stretch,
    least_master_area,
    lift_after,
    lift_at_share,
    lift_of_plate,
    line_ratio,
    master_stroke,
    pedal_effort,
    release_pressure,
    slave_stroke,
    travel_at_ratio,
)
from pedalwright.clutch.limits import OVER_LIFT
from pedalwright.clutch.loads import bearing_load, has_curve
from pedalwright.clutch.parts import (
    Budget,
    CableFork,
    ClutchResult,
    ConcentricBearing,
    EffortCurve,
    Fluid,
    Need,
    Release,
    RodFork,
    SlaveCylinder,
    StopWindow,
)
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import N, Ratio, mm, mm2, mm_N
from pedalwright.core.working import subject, unrecorded
from pedalwright.hydraulics import Cylinder
from pedalwright.hydraulics.formulas import bore_area

#: A slave has a master cylinder, even if nobody wrote it down.
_UNMEASURED = Cylinder(bore=np.nan, stroke=np.nan)
#: The trade's rule of thumb for a fluid clutch; shown as a figure, never a demand.
RULE_OF_THUMB = 6.0
#: Slices of the lift for the effort on the way to full release.
SLICES = 24


@no_answer_is_nan
def need(release: Release, master: Cylinder | None) -> Need:
    """Travel the release asks of the master piston, split by cause; no master for a cable."""
    release = settled(release)
    chain = _Chain.of(release, master)
    whole = chain.stroke(release.bearing_lift)
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
    pad: Callable[[mm], mm] | None = None,
    stop: mm | None = None,
) -> ClutchResult:
    """All that can be said about the clutch.

    `travel` is the pad's need by cause, `available` the pad's arc before the toes meet the wall,
    `stroke_at_wall` the master travel there, `give_per_newton` the give of arm, rod and mounts
    at the pad, `pad` the pad's arc for a master travel (left out, at the mean ratio), `stop` the
    pad's arc at the pedal's own stop. The piston goes no further than its cylinder lets it.
    """
    with unrecorded():
        release = settled(release)
        chain = _Chain.of(release, master)
        needed = chain.stroke(release.bearing_lift)
        to_pad = pad or partial(travel_at_ratio, mean_ratio)
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
        curve = _effort_curve(chain, to_pad) if has_curve(release) else None
        bite = _bite_lift(release)
    total = travel.total + give
    over_lift = OVER_LIFT if release.over_lift is None else release.over_lift
    return ClutchResult(
        travel_needed=travel.total,
        travel_available=available,
        budget=replace(travel, structure=give, total=total),
        master_stroke=needed,
        mean_ratio=mean_ratio,
        effort=effort,
        effort_peak=effort if curve is None else _peak(curve, effort),
        effort_curve=curve,
        fluid=chain.fluid(stroke_at_wall - give / mean_ratio),
        lift_reached=reached,
        lift_needed=release.bearing_lift,
        over_lift=over_lift,
        lift_at_wall=at_wall,
        travel_at_six=travel_at_ratio(RULE_OF_THUMB, needed),
        spare=available - total,
        bite=None if bite is None else _pad_at(chain, to_pad, bite) + give,
        window=_window(total, _pad_at(chain, to_pad, release.bearing_lift + over_lift)),
        stop=stop,
    )


def settled(release: Release) -> Release:
    """The release with what its load curve and its cable's run say in place of typed numbers.

    Done twice it changes nothing more.
    """
    if has_curve(release):
        with subject("full release"):
            load = bearing_load(release, release.bearing_lift)
        release = replace(release, release_load=load)
    cable = release.actuator
    if not isinstance(cable, CableFork):
        return release
    if cable.bends is not None:
        release = replace(
            release, line_efficiency=bends_efficiency(cable.bends.friction, cable.bends.angle)
        )
    if cable.wire is not None:
        pull = cable_pull(
            release.release_load, cable.fork_ratio, cable.fork_efficiency, release.line_efficiency
        )
        stretch = cable_stretch(pull, cable.wire.length, cable.wire.elastic, cable.wire.area)
        release = replace(release, dead_stroke=stretch)
    return release


def _effort_curve(chain: "_Chain", pad: Callable[[mm], mm]) -> EffortCurve:
    """Effort over the lift, slice by slice: what the pad does in a slice the bearing gets.

    Stations are the middles of the slices. A cable is stretched from the start here.
    """
    release = chain.release
    whole = np.asarray(release.bearing_lift)
    edges = np.linspace(0.0 * whole, whole, SLICES + 1)
    strokes = chain.stroke(edges)
    arcs = np.asarray(pad(strokes))
    lift = (edges[1:] + edges[:-1]) / 2
    load = bearing_load(release, lift)
    effort = pedal_effort(
        load,
        chain.fork,
        chain.fork_efficiency,
        chain.line,
        release.line_efficiency,
        np.diff(arcs, axis=0) / np.diff(strokes, axis=0),
    )
    return EffortCurve(lift=lift, load=load, pad_travel=(arcs[1:] + arcs[:-1]) / 2, effort=effort)


def _peak(curve: EffortCurve, at_release: N) -> N:
    on_the_way: N = np.max(curve.effort, axis=0)
    return np.maximum(on_the_way, at_release)


def _bite_lift(release: Release) -> mm | None:
    """Bearing lift at which the plate begins to bite."""
    if release.bite is not None:
        return lift_of_plate(release.bite.plate_lift, release.bite.finger_ratio)
    if release.bite_share is not None:
        return lift_at_share(release.bite_share, release.bearing_lift)
    return None


def _pad_at(chain: "_Chain", pad: Callable[[mm], mm], lift: mm) -> mm:
    """Pad travel for a lift, structure rigid."""
    with unrecorded():
        return pad(chain.stroke(lift))


def _window(released: mm, over_stroke: mm) -> StopWindow:
    return StopWindow(released=released, over_stroke=over_stroke, width=over_stroke - released)


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
        if isinstance(actuator, (CableFork, RodFork)):
            assert master is None, "a cable or a rod has no master cylinder"
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

    def stroke(self, lift: mm) -> mm:
        """Master travel for a bearing lift, free play and losses counted."""
        release = self.release
        return master_stroke(
            slave_stroke(lift, release.free_play, self.fork),
            self.line,
            release.line_growth,
            release.dead_stroke,
        )

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
