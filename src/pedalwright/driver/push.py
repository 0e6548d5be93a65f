"""How hard a braced leg can push, and what the places of a stroke are called that go by a push."""

import numpy as np

from pedalwright.core.units import N, Ratio, rad
from pedalwright.driver.formulas.leg import push_of_leg
from pedalwright.shelf.leg_push import leg_push

#: The most that a leg of modest strength pushes, nearly straight and braced against the seat: one
#: that gives 500 N at 120 degrees, which few women and old people exceed (second-hand).
MODEST_LEG = 1000.0
#: Places of a stroke: an everyday stop, the hardest push, the accelerator at a steady speed.
NORMAL, HARDEST, CRUISING = "200 N", "500 N", "cruising"
#: Push of an everyday stop without a servo (common practice: 150 to 250 N).
NORMAL_PUSH = 200.0
#: Share of the accelerator's travel at a steady speed (ours).
CRUISING_SHARE = 0.25


def most_push(knee: rad) -> N:
    """What a leg of modest strength pushes at an angle of its knee."""
    return push_of_leg(MODEST_LEG, share_of_push(knee))


def share_of_push(knee: rad) -> Ratio:
    """The curve of the shelf, straight between its points; nan for a leg that cannot reach."""
    rows = leg_push()
    angles = np.deg2rad([row.knee_deg for row in rows])
    return np.interp(knee, angles, [row.share for row in rows])
