"""A server in a process of its own and the system's chromium: what the browser tests share."""

import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Self, TypeVar

from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, Request

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or ""
T = TypeVar("T", bound="Tab")
LAPTOP = {"width": 1366, "height": 768}
PHONE = {"width": 390, "height": 844}


class Server:
    """`pedalwright open` on a folder, always at the same port, so that it can be killed."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.port = 0
        self.run: subprocess.Popen[str] | None = None
        self.start()

    def start(self) -> None:
        own = ["--port", str(self.port)] if self.port else []
        command = [sys.executable, "-u", "-m", "pedalwright", "open", str(self.folder), *own]
        self.run = subprocess.Popen([*command, "--no-browser"], stdout=subprocess.PIPE, text=True)
        assert self.run.stdout is not None
        link = re.search(r"http://127\.0\.0\.1:(\d+)", self.run.stdout.readline())
        assert link is not None
        self.port = int(link[1])

    def kill(self) -> None:
        """As a flat battery would."""
        if self.run is not None:
            self.run.kill()
            self.run.wait(timeout=10)
            assert self.run.stdout is not None
            self.run.stdout.close()
            self.run = None

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}"


@dataclass
class Tab:
    """One tab, with everything it said and asked for."""

    page: Page
    server: Server
    file: str
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)

    def open(self, view: str = "") -> Self:
        self.page.goto(f"{self.server.address}/cars/{self.file}{view}")
        self.page.wait_for_selector("#handles button")
        return self

    def text(self, selector: str) -> str:
        return self.page.inner_text(selector)

    def until(self, happens: Callable[[], object], seconds: float = 10.0) -> None:
        """Wait for something. The page's policy forbids waiting by a script handed to it."""
        for _ in range(int(seconds * 20)):
            if happens():
                return
            self.page.wait_for_timeout(50)
        raise AssertionError("it never happened")

    def middle(self, handle: str) -> tuple[float, float]:
        """Where a handle is on the screen, once it has come to rest."""
        button = self.page.locator(f'#handles button[data-name="{handle}"]')
        box = button.bounding_box()
        assert box is not None
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    def press(self, selector: str) -> None:
        """A button or a link."""
        self.page.click(selector)

    def drag(self, handle: str, dx: float, dy: float, steps: int = 8) -> None:
        """By so many pixels."""
        x, y = self.middle(handle)
        mouse = self.page.mouse
        mouse.move(x, y)
        mouse.down()
        for step in range(1, steps + 1):
            mouse.move(x + dx * step / steps, y + dy * step / steps)
        self.saved(mouse.up)

    def saved(self, does: object) -> None:
        """Do something and wait until the file has it."""
        assert callable(does)
        with self.page.expect_response(re.compile(r"/(drop|change|build|undo|redo|overwrite)$")):
            does()
        self.page.wait_for_timeout(50)

    def typed(self, path: str, value: str) -> None:
        """Into a field of the form, and on to the next by Tab."""
        self.unfold(path)
        field = self.page.locator(f'#fields [data-path="{path}"] > input')
        self.press(f'#fields [data-path="{path}"] > input')
        field.fill(value)
        self.saved(lambda: field.press("Tab"))

    def unfold(self, path: str) -> None:
        """The group of a field, where it is folded."""
        own = self.page.locator(f'[data-path="{path}"]')
        group = self.page.locator("#fields details.group", has=own)
        if group.get_attribute("open") is None:
            group.locator("> summary").click()

    def stage(self, key: str, tab: str = "") -> None:
        """To a stage, and to its findings or numbers."""
        with self.page.expect_response(re.compile(r"/state\?.*part=stage")):
            self.press(f'#stages a[data-stage="{key}"]')
        self.page.wait_for_timeout(50)
        if tab:
            self.show(tab)

    def show(self, tab: str) -> None:
        """One of the tabs."""
        self.press(f"#tab-{tab}")


class Finger(Tab):
    """The same by touch."""

    def press(self, selector: str) -> None:
        """Tapped."""
        self.page.tap(selector)

    def drag(self, handle: str, dx: float, dy: float, steps: int = 8) -> None:
        """By so many pixels."""
        self.page.locator("#board").scroll_into_view_if_needed()
        x, y = self.middle(handle)
        self.saved(self.finger(x, y, dx, dy, steps))

    def finger(self, x: float, y: float, dx: float, dy: float, steps: int) -> Callable[[], None]:
        """A finger put down and drawn along; answers with the way to lift it."""
        device = self.page.context.new_cdp_session(self.page)

        def touch(kind: str, *points: tuple[float, float]) -> None:
            touched = [{"x": px, "y": py} for px, py in points]
            device.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": touched})

        touch("touchStart", (x, y))
        for step in range(1, steps + 1):
            touch("touchMove", (x + dx * step / steps, y + dy * step / steps))
            self.page.wait_for_timeout(16)
        return lambda: touch("touchEnd")


class Keys(Tab):
    """The same without a pointer: everything is reached by Tab."""

    def reach(self, selector: str) -> None:
        """Press Tab until it is there."""
        for _ in range(600):
            if self.page.evaluate("of => document.activeElement.matches(of)", selector):
                return
            self.page.keyboard.press("Tab")
        raise AssertionError(f"Tab never comes to {selector}")

    def press(self, selector: str) -> None:
        """Reached, and pressed by Enter."""
        self.reach(selector)
        self.page.keyboard.press("Enter")

    def drag(self, handle: str, dx: float, dy: float, steps: int = 8) -> None:
        """By ten millimetres for so many pixels, roughly; what is left is typed."""
        self.reach(f'#handles [data-name="{handle}"]')
        keys = (("Right" if dx > 0 else "Left", dx), ("Down" if dy > 0 else "Up", dy))
        with self.page.expect_response(re.compile(r"/drop$")):
            for key, by in keys:
                for _ in range(round(abs(by) / steps)):
                    self.page.keyboard.press(f"Shift+Arrow{key}")

    def typed(self, path: str, value: str) -> None:
        """Over what stands there."""
        self.unfold(path)
        self.reach(f'#fields [data-path="{path}"] > input')
        self.page.keyboard.press("Control+A")
        self.page.keyboard.type(value)
        self.saved(lambda: self.page.keyboard.press("Tab"))

    def show(self, tab: str) -> None:
        """By the arrows between the tabs."""
        self.reach('[role="tab"][aria-selected="true"]')
        if self.page.evaluate("document.activeElement.id") != f"tab-{tab}":
            self.page.keyboard.press("ArrowRight")


@contextmanager
def tab(
    browser: Browser, server: Server, file: str, kind: type[T] = Tab, **looks: object
) -> Iterator[T]:
    """A tab in a context of its own; what is said and asked is kept."""
    context: BrowserContext = browser.new_context(**({"viewport": LAPTOP} | looks))  # type: ignore[arg-type]
    page = context.new_page()
    found = kind(page, server, file)

    def heard(message: ConsoleMessage) -> None:
        if message.type in {"error", "warning"}:
            found.said.append(message.text)

    def asked(request: Request) -> None:
        found.asked.append(request.url)

    page.on("console", heard)
    page.on("pageerror", lambda error: found.said.append(str(error)))
    page.on("request", asked)
    try:
        yield found
    finally:
        with suppress(Exception):
            context.close()
