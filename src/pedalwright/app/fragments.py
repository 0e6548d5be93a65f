"""The parts of the page that change, each by its id: one state of the car, seen by one tab."""

from collections.abc import Iterable, Iterator
from dataclasses import asdict
from typing import Any

from pedalwright.app.building import offers
from pedalwright.app.fields import groups, some, standing
from pedalwright.app.pages import page
from pedalwright.app.seen import Seen
from pedalwright.app.stages import BY_KEY, OVERVIEW, Stage, counts, next_steps
from pedalwright.app.views import View
from pedalwright.app.workspace import Workspace
from pedalwright.documents.key_figures import key_figures
from pedalwright.documents.pictures.board import Board
from pedalwright.documents.pictures.charts import charts
from pedalwright.documents.pictures.handles import Handle, handles, says
from pedalwright.documents.pictures.space import space
from pedalwright.documents.pictures.strength import strength
from pedalwright.documents.pictures.stroke import Look, SideName
from pedalwright.documents.since import failing, since
from pedalwright.documents.verdict import by_room, verdict
from pedalwright.documents.where import where
from pedalwright.drawing import Box, svg


def quick(work: Workspace, view: View) -> dict[str, Any]:
    """What follows every move of a hand: the drawing, the figures, the findings."""
    now = work.shown
    look = view.look(now.about.units)
    here = now.looked_at(look)
    ground, pedal = drawings(work, view)
    return {
        "html": {
            "ground": ground,
            "drawing": pedal,
            "turning": page("parts/turning.html", view=view),
            "verdict": page("parts/verdict.html", verdict=verdict(now.assessment.findings)),
            "figures": figures(work, view),
            "since": changes(work),
            "findings": findings(now, BY_KEY[view.stage]),
        },
        "handles": [_handle(handle, look.side) for handle in taken(work, view)],
        "at": page("parts/at.html", here=here, units=now.about.units).strip(),
        "looking": {"stage": view.stage, "pedal": view.pedal, "side": view.side},
    }


def whole(work: Workspace, view: View, *, form: bool) -> dict[str, Any]:
    """What follows a change that was made, or another view: everything.

    The form of a stage is long and does not change with its numbers: it goes out when asked for.
    """
    found, now, stage = quick(work, view), work.shown, BY_KEY[view.stage]
    found["html"] |= {
        "stages": stages(now, view),
        "next": page(
            "parts/next.html",
            steps=list(next_steps(now.about, now.assessment.findings)),
            file=now.about.file,
        ),
        "charts": page("parts/charts.html", charts=list(pictures(now, stage))),
        "state": state_line(work),
    }
    if form:
        found["html"]["fields"] = fields(now, stage)
    return found


def values(work: Workspace, paths: Iterable[str]) -> dict[str, Any]:
    """How some entries stand now."""
    now = work.shown
    return {path: asdict(standing(now.project, path, now.about.units)) for path in paths}


def typed_here(work: Workspace, view: View) -> set[str]:
    """Paths of everything that can be typed on the page: the stage's form, and every handle."""
    now, stage = work.shown, BY_KEY[view.stage]
    form = groups(now.project, stage, now.about.units)
    return {field.path for group in form for field in group.fields} | {
        path for handle in taken(work, view) for path in handle.entries
    }


def taken(work: Workspace, view: View) -> list[Handle]:
    """The handles there are."""
    if not view.has_handles:
        return []
    now = work.shown
    look = view.look(now.about.units)
    return handles(now.project.design, now.looked_at(look), look)


def drawings(work: Workspace, view: View) -> tuple[str, str]:
    """What stands still and what moves, through a window that stands still in a drag."""
    if not view.has_handles:
        return "", in_space(work, view)
    look = view.look(work.shown.about.units)
    still, board = _board(work.settled, look), _board(work.shown, look)
    window = still.window()
    # walls are cut where the pads stood when the drag began, unless they move themselves
    under = board if still.walls(window) != board.walls(window) else still
    return _ground(work, under, window), svg(board.moving(window), physical=False).decode()


def _board(now: Seen, look: Look) -> Board:
    return Board(
        design=now.project.design,
        assessment=now.assessment,
        now=now.looked_at(look),
        look=look,
    )


def _ground(work: Workspace, board: Board, window: Box) -> str:
    """Drawn anew only where something in it has moved."""
    drawn_from = board.stands_still(window)
    if work.ground is None or work.ground[0] != drawn_from:
        drawn = svg(board.ground(window), physical=False).decode()
        work.ground = (drawn_from, drawn)
    return work.ground[1]


def in_space(work: Workspace, view: View) -> str:
    """Pedals, legs and box in space, or what is drawn of the box's strength."""
    now = work.shown
    look = view.look(now.about.units)
    if view.side == "box":
        drawn = strength(now.project.design, now.assessment, now.about.units)
        return page(
            "parts/box.html",
            pictures=drawn,
            file=now.about.file,
            offers=list(offers(now.project.design)),
        )
    shown = space(_board(now, look), view.turn, view.tip)
    return svg(shown, physical=False).decode()


def stages(now: Seen, view: View) -> str:
    """The stages with their counts."""
    found = counts(now.about, now.assessment.findings)
    return page("parts/stages.html", counts=found, overview=OVERVIEW, view=view)


def figures(work: Workspace, view: View) -> str:
    """The handful of figures of the pedal looked at."""
    now, before = work.shown, work.before
    told = key_figures(
        view.pedal,
        view.driver,
        (now.headlines, now.assessment.findings),
        before.headlines if before else now.headlines,
        now.about.units,
    )
    return page("parts/figures.html", figures=list(told))


def changes(work: Workspace) -> str:
    """What got better and what got worse since the drag or the change began."""
    now, before = work.shown, work.before
    told = since(before.assessment.findings, now.assessment.findings) if before else None
    return page("parts/since.html", since=told, trying=work.trying, units=now.about.units)


def findings(now: Seen, stage: Stage) -> str:
    """The findings of a stage, what fails first; of all stages only what fails, worst first."""
    found = [f for f in now.assessment.findings if f.room in stage.rooms]
    return page(
        "parts/findings.html",
        rooms=[(OVERVIEW.title, failing(found))] if stage is OVERVIEW else list(by_room(found)),
        where=where,
        units=now.about.units,
        file=now.about.file,
        stage=stage,
        offers=list(offers(now.project.design)) if stage.key == "strength" else [],
    )


def fields(now: Seen, stage: Stage) -> str:
    """The numbers of a stage, to type."""
    found = groups(now.project, stage, now.about.units)
    return page("parts/fields.html", groups=found, stage=stage)


def held(work: Workspace, handle: Handle) -> str:
    """The numbers a handle moves, to type instead."""
    now = work.shown
    found = some(now.project, handle.entries, now.about.units)
    return page("parts/held.html", label=handle.label, fields=found)


def state_line(work: Workspace) -> str:
    """Whether everything is saved, and what can be undone."""
    return page("parts/state.html", work=work, file=work.path.name)


def pictures(now: Seen, stage: Stage) -> Iterator[tuple[str, bytes]]:
    """The charts of a stage with their titles."""
    if stage.charts:
        for chart in charts(now.assessment, now.about.units):
            if chart.name in stage.charts:
                yield chart.title, svg(chart, physical=False)


def _handle(handle: Handle, side: SideName) -> dict[str, Any]:
    x, y = handle.at
    return {
        "name": handle.name,
        "label": handle.label,
        "says": says(handle, side),
        "x": x,
        "y": y,
    }


def spoken(work: Workspace) -> str:
    """One sentence for those who do not see the page, after a change."""
    told = verdict(work.shown.assessment.findings)
    return f"Saved. {told}"
