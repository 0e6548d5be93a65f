"""A text cut into numbers, words and marks, and a finger that moves along them."""

import re
from typing import NamedTuple

from pedalwright.core.quantity.doubt import DoubtError

#: Longer texts are not quantities, and never worth the time.
LONGEST = 80

# Typographic characters with the plain one that means the same, one for one, so that places in
# the text stay places in the text.
_PLAIN = str.maketrans(
    {
        **dict.fromkeys("\t\u00a0\u202f\u205f\u3000", " "),
        **{chr(code): " " for code in range(0x2000, 0x200B)},
        **dict.fromkeys("\u2212\u2010\u2011\u2012\u2013", "-"),
        **dict.fromkeys("″“”„‟ʺ", '"'),
        **dict.fromkeys("′‘’‛ʹ´", "'"),
        **dict.fromkeys("⁄∕", "/"),
        **dict.fromkeys("⋅∙×", "*"),
        "·": "*",
        "∶": ":",
        "º": "°",
        "μ": "µ",
    }
)

VULGAR = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4),
    "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8),
}  # fmt: skip

_TOKEN = re.compile(
    r"""
    (?P<number> (?:[0-9][0-9.,]*|[.,][0-9][0-9.,]*) (?:[eE][+-]?[0-9]+)? )
  | (?P<vulgar> [½⅓⅔¼¾⅛⅜⅝⅞] )
  | (?P<word>   [sS]\.[wW]\.[gG] | [pP]\.[sS]\.[iI] | [mk]\.p\.h | B&S | [A-Za-zµ]+ | ° | % )
  | (?P<power>  [²³⁴] | \^[234] | \*\*[234] )
  | (?P<within> ± | \+/?- )
  | (?P<inch>   " | '' )
  | (?P<foot>   ' )
  | (?P<sign>   [+-] )
  | (?P<slash>  / )
  | (?P<colon>  : )
  | (?P<times>  \* )
  | (?P<dot>    \. )
    """,
    re.VERBOSE,
)


class Token(NamedTuple):
    """A piece of the text: what it is, how it is written, where it stands."""

    kind: str
    text: str
    start: int
    end: int
    #: True after a space and at the beginning.
    spaced: bool

    @property
    def is_whole(self) -> bool:
        """True for plain digits: no point, no comma, no power of ten."""
        return self.kind == "number" and self.text.isdigit()


def tokens(text: str) -> list[Token]:
    """All pieces of a text and an `end` behind them."""
    if len(text) > LONGEST:
        raise DoubtError(f"A text of {len(text)} characters is not a quantity.")
    plain = text.translate(_PLAIN)
    pieces: list[Token] = []
    place, spaced = 0, True
    while place < len(plain):
        if plain[place] == " ":
            place, spaced = place + 1, True
            continue
        match = _TOKEN.match(plain, place)
        if match is None:
            raise _stranger(text, place)
        assert match.lastgroup is not None
        piece = Token(match.lastgroup, match[0], place, match.end(), spaced)
        if piece.text[0] in ".," and piece.kind == "number" and pieces and not spaced:
            _check_point(text, pieces[-1], piece)
        pieces.append(piece)
        place, spaced = match.end(), False
    pieces.append(Token("end", "", len(plain), len(plain), True))
    return pieces


def _stranger(text: str, place: int) -> DoubtError:
    stranger = text[place]
    if not stranger.isprintable():
        return DoubtError("A quantity stands on one line and has no hidden characters.")
    without = text[:place] + text[place + 1 :]
    return DoubtError(f"“{stranger}” is not part of a quantity.", without)


def _check_point(text: str, before: Token, number: Token) -> None:
    """In `5 ft.2 in` the point may end a word or begin a number."""
    if before.kind in {"word", "foot", "inch", "power"}:
        offers = (f"{text[: number.start]} {text[number.start + skip :]}" for skip in (0, 1))
        raise DoubtError(f"The point in “{text}” can be read in two ways.", *offers)


class Cursor:
    """A finger on the next piece of a text."""

    __slots__ = ("next", "pieces", "place", "text")

    def __init__(self, text: str) -> None:
        self.text = text.strip()
        self.pieces = tokens(self.text)
        self.place = 0
        #: The piece under the finger.
        self.next = self.pieces[0]

    @property
    def behind(self) -> Token:
        """The piece taken last."""
        return self.pieces[self.place - 1]

    def ahead(self, steps: int = 1) -> Token:
        """The piece some steps further on, or the end."""
        place = self.place + steps
        return self.pieces[place] if place < len(self.pieces) else self.pieces[-1]

    def take(self) -> Token:
        """The piece under the finger; the finger moves on."""
        piece = self.next
        self.back_to(self.place + (piece.kind != "end"))
        return piece

    def back_to(self, place: int) -> None:
        """Put the finger where it was before."""
        self.place = place
        self.next = self.pieces[place]

    def skip_full_stop(self) -> None:
        """Pass over the full stop of `mm.` and `sq. in.`, but not over the product in `N.m`."""
        if self.next.kind == "dot" and not self.next.spaced:
            behind = self.ahead()
            if behind.spaced or behind.kind in {"slash", "within"}:
                self.take()

    def follows(self, kind: str, then: str) -> bool:
        """True if the next two pieces are of these kinds."""
        return self.next.kind == kind and self.ahead().kind == then

    def written(self, first: Token, last: Token) -> str:
        """The text from one piece to another, as typed."""
        return self.text[first.start : last.end]

    def instead(self, first: Token, last: Token, other: str) -> str:
        """The whole text with something else in place of these pieces."""
        return self.text[: first.start] + other + self.text[last.end :]
