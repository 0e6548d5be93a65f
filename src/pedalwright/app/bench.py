"""The bench: one car, looked at and changed. Every change answers with what it did."""

from collections.abc import Callable, Mapping
from typing import Any, TypeAlias

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response, StreamingResponse

from pedalwright.app import asked, fragments
from pedalwright.app.building import channel
from pedalwright.app.folder import Folder, NoSuchFileError
from pedalwright.app.pages import page
from pedalwright.app.stages import BY_KEY
from pedalwright.app.streams import revisions
from pedalwright.app.views import SIDES, view
from pedalwright.app.workspace import Workspace
from pedalwright.documents.pictures.handles import Handle, moved, put
from pedalwright.drawing import XY

Sent: TypeAlias = Mapping[str, object]
#: Where a handle is put.
To: TypeAlias = Callable[[Handle], XY]


def workspace(request: Request) -> Workspace:
    """The car an address speaks of, as its file is by now."""
    folder: Folder = request.app.state.folder
    try:
        work = folder.workspace(request.path_params["file"])
    except NoSuchFileError as error:
        raise HTTPException(404, "There is no such project file in this folder.") from error
    work.refresh()
    return work


async def show(request: Request) -> Response:
    """The whole page."""
    work = workspace(request)
    now = work.shown
    looking = view(request.query_params, now.project.design)
    found = fragments.whole(work, looking, form=True)
    return HTMLResponse(
        page(
            "bench.html",
            work=work,
            about=now.about,
            view=looking,
            sides=SIDES,
            stage=BY_KEY[looking.stage],
            people=[person.name for person in now.project.design.drivers],
            parts=found["html"],
            at=found["at"],
            run=request.app.state.run,
        )
    )


async def state(request: Request) -> Response:
    """Everything that can change, anew."""
    work = workspace(request)
    looking = view(request.query_params, work.shown.project.design)
    if request.query_params.get("part") == "quick":
        return _answer(request, work, fragments.quick(work, looking))
    values = fragments.values(work, fragments.typed_here(work, looking))
    found = fragments.whole(work, looking, form=request.query_params.get("part") == "stage")
    return _answer(request, work, found | {"values": values})


async def held(request: Request) -> Response:
    """The numbers a handle moves."""
    work = workspace(request)
    looking = view(request.query_params, work.shown.project.design)
    known = fragments.taken(work, looking)
    return HTMLResponse(fragments.held(work, asked.handle_of(request.query_params, known)))


async def events(request: Request) -> Response:
    """News of this car, for as long as the tab listens."""
    work = workspace(request)
    return StreamingResponse(revisions(work, request.app.state.run), media_type="text/event-stream")


async def act(request: Request) -> Response:
    """A change: tried, made, undone."""
    sent = await asked.body(request)
    work = workspace(request)
    does = ACTS.get(request.path_params["act"])
    if does is None:
        raise HTTPException(404, "The page cannot do that.")
    return does(request, work, sent)


def _drag(request: Request, work: Workspace, sent: Sent) -> Response:
    at = (asked.number(sent, "x"), asked.number(sent, "y"))
    return _tried(request, work, sent, lambda _: at)


def _nudge(request: Request, work: Workspace, sent: Sent) -> Response:
    by = (asked.number(sent, "x"), asked.number(sent, "y"))
    return _tried(request, work, sent, lambda handle: moved(handle, by))


def _tried(request: Request, work: Workspace, sent: Sent, to: To) -> Response:
    """Put a handle somewhere without saving it."""
    now = work.shown
    looking = view(asked.looking(sent), now.project.design)
    here = now.looked_at(looking.look(now.about.units))
    handle = asked.handle_of(sent, fragments.taken(work, looking))
    numbers = put(now.project.design, here, handle, to(handle))
    work.try_out(numbers)
    found = fragments.quick(work, looking)
    return _answer(request, work, found | {"values": fragments.values(work, numbers)})


def _settled(does: Callable[[Workspace, Sent], None]) -> Callable[..., Response]:
    """What changes the file, and then shows everything anew."""

    def act(request: Request, work: Workspace, sent: Sent) -> Response:
        does(work, sent)
        looking = view(asked.looking(sent), work.shown.project.design)
        found = fragments.whole(work, looking, form=False)
        values = fragments.values(work, fragments.typed_here(work, looking))
        says = fragments.spoken(work)
        return _answer(request, work, found | {"values": values, "says": says})

    return act


def _change(work: Workspace, sent: Sent) -> None:
    """What a tape found is measured; what was picked on the page is not."""
    does = work.measure if sent.get("measured") is True else work.choose
    does(asked.changes(sent))


def _build(work: Workspace, sent: Sent) -> None:
    work.make(lambda project: channel(project, asked.text(sent, "pedal")))


ACTS: Mapping[str, Callable[[Request, Workspace, Sent], Response]] = {
    "drag": _drag,
    "nudge": _nudge,
    "drop": _settled(lambda work, _: work.drop()),
    "cancel": _settled(lambda work, _: work.cancel()),
    "change": _settled(_change),
    "build": _settled(_build),
    "undo": _settled(lambda work, _: work.undo()),
    "redo": _settled(lambda work, _: work.redo()),
    "overwrite": _settled(lambda work, _: work.overwrite()),
}


def _answer(request: Request, work: Workspace, found: dict[str, Any]) -> Response:
    return JSONResponse(found | {"run": request.app.state.run, "revision": work.revision})
