"""Where the cylinder has to stand for a straight rod, and what to do with a rod of given length."""

from dataclasses import dataclass, replace

import numpy as np

from pedalwright.assess import assess
from pedalwright.core.points import Point
from pedalwright.core.solve import no_answer_is_nan, swing_roots, wrapped
from pedalwright.core.units import Num, mm, rad
from pedalwright.design import Design
from pedalwright.fitting.outcomes import Outcome, outcome
from pedalwright.fitting.pedals import PedalName, fitted, refitted
from pedalwright.linkage import Lever, lever, sweep

#: Rod angle that is wished for near load (common practice, no source).
ROD_ANGLE_WISHED = np.deg2rad(3.0)
#: The stroke hardly changes when the cylinder moves, so the second move is already small.
_MOVES = 3


@dataclass(frozen=True, kw_only=True, slots=True)
class SocketMove:
    """Where to move a cylinder, square to its own axis, for the least rod angle over the stroke."""

    by: Point
    distance: mm
    before: Outcome
    after: Outcome
    #: Least rod for the wished 3 degrees once the cylinder stands there.
    rod_for_wish: mm


def level_rod(design: Design, name: PedalName) -> SocketMove:
    """The pin wanders from one side of the cylinder's axis to the other; halve the wandering."""
    tried, moved = design, Point(0.0, 0.0, 0.0)
    for _ in range(_MOVES):
        step = _to_middle(tried, name)
        made = fitted(tried, name)
        rod = replace(made.rod, socket=made.rod.socket + step)
        tried, moved = refitted(tried, name, replace(made, rod=rod)), moved + step
    return SocketMove(
        by=moved,
        distance=moved.length(),
        before=outcome(design, name),
        after=outcome(tried, name),
        rod_for_wish=_half_width(tried, name) / np.sin(ROD_ANGLE_WISHED),
    )


def _off_axis(design: Design, name: PedalName) -> Point:
    """The pin beside the cylinder's axis at each station of the stroke."""
    assessment, rod = assess(design), fitted(design, name).rod
    brake, clutch = assessment.brake, assessment.clutch
    arm = brake.lever if name == "brake" else clutch.lever
    full = brake.hard_stop if name == "brake" else clutch.full
    stroke = sweep(arm, rod, full.angle)
    offset = (stroke.pin if stroke.relay is None else stroke.relay.driving_pin) - rod.socket
    return offset - rod.direction * offset.dot(rod.direction)


def _to_middle(design: Design, name: PedalName) -> Point:
    off = _off_axis(design, name)
    return Point(_middle(off.x), _middle(off.y), _middle(off.z))


def _middle(stations: Num) -> Num:
    low: Num = np.min(stations, axis=0)
    high: Num = np.max(stations, axis=0)
    return (low + high) / 2


def _half_width(design: Design, name: PedalName) -> mm:
    furthest: Num = np.max(_off_axis(design, name).length(), axis=0)
    return furthest


@dataclass(frozen=True, kw_only=True, slots=True)
class RodFit:
    """A rod of given length between a pedal at rest and its socket: the changes that let it in.

    Each stands alone; nan where that change does not help. With a relay lever it is the rod from
    there to the cylinder, and turning the pedal is not tried.
    """

    length: mm
    #: Distance of pin and socket at rest as drawn, and what is missing from the rod's length.
    distance: mm
    too_short: mm
    #: Move the cylinder along its own axis, in the sense of the stroke.
    move_cylinder: mm
    #: Arc of the pad to its new rest, away from the driver; negative: towards him.
    move_pad: mm

    @property
    def least(self) -> mm:
        """The smallest of the changes made at the rod's ends, as a size."""
        return np.fmin(np.abs(self.too_short), np.abs(self.move_cylinder))


@no_answer_is_nan
def fit_rod(design: Design, name: PedalName, length: mm) -> RodFit:
    """What a rod that is there already asks of a pedal that is drawn."""
    made = fitted(design, name)
    arm, relay = lever(made.pedal), made.rod.relay
    span = made.rod.socket - (arm.pin if relay is None else relay.driving_pin)
    along = span.dot(made.rod.direction)
    sideways = (span - made.rod.direction * along).length()
    return RodFit(
        length=length,
        distance=span.length(),
        too_short=span.length() - length,
        move_cylinder=np.sign(along) * np.sqrt(length**2 - sideways**2) - along,
        move_pad=(
            made.pedal.pad_radius * _turn_to_fit(arm, made.rod.socket, length)
            if relay is None
            else np.nan
        ),
    )


def _turn_to_fit(arm: Lever, socket: Point, length: mm) -> rad:
    """The nearer of the two angles at which pin and socket are that far apart."""
    radius = arm.pin - arm.pivot
    gap = arm.pivot - socket
    wanted = (length**2 - gap.dot(gap) - radius.dot(radius)) / 2.0
    one, other = swing_roots(gap.dot(radius), gap.dot(arm.axis.cross(radius)), wanted)
    one, other = wrapped(one), wrapped(other)
    return np.where(np.abs(one) < np.abs(other), one, other)
