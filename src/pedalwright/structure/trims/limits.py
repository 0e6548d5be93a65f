"""What is asked where a member of the frame is trimmed."""

from collections.abc import Iterator

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.structure.trims.parts import Trim
from pedalwright.structure.trims.solve import trimmed
from pedalwright.survey.parts import Line

_PATH = Source("common practice", "no member is cut without a replacement load path", "trade")
TRIM_ALLOWED = Limit(
    "structure.trim_allowed",
    "Only a member that was marked as one that may be cut is trimmed.",
    "at least",
    "1",
    _PATH,
)
TRIM_STRENGTH = Limit(
    "structure.trim_strength",
    "Where a member is trimmed, what is put back makes it as strong in bending as it was.",
    "at least",
    "mm3",
    _PATH,
)
TRIM_STIFFNESS = Limit(
    "structure.trim_stiffness",
    "Where a member is trimmed, it stays as stiff as it was.",
    "at least",
    "mm4",
    _PATH,
    "should",
)
TRIM_WELD = Limit(
    "structure.trim_weld",
    "What is put back reaches beyond the trim as far as its welds need to carry all it can.",
    "at least",
    "mm",
    Source("EN 1993-1-8", "4.5, the thin sheet a guide only", "standard"),
)


def check_trim(member: Line, trim: Trim) -> Iterator[Finding]:
    """Judge one trim."""
    about = f"{trim.name}: {trim.way} in {trim.member}"
    found = trimmed(member, trim)
    yield TRIM_ALLOWED.check(1.0 if member.may_cut == "yes" else 0.0, 1.0, about)
    yield TRIM_STRENGTH.check(found.modulus_after, found.modulus_before, about)
    yield TRIM_STIFFNESS.check(found.after.inertia, found.before.inertia, about)
    if trim.put_back is not None:
        yield TRIM_WELD.check(trim.put_back.lap, found.lap, about)
