"""What a servo adds to the push on its rod."""

from itertools import pairwise

import numpy as np

from pedalwright.core.units import N, Ratio
from pedalwright.hydraulics.formulas import servo_gain
from pedalwright.hydraulics.parts import Masters, Servo, Tandem


def helped(servo: Servo | None, push: N) -> N:
    """Force behind the servo for a force on its rod; the same force where there is none."""
    if servo is None:
        return push
    return _along([(0.0, 0.0), *((point.push, point.force) for point in servo.points)], push)


def unhelped(servo: Servo | None, force: N) -> N:
    """Force on the servo's rod that gives a force behind it."""
    if servo is None:
        return force
    return _along([(0.0, 0.0), *((point.force, point.push) for point in servo.points)], force)


def servo_of(masters: Masters) -> Servo | None:
    """The servo in front of the cylinders; twin cylinders on a bar have none."""
    return masters.servo if isinstance(masters, Tandem) else None


def gain(masters: Masters, push: N) -> Ratio:
    """Times that the push on the rod is multiplied before the cylinders feel it."""
    servo = servo_of(masters)
    return 1.0 if servo is None else servo_gain(helped(servo, push), push)


def _along(points: list[tuple[N, N]], x: N) -> N:
    """Straight lines from point to point; past the last one for one."""
    last_x, last_y = points[-1]
    found = last_y + x - last_x
    for (x_1, y_1), (x_2, y_2) in reversed(list(pairwise(points))):
        found = np.where(x < x_2, y_1 + (y_2 - y_1) * (x - x_1) / (x_2 - x_1), found)
    return found
