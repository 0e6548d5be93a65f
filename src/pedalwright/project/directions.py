"""Directions as a builder gives them: `forward`, `rearward 35 deg up`, or three numbers."""

from collections.abc import Sequence
from math import cos, hypot, sin
from typing import cast

from pedalwright.core.points import REARWARD, RIGHT, UP, Point
from pedalwright.core.quantity import QuantityError, parse
from pedalwright.project.entries import Trouble, typed
from pedalwright.project.errors import nearest

WORDS = {
    "forward": Point(-1.0, 0.0, 0.0),
    "rearward": REARWARD,
    "left": Point(0.0, -1.0, 0.0),
    "right": RIGHT,
    "up": UP,
    "down": Point(0.0, 0.0, -1.0),
}
ACCEPTS = (
    f"A direction is {', '.join(WORDS)}; one turned to another, such as “rearward 35 deg up”; "
    "or three numbers."
)


def direction(raw: object) -> Point | Trouble:
    """A direction of length 1."""
    if isinstance(raw, str):
        return _in_words(raw)
    if isinstance(raw, list):
        return _in_numbers(cast("list[object]", raw))
    return Trouble(typed(raw), ACCEPTS)


def _in_words(text: str) -> Point | Trouble:
    words = text.lower().split()
    ends = {words[0], words[-1]} if words else set[str]()
    if not ends or not ends <= set(WORDS):
        strange = next((word for word in words if word in ends - set(WORDS)), "")
        return Trouble(text, ACCEPTS, nearest(strange, WORDS) if len(words) == 1 else ())
    if len(words) == 1:
        return WORDS[words[0]]
    start, end = WORDS[words[0]], WORDS[words[-1]]
    if start.dot(end) != 0.0:
        return Trouble(text, f"{words[0]} cannot be turned to {words[-1]}. {ACCEPTS}")
    try:
        angle = parse(" ".join(words[1:-1]), "rad", bare="deg").value
    except QuantityError as error:
        return Trouble(text, f"{error.reason} {ACCEPTS}")
    return start * cos(angle) + end * sin(angle)


def _in_numbers(raw: Sequence[object]) -> Point | Trouble:
    text = typed(raw)
    if len(raw) != 3 or not all(isinstance(part, (str, int, float)) for part in raw):
        return Trouble(text, ACCEPTS)
    try:
        x, y, z = (parse(cast("str | float", part), "1").value for part in raw)
    except QuantityError as error:
        return Trouble(text, f"{error.reason} {ACCEPTS}")
    length = hypot(x, y, z)
    if not length:
        return Trouble(text, f"Three noughts point nowhere. {ACCEPTS}")
    return Point(x / length, y / length, z / length)
