"""What stands in a box when nobody knows the number."""

from math import isfinite

_NOTHING = frozenset(
    {
        *(
            "",
            "-",
            "--",
            "---",
            "\N{EN DASH}",
            "\N{EM DASH}",
            ".",
            "...",
            "\N{HORIZONTAL ELLIPSIS}",
        ),
        *("unknown", "missing", "not known", "not measured", "none", "null", "n/a", "na", "n.a."),
        *("tbd", "tba", "tbc", "todo"),
        *(sign + name for sign in ("", "+", "-") for name in ("nan", "inf", "infinity", "∞")),
        # left behind by a spreadsheet
        *("#ref!", "#n/a", "#value!", "#div/0!", "#name?", "#num!", "#null!", "#error!", "#####"),
    }
)


def is_missing(text: object) -> bool:
    """True where nothing is known: None, an empty box, `?`, `n/a`, `#REF!`, `nan`, `inf`.

    A missing number is missing, never 0. Zero itself is a number.
    """
    if text is None:
        return True
    if isinstance(text, str):
        plain = " ".join(text.split()).casefold()
        return plain in _NOTHING or set(plain) == {"?"}
    return isinstance(text, float) and not isfinite(text)
