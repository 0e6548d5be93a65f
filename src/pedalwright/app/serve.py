"""Starting the page: where it listens, the link to it, and how it stops."""

import secrets
import socket
import webbrowser
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from threading import Timer

from pedalwright.core.faults import Fault, InputError

#: Tried first, and the next ones where it is taken.
PORT, TRIES = 8417, 20


def serve(
    folder: Path,
    file: str = "",
    *,
    say: Callable[[str], None],
    lan: bool = False,
    port: int | None = None,
    browser: bool = True,
) -> None:
    """Serve a folder's project files until somebody stops it."""
    import uvicorn

    from pedalwright.app.guard import Entrance
    from pedalwright.app.site import site

    listening = _listening("0.0.0.0" if lan else "127.0.0.1", port)
    taken = listening.getsockname()[1]
    names = ["127.0.0.1", "localhost", *(_addresses() if lan else ())]
    token = secrets.token_urlsafe(32) if lan else ""
    entrance = Entrance(
        hosts=frozenset(f"{name}:{taken}" for name in names),
        token=token,
        cookie=f"pedalwright-{taken}",
    )
    path = f"/cars/{file}" if file else "/"
    door = f"/enter?token={token}&to={path}" if lan else path
    shown = names[2:] or names[:1]
    for name in shown:
        say(f"pedalwright is open at http://{name}:{taken}{door}")
    say("Leave this running; Ctrl-C ends it. Every change is saved in the file as you make it.")
    if lan:
        say("Whoever has the link can change the file. The way there is not encrypted.")
    config = uvicorn.Config(
        site(folder, entrance),
        log_level="warning",
        access_log=False,
        timeout_graceful_shutdown=1,
        lifespan="on",
        ws="none",
        server_header=False,
    )
    if browser:
        Timer(0.2, webbrowser.open, [f"http://{names[0]}:{taken}{door}"]).start()
    with suppress(KeyboardInterrupt):  # the usual way to end it
        uvicorn.Server(config).run(sockets=[listening])


def _listening(address: str, port: int | None) -> socket.socket:
    """A socket on the port asked for, else on the first free one."""
    wanted = [port] if port is not None else [*range(PORT, PORT + TRIES), 0]
    for candidate in wanted:
        listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listening.bind((address, candidate))
            listening.listen()  # who comes before the page is ready waits, and is not refused
        except OSError:
            listening.close()
        else:
            return listening
    accepts = "Name a port that is free, or leave it out."
    raise InputError((Fault(where="--port", read=str(port), accepts=accepts),))


def _addresses() -> list[str]:
    """This machine's own on its network; nothing is sent to find it."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # an address kept for documents: no packet leaves
        except OSError:
            return []
        return [probe.getsockname()[0]]
