"""The clutch as its release bearing asks for it, and what the pedal makes of it."""

from dataclasses import dataclass
from typing import TypeAlias

from pedalwright.core.units import MPa, N, Ratio, mm, mm2, rad


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
class CableBends:
    """How a cable is led: each bend presses it against its conduit, and friction adds up."""

    #: All bends together, whichever way they go.
    angle: rad
    #: Between inner cable and conduit.
    friction: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class CableWire:
    """The inner cable as a spring; its conduit is taken to be stiff."""

    length: mm
    #: Metal in the cross-section; strands fill about 0.6 of the round.
    area: mm2
    #: Of the strand, which settles as it is pulled: well below that of a solid wire.
    elastic: MPa


@dataclass(frozen=True, kw_only=True, slots=True)
class CableFork:
    """A cable that pulls a fork. It has no master cylinder, and no volume that could grow."""

    #: Cable movement over bearing movement.
    fork_ratio: Ratio
    fork_efficiency: Ratio
    #: Given, they say what the cable's efficiency is, in place of `line_efficiency`.
    bends: CableBends | None = None
    #: Given, it says how far the cable stretches, in place of `dead_stroke`.
    wire: CableWire | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class RodFork:
    """A rod from the pedal straight to the fork: no fluid, nothing that stretches to speak of."""

    #: Rod movement over bearing movement.
    fork_ratio: Ratio
    fork_efficiency: Ratio


Actuator: TypeAlias = SlaveCylinder | ConcentricBearing | CableFork | RodFork


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadPoint:
    """One point of a load curve, as read from a press or a maker's sheet."""

    #: Bearing movement from contact.
    travel: mm
    load: N


@dataclass(frozen=True, kw_only=True, slots=True)
class Diaphragm:
    """A diaphragm spring as a spring washer with stiff fingers.

    The washer is taken to be held at its outer edge and at the root of its fingers; the spring
    of the facing, which helps the foot at first, is left out.
    """

    outside: mm
    #: Root of the fingers, where the closed ring begins.
    inside: mm
    thickness: mm
    #: Height of the free cone, its thickness taken off.
    cone: mm
    #: How far the ring is pressed when fitted, clutch engaged.
    pressed: mm
    #: Bearing movement over plate movement.
    finger_ratio: Ratio
    elastic: MPa
    poisson: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class PlateBite:
    """Where the plate begins to bite, by how far it must be lifted to turn free."""

    plate_lift: mm
    #: Bearing movement over plate movement.
    finger_ratio: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class Release:
    """What releases the clutch, from bearing to master cylinder, or to the cable's pedal end."""

    actuator: Actuator
    #: Bearing movement from contact to full release.
    bearing_lift: mm
    #: Bearing movement before it touches.
    free_play: mm
    #: Force on the bearing at full release; a load curve, where there is one, says it instead.
    release_load: N
    #: Share of the slave's volume that hoses and fluid take on top; 0 for a cable.
    line_growth: Ratio
    #: Master piston movement before its port is covered; for a cable its stretch.
    dead_stroke: mm
    #: Force that arrives at the slave, or the fork, over force on the master's rod or the cable.
    line_efficiency: Ratio
    #: Load over bearing movement, in order, straight between; they come before `diaphragm`.
    load_points: tuple[LoadPoint, ...] = ()
    diaphragm: Diaphragm | None = None
    #: Share of the bearing's lift at which the plate begins to bite as the pedal comes up.
    bite_share: Ratio | None = None
    #: The same by the plate's own lift; it comes before `bite_share`.
    bite: PlateBite | None = None
    #: What the cover may be pressed beyond its release; left out, the trade's 2 mm.
    over_lift: mm | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class EffortCurve:
    """What the foot feels on the way to full release; stations on axis 0, one for each slice."""

    lift: mm
    load: N
    pad_travel: mm
    effort: N


@dataclass(frozen=True, kw_only=True, slots=True)
class StopWindow:
    """Pad travel between which a stop at the pedal must stand."""

    #: The clutch is released, give of the structure counted.
    released: mm
    #: The cover is pressed as far as it may be, were the structure rigid.
    over_stroke: mm
    #: What lies between; negative where there is nothing.
    width: mm


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
    #: Push on the pad that holds the clutch released.
    effort: N
    #: The largest push on the way there; the same without a load curve.
    effort_peak: N
    #: None without a load curve.
    effort_curve: EffortCurve | None
    #: None for a cable.
    fluid: Fluid | None
    #: Bearing lift with the travel there is, give of the structure taken off.
    lift_reached: mm
    lift_needed: mm
    #: What the cover may be pressed beyond `lift_needed`.
    over_lift: mm
    #: Bearing lift if the pedal is pushed to the wall, nothing gives and no stop holds it.
    lift_at_wall: mm
    #: Pad travel that a pedal of 6 to 1 would need here: the trade's rule of thumb, as a figure.
    travel_at_six: mm
    #: Pad travel left between full release, give counted, and the wall; negative if it is short.
    spare: mm
    #: Pad travel at which the plate begins to bite, give counted; None where nobody said.
    bite: mm | None
    window: StopWindow
    #: Pad travel at the pedal's own stop; None without one.
    stop: mm | None
