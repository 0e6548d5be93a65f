"""What is asked of the box in full: that nothing yields, no web jumps aside, fasteners bear."""

from collections.abc import Iterable, Iterator, Mapping

import numpy as np

from pedalwright.core.checks import Finding
from pedalwright.shell.limits import check as check_sums
from pedalwright.shell.limits import check_buckling
from pedalwright.structure.box.full import Full
from pedalwright.structure.box.limits import ABUSE, AGREES, BULGE, MISSING, PANIC, TOGETHER
from pedalwright.structure.box.missing import Missing

#: How far the two may differ.
APART = 0.03
#: Share of its thickness that a panel may bulge.
HALF = 0.5


def check_full(one: Full, fast: Mapping[str, float]) -> Iterator[Finding]:
    """Every case under the demand that is made of it; the sums themselves first."""
    yield from check_sums(one.built, one.answer)
    for number, case in enumerate(one.cases):
        for worked in one.judged:
            about = f"{worked.part}, {case.name}"
            if case.kind == "panic":
                yield PANIC.check(float(worked.stress[number]), worked.yields, about)
            elif case.kind == "abuse":
                tears = _tears(one, worked.part)
                yield ABUSE.check(float(worked.stress[number]), tears, about)
        if case.kind == "effort":
            for bulge in one.bulges:
                about = f"{bulge.sheet}, {case.name}"
                yield BULGE.check(float(bulge.most[number]), HALF * bulge.thickness, about)
        if case.kind == "abuse":
            for row in one.rows:
                yield TOGETHER.check(float(row.use[number]), 1.0, f"{row.name}, {case.name}")
        if case.name in fast:
            apart = abs(one.pad[number] / fast[case.name] - 1.0)
            yield AGREES.check(float(apart), APART, case.name)
    if one.buckling is not None:
        yield check_buckling(one.buckling)


def check_missing(found: Iterable[Missing]) -> Iterator[Finding]:
    """Rows with one gone, under the frightened pushes."""
    for one in found:
        yield MISSING.check(float(np.max(one.use)), 1.0, one.row)


def _tears(one: Full, part: str) -> float:
    panel = one.made.panel(part)
    return np.nan if panel is None else panel.metal.tensile_strength
