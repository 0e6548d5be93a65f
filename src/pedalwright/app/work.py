"""Pages of long work: begun by looking at them, followed, given up, and shown when it is done."""

from typing import Any

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response

from pedalwright.app.bench import workspace
from pedalwright.app.jobs import Job, Jobs
from pedalwright.app.pages import page
from pedalwright.app.tasks import Task
from pedalwright.app.workspace import Workspace
from pedalwright.core.faults import Fault, InputError
from pedalwright.documents.questions import QUESTIONS, asked, length
from pedalwright.making.tiling import PAPERS

#: Seconds an answer is waited for before the page says that it is being worked out.
PATIENCE = 0.4
#: Work that is no question: what it is called, and what it tells.
WORK = {
    "spread": (
        "What do the ± of the file do?",
        "Thousands of cars are built within the ± of every number, and each is assessed.",
    ),
    "full": (
        "The box in full",
        (
            "Every load case on a fine mesh, with sheets that press on one another: stress, forces "
            "in fasteners, what the frame bears."
        ),
    ),
    "sheets": (
        "Sheets for the bench",
        (
            "Templates at true size, card legs, the survey's sheet, drill cards, cut lists, the "
            "order of work, and DXF for a laser, in one folder to take along."
        ),
    ),
}


def jobs_of(request: Request) -> Jobs:
    """All work of this server."""
    found: Jobs = request.app.state.jobs
    return found


async def ask(request: Request) -> Response:
    """A builder's question, answered for this car."""
    work, name = workspace(request), request.path_params["question"]
    if name not in QUESTIONS:
        raise HTTPException(404, "That is none of the questions.")
    pedal = "clutch" if request.query_params.get("pedal") == "clutch" else "brake"
    by = request.query_params.get("by", "").strip()
    length(by or None)  # refused here, where it was typed
    task = _task(work, "ask", asked(name).asks, (name, pedal, by))
    job = await _begun(request, task)
    return HTMLResponse(page("answer.html", name=name, pedal=pedal, by=by, **_shown(work, job)))


async def work(request: Request) -> Response:
    """Other work, begun by looking at it."""
    there, kind = workspace(request), request.path_params["kind"]
    if kind not in WORK:
        raise HTTPException(404, "There is no such work.")
    title, says = WORK[kind]
    if kind == "sheets" and "paper" not in request.query_params:
        about = there.settled.about
        asks = page("sheets.html", title=title, says=says, papers=PAPERS, about=about)
        return HTMLResponse(asks)
    job = await _begun(request, _task(there, kind, title, _args(kind, request)))
    return HTMLResponse(page("work.html", title=title, says=says, **_shown(there, job)))


async def listed(request: Request) -> Response:
    """All work of this car, as it stands."""
    there = workspace(request)
    return HTMLResponse(jobs_html(there, jobs_of(request)))


async def one(request: Request) -> Response:
    """How one piece of work stands."""
    job = _found(request)
    told: dict[str, Any] = {"state": job.state, "says": job.says, "share": job.share}
    if job.state == "done":
        told["html"] = _html(job)
    return JSONResponse(told)


async def cancel(request: Request) -> Response:
    """Give it up."""
    job = _found(request)
    jobs_of(request).cancel(job)
    return JSONResponse({"state": job.state})


async def taken(request: Request) -> Response:
    """The file a piece of work came to."""
    job = _found(request)
    if not isinstance(job.result, tuple):
        raise HTTPException(404, "There is no file yet.")
    name, content = job.result
    headers = {"content-disposition": f'attachment; filename="{name}"'}
    return Response(content, media_type="application/zip", headers=headers)


def address(job: Job) -> str:
    """Where a piece of work is looked at; a newer state of the car is worked out there."""
    task, base = job.task, f"/cars/{job.task.file}"
    if task.kind == "ask":
        name, pedal, by = task.args
        return f"{base}/ask/{name}?pedal={pedal}&by={by.replace(' ', '+')}"
    if task.kind == "sheets":
        paper, bar_x, bar_y = task.args
        return f"{base}/beside/sheets?paper={paper}&bar_x={bar_x}&bar_y={bar_y}"
    return f"{base}/beside/{task.kind}"


def jobs_html(there: Workspace, jobs: Jobs) -> str:
    """What is being worked out for a car; empty where nothing is."""
    mine = [
        {"job": job, "address": address(job), "old": job.task.text != there.settled.project.text}
        for job in jobs.of(there.path.name)
        if job.is_open or job.task.kind != "ask"
    ]
    return page("parts/jobs.html", jobs=mine[:4], file=there.path.name)


def _task(there: Workspace, kind: str, title: str, args: tuple[str, ...]) -> Task:
    text = there.settled.project.text
    return Task(kind=kind, title=title, file=there.path.name, text=text, args=args)


async def _begun(request: Request, task: Task) -> Job:
    """The work, and a moment's patience for what is quick."""
    job = jobs_of(request).ask(task)
    await run_in_threadpool(job.over.wait, PATIENCE)
    return job


def _shown(there: Workspace, job: Job) -> dict[str, Any]:
    found = {"job": job, "html": _html(job), "address": address(job)}
    return found | {"about": there.settled.about}


def _html(job: Job) -> str:
    """What it came to, as markup; empty while there is nothing."""
    if isinstance(job.result, tuple):
        return page("parts/packed.html", job=job, name=job.result[0], bytes=len(job.result[1]))
    return job.result


def _found(request: Request) -> Job:
    there = workspace(request)
    job = jobs_of(request).find(request.path_params["id"])
    if job is None or job.task.file != there.path.name:
        raise HTTPException(404, "That work is not known any more; ask again.")
    return job


def _args(kind: str, request: Request) -> tuple[str, ...]:
    if kind != "sheets":
        return ()
    asks = request.query_params
    paper = asks.get("paper", "")
    if paper not in PAPERS:
        raise InputError((Fault(where="paper", read=paper[:40], accepts=", ".join(PAPERS)),))
    return paper, _bar(asks.get("bar_x", "")), _bar(asks.get("bar_y", ""))


def _bar(text: str) -> str:
    """The length of a check bar as the printer drew it, mm; 100 where nothing was said."""
    long = length(text.strip() or "100 mm")
    if long is None or not 80.0 <= long <= 120.0:
        accepts = "A check bar came out between 80 and 120 mm; measure it again."
        raise InputError((Fault(where="check bar", read=text[:40], accepts=accepts),))
    return f"{long:.2f}"
