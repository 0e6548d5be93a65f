"""Who may ask, and what may come back: hosts, token, kind of question, size, rights of a page.

On its own machine the page answers only to the machine's own names, so that no other site can
reach it by a name of its own. On a network it also wants the token of the printed link, once, and
keeps it in a cookie no script can read.
"""

import json
from collections.abc import Awaitable, Callable, MutableMapping
from dataclasses import dataclass
from hmac import compare_digest
from http.cookies import CookieError, SimpleCookie
from typing import Any, TypeAlias

from starlette.exceptions import HTTPException

#: Bytes of a question; a project file has room in it many times over.
MOST_BYTES = 1_000_000
TOO_MUCH = f"That is too much: at most {MOST_BYTES} bytes."

Scope: TypeAlias = MutableMapping[str, Any]
Message: TypeAlias = MutableMapping[str, Any]
Receive: TypeAlias = Callable[[], Awaitable[Message]]
Send: TypeAlias = Callable[[Message], Awaitable[None]]
App: TypeAlias = Callable[[Scope, Receive, Send], Awaitable[None]]

HEADERS = (
    (
        b"content-security-policy",
        (
            b"default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
            b"connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
        ),
    ),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"cache-control", b"no-store"),
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Entrance:
    """Under which names the page is reached, and with which token."""

    #: With their port, as a browser writes them: `127.0.0.1:8417`.
    hosts: frozenset[str]
    #: Empty where only this machine can reach it.
    token: str = ""
    cookie: str = "pedalwright"


class Guard:
    """Stands before the whole page."""

    def __init__(self, app: App, entrance: Entrance) -> None:
        self.app = app
        self.entrance = entrance

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a question through, or say plainly why not."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = {key.lower(): value.decode("latin-1") for key, value in scope["headers"]}
        refused = self._refused(scope, headers)
        if refused is not None:
            await _say(_with_headers(send), *refused)
            return
        await self.app(scope, _limited(receive), _with_headers(send))

    def _refused(self, scope: Scope, headers: dict[bytes, str]) -> tuple[int, str] | None:
        if headers.get(b"host", "").lower() not in self.entrance.hosts:
            return 421, "This page is not known by that name."
        if not self._is_known(scope, headers):
            return 401, "Open the link that was printed where the page was started."
        if scope["method"] not in {"GET", "HEAD", "POST"}:
            return 405, "The page is read and changed, nothing else."
        if scope["method"] != "POST":
            return None
        if headers.get(b"content-type", "").split(";")[0].strip().lower() != "application/json":
            return 415, "A change is sent as application/json."
        origin = headers.get(b"origin")
        if origin is not None and origin.rpartition("://")[2].lower() not in self.entrance.hosts:
            return 403, "A change is sent from the page itself."
        length = headers.get(b"content-length", "0")
        if not length.isdecimal() or int(length) > MOST_BYTES:
            return 413, TOO_MUCH
        return None

    def _is_known(self, scope: Scope, headers: dict[bytes, str]) -> bool:
        """True without a token, at the door itself, and for whoever has been through it."""
        if not self.entrance.token or scope["path"] == "/enter":
            return True
        try:
            cookies = SimpleCookie(headers.get(b"cookie", ""))
        except CookieError:
            return False
        kept = cookies.get(self.entrance.cookie)
        return kept is not None and is_token(kept.value, self.entrance)


def is_token(text: str, entrance: Entrance) -> bool:
    """Whether a text is the token, in a time that does not tell how nearly."""
    return bool(entrance.token) and compare_digest(text.encode(), entrance.token.encode())


def _limited(receive: Receive) -> Receive:
    """A body whose length was not told, or was told wrongly, is cut off all the same."""
    taken = 0

    async def limited() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > MOST_BYTES:
            raise HTTPException(413, TOO_MUCH)
        return message

    return limited


def _with_headers(send: Send) -> Send:
    """Every answer carries what a page may do."""

    async def with_headers(message: Message) -> None:
        if message["type"] == "http.response.start":
            own = {key.lower() for key, _ in message["headers"]}
            message["headers"] = [
                *message["headers"],
                *((key, value) for key, value in HEADERS if key not in own),
            ]
        await send(message)

    return with_headers


async def _say(send: Send, status: int, text: str) -> None:
    body = json.dumps({"says": text}).encode()
    headers = [(b"content-type", b"application/json"), (b"content-length", b"%d" % len(body))]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": body})
