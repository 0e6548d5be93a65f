"""Members of the frame that a design trims."""

from collections.abc import Iterator

from pedalwright.core.checks import Finding
from pedalwright.design import Design
from pedalwright.structure.trims import check_trim


def member_findings(design: Design) -> Iterator[Finding]:
    """Every trim, judged on the member it is made in; one that was not measured is not judged."""
    for trim in design.trims:
        yield from check_trim(design.survey.line(trim.member), trim)
