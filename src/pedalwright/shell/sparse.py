"""The one place that speaks to scipy's sparse matrices.

`splu` is asked for an ordering and for pivots that suit a symmetric, positive matrix: without
that it takes four to ten times as long.
"""

from dataclasses import dataclass
from typing import Protocol, cast

import numpy as np
from numpy.typing import NDArray

from pedalwright.core.units import Array
from pedalwright.shell.assembly import Block
from pedalwright.shell.mesh import Flags, Indices


class Matrix(Protocol):
    """A sparse matrix, as far as others need to know."""

    def __matmul__(self, other: Array, /) -> Array:
        """The matrix times a vector, or times the columns of an array."""
        ...


class Factor(Protocol):
    """A matrix taken apart, ready for any number of right-hand sides."""

    def solve(self, rhs: Array, /) -> Array:
        """The answer for one right-hand side, or for one in each column."""
        ...


@dataclass(frozen=True, slots=True)
class Entries:
    """A sparse matrix as a list of entries; entries at the same place are added."""

    values: Array
    rows: Indices
    columns: Indices
    shape: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Whole:
    """The stiffness of everything, and of the freedoms that are left to find."""

    #: Freedoms of all nodes from the kept ones, those that no link binds, and its transpose.
    carry: Matrix
    gather: Matrix
    #: Stiffness of the kept freedoms, of the free ones of them, and of free against held ones.
    kept: Matrix
    free: Matrix
    between: Matrix
    diagonal: Array


def whole(made_of: tuple[Block, ...], carry: Entries, free: Flags) -> Whole:
    """Sum the elements, bind what links bind, and part free freedoms from held ones."""
    from scipy.sparse import coo_array

    size = carry.shape[0]
    values = np.concatenate([block.stiffness.ravel() for block in made_of])
    rows = np.concatenate([_spread(block, 2) for block in made_of])
    columns = np.concatenate([_spread(block, 1) for block in made_of])
    total = coo_array((values, (rows, columns)), shape=(size, size)).tocsc()
    bound = coo_array((carry.values, (carry.rows, carry.columns)), shape=carry.shape).tocsc()
    kept = total if carry.shape[0] == carry.shape[1] else (bound.T @ total @ bound).tocsc()
    of_free = kept[:, np.flatnonzero(free)]
    inside = of_free[np.flatnonzero(free)].tocsc()
    return Whole(
        carry=cast(Matrix, bound),
        gather=cast(Matrix, bound.T.tocsc()),
        kept=cast(Matrix, kept),
        free=cast(Matrix, inside),
        between=cast(Matrix, of_free[np.flatnonzero(~free)].T.tocsc()),
        diagonal=inside.diagonal(),
    )


def summed(block: Block, size: int) -> Matrix:
    """A matrix of all freedoms summed from some elements."""
    from scipy.sparse import coo_array

    places = (_spread(block, 2), _spread(block, 1))
    # Rows first: that is how it is multiplied fastest with many columns at once.
    return cast(Matrix, coo_array((block.stiffness.ravel(), places), shape=(size, size)).tocsr())


def factored(matrix: Matrix, stiffer: Array | None = None) -> Factor | None:
    """The matrix taken apart, `stiffer` on its diagonal; None where it is plainly singular."""
    from scipy.sparse import csc_array, diags_array
    from scipy.sparse.linalg import splu

    own = cast("csc_array", matrix)
    if stiffer is not None:
        own = (own + diags_array(stiffer)).tocsc()
    try:
        taken = splu(
            own,
            permc_spec="MMD_AT_PLUS_A",
            diag_pivot_thresh=0.0,
            options={"SymmetricMode": True},
        )
    except RuntimeError:  # scipy's "Factor is exactly singular"
        return None
    return cast(Factor, taken)


def reduced(block: Block, size: int, kept: Whole, free: Flags) -> Matrix:
    """A matrix summed from some elements, for the free freedoms only."""
    from scipy.sparse import csc_array

    total = cast("csc_array[np.float64]", summed(block, size))
    carry = cast("csc_array[np.float64]", kept.carry)
    inside = np.flatnonzero(free)
    bound = (carry.T @ total @ carry).tocsc()
    return cast(Matrix, bound[:, inside][inside].tocsc())


def largest(matrix: Matrix, against: Matrix, factor: Factor) -> tuple[float, Array]:
    """Largest x, and its vector, with `matrix` v = x `against` v; `factor` is that of `against`."""
    from scipy.sparse import csc_array
    from scipy.sparse.linalg import LinearOperator, eigsh

    own, stiff = (cast("csc_array[np.float64]", one) for one in (matrix, against))
    undone = LinearOperator(own.shape, matvec=factor.solve, dtype=np.float64)
    start = np.random.default_rng(1).normal(size=own.shape[0])
    value, vector = eigsh(own, k=1, M=stiff, Minv=undone, which="LA", v0=start, tol=1e-6)
    return float(value[0]), np.asarray(vector[:, 0], dtype=np.float64)


def _spread(block: Block, axis: int) -> NDArray[np.int32]:
    """The freedom in whose row, or column, each entry of the elements' stiffnesses belongs."""
    narrow = np.expand_dims(block.freedoms.astype(np.int32), axis)
    return np.broadcast_to(narrow, block.stiffness.shape).ravel()


def connected(first: Indices, second: Indices, count: int) -> Indices:
    """For each of `count` nodes the number of the piece it belongs to, from pairs that hang on."""
    from scipy.sparse import coo_array
    from scipy.sparse.csgraph import connected_components

    pairs = coo_array((np.ones(len(first)), (first, second)), shape=(count, count))
    return connected_components(pairs, directed=False)[1].astype(np.intp)
