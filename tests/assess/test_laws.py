"""Laws of the whole assessment: the hand of the car and the units of the file change nothing."""

from typing import Any

import numpy as np
import pytest

from assess.unboxed import unboxed
from pedalwright.assess import assess, headlines
from pedalwright.core.quantity import write
from pedalwright.design import Design, mirrored
from pedalwright.project import Project, car_text, cars, changed, read


def figures(design: Design) -> dict[str, float]:
    return {h.name: float(h.value) for h in headlines(assess(design))}


@pytest.mark.parametrize("name", cars())
def test_a_mirrored_car_gives_the_same_answers(name: str) -> None:
    design = unboxed(read(car_text(name)).design)
    assert figures(mirrored(design)) == pytest.approx(figures(design), rel=1e-9, nan_ok=True)


@pytest.mark.parametrize("name", ["larkfield-first", "larkfield-improved"])
def test_a_mirrored_box_gives_as_much(name: str) -> None:
    """Nearly: the triangles of a mirrored sheet are not its triangles mirrored."""
    design = read(car_text(name)).design
    give = assess(design).brake.strength.give.total
    assert assess(mirrored(design)).brake.strength.give.total == pytest.approx(give, rel=0.02)


#: Another way to write what was typed in one unit.
SWAPS = {"mm": "in", "N": "lbf", "MPa": "psi", "kg": "lb", "N*mm": "lbf ft", "rad": "rad"}


def in_other_units(project: Project) -> dict[str, str]:
    """Every number that was typed, written in another unit."""
    design = project.design
    typed = {
        path: told
        for path, told in project.provenance.items()
        if told.text and told.tag in {"measured", "assumed"} and told.unit in SWAPS
    }
    return {
        path: write(number, told.unit, like=SWAPS[told.unit])
        for path, told in typed.items()
        if (number := value_at(design, path)) is not None
    }


def value_at(tree: Any, path: str) -> float | None:
    for step in path.split("."):
        if isinstance(tree, tuple):
            named = [part for part in tree if getattr(part, "name", None) == step]
            tree = named[0] if named else tree[int(step) - 1]
        elif hasattr(tree, step):
            tree = getattr(tree, step)
        else:
            return None  # a face's plane is written by a point and a direction
    return float(tree) if isinstance(tree, (int, float)) and np.isfinite(tree) else None


@pytest.mark.parametrize("name", ["larkfield-improved", "brackwater-fix2", "saltmarsh-improved"])
def test_the_units_of_the_file_change_nothing(name: str) -> None:
    project = read(car_text(name))
    changes = in_other_units(project)
    assert len(changes) > 60
    swapped = changed(project, changes)
    assert figures(swapped.design) == pytest.approx(figures(project.design), rel=1e-9, nan_ok=True)
