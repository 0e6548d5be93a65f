"""Paths of entries, such as `brake.pedal.pin_radius`; a name with other signs is in quotes."""

import json
import re

_PLAIN = re.compile(r"[A-Za-z0-9_-]+")
_PIECE = re.compile(r"""("(?:[^"\\]|\\.)*"|[A-Za-z0-9_-]+)(?:\.|$)""")


def join(*keys: str) -> str:
    """One path from its keys: `drivers."D 1".trunk`."""
    return ".".join(key if _PLAIN.fullmatch(key) else json.dumps(key) for key in keys)


def split(path: str) -> tuple[str, ...]:
    """The keys of a path; empty where it is none."""
    keys: list[str] = []
    at = 0
    while at < len(path):
        piece = _PIECE.match(path, at)
        if piece is None:
            return ()
        keys.append(str(json.loads(piece[1])) if piece[1][0] == '"' else piece[1])
        at = piece.end()
    return tuple(keys)
