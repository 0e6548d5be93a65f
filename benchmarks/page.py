"""Print how quick the page is in a real browser: pointer move to redrawn, with the real assessment.

    python -m benchmarks.page

A server in a process of its own, the system's chromium, a pad dragged by mouse: once with time
between the moves, once as fast as a hand moves. A redraw is counted from the time stamp of the
pointer event that caused it to the frame that shows it; moves overtaken by later ones are none.
"""

import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import quantiles

import click

from pedalwright.project import new_file

CAR = "larkfield-first"
#: Listens to what the page says of each redraw, and when.
PROBE = """() => {
    window.took = [];
    document.getElementById("board").addEventListener("redrawn", (event) => {
        window.took.push([event.detail, performance.now()]);
    });
}"""
PAGES = {"full page": (1366, 768), "one column": (390, 844)}


def main() -> None:
    """Run it, or say why not."""
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    if chromium is None:
        click.echo("There is no chromium on this machine.")
        return
    from playwright.sync_api import sync_playwright

    with served() as (server, address), sync_playwright() as play:
        browser = play.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        for name, (wide, high) in PAGES.items():
            page = browser.new_page(viewport={"width": wide, "height": high})
            page.goto(address)
            page.wait_for_selector("#handles button")
            first = page.evaluate(
                "performance.getEntriesByName('first-contentful-paint')[0].startTime"
            )
            say(f"{name}: first drawing", [first], 600.0)
            page.evaluate(PROBE)
            for pace, gap, moves in (("moves apart", 120, 40), ("a quick hand", 16, 180)):
                took, late = dragged(page, gap, moves)
                say(f"{name}, {pace}: move to redrawn, {len(took)} redraws", took, None)
                say("    last redraw after the last move", [late], 150.0)
            page.close()
        browser.close()
        click.echo(f"{'server memory':<58} {memory(server):8.0f} MB   budget 200 MB")


def dragged(page: object, gap: int, moves: int) -> tuple[list[float], float]:
    """Drag the pad to and fro; ms of each redraw, and how late the last one came."""
    from playwright.sync_api import Page

    assert isinstance(page, Page)
    page.evaluate("() => { window.took.length = 0; }")
    page.locator("#board").scroll_into_view_if_needed()
    box = page.locator('#handles [data-name="pad"]').bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    for move in range(moves):
        page.mouse.move(x + 12 * (move % 20) / 20, y + 15 * (move % 30) / 30)
        page.wait_for_timeout(gap)
    last = page.evaluate("performance.now()") - gap
    page.wait_for_timeout(600)
    took = page.evaluate("window.took")
    page.keyboard.press("Escape")
    page.mouse.up()
    page.wait_for_timeout(400)
    return [one for one, _ in took], max(0.0, took[-1][1] - last)


@contextmanager
def served() -> Iterator[tuple[subprocess.Popen[str], str]]:
    """A server on a car of its own."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "car.toml"
        new_file(file, CAR)
        command = [sys.executable, "-u", "-m", "pedalwright", "open", str(file), "--no-browser"]
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as server:
            assert server.stdout is not None
            link = re.search(r"http://\S+", server.stdout.readline())
            assert link is not None
            time.sleep(1.0)
            try:
                yield server, link[0]
            finally:
                server.terminate()


def memory(server: subprocess.Popen[str]) -> float:
    """What the server holds, MB."""
    status = Path(f"/proc/{server.pid}/status").read_text()
    found = re.search(r"VmRSS:\s+(\d+) kB", status)
    return int(found[1]) / 1000 if found else float("nan")


def say(what: str, took: list[float], budget: float | None) -> None:
    """One line: the middle one and the slowest twentieth, or the only one."""
    if len(took) > 1:
        cuts = quantiles(took, n=20)
        click.echo(f"{what:<58} p50 {cuts[9]:5.0f} ms   p95 {cuts[18]:5.0f} ms   budget 30 / 60 ms")
    else:
        click.echo(f"{what:<58} {took[0]:8.0f} ms   budget {budget:g} ms")


if __name__ == "__main__":
    main()
