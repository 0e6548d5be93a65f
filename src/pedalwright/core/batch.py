"""Batches: a design whose numbers are arrays is a population of designs.

Variants lie on the LAST axis, so a number and `(variants,)` mix freely and an axis added by
a function, such as stations of the stroke, stands in front: `np.linspace(0, angle, 41)` is
`(41,)` for one design and `(41, variants)` for many.

`Any` is allowed here: these four functions walk over every frozen dataclass of the house,
and the leaves may be numbers, texts or nothing.
"""

from collections.abc import Callable, Sequence
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar

import numpy as np
from numpy.random import Generator

from pedalwright.core.units import Array, Num

T = TypeVar("T")

#: Marks a field of a design that is worked out from what a builder gives and stands in no file:
#: `field(default=None, metadata={WORKED_OUT: True})`.
WORKED_OUT = "worked out"


def _is_number(leaf: object) -> bool:
    return isinstance(leaf, (int, float, np.ndarray, np.generic)) and not isinstance(leaf, bool)


def over(leaf: Callable[..., Any], *trees: Any) -> Any:
    """Apply `leaf` to matching numbers of trees of frozen dataclasses and tuples.

    Parts, texts, yes/no choices and absent parts must be the same in all trees: a tandem and
    a pair of cylinders are two batches.
    """
    first = trees[0]
    if is_dataclass(first) and not isinstance(first, type):
        kinds = {type(tree).__qualname__ for tree in trees}
        assert len(kinds) == 1, f"one batch cannot hold {sorted(kinds)}"
        return replace(
            first,
            **{f.name: over(leaf, *(getattr(t, f.name) for t in trees)) for f in fields(first)},
        )
    if isinstance(first, tuple):
        return tuple(over(leaf, *items) for items in zip(*trees, strict=True))
    if _is_number(first):
        return leaf(*trees)
    assert all(tree == first for tree in trees), f"one batch cannot hold {list(trees)}"
    return first


def stack(rows: Sequence[T]) -> T:
    """Many designs as one: each number becomes an array with a last axis of variants."""

    def together(*numbers: Num) -> Array:
        return _frozen(np.stack(numbers, axis=-1).astype(np.float64))

    stacked: T = over(together, *rows)
    return stacked


def pick(tree: T, i: int) -> T:
    """Variant `i` out of a batch."""

    def one(number: Num) -> Num:
        return np.asarray(number)[..., i] if np.ndim(number) else number

    picked: T = over(one, tree)
    return picked


def spread(nominal: T, plus_minus: T, n: int, rng: Generator) -> T:
    """`n` cars as hands would build them: each number drawn evenly within its ±.

    `plus_minus` is a tree of the same shape. Give the ± to what is drilled or cut, not to
    lengths derived from it, so that an error shared by two lengths is drawn once.
    """

    def drawn(number: float, half_width: float) -> Array:
        return _frozen(number + half_width * rng.uniform(-1.0, 1.0, n))

    population: T = over(drawn, nominal, plus_minus)
    return population


def _frozen(array: Array) -> Array:
    array.flags.writeable = False
    return array
