"""A whole box from its description: one recipe after the other, each on what is there already."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from functools import lru_cache
from math import isnan
from typing import Any, TypeAlias

from pedalwright.core.faults import Fault, InputError
from pedalwright.panels.made import Made
from pedalwright.panels.parts import (
    Box,
    Cheeks,
    Cover,
    Doubler,
    FootTub,
    Gusset,
    Hanger,
    HeelPlate,
    Rail,
    Stiffener,
    Tie,
    Wall,
)
from pedalwright.panels.recipes.cheeks import cheeks
from pedalwright.panels.recipes.flat import doubler, wall
from pedalwright.panels.recipes.ground import Ground
from pedalwright.panels.recipes.lids import cover, foot_tub, heel_plate
from pedalwright.panels.recipes.stiff import gusset, stiffener
from pedalwright.panels.recipes.tubes import hanger, rail, tie
from pedalwright.survey.parts import Survey

#: Boxes that are kept as they were made.
KEPT = 64
#: `Any` is allowed here: each recipe takes parts of its own kind, and the table below pairs them.
Recipe: TypeAlias = Callable[[Any, Ground], Made]


@lru_cache(maxsize=KEPT)
def made(box: Box, survey: Survey) -> Made:
    """Everything there is of a box; `InputError` with all that cannot be made as it is said.

    Its fasteners' holes are in none of its panels yet; see `drilled`.
    """
    ground = Ground(survey)
    if missing := tuple(_missing(box)):
        raise InputError(missing)
    for recipe, part in _in_order(box):
        ground.made += recipe(part, ground)
    if ground.wrong:
        raise InputError(tuple(ground.wrong))
    tubes = tuple(
        replace(tube, carries=(*tube.carries, *ground.carried.get(tube.name, ())))
        for tube in ground.made.tubes
    )
    return replace(ground.made, tubes=tubes)


#: The recipe of each kind of part.
RECIPES: Mapping[type, Recipe] = {
    Rail: rail,
    Wall: wall,
    Doubler: doubler,
    Cheeks: cheeks,
    Hanger: hanger,
    Gusset: gusset,
    Stiffener: stiffener,
    Tie: tie,
    Cover: cover,
    FootTub: foot_tub,
    HeelPlate: heel_plate,
}
#: What a part says it lies on, hangs from or ends at.
STANDS_ON = ("on", "one", "other", "rail", "start_on", "end_on")


def _in_order(box: Box) -> Iterator[tuple[Recipe, Any]]:
    """Every part after those it stands on; one that stands on nothing there is comes last."""
    waiting = [part for kind in fields(box) for part in getattr(box, kind.name)]
    there: set[str] = set()
    while waiting:
        ready = [part for part in waiting if _stands_on(part) <= there] or waiting
        for part in ready:
            there.add(part.name)
            yield RECIPES[type(part)], part
        waiting = [part for part in waiting if part not in ready]


def _stands_on(part: object) -> set[str]:
    return {name for key in STANDS_ON if (name := getattr(part, key, ""))}


def _missing(box: Box) -> Iterator[Fault]:
    """Numbers nobody gave."""
    for kind in fields(box):
        for part in getattr(box, kind.name):
            for where in _unknown(part, f"box.{kind.name}.{part.name}"):
                yield Fault(where=where, read="nothing", accepts="A size; measure it or decide it.")


def _unknown(thing: object, where: str) -> Iterator[str]:
    if isinstance(thing, float) and isnan(thing):
        yield where
    elif is_dataclass(thing) and not isinstance(thing, type):
        for field in fields(thing):
            yield from _unknown(getattr(thing, field.name), f"{where}.{field.name}")
