"""What is worked out away from the page, each as the markup or the file it comes to.

This runs in the worker's process. It knows the car by the text of its file and nothing else.
"""

import io
import zipfile
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from hashlib import sha256
from pathlib import Path
from typing import Literal, cast

from pedalwright.app.pages import page
from pedalwright.app.seen import about, readings
from pedalwright.project import Project, changed, doubts, plus_minus_tree, read

#: Told what is being done, and how far it is, 0 to 1; None where nobody can say.
Progress = Callable[[str, float | None], None]
#: Markup, or a file with its name.
Result = str | tuple[str, bytes]
#: Cars built within the ± of the file.
CARS = 4000


@dataclass(frozen=True, kw_only=True, slots=True)
class Task:
    """One piece of work for one state of one car."""

    kind: str
    #: What a reader calls it.
    title: str
    file: str
    text: str
    args: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """The same for the same work on the same text."""
        said = "\0".join((self.kind, self.file, *self.args, self.text))
        return sha256(said.encode()).hexdigest()[:20]


def done(task: Task, progress: Progress) -> Result:
    """Do it."""
    progress("reading the file", None)
    project = changed(replace(read(task.text), path=Path(task.file)), {})
    return TASKS[task.kind](project, task.args, progress)


def _ask(project: Project, args: tuple[str, ...], progress: Progress) -> str:
    from pedalwright.documents.questions import asked, length

    name, pedal, by = args
    progress("trying what might do", None)
    found = asked(name)
    known = () if found.of_doubts is None else doubts(project)
    which = cast("Literal['brake', 'clutch']", pedal)
    answer = found.answered(project.design, which, length(by or None), known)
    return page("parts/answered.html", answer=answer, about=about(project))


def _spread(project: Project, _args: tuple[str, ...], progress: Progress) -> str:
    from pedalwright.documents.robust_text import robust_text
    from pedalwright.search import robustness

    progress(f"building {CARS} cars within the ± of the file", None)
    found = robustness(project.design, plus_minus_tree(project), CARS)
    return page("parts/spread.html", text=robust_text(about(project), found))


def _full(project: Project, _args: tuple[str, ...], progress: Progress) -> str:
    from pedalwright.assess import assess
    from pedalwright.assess.full import assess_full
    from pedalwright.documents.verdict import state

    progress("the car as it stands", 0.0)
    found = assess_full(project.design, assess(project.design), progress)
    findings = () if found is None else found.findings
    return page(
        "parts/full.html",
        found=found,
        findings=sorted(findings, key=lambda one: _ORDER.index(state(one))),
        units=about(project).units,
    )


_ORDER = ("fails", "unjudged", "short", "passes")


def _sheets(project: Project, args: tuple[str, ...], progress: Progress) -> tuple[str, bytes]:
    from pedalwright.documents.sheets import Work, sheets
    from pedalwright.making.tiling import PAPERS, Printer

    paper, bar_x, bar_y = args
    progress("working out what is to be made", None)
    work = Work.of(
        about(project),
        project.design,
        paper=PAPERS[paper],
        printer=Printer(bar_x=float(bar_x), bar_y=float(bar_y)),
        readings=readings(project),
    )
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as folder:
        for sheet in sheets(work):
            progress(sheet.title, None)
            folder.writestr(zipfile.ZipInfo(sheet.file, _NO_DAY), sheet.content)
    return f"{Path(project.path or 'car').stem}-sheets.zip", packed.getvalue()


#: The same work gives the same bytes.
_NO_DAY = (1980, 1, 1, 0, 0, 0)
TASKS: Mapping[str, Callable[[Project, tuple[str, ...], Progress], Result]] = {
    "ask": _ask,
    "spread": _spread,
    "full": _full,
    "sheets": _sheets,
}
