"""Clutch: from the bearing's lift to the pad's travel and back, one formula each."""

import numpy as np

from pedalwright.core.units import MPa, N, Nmm, Ratio, mm, mm2, rad
from pedalwright.core.working import formula


@formula("A", source="geometry")
def ring_area(D: mm, d: mm) -> mm2:
    """Area of a concentric bearing's ring piston between its two bores."""
    return np.pi / 4 * (D**2 - d**2)


@formula("s_slave", source="geometry")
def slave_stroke(lift: mm, free: mm, i_fork: Ratio) -> mm:
    """Slave travel: the bearing's lift and free play, through the fork."""
    return (lift + free) * i_fork


@formula("i_line", source="geometry")
def line_ratio(A_slave: mm2, A_master: mm2) -> Ratio:
    """Master travel for each bit of slave travel: the same fluid leaves one and fills the other."""
    return A_slave / A_master


@formula("s_master", source="geometry")
def master_stroke(s_slave: mm, i_line: Ratio, growth: Ratio, dead: mm) -> mm:
    """Master travel: the slave's volume and what the line swells, over the master's area.

    `growth` is the share of the slave's volume that hoses and fluid take on top; `dead` is the
    travel before the port is covered. For a cable `i_line` is 1, `growth` 0 and `dead` its
    stretch.
    """
    return s_slave * i_line * (1 + growth) + dead


@formula("s_bearing", source="geometry")
def bearing_travel(s_master: mm, dead: mm, i_line: Ratio, growth: Ratio, i_fork: Ratio) -> mm:
    """Bearing travel, free play included, that a master travel gives: the chain read backwards."""
    return (np.maximum(s_master, dead) - dead) / (i_line * (1 + growth) * i_fork)


@formula("lift", source="geometry")
def lift_after(s_bearing: mm, free: mm) -> mm:
    """Bearing lift left of the bearing's travel once its free play is taken up."""
    return np.maximum(s_bearing, free) - free


@formula("A_master", source="geometry")
def least_master_area(s_slave: mm, A_slave: mm2, growth: Ratio, s_master: mm, dead: mm) -> mm2:
    """Smallest master piston that fills slave and line within the travel `s_master`."""
    return s_slave * A_slave * (1 + growth) / (s_master - dead)


@formula("d", source="geometry")
def bore_of(A: mm2) -> mm:
    """Bore of a round piston of area `A`."""
    return np.sqrt(4 * A / np.pi)


@formula("F_pedal", source="geometry")
def pedal_effort(
    F_bearing: N, i_fork: Ratio, eta_fork: Ratio, i_line: Ratio, eta_line: Ratio, i: Ratio
) -> N:
    """Push on the pad that holds the clutch released: the load through fork, line and pedal.

    With the mean ratio over the stroke it is the mean of a load that stays; a pedal whose
    ratio grows is lighter at the end than this.
    """
    return F_bearing / (i_fork * eta_fork * i_line * eta_line * i)


@formula("F_cable", source="geometry")
def cable_pull(F_bearing: N, i_fork: Ratio, eta_fork: Ratio, eta_line: Ratio) -> N:
    """Pull in the cable at the pedal, where it is largest: fork and bends take their part."""
    return F_bearing / (i_fork * eta_fork * eta_line)


@formula("eta", source="capstan")
def bends_efficiency(mu: Ratio, angle: rad) -> Ratio:
    """Share of the pull that is left behind a cable's bends, `angle` all together.

    Friction of a flexible cable on its conduit; only the sum of the bends counts, not their
    radii, as long as the cable's own stiffness is small.
    """
    return np.exp(-mu * angle)


@formula("e", source="elasticity")
def cable_stretch(F: N, L: mm, E: MPa, A: mm2) -> mm:
    """How far a cable stretches, with the pull at the pedal all along: a little too far."""
    return F * L / (E * A)


@formula("p", source="Pascal")
def release_pressure(F_bearing: N, i_fork: Ratio, eta_fork: Ratio, A_slave: mm2) -> MPa:
    """Pressure at the slave that holds the clutch released."""
    return F_bearing / (i_fork * eta_fork * A_slave)


@formula("s_pad", source="geometry")
def travel_at_ratio(i: Ratio, s_master: mm) -> mm:
    """Pad travel that a pedal of a given ratio needs for a master travel."""
    return i * s_master


@formula("T", source="Bhandari")
def plate_capacity_worn(n: Ratio, mu: Ratio, F: N, D: mm, d: mm) -> Nmm:
    """Torque a worn-in plate carries: friction at the middle radius of its `n` faces."""
    return n * mu * F * (D + d) / 4


@formula("T", source="Bhandari")
def plate_capacity_new(n: Ratio, mu: Ratio, F: N, D: mm, d: mm) -> Nmm:
    """Torque a new plate carries, pressed alike over its whole ring."""
    return n * mu * F * (D**3 - d**3) / (3 * (D**2 - d**2))


@formula("M", source="Bhandari")
def spring_shape_log(delta: Ratio) -> Ratio:
    """Shape factor of a spring washer in the textbooks' form; `delta` is outside over inside."""
    return 6 / (np.pi * np.log(delta)) * ((delta - 1) / delta) ** 2


@formula("K1", source="DIN 2092")
def spring_shape_k1(delta: Ratio) -> Ratio:
    """Shape factor of a spring washer in the standard's form; `delta` is outside over inside."""
    return ((delta - 1) / delta) ** 2 / ((delta + 1) / (delta - 1) - 2 / np.log(delta)) / np.pi


@formula("F", source="Bhandari")
def spring_load_log(E: MPa, nu: Ratio, M: Ratio, D_e: mm, h: mm, t: mm, s: mm) -> N:
    """Load of a spring washer pressed by `s` (Almen and Laszlo), in the textbooks' form.

    `h` is its free cone height, `t` its thickness. Rotation of the section only: no friction
    at the edges, no fingers.
    """
    return 4 * E * s / ((1 - nu**2) * M * D_e**2) * ((h - s) * (h - s / 2) * t + t**3)


@formula("F", source="DIN 2092")
def spring_load(E: MPa, nu: Ratio, K1: Ratio, D_e: mm, h: mm, t: mm, s: mm) -> N:
    """Load of a spring washer pressed by `s` (Almen and Laszlo), in the standard's form."""
    return (
        4
        * E
        / (1 - nu**2)
        * t**4
        / (K1 * D_e**2)
        * s
        / t
        * ((h / t - s / t) * (h / t - s / (2 * t)) + 1)
    )


@formula("s", source="geometry")
def ring_pressed(s_fitted: mm, lift: mm, i_finger: Ratio) -> mm:
    """How far the ring of a diaphragm is pressed once the bearing has lifted by `lift`."""
    return s_fitted + lift / i_finger


@formula("F_bearing", source="geometry")
def finger_load(F_ring: N, i_finger: Ratio) -> N:
    """Load on the bearing for a load on the ring: the fingers are levers, taken as stiff.

    Before the plate lifts the bearing carries less; how fast it comes up is the spring of the
    facing, which is left out.
    """
    return F_ring / i_finger


@formula("lift", source="geometry")
def lift_of_plate(s_plate: mm, i_finger: Ratio) -> mm:
    """Bearing lift that lifts the plate by `s_plate`."""
    return s_plate * i_finger


@formula("lift", source="geometry")
def lift_at_share(share: Ratio, lift_full: mm) -> mm:
    """Bearing lift at a share of the whole."""
    return share * lift_full


@formula("s_peak", source="geometry")
def spring_peak(h: mm, t: mm) -> mm:
    """Deflection at which the load of a spring washer is largest; none where h < 1.41 t."""
    return h - np.sqrt((h**2 - 2 * t**2) / 3)


@formula("s_valley", source="geometry")
def spring_valley(h: mm, t: mm) -> mm:
    """Deflection at which the load of a spring washer is least again; none where h < 1.41 t."""
    return h + np.sqrt((h**2 - 2 * t**2) / 3)
