"""Body lengths guessed from the stature, for whatever nobody has measured.

Shares of stature are means of a few bodies: a person's own thigh differs by 20 mm (1 SD),
which moves the knee angle by 5 degrees. A tape reading replaces every one of them.
"""

from pedalwright.core.units import Ratio, mm
from pedalwright.core.working import formula


@formula("T", source="Drillis and Contini, as quoted by Winter")
def thigh_from_stature(h: mm) -> mm:
    """Hip joint to knee joint, from the standing height."""
    return 0.245 * h


@formula("S", source="Drillis and Contini, as quoted by Winter")
def shank_from_stature(h: mm) -> mm:
    """Knee joint to ankle joint, from the standing height."""
    return 0.246 * h


@formula("b", source="common practice")
def heel_to_ball_from_stature(h: mm) -> mm:
    """Heel point to the ball of the foot along the sole, from the standing height.

    203 mm, the length the SAE shoe is drawn with, belongs to a stature of 1750.
    """
    return 0.116 * h


@formula("d_A", source="common practice")
def ankle_forward_from_stature(h: mm) -> mm:
    """Ankle joint ahead of the heel point along the sole, from the standing height.

    The heel point is where the shoe rests when the toes are up, not the back of the shoe.
    """
    return 0.025 * h


@formula("h_A", source="Drillis and Contini, as quoted by Winter")
def ankle_height_from_stature(h: mm, t_heel: mm) -> mm:
    """Ankle joint above the ground, from the standing height and the heel of the shoe."""
    return 0.039 * h + t_heel


@formula("L_shoe", source="Drillis and Contini, as quoted by Winter")
def shoe_length_from_stature(h: mm, t_shoe: mm) -> mm:
    """Length of the shoe, from the standing height and what a shoe adds to the foot."""
    return 0.152 * h + t_shoe


@formula("w_shoe", source="Drillis and Contini, as quoted by Winter")
def shoe_width_from_stature(h: mm, t_shoe: mm) -> mm:
    """Width of the shoe, from the standing height and what a shoe adds to the foot."""
    return 0.055 * h + t_shoe


@formula("y", source="ANSUR II")
def survey_prediction(a: mm, b_h: Ratio, h: mm, b_c: Ratio, c: mm) -> mm:
    """A body length read off a survey's regression on stature `h` and inside leg `c`.

    Barefoot soldiers of 2012, so for proportions rather than for the driving public.
    """
    return a + b_h * h + b_c * c


@formula("y", source="ANSUR II")
def reading_prediction(a: mm, b_h: Ratio, h: mm, b_c: Ratio, c: mm, b_r: Ratio, r: mm) -> mm:
    """A body length read off a survey's regression with one more reading `r` on the person."""
    return a + b_h * h + b_c * c + b_r * r


@formula("L_shod", source="common practice")
def shod(f: mm, t_shoe: mm) -> mm:
    """A length, width or height in the shoe, from that of the bare foot and what the shoe adds."""
    return f + t_shoe


@formula("T", source="ANSUR II")
def thigh_link(k_joint: Ratio, y: mm) -> mm:
    """Hip joint to knee joint, from the distance between the bumps of hip bone and knee."""
    return k_joint * y
