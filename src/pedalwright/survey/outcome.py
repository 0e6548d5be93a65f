"""What the readings of a survey say of each other, in numbers an assessment can judge."""

from dataclasses import dataclass

from pedalwright.core.units import Num


@dataclass(frozen=True, kw_only=True, slots=True)
class Weighed:
    """One number beside its bound."""

    about: str
    value: Num
    bound: Num


@dataclass(frozen=True, kw_only=True, slots=True)
class Outcome:
    """A survey by tapes, adjusted; the demands on it are in `limits`."""

    #: Readings that the others contradict, else the one nearest to it; mm.
    agreement: tuple[Weighed, ...] = ()
    #: Readings of one thing, how far apart; mm.
    repeats: tuple[Weighed, ...] = ()
    #: Marks, how far out each may be; mm.
    marks: tuple[Weighed, ...] = ()
    #: Marks, how badly their sights cross.
    crossings: tuple[Weighed, ...] = ()
    #: Marks, the share of an error in their least checked sight that the others would show.
    checks: tuple[Weighed, ...] = ()
    #: Faces and lines, how far a mark stands off; mm.
    straightness: tuple[Weighed, ...] = ()
    #: Faces, how far out their tilt may be; rad.
    tilts: tuple[Weighed, ...] = ()
