"""Tabs that follow each other: every new revision is told to every tab that listens."""

import asyncio
import json
from collections.abc import AsyncIterator, Callable

from pedalwright.app.workspace import Workspace

#: Seconds between signs of life, so that a tab that is gone is noticed.
ALIVE = 10.0


async def revisions(work: Workspace, run: str) -> AsyncIterator[str]:
    """The newest revision whenever there is one; a slow tab skips those between."""
    news: asyncio.Queue[None] = asyncio.Queue(maxsize=1)

    def heard() -> None:
        if news.empty():
            news.put_nowait(None)

    stop = work.listen(heard)
    try:
        yield _event(work, run)
        while True:
            try:
                await asyncio.wait_for(news.get(), ALIVE)
            except TimeoutError:
                yield ": still here\n\n"
            else:
                yield _event(work, run)
    finally:
        stop()


async def watch(works: Callable[[], list[Workspace]], every: float = 1.0) -> None:
    """Notice what an editor saves."""
    while True:
        await asyncio.sleep(every)
        for work in works():
            work.refresh()


def _event(work: Workspace, run: str) -> str:
    return f"data: {json.dumps({'run': run, 'revision': work.revision})}\n\n"
