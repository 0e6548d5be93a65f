"""The clutch as its release bearing asks for it, and what the pedal makes of it."""

from dataclasses import dataclass
from typing import TypeAlias

from pedalwright.core.units import MPa, N, Ratio, mm, mm2


@dataclass(frozen=True, kw_only=True, slots=True)
class SlaveCylinder:
    """A slave cylinder outside, pulling or pushing a fork."""

    bore: mm
    #: Slave movement over bearing movement.
    fork_ratio: Ratio
    fork_efficiency: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class ConcentricBearing:
    """A ring piston around the shaft that pushes the bearing itself."""

    area: mm2


@dataclass(frozen=True, kw_only=True, slots=True)
class CableFork:
    """A cable that pulls a fork. It has no master cylinder, and no volume that could grow."""

    #: Cable movement over bearing movement.
    fork_ratio: Ratio
    fork_efficiency: Ratio


Actuator: TypeAlias = SlaveCylinder | ConcentricBearing | CableFork


@dataclass(frozen=True, kw_only=True, slots=True)
class Release:
    """What releases the clutch, from bearing to master cylinder, or to the cable's pedal end."""

    actuator: Actuator
    #: Bearing movement from contact to full release.
    bearing_lift: mm
    #: Bearing movement before it touches.
    free_play: mm
    #: Force on the bearing at full release.
    release_load: N
    #: Share of the slave's volume that hoses and fluid take on top; 0 for a cable.
    line_growth: Ratio
    #: Master piston movement before its port is covered; for a cable its stretch.
    dead_stroke: mm
    #: Force that arrives at the slave, or the fork, over force on the master's rod or the cable.
    line_efficiency: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class Need:
    """Travel the release asks of the master piston or the cable; the causes sum to `master`."""

    dead_stroke: mm
    free_play: mm
    lift: mm
    line_growth: mm
    master: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Budget:
    """Pad travel by cause; the causes sum to `total`."""

    dead_stroke: mm
    free_play: mm
    lift: mm
    line_growth: mm
    #: Arm, rod and what they are bolted to, under the clutch's effort.
    structure: mm
    total: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Fluid:
    """What a clutch worked by fluid adds."""

    cylinder_stroke: mm
    slave_pressure: MPa
    #: The smallest master that releases the clutch with the pad travel there is.
    least_bore: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class ClutchResult:
    """All that the clutch room can say."""

    #: Pad travel to full release, structure rigid; `budget.total` counts its give too.
    travel_needed: mm
    travel_available: mm
    budget: Budget
    #: Travel of the master piston, or of the cable at the pedal, to full release.
    master_stroke: mm
    mean_ratio: Ratio
    effort: N
    #: None for a cable.
    fluid: Fluid | None
    #: Bearing lift with the travel there is, give of the structure taken off.
    lift_reached: mm
    lift_needed: mm
    #: Bearing lift if the pedal is pushed to the wall, nothing gives and no stop holds it.
    lift_at_wall: mm
    #: Pad travel that a pedal of 6 to 1 would need here: the trade's rule of thumb, as a figure.
    travel_at_six: mm
