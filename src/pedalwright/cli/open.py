"""From a project file to an assessment, and what the documents want to know of the file."""

from pathlib import Path

from pedalwright.assess import Assessment
from pedalwright.assess import assess as judge
from pedalwright.core.working import Step, working
from pedalwright.design import Design
from pedalwright.documents.about import About, about
from pedalwright.project import read

__all__ = ["about", "judged", "worked"]


def judged(file: Path) -> tuple[About, Assessment]:
    """Read a project and assess it."""
    project = read(file)
    return about(project), judge(project.design)


def worked(file: Path) -> tuple[About, Design, Assessment, list[Step]]:
    """Read a project and assess it, keeping the working."""
    project = read(file)
    with working() as steps:
        assessment = judge(project.design)
    return about(project), project.design, assessment, steps
