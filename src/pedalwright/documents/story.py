"""Attempts side by side: what failed in one, and what became of it in the next."""

from collections.abc import Iterator, Sequence

from pedalwright.core.checks import Finding
from pedalwright.documents.outside import Units
from pedalwright.documents.verdict import state

#: Width of one attempt's column.
COLUMN = 22


def story_text(attempts: Sequence[tuple[str, Sequence[Finding]]], units: Units) -> str:
    """A table of every must that fails in one of the attempts, a column for each attempt."""
    return "\n".join(_lines(attempts, units)) + "\n"


def _lines(attempts: Sequence[tuple[str, Sequence[Finding]]], units: Units) -> Iterator[str]:
    judged = [{_key(f): f for f in findings} for _, findings in attempts]
    failing = {
        _key(f): f
        for _, findings in attempts
        for f in findings
        if not f.ok and f.limit.weight == "must"
    }
    yield "WHAT MUST BE MET, ATTEMPT BY ATTEMPT"
    yield "  " + "".join(f"{name.rpartition('-')[2]:>{COLUMN}}" for name, _ in attempts)
    for key, finding in failing.items():
        about = f" [{finding.about}]" if finding.about else ""
        yield f"  {units.prose(finding.limit.asks + about)}"
        found = [column.get(key) for column in judged]
        cells = "".join(f"{_cell(one, units):>{COLUMN}}" for one in found)
        yield f"  {cells}   {_bounds([one for one in found if one], units)}"
    if not failing:
        yield "  Nothing fails in any of them."


def _key(finding: Finding) -> tuple[str, str]:
    return finding.limit.code, finding.about


def _cell(finding: Finding | None, units: Units) -> str:
    if finding is None:
        return "-"
    value = units.said(finding.value, finding.limit.unit) if finding.judged else "no value"
    return f"{value} {state(finding)}"


def _bounds(findings: Sequence[Finding], units: Units) -> str:
    """The bound, or each attempt's where they differ: `at most 146.5 mm, 153 mm`."""
    limit = findings[0].limit
    bounds = dict.fromkeys(units.said(finding.bound, limit.unit) for finding in findings)
    return f"{limit.sense} {', '.join(bounds)}"
