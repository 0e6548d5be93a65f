"""A batch is its singles, in every number of the whole assessment."""

from dataclasses import fields, is_dataclass
from typing import Any

import numpy as np
import pytest

from assess.unboxed import unboxed
from pedalwright.assess import assess
from pedalwright.core.batch import pick, spread, stack
from pedalwright.project import car_text, cars, plus_minus_tree, read

VARIANTS = 3


def leaves(tree: Any, path: str = "") -> list[tuple[str, Any]]:
    if is_dataclass(tree) and not isinstance(tree, type):
        return [
            leaf for f in fields(tree) for leaf in leaves(getattr(tree, f.name), f"{path}.{f.name}")
        ]
    if isinstance(tree, tuple):
        return [leaf for i, item in enumerate(tree) for leaf in leaves(item, f"{path}[{i}]")]
    return [(path, tree)]


@pytest.mark.parametrize("name", cars())
def test_picking_from_the_answer_is_answering_the_picked(name: str) -> None:
    project = read(car_text(name))
    rng = np.random.default_rng(7)
    # One box serves all of a batch; see the test of the box for what it does there.
    design, plus_minus = unboxed(project.design), unboxed(plus_minus_tree(project))
    population = spread(design, plus_minus, VARIANTS, rng)
    together = assess(population)
    for i in range(VARIANTS):
        alone = leaves(assess(pick(population, i)))
        picked = leaves(pick(together, i))
        for (path, one), (_, other) in zip(alone, picked, strict=True):
            if isinstance(one, (int, float, np.ndarray, np.generic)):
                assert np.allclose(one, other, rtol=1e-9, atol=1e-9, equal_nan=True), path
            else:
                assert one == other, path


def test_the_attempts_cannot_be_mixed_up() -> None:
    design = read(car_text("larkfield-improved")).design
    twice = assess(stack([design, design]))
    assert np.ptp(np.asarray(twice.brake.result.effort_6_43)) == 0.0
