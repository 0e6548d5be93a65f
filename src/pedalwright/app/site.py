"""Addresses of the page, and what each of them answers."""

import asyncio
import secrets
from collections.abc import AsyncGenerator
from contextlib import asynccontextmanager, suppress
from importlib.resources import files
from pathlib import Path

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, RedirectResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles

from pedalwright.app import asked, bench, papers, work
from pedalwright.app.folder import Folder
from pedalwright.app.guard import App, Entrance, Guard, is_token
from pedalwright.app.jobs import Jobs
from pedalwright.app.pages import page
from pedalwright.app.streams import watch
from pedalwright.core.faults import InputError
from pedalwright.project import cars

CAR = "/cars/{file}"


def site(folder: Path, entrance: Entrance) -> App:
    """The whole page, guarded."""
    static = str(files("pedalwright.app").joinpath("static"))
    app = Starlette(
        routes=[
            Route("/", index),
            Route("/enter", enter),
            Route("/new", new, methods=["POST"]),
            Route("/bring", bring, methods=["POST"]),
            Route(CAR, bench.show),
            Route(f"{CAR}/state", bench.state),
            Route(f"{CAR}/events", bench.events),
            Route(f"{CAR}/held", bench.held),
            Route(f"{CAR}/ask", papers.asks),
            Route(f"{CAR}/working", papers.working),
            Route(f"{CAR}/ask/{{question}}", work.ask),
            Route(f"{CAR}/beside/{{kind}}", work.work),
            Route(f"{CAR}/jobs", work.listed),
            Route(f"{CAR}/jobs/{{id}}", work.one),
            Route(f"{CAR}/jobs/{{id}}/file", work.taken),
            Route(f"{CAR}/jobs/{{id}}/cancel", work.cancel, methods=["POST"]),
            Route(f"{CAR}/compare", papers.compare),
            Route(f"{CAR}/papers", papers.papers),
            Route(f"{CAR}/take/{{what}}", papers.take),
            Route(f"{CAR}/{{act}}", bench.act, methods=["POST"]),
            Mount("/static", StaticFiles(directory=static)),
        ],
        exception_handlers={
            InputError: faulty,
            HTTPException: missing,
            Exception: broken,
        },
        lifespan=_alive,
    )
    app.state.folder = Folder(folder)
    app.state.entrance = entrance
    app.state.jobs = Jobs()
    #: Which run of the server this is: a tab that has seen another one starts anew.
    app.state.run = secrets.token_hex(4)
    return Guard(app, entrance)


async def index(request: Request) -> Response:
    """The project files of the folder, and the invented cars to begin from."""
    folder: Folder = request.app.state.folder
    return HTMLResponse(
        page("index.html", files=folder.names(), cars=cars(), folder=folder.path.name)
    )


async def enter(request: Request) -> Response:
    """The door: the token of the link becomes a cookie that no script can read."""
    entrance: Entrance = request.app.state.entrance
    if not is_token(request.query_params.get("token", ""), entrance):
        raise HTTPException(401, "Open the link that was printed where the page was started.")
    to = request.query_params.get("to", "/")
    own = to.startswith("/") and not to.startswith(("//", "/\\"))
    answer = RedirectResponse(to if own else "/", status_code=303)
    answer.set_cookie(
        entrance.cookie, entrance.token, httponly=True, samesite="strict", max_age=86_400
    )
    return answer


async def new(request: Request) -> Response:
    """A new file like an invented car."""
    sent = await asked.body(request)
    name, like = asked.text(sent, "name", 100), asked.text(sent, "like", 100)
    folder: Folder = request.app.state.folder
    folder.add_like(name, like)
    return JSONResponse({"file": name})


async def bring(request: Request) -> Response:
    """A project file from elsewhere, as its text."""
    sent = await asked.body(request)
    name, text = asked.text(sent, "name", 100), asked.text(sent, "text", 900_000)
    folder: Folder = request.app.state.folder
    folder.add(name, text)
    return JSONResponse({"file": name})


async def faulty(request: Request, error: Exception) -> Response:
    """Everything that is wrong with what was given, and what is accepted."""
    assert isinstance(error, InputError)
    if request.method == "POST":
        return JSONResponse({"faults": error.as_data()}, status_code=422)
    file = request.path_params.get("file", "")
    return HTMLResponse(page("faults.html", faults=error.faults, file=file), status_code=422)


async def missing(request: Request, error: Exception) -> Response:
    """What is not there, or not allowed."""
    assert isinstance(error, HTTPException)
    return _sorry(request, error.status_code, error.detail)


async def broken(request: Request, error: Exception) -> Response:  # noqa: ARG001
    """A mistake of ours: the page says so, the trace goes to where the server was started."""
    says = "Something is broken in pedalwright itself; your file is as it was last saved."
    return _sorry(request, 500, says)


def _sorry(request: Request, status: int, says: str) -> Response:
    if request.method == "POST":
        return JSONResponse({"says": says}, status_code=status)
    return HTMLResponse(page("sorry.html", status=status, says=says), status_code=status)


@asynccontextmanager
async def _alive(app: Starlette) -> AsyncGenerator[None]:
    """Watch the files for as long as the server runs; what is worked out ends with it."""
    folder: Folder = app.state.folder
    watching = asyncio.create_task(watch(folder.opened))
    try:
        yield
    finally:
        watching.cancel()
        app.state.jobs.close()
        with suppress(asyncio.CancelledError):
            await watching
