"""The foot between its heel rest and the pad."""

import numpy as np

from pedalwright.core.units import Ratio, mm, rad
from pedalwright.core.working import formula


@formula("z_heel", source="geometry")
def heel_height(z_floor: mm, d: mm, t: mm) -> mm:
    """Height of the heels: the floor, less the depth of the foot-tub, plus the heel plate."""
    return z_floor - d + t


@formula("h_pad", source="geometry")
def pad_above_heel(z_pad: mm, z_heel: mm) -> mm:
    """Height of the pad centre above the heel's rest."""
    return z_pad - z_heel


@formula("alpha", source="geometry")
def sole_angle(h_pad: mm, b: mm) -> rad:
    """Angle of the sole while the heel stays down and the ball of the foot is on the pad.

    No value where the pad is higher above the heel than the sole is long to the ball: the heel
    then has to lift.
    """
    return np.arcsin(h_pad / b)


@formula("x_heel", source="geometry")
def heel_behind_ball(b: mm, alpha: rad) -> mm:
    """How far the heel rests behind the pad centre."""
    return b * np.cos(alpha)


@formula("h_heel", source="geometry")
def flush_heel(z_pad: mm, b: mm, beta: rad, z_heel: mm) -> mm:
    """Height of the heel above its rest if the sole lay flat on the pad's face, `beta` above level.

    Below nought the rest is in the way: the heel stops there and the sole leaves the face.
    """
    return z_pad - b * np.sin(beta) - z_heel


@formula("beta", source="geometry")
def face_angle(s: Ratio, lambda_pad: rad, epsilon: rad, theta: rad) -> rad:
    """Angle of a pad's face above straight ahead, after a stroke `theta`.

    `s` is 1 for a hanging pedal and -1 for one hinged at the floor; `lambda_pad` is the lean of
    the pad's line and `epsilon` the face's own turn against it.
    """
    return np.pi / 2 + s * (epsilon + theta - lambda_pad)


@formula("alpha", source="geometry")
def sole_on_round_pad(phi: rad, r: mm, e: mm) -> rad:
    """Angle of a sole that turns about its heel and lies on a round pad.

    `phi` is the direction and `e` the distance from heel to the centre of the rounding `r`.
    """
    return phi + np.arcsin(r / e)


@formula("s", source="geometry")
def contact_along_sole(e: mm, r: mm) -> mm:
    """Where a sole touches a round pad, measured from the heel along the sole."""
    return np.sqrt(e**2 - r**2)


@formula("psi", source="geometry")
def swing_angle(e: mm, b: mm) -> rad:
    """Turn of the foot about its heel from one pad to another that is `e` beside it."""
    return np.arcsin(e / b)


@formula("y_toe", source="geometry")
def toe_aside(L: mm, psi: rad) -> mm:
    """How far the tip of the shoe swings to the side."""
    return L * np.sin(psi)


@formula("y_edge", source="geometry")
def shoe_edge_aside(L: mm, w: mm, psi: rad) -> mm:
    """How far the outer front corner of a shoe drawn as a rectangle swings to the side."""
    return L * np.sin(psi) + w / 2 * np.cos(psi)


@formula("x_back", source="geometry")
def ball_drawn_back(b: mm, psi: rad) -> mm:
    """How far the ball of the foot is drawn back by the swing.

    The pad it leaves for has to stand that much nearer, or the heel moves.
    """
    return b * (1 - np.cos(psi))
