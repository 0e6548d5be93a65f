"""A member of the frame that gives way to toes, and what is put back for it.

Heights are measured from the member's far face, the side away from the feet; a trim comes from
the near face.
"""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from pedalwright.core.units import MPa, mm, mm2, mm3, mm4


@dataclass(frozen=True, kw_only=True, slots=True)
class CoverPlates:
    """A plate over the cut and one on the far face, both as wide as the member."""

    thickness: mm
    #: How far each reaches beyond the trim at either end, welded along both edges.
    lap: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Gussets:
    """Two cheeks, one on each side, from the edge of the cut back past the far face."""

    thickness: mm
    height: mm
    #: How far each reaches beyond the trim at either end, welded along both edges.
    lap: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Triangle:
    """A flat bar that runs past the trim on the far side, its ends brought to the member."""

    width: mm
    thickness: mm
    #: Middle of the bar from the member's far face, where the trim is.
    distance: mm
    #: How far it lies along the member beyond the trim at either end, welded along both edges.
    lap: mm


PutBack: TypeAlias = CoverPlates | Gussets | Triangle


@dataclass(frozen=True, kw_only=True, slots=True)
class Trim:
    """A place where a member is cut, notched or folded in."""

    name: str
    #: The line of the survey that it is.
    member: str
    #: `notch`: part of its height is taken out. `fold`: its near side is pressed in, and no metal
    #: is taken. `cut`: all of it is.
    way: Literal["notch", "fold", "cut"]
    #: How far in from the near face.
    depth: mm
    #: Along the member.
    length: mm
    #: What goes back; nothing is no answer.
    put_back: CoverPlates | Gussets | Triangle | None = None
    #: Of the weaker of member and what goes back.
    yield_strength: MPa = 235.0
    tensile_strength: MPa = 360.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Section:
    """A cross-section about the axis it bends over."""

    area: mm2
    #: Of its centroid from the member's far face.
    height: mm
    #: About its own centroid.
    inertia: mm4
    #: Its far and near edge, from the member's far face.
    far: mm
    near: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Trimmed:
    """A member before, without and with what is put back."""

    before: Section
    bare: Section
    after: Section
    modulus_before: mm3
    modulus_bare: mm3
    modulus_after: mm3
    #: How far each run of weld must reach beyond the trim, and all runs together.
    lap: mm
    weld: mm
