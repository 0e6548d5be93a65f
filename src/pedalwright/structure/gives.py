"""Who gives, one by one: arm, rods, and every part of the box or the mounts it was said to be."""

from collections.abc import Iterator

from pedalwright.structure.box.parts import PartGive
from pedalwright.structure.parts import Strength

#: A part of the box that gives less than this share of all is told among the rest.
SMALL = 0.01
#: So many of the box's parts are told by their name.
NAMED = 9
REST = "all else of the box"


def gives(strength: Strength) -> tuple[PartGive, ...]:
    """The causes of the give at the pad, those of the pedal first; they sum to its total."""
    return tuple(one for one in (*_pedal(strength), *_carriers(strength)) if one.give != 0.0)


def _pedal(strength: Strength) -> Iterator[PartGive]:
    give = strength.give
    yield PartGive("arm bends", give.arm_bending)
    yield PartGive("arm shears", give.arm_shear)
    yield PartGive("arm twists", give.arm_twist)
    yield PartGive("push rod", give.push_rod)
    yield PartGive("relay lever", give.relay)


def _carriers(strength: Strength) -> Iterator[PartGive]:
    give, box = strength.give, strength.box
    if box is None or not box.by_part:
        yield PartGive("cylinder's mount", give.cylinder_mount)
        yield PartGive("pivot's mount", give.pivot_mount)
        return
    ranked = sorted(box.by_part, key=lambda one: -abs(float(one.give)))
    told = [one for one in ranked[:NAMED] if abs(float(one.give)) >= SMALL * float(give.total)]
    yield from (PartGive(one.part.replace("_", " "), one.give) for one in told)
    yield PartGive(REST, box.total - sum(one.give for one in told))
