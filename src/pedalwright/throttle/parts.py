"""The way from the accelerator pad to the throttle's spindle, stage by stage."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from pedalwright.core.points import Point
from pedalwright.core.units import N, Nmm, Nmm_rad, Ratio, mm, rad


@dataclass(frozen=True, kw_only=True, slots=True)
class BallEnd:
    """A ball joint on the thread of a rod, as set."""

    #: Ball's centre to the face where the rod goes in.
    reach: mm
    #: Thread's outside.
    thread: mm
    #: Thread in the joint.
    engaged: mm
    #: Thread left bare behind the joint, for its lock-nut and to screw in.
    bare: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class BallEnds:
    """Both ends of one rod."""

    driving: BallEnd
    driven: BallEnd


@dataclass(frozen=True, kw_only=True, slots=True)
class SquareRod:
    """A rod set as builders set it: square to both levers when the pedal is at mid-travel."""

    driving_radius: mm
    driven_radius: mm
    rod_length: mm
    #: Given, they say how long to cut the rod.
    ends: BallEnds | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class BallRod:
    """A rod with a ball joint at each end between two cranks on axes of any direction.

    Points at rest; the rod is as long as its pins are apart there. A positive angle about an axis
    opens the throttle; axes may have any length.
    """

    driving_pivot: Point
    driving_axis: Point
    driving_pin: Point
    driven_pivot: Point
    driven_axis: Point
    driven_pin: Point
    #: Given, they say how long to cut the rod.
    ends: BallEnds | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Cable:
    """A cable between two quadrants, or arms that stay nearly square to it."""

    driving_radius: mm
    driven_radius: mm
    #: Cable that must be pulled in before the spindle moves.
    slack: mm


Stage: TypeAlias = SquareRod | BallRod | Cable


@dataclass(frozen=True, kw_only=True, slots=True)
class Spring:
    """A return spring, as torque at the spindle."""

    #: With the throttle closed.
    torque_closed: Nmm
    #: More for each radian of opening.
    rate: Nmm_rad


@dataclass(frozen=True, kw_only=True, slots=True)
class Follower:
    """The spindle of a further carburettor, and the one stage that turns it."""

    #: The first carburettor's spindle, or the shaft that drives that one: the cross-shaft, or
    #: with a single stage the pedal's own.
    driven_from: Literal["spindle", "cross-shaft"]
    stage: SquareRod | BallRod | Cable


@dataclass(frozen=True, kw_only=True, slots=True)
class EngineRock:
    """How the engine moves under the car's part of the linkage.

    The spindle moves with the engine and what drives it does not. For a square rod, whose place
    in the car is not known, the movement is taken along the rod, the worst. A cable's conduit
    moves along and takes it up.
    """

    direction: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Barrel:
    """The bore that the butterfly stands in; all carburettors alike."""

    bore: mm
    shaft: mm
    #: Plate from square to the bore, closed.
    closed: rad


@dataclass(frozen=True, kw_only=True, slots=True)
class Throttle:
    """Everything between pad and spindle."""

    #: Pad travel along its arc up to the pedal's stop.
    pad_room: mm
    stages: tuple[Stage, ...]
    #: Spindle turn from closed to full opening.
    full_opening: rad
    springs: tuple[Spring, ...]
    #: At the spindle, all carburettors together.
    friction: Nmm
    #: Further carburettors, each with a spindle of its own.
    followers: tuple[Follower, ...] = ()
    rock: EngineRock | None = None
    barrel: Barrel | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Turn:
    """One stage turned: what comes out for what goes in; axis 0 is the stations."""

    angle: rad
    #: Turn of the driven lever over turn of the driving one, here.
    gearing: Ratio
    #: Smaller angle of the rod to a lever; 0 at a dead point or out of reach, negative past it.
    rod_to_lever: rad


@dataclass(frozen=True, kw_only=True, slots=True)
class CutRod:
    """One rod at the bench."""

    #: Its place in the chain, as in "stage 2" or "follower 1".
    about: str
    #: Ball to ball.
    length: mm
    #: Bar to cut, thread included.
    cut: mm
    ends: BallEnds


@dataclass(frozen=True, kw_only=True, slots=True)
class Opening:
    """All that the throttle room can say; curves have the stations on axis 0."""

    pad_travel: mm
    spindle_angle: rad
    #: Spindle turn over pedal turn, here.
    gearing: Ratio
    at_stop: rad
    full_opening: rad
    #: Pad travel at which the spindle is fully open, whatever room the pad has; nan if it never is.
    pad_travel_full: mm
    #: Smallest angle between any rod and its levers over the stroke.
    rod_to_lever: rad
    #: Least closing torque with any one spring lost, over the stroke.
    one_spring_lost: Nmm
    friction: Nmm
    #: Push on the pad that holds full opening, or the pedal's stop where that comes first.
    effort: N
    #: Least force that brings the pad back, over the stroke.
    return_force: N
    #: Torque on the spindle's own stop for a frightened foot, if no pedal stop took the push.
    stop_torque: Nmm
    #: Turn of each further spindle from rest; stations on axis 0.
    follower_angles: tuple[rad, ...]
    #: Largest difference of any further spindle from the first, up to full opening; None with
    #: one spindle.
    unequal: rad | None
    #: Largest turn of the spindle for 10 mm of the engine either way, pedal held; None if not
    #: asked.
    rock_turn: rad | None
    #: Open share of the bore; stations on axis 0. None without a barrel.
    open_share: Ratio | None
    #: The same with the pad half-way to its stop.
    open_at_half: Ratio | None
    rods: tuple[CutRod, ...]
