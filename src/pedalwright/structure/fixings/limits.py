"""What is asked of a fixing."""

from collections.abc import Iterator

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.units import Ratio
from pedalwright.structure.fixings.parts import Fastened, WeldUse

_EUROCODE = Source("EN 1993-1-8", "table 3.4, from memory; the hardest push", "standard")

TOGETHER = Limit(
    "structure.fasteners",
    "The hardest worked bolt or rivet bears its shear and pull together.",
    "at most",
    "1",
    _EUROCODE,
)
BEARING = Limit(
    "structure.fastener_holes",
    "No fastener draws its hole in the sheet out long, nor out to the edge.",
    "at most",
    "1",
    _EUROCODE,
)
PULL_THROUGH = Limit(
    "structure.pull_through",
    "No head is drawn through the sheet.",
    "at most",
    "1",
    _EUROCODE,
)
ONE_MISSING = Limit(
    "structure.one_missing",
    "With any one fastener gone the others still bear a frightened push.",
    "at most",
    "1",
    Source("common practice", "no source: one nut is always forgotten", "trade"),
    "should",
)
WELD = Limit(
    "structure.weld",
    "The worst end of the weld bears the hardest push.",
    "at most",
    "1",
    Source("EN 1993-1-8", "4.5.3.3, simplified, from memory", "standard"),
)
WELD_THIN = Limit(
    "structure.weld_thin",
    "What is welded is as thick as the rule for welds begins at; below, a coupon decides.",
    "at least",
    "1",
    Source("EN 1993-1-8", "4.1: 4 mm, from memory; a weld by hand needs sign-off", "standard"),
    "should",
)


def check_fixing(used: Fastened | WeldUse, frightened: Ratio, about: str) -> Iterator[Finding]:
    """Judge a fixing under the hardest push; a frightened one is that share of it."""
    if isinstance(used, WeldUse):
        yield WELD.check(used.use, 1.0, about)
        yield WELD_THIN.check(used.thin, 1.0, about)
        return
    yield TOGETHER.check(used.together, 1.0, about)
    yield BEARING.check(used.bearing, 1.0, about)
    yield PULL_THROUGH.check(used.pull_through, 1.0, about)
    yield ONE_MISSING.check(used.one_missing * frightened, 1.0, about)
