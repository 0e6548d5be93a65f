"""Rods at the bench: how long to cut each."""

from collections.abc import Iterator

from pedalwright.core.units import mm
from pedalwright.core.working import subject
from pedalwright.throttle.formulas import cut_length
from pedalwright.throttle.parts import BallRod, Cable, CutRod, Stage, Throttle


def cut_rods(throttle: Throttle) -> Iterator[CutRod]:
    """Every rod whose ends are known, in the order of the chain."""
    named = [(f"stage {i}", stage) for i, stage in enumerate(throttle.stages, start=1)]
    named += [(f"follower {i}", f.stage) for i, f in enumerate(throttle.followers, start=1)]
    for about, stage in named:
        if isinstance(stage, Cable) or stage.ends is None:
            continue
        near, far, length = stage.ends.driving, stage.ends.driven, rod_length(stage)
        with subject(about):
            cut = cut_length(length, near.reach, far.reach, near.engaged, far.engaged)
        yield CutRod(about=about, length=length, cut=cut, ends=stage.ends)


def rod_length(stage: Stage) -> mm:
    """Ball to ball."""
    assert not isinstance(stage, Cable), "a cable is no rod"
    if isinstance(stage, BallRod):
        return (stage.driven_pin - stage.driving_pin).length()
    return stage.rod_length
