"""How the builder came by one number."""

from dataclasses import dataclass
from typing import Literal

Tag = Literal["measured", "assumed", "default", "missing"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Provenance:
    """Where a number comes from, how well it is known, and how it was typed."""

    tag: Tag
    #: Half width, in the inside unit; None where nobody can say.
    plus_minus: float | None
    #: Why the ± is what it is; empty if the builder gave it.
    plus_minus_why: str = ""
    #: The builder's note, or the reason of a default.
    note: str
    #: As typed; empty for what is not in the file.
    text: str
    #: Read back in plain words: `1 5/8 in = 41.275 mm`.
    shown: str
    #: Inside unit of the number.
    unit: str
    #: Unit or form it was typed in, so that it can be written back by the same hand.
    like: str
