"""A stop on the road: what the rules allow, what a logged stop was worth, where its heat goes."""

from pedalwright.core.units import J, J_kgK, K, Ratio, W, kg, km_h, m, m_s, m_s2, mm, per_K, s
from pedalwright.core.working import formula


@formula("s", source="UN R13-H, Annex 3", empirical=True)
def allowed_distance(V: km_h, b: Ratio) -> m:
    """Longest stop a rule allows: 0.1 V for the driver and the pipes, b V2 for the braking.

    `V` in km/h; `b` is the rule's own number, e.g. 0.0060 for the service brake.
    """
    return 0.1 * V + b * V**2


@formula("d", source="UN R13-H, Annex 3", empirical=True)
def implied_deceleration(b: Ratio) -> m_s2:
    """Deceleration behind the b V2 of a stopping distance with V in km/h."""
    return 1 / (2 * 3.6**2 * b)


@formula("d_m", source="UN R13-H, Annex 3")
def mean_deceleration(v_b: m_s, v_e: m_s, s_b: m, s_e: m) -> m_s2:
    """Mean fully developed deceleration of a logged stop.

    `v_b` and `v_e` are 0.8 and 0.1 of the speed at the start, `s_b` and `s_e` the way gone when
    the car had slowed to them. How long the brakes took to bite drops out.
    """
    return (v_b**2 - v_e**2) / (2 * (s_e - s_b))


@formula("E", source="Newton")
def moving_energy(m: kg, v: m_s) -> J:
    """Energy of the moving car, without that of its turning wheels."""
    return m * v**2 / 2


@formula("t", source="Newton")
def stop_time(v: m_s, a: m_s2) -> s:
    """Time to stop at a steady deceleration."""
    return v / a


@formula("P", source="Newton")
def mean_power(E: J, t: s) -> W:
    """Mean power of all brakes together over the stop; at its beginning it is twice that."""
    return E / t


@formula("Q", source="Limpert")
def brake_heat(E: J, k_rot: Ratio, share: Ratio, q: Ratio, n: Ratio) -> J:
    """Heat that one stop leaves in one disc or drum.

    `k_rot` adds the turning parts (about 1.05), `share` is the axle's part of the braking, `q`
    the part that goes into the disc and not the pad (about 0.95), `n` the brakes of the axle.
    """
    return E * k_rot * share * q / n


@formula("dT", source="Limpert")
def disc_rise(Q: J, m: kg, c: J_kgK) -> K:
    """Rise of a disc's mean temperature in one stop too short to cool in.

    `m` is the heated ring alone, `c` 460 to 550 J/(kg K) for cast iron. The rubbed face is
    hotter than this mean, and repeated stops add up.
    """
    return Q / (m * c)


@formula("dr", source="physics")
def drum_growth(alpha: per_K, r: mm, dT: K) -> mm:
    """How far a warm drum's radius outgrows its shoes, which stay cooler."""
    return alpha * r * dT


@formula("s_hot", source="geometry")
def hot_follow(dr: mm, h: mm, b: mm) -> mm:
    """How much further a wheel cylinder's piston goes to bring a shoe to a drum grown by `dr`.

    The shoe turns about its pivot: its middle, `b` from there, goes by `dr`, its pushed end, `h`
    from there, by as much more.
    """
    return dr * h / b
