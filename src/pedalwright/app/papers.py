"""Pages beside the bench: working, answers, comparison; and everything that can be taken along."""

import json
from collections.abc import Callable, Mapping

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from pedalwright.app.bench import workspace
from pedalwright.app.folder import Folder, NoSuchFileError
from pedalwright.app.pages import page
from pedalwright.app.seen import Seen, worked
from pedalwright.core.typeset import plain, substituted
from pedalwright.documents.as_json import as_json
from pedalwright.documents.comparison import moves, turns
from pedalwright.documents.dossier import dossier_pdf
from pedalwright.documents.finding_working import leading_to
from pedalwright.documents.helps import helpful
from pedalwright.documents.pictures import Picture, full_size, pictures
from pedalwright.documents.text import findings_text
from pedalwright.documents.verdict import verdict
from pedalwright.documents.working_text import working_text
from pedalwright.project import diff

#: What is made beside the drawings, with its kind and what it is.
PAPERS = {
    "dossier.pdf": ("application/pdf", "the dossier an inspector can check"),
    "findings.txt": ("text/plain; charset=utf-8", "findings as a table of text"),
    "working.txt": ("text/plain; charset=utf-8", "every formula as it ran, with its numbers"),
    "results.json": ("application/json", "results and findings for other tools"),
}


async def working(request: Request) -> Response:
    """The working behind one finding."""
    now = workspace(request).shown
    code, about = (request.query_params.get(key, "") for key in ("code", "about"))
    found = next(
        (f for f in now.assessment.findings if (f.limit.code, f.about) == (code, about)), None
    )
    if found is None:
        raise HTTPException(404, "There is no such finding any more.")
    steps = await run_in_threadpool(worked, now.project)
    lines = [(plain(step.formula), substituted(step), step) for step in leading_to(found, steps)]
    return HTMLResponse(page("parts/working.html", finding=found, lines=lines, file=now.about.file))


async def asks(request: Request) -> Response:
    """Every question, and which of them help."""
    now = workspace(request).settled
    helps = helpful(now.assessment.findings)
    return HTMLResponse(page("asks.html", about=now.about, helps=helps))


async def compare(request: Request) -> Response:
    """Two files of the folder side by side."""
    work, folder = workspace(request), _folder(request)
    name = request.query_params.get("with", "")
    others = [other for other in folder.names() if other != work.path.name]
    if not name:
        return HTMLResponse(page("compare.html", about=work.settled.about, others=others, old=None))
    try:
        other = folder.workspace(name)
    except NoSuchFileError as error:
        raise HTTPException(404, "There is no such project file in this folder.") from error
    old, new = work.settled, other.settled
    return HTMLResponse(
        page(
            "compare.html",
            about=old.about,
            others=others,
            old=old,
            new=new,
            verdicts=[verdict(one.assessment.findings) for one in (old, new)],
            drawings=[_side(one) for one in (old, new)],
            changes=diff(old.project, new.project),
            turns=turns(old.attempt, new.attempt),
            moves=list(moves(old.attempt, new.attempt)),
        )
    )


async def take(request: Request) -> Response:
    """A paper, a drawing or the project file itself."""
    work = workspace(request)
    now, what = work.settled, request.path_params["what"]
    if what == work.path.name:
        return _file(now.project.text.encode(), "application/toml", what)
    if what in PAPERS:
        made = await run_in_threadpool(MAKERS[what], now)
        return _file(made, PAPERS[what][0], what)
    drawn = await run_in_threadpool(_drawings, now)
    found = next((picture for picture in drawn if f"{picture.key}.svg" == what), None)
    if found is None:
        raise HTTPException(404, "Nothing of that name is made here.")
    return _file(found.svg, "image/svg+xml", what)


async def papers(request: Request) -> Response:
    """Everything that can be taken along, in one list."""
    now = workspace(request).settled
    drawn = await run_in_threadpool(_drawings, now)
    return HTMLResponse(page("papers.html", about=now.about, papers=PAPERS, drawings=drawn))


def _dossier(now: Seen) -> bytes:
    return dossier_pdf(now.about, now.assessment, worked(now.project), _pictures(now))


def _results(now: Seen) -> bytes:
    found = as_json(now.about, now.headlines, now.assessment.findings)
    return json.dumps(found, indent=1, ensure_ascii=False, allow_nan=False).encode()


MAKERS: Mapping[str, Callable[[Seen], bytes]] = {
    "dossier.pdf": _dossier,
    "findings.txt": lambda now: findings_text(now.about, now.assessment.findings).encode(),
    "working.txt": lambda now: working_text(worked(now.project), now.about.units).encode(),
    "results.json": _results,
}


def _pictures(now: Seen) -> list[Picture]:
    return pictures(now.project.design, now.assessment, now.about.units)


def _drawings(now: Seen) -> list[Picture]:
    full = full_size(now.project.design, now.assessment, now.about.units)
    return [*_pictures(now), *full]


def _side(now: Seen) -> Picture:
    return _pictures(now)[0]


def _folder(request: Request) -> Folder:
    folder: Folder = request.app.state.folder
    return folder


def _file(content: bytes, kind: str, name: str) -> Response:
    shown = "inline" if kind == "application/pdf" else "attachment"
    headers = {"content-disposition": f'{shown}; filename="{name}"'}
    return Response(content, media_type=kind, headers=headers)
