"""What carries a push from the pad to the cylinder, as the builder measures it, and how it fares.

Numbers may be batches, variants last. A strength is the least the material may be counted on
for; a donor part of unknown steel is assumed, and tagged so in the project file.
"""

from dataclasses import dataclass

from pedalwright.core.points import Point
from pedalwright.core.units import MPa, N, N_mm, Nmm, Ratio, mm
from pedalwright.structure.box.parts import BoxGive
from pedalwright.structure.fixings.parts import Fastened, Fixing, Load, WeldUse


@dataclass(frozen=True, kw_only=True, slots=True)
class Arm:
    """A flat steel or alloy arm, bent in its depth, evenly tapered, drilled for the rod pin."""

    #: Across the car.
    thickness: mm
    #: In the direction of the push.
    depth_at_pivot: mm
    depth_at_pad: mm
    #: Hole for the rod pin, on the middle of the depth.
    pin_hole: mm
    elastic: MPa
    poisson: Ratio
    yield_strength: MPa


@dataclass(frozen=True, kw_only=True, slots=True)
class Pivot:
    """The arm's tube turns with a bush at each end on a shaft between two cheeks."""

    tube_outside: mm
    tube_inside: mm
    shaft_diameter: mm
    #: Between the cheeks.
    span: mm
    #: Of one of the two bushes.
    bush_length: mm
    tube_yield: MPa
    shaft_yield: MPa
    #: Pressure the bush bears at rest, over its projected area.
    bush_pressure: MPa


@dataclass(frozen=True, kw_only=True, slots=True)
class ClevisPin:
    """The pin of the push rod's fork through the arm."""

    diameter: mm
    #: The arm, with any washer welded to it, between the fork's sides.
    inner_thickness: mm
    #: One side of the fork.
    fork_thickness: mm
    #: On each side between arm and fork.
    gap: mm
    yield_strength: MPa


@dataclass(frozen=True, kw_only=True, slots=True)
class PushRod:
    """The rod between pedal and piston."""

    #: Core of the thread if the rod is threaded along its length.
    outside: mm
    #: 0 for a solid rod.
    inside: mm = 0.0
    elastic: MPa
    yield_strength: MPa


@dataclass(frozen=True, kw_only=True, slots=True)
class Mount:
    """How stiff the body holds what the pedal pushes against."""

    #: Cylinder's flange, along the cylinder; left out where the box below says it.
    cylinder_stiffness: N_mm | None = None
    #: Pivot's bracket, along the pivot force; left out likewise.
    pivot_stiffness: N_mm | None = None
    #: How the flange and the bracket are fixed; left out, their fasteners are not judged.
    flange: Fixing | None = None
    bracket: Fixing | None = None
    #: The parts of the box that carry the cylinder's flange and the pivot's shaft. Where both are
    #: named, the box says how far they give and the stiffnesses above are not used.
    cylinder_on: str = ""
    pivot_on: str = ""
    #: Middle of the cylinder's flange on its part; left out, that of the plate or channel made for
    #: it, else where the rod points.
    flange_at: Point | None = None
    #: Of the cylinder's flange, across the part that carries it and up it.
    flange_width: mm = 60.0
    flange_height: mm = 40.0

    @property
    def in_box(self) -> bool:
        """Whether the box says how far flange and shaft give."""
        return bool(self.cylinder_on and self.pivot_on)


@dataclass(frozen=True, kw_only=True, slots=True)
class RelayArms:
    """What a relay lever is made of: two flat arms on one tube, which turns on a shaft."""

    #: Of both arms, across.
    thickness: mm
    #: Depth at the tube of the arm that the pedal drives, and of the one that drives.
    driven_depth: mm
    driving_depth: mm
    #: Arm to arm along the tube, middle to middle; 0 where both are cut from one plate.
    spacing: mm = 0.0
    tube_outside: mm
    tube_inside: mm
    #: The rod from here to the cylinder.
    push_rod: PushRod
    #: What carries its shaft, along the force on it.
    bracket_stiffness: N_mm
    elastic: MPa
    poisson: Ratio
    yield_strength: MPa


@dataclass(frozen=True, kw_only=True, slots=True)
class Relaying:
    """A relay lever at one position of the pedal, and what each newton on the pad makes there."""

    #: None where nobody said what it is made of.
    arms: RelayArms | None
    driven_radius: mm
    driving_radius: mm
    rod_length: mm
    #: Pad movement over movement of the driven pin.
    ratio: Ratio
    rod_share: Ratio
    tube_share: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class PushTest:
    """One push on the brake pad at home, engine off, and what moved from a light push on."""

    #: Read off a bathroom scale between shoe and pad, less that of the light push.
    push: N
    #: Of the pad along its arc.
    pad: mm
    #: Of the cylinder's flange along the cylinder, and of the pivot's bracket, by dial or rule.
    flange: mm | None = None
    bracket: mm | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Pushes:
    """So many pushes alike in a car's life."""

    push: N
    times: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class Reactions:
    """What one newton on the pad does to flange and bracket, and where."""

    flange: Load
    bracket: Load


@dataclass(frozen=True, kw_only=True, slots=True)
class Loads:
    """Pushes along the foot, and one sideways, on the pad."""

    #: A hard stop within the rules: give is judged here.
    effort: N
    #: A frightened driver: nothing may bend for good.
    panic: N
    #: The hardest push: nothing may fail.
    abuse: N
    #: A foot slipping off, across the car, by itself.
    sideways: N
    #: What the arm is worked with over the years, for the cracks that many pushes make.
    life: tuple[Pushes, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Stress:
    """Stress at the worst place of a part, and what the part bears there."""

    size: MPa
    bears: MPa


@dataclass(frozen=True, kw_only=True, slots=True)
class Loaded:
    """The pedal under one push along the foot."""

    push: N
    rod_force: N
    pivot_force: N
    arm_moment: Nmm
    arm_torque: Nmm
    #: Worst place for first yield, from the pivot along the arm.
    arm_worst_at: mm
    #: There: narrow edge, and middle of the broad face.
    arm_edge: MPa
    arm_face: MPa
    arm: Stress
    #: As if the whole section yielded: what the arm needs so as not to fold.
    arm_collapse: Stress
    #: Bending and shear of the pin together; the arm's pressure on it.
    pin: Stress
    pin_bearing: Stress
    pivot_tube: Stress
    #: Shear of the shaft at the harder pressed cheek, as an equivalent pull.
    pivot_shaft: Stress
    bush: Stress


@dataclass(frozen=True, kw_only=True, slots=True)
class Give:
    """How far the pad moves at `push` because things give, by cause. The causes sum to `total`."""

    push: N
    arm_bending: mm
    arm_shear: mm
    arm_twist: mm
    push_rod: mm
    cylinder_mount: mm
    pivot_mount: mm
    #: A relay lever's arms, tube, rod and bracket.
    relay: mm = 0.0
    total: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class RelayStrength:
    """A relay lever under the hardest push."""

    #: The harder worked of its two arms, at the tube.
    arm: Stress
    #: Torsion between the arms, as an equivalent pull.
    tube: Stress
    rod_force: N
    buckling_load: N


@dataclass(frozen=True, kw_only=True, slots=True)
class Strength:
    """All that can be said about one pedal's strength and stiffness."""

    effort: Loaded
    panic: Loaded
    abuse: Loaded
    sideways: Stress
    give: Give
    #: The cylinder's flange itself, at the same push as `give`.
    flange_give: mm
    #: Push along the rod at which it bows.
    buckling_load: N
    #: Share of the arm's life that its pushes use up, each range raised as for a part nobody
    #: inspects.
    damage: Ratio
    #: Under the hardest push; None where nobody said how they are fixed.
    flange: Fastened | WeldUse | None = None
    bracket: Fastened | WeldUse | None = None
    #: None without a relay lever.
    relay: RelayStrength | None = None
    #: None where no box is described that carries this pedal.
    box: BoxGive | None = None
