"""A whole box from its description: one recipe after the other, each on what is there already."""

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace
from functools import lru_cache, partial
from math import isnan
from typing import TypeAlias, TypeVar

from pedalwright.core.faults import Fault, InputError
from pedalwright.panels.made import Made
from pedalwright.panels.parts import Box
from pedalwright.panels.recipes.cheeks import cheeks
from pedalwright.panels.recipes.flat import doubler, wall
from pedalwright.panels.recipes.ground import Ground
from pedalwright.panels.recipes.lids import cover, foot_tub, heel_plate
from pedalwright.panels.recipes.stiff import gusset, stiffener
from pedalwright.panels.recipes.tubes import hanger, rail, tie
from pedalwright.survey.parts import Survey

T = TypeVar("T")
#: Boxes that are kept as they were made.
KEPT = 64
Piece: TypeAlias = Callable[[Ground], Made]


@lru_cache(maxsize=KEPT)
def made(box: Box, survey: Survey) -> Made:
    """Everything there is of a box; `InputError` with all that cannot be made as it is said.

    Its fasteners' holes are in none of its panels yet; see `drilled`.
    """
    ground = Ground(survey)
    if missing := tuple(_missing(box)):
        raise InputError(missing)
    for one in (
        *_each(rail, box.rails),
        *_each(wall, box.walls),
        *_each(cheeks, box.cheeks),
        *_each(hanger, box.hangers),
        *_each(doubler, box.doublers),
        *_each(gusset, box.gussets),
        *_each(stiffener, box.stiffeners),
        *_each(tie, box.ties),
        *_each(cover, box.covers),
        *_each(foot_tub, box.foot_tubs),
        *_each(heel_plate, box.heel_plates),
    ):
        ground.made += one(ground)
    if ground.wrong:
        raise InputError(tuple(ground.wrong))
    tubes = tuple(
        replace(tube, carries=(*tube.carries, *ground.carried.get(tube.name, ())))
        for tube in ground.made.tubes
    )
    return replace(ground.made, tubes=tubes)


def _each(recipe: Callable[[T, Ground], Made], parts: tuple[T, ...]) -> list[Piece]:
    return [partial(recipe, part) for part in parts]


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
