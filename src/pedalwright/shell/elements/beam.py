"""A straight bar in space that stretches, twists, bends and slides in shear (Timoshenko).

Its give is summed along its length from the forces in each section, which balance the end's force
exactly; so an even bar is exact whatever its length, and a tapered one as exact as the sum (the
force method for bars: J. S. Przemieniecki, Theory of Matrix Structural Analysis, ch. 6, from
memory). Bending is about the section's own axes through its centre, and the shear centre is taken
to lie there too: an open section such as an angle twists more than this says.

Axes of a bar: x from its first end to its second, z as near to `up` as a square angle lets it.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from pedalwright.core.units import Array
from pedalwright.shell.elements.arms import both, carried

_GAUSS: tuple[Array, Array] = np.polynomial.legendre.leggauss(6)
#: Where along a bar its sections are wanted (shares of its length), and their weight.
STATIONS: Array = 0.5 * (1 + _GAUSS[0])
WEIGHTS: Array = 0.5 * _GAUSS[1]


@dataclass(frozen=True, kw_only=True, slots=True)
class Bars:
    """Bars ready to be worked; stiffnesses of their sections are (bars, stations)."""

    #: Where the ends are, arms included, (bars, 2, 3).
    places: Array
    up: Array
    #: From each node to its end of the bar, (bars, 2, 3).
    arms: Array
    #: Freedoms of the ends, in the bar's axes, that its joints let go; (bars, 12) of yes or no.
    released: NDArray[np.bool_]
    #: Force per strain, (bars, 6, stations): stretch, shear y and z, twist, bending about y and z.
    section: Array


def stiffness(bars: Bars) -> Array:
    """Stiffness between the nodes in the axes of the model, (bars, 12, 12)."""
    carry = _to_ends(bars)
    between: Array = carry.transpose(0, 2, 1) @ _between_ends(bars) @ carry
    return between


def end_forces(bars: Bars, moves: Array) -> Array:
    """Force and moment in the first and the last section, in the bar's axes; (cases, bars, 2, 6).

    Order: pull, shear in y and z, twist, moments about y and z, as what lies beyond the section
    does them to what lies before it. `moves` are the freedoms of both nodes, (cases, bars, 12).
    """
    on_ends: Array = np.einsum("bij,cbj->cbi", _between_ends(bars) @ _to_ends(bars), moves)
    by_end: Array = on_ends.reshape(*moves.shape[:2], 2, 6) * np.array([[-1.0], [1.0]])
    return by_end


def frames(places: Array, up: Array) -> tuple[Array, Array]:
    """Axes of each bar as rows, (bars, 3, 3), and its length."""
    along = places[:, 1] - places[:, 0]
    length = np.linalg.norm(along, axis=1)
    x: Array = along / length[:, None]
    square = np.cross(up, x)
    y: Array = square / np.linalg.norm(square, axis=1, keepdims=True)
    return np.stack([x, y, np.cross(x, y)], axis=1), length


def _between_ends(bars: Bars) -> Array:
    """Stiffness between the ends in the bar's axes, joints let go."""
    _, length = frames(bars.places, bars.up)
    balance = np.concatenate([-_moved(length), np.broadcast_to(np.eye(6), (len(length), 6, 6))], 1)
    whole = balance @ np.linalg.inv(_give(bars.section, length)) @ balance.transpose(0, 2, 1)
    return _let_go(whole, bars.released)


def _give(section: Array, length: Array) -> Array:
    """How far the second end goes for each force and moment on it, the first end held."""
    to_end = length[:, None] * (1 - STATIONS)
    inside = _moved(to_end)
    share = (length[:, None, None] * WEIGHTS / section).transpose(0, 2, 1)
    give: Array = np.einsum("bsji,bsj,bsjk->bik", inside, share, inside)
    return give


def _moved(distance: Array) -> Array:
    """Force and moment in a section that balance those on the end `distance` ahead, (..., 6, 6)."""
    along = np.stack([distance, 0 * distance, 0 * distance], axis=-1)
    return carried(along).swapaxes(-1, -2)


def _let_go(whole: Array, released: NDArray[np.bool_]) -> Array:
    """Without the freedoms that joints let go: those follow as they like."""
    if not released.any():
        return whole
    loose = released.astype(float)
    inside = whole * loose[:, :, None] * loose[:, None, :]
    # A rod on two ball joints may spin about itself as it likes: the pseudo-inverse lets it.
    freed = np.linalg.pinv(inside, hermitian=True)
    return whole - whole @ freed @ whole


def _to_ends(bars: Bars) -> Array:
    """From the freedoms of both nodes to those of the ends in the bar's axes, (bars, 12, 12)."""
    axes, _ = frames(bars.places, bars.up)
    turned = both(axes)[:, None] @ carried(bars.arms)
    matrix = np.zeros((len(axes), 12, 12))
    matrix[:, :6, :6], matrix[:, 6:, 6:] = turned[:, 0], turned[:, 1]
    return matrix
