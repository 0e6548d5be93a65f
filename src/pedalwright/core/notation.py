"""Two ways to write mathematics: a plain line of text, and Typst's math mode.

Both answer the same questions - how is a symbol, a power, a fraction written? - so that one
reader of formulas (`core.typeset`) serves both and decides where brackets stand.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

_LETTERS = {
    "alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi": "α",
    "pi rho": "π",
    "sigma tau upsilon phi chi psi omega": "σ",
}
_SMALL = {
    name: chr(code)
    for names, first in _LETTERS.items()
    for code, name in enumerate(names.split(), start=ord(first))
}
GREEK = _SMALL | {name.capitalize(): letter.upper() for name, letter in _SMALL.items()}
GREEK["lam"] = "λ"  # as code says it, which keeps the whole word for itself
_GREEK_NAMES = {letter: name for name, letter in GREEK.items() if name != "lam"}
_MARKS = {"prime": "′", "star": "*"}

_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


def raised(digits: str) -> str:
    """A whole number as an exponent: `-6` becomes ⁻⁶."""
    return digits.translate(_RAISED)


@dataclass(frozen=True, slots=True)
class Symbol:
    """A symbol taken apart: `F_max_rear` is F with the subscripts max and rear."""

    head: str
    lowered: tuple[str, ...]
    mark: str

    @classmethod
    def read(cls, name: str) -> "Symbol":
        """Read a name of the code or a symbol of the source.

        Greek letters are known by name, digits behind one letter are a subscript, `prime` and
        `star` are marks, `Delta_` before a symbol is its difference. An underscore at the end only
        keeps clear of a word of Python.
        """
        first, *words = [word for word in name.split("_") if word]
        difference = "Δ" if first in ("Delta", "Δ") and words else ""
        if difference:
            first, *words = words
        head = first.rstrip("*'′")
        mark = first[len(head) :].replace("'", "′")
        mark += "".join(_MARKS[word] for word in words if word in _MARKS)
        lowered = [GREEK.get(word, word) for word in words if word not in _MARKS]
        if numbered := re.fullmatch(r"([^\W\d_]+?)(\d+)", head):
            letter = GREEK.get(numbered[1], numbered[1])
            if len(letter) == 1:
                head, lowered = letter, [numbered[2], *lowered]
        return cls(difference + GREEK.get(head, head), tuple(lowered), mark)

    @property
    def one(self) -> bool:
        """False where a power would seem to belong to the last letter or to the mark only."""
        return "*" not in self.mark and not (self.head.startswith("Δ") and len(self.head) > 1)


class Notation(Protocol):
    """What a way of writing has to be able to write. Brackets are already where they belong."""

    #: True where a quotient is a bar with something above and below it.
    bars: bool

    def symbol(self, name: str) -> str:
        """A symbol such as `F_pedal`."""
        ...

    def number(self, mantissa: str, exponent: int) -> str:
        """A number, with a power of ten if the exponent is not zero."""
        ...

    def word(self, text: str) -> str:
        """An upright word: a unit, the name of a function."""
        ...

    def infix(self, left: str, sign: str, right: str) -> str:
        """Two pieces with `+ - * = <= and` or another sign of Python between them."""
        ...

    def before(self, sign: str, right: str) -> str:
        """A piece with a minus or a "not" before it."""
        ...

    def brackets(self, inner: str) -> str:
        """Round brackets."""
        ...

    def over(self, above: str, below: str) -> str:
        """A quotient."""
        ...

    def power(self, base: str, exponent: str) -> str:
        """A power."""
        ...

    def root(self, inner: str, degree: int) -> str:
        """A square root or a cube root."""
        ...

    def size(self, inner: str) -> str:
        """The amount without its sign."""
        ...

    def call(self, head: str, arguments: Sequence[str]) -> str:
        """A function of something; its head is already written."""
        ...

    def total(self, index: str, values: str, body: str) -> str:
        """The sum of the body over all values of an index."""
        ...

    def choice(self, cases: Sequence[tuple[str, str]], otherwise: str) -> str:
        """Values with the condition of each, and the value where none holds."""
        ...


class Plain:
    """One line of text, as one would write it in a mail."""

    bars = False
    _signs: Mapping[str, str] = {"*": "·", "<=": "≤", ">=": "≥", "!=": "≠", "==": "="}

    def symbol(self, name: str) -> str:
        """F_pedal stays as it is, theta_1 becomes θ_1."""
        parts = Symbol.read(name)
        return "_".join((parts.head + parts.mark, *parts.lowered))

    def number(self, mantissa: str, exponent: int) -> str:
        """1.2 · 10⁻⁵."""
        ten = f"10{raised(str(exponent))}"
        return self.infix(mantissa, "*", ten).removeprefix("1 · ") if exponent else mantissa

    def word(self, text: str) -> str:
        """As it is."""
        return text

    def infix(self, left: str, sign: str, right: str) -> str:
        """The sign between blanks: a · b."""
        return f"{left} {self._signs.get(sign, sign)} {right}"

    def before(self, sign: str, right: str) -> str:
        """-a."""
        return f"{sign} {right}" if sign.isalpha() else sign + right

    def brackets(self, inner: str) -> str:
        """(a + b)."""
        return f"({inner})"

    def over(self, above: str, below: str) -> str:
        """On one line: a / b."""
        return f"{above} / {below}"

    def power(self, base: str, exponent: str) -> str:
        """d², or d^(n + 1)."""
        if re.fullmatch(r"-?\d+", exponent):
            return base + raised(exponent)
        return f"{base}^{exponent}" if re.fullmatch(r"\w+", exponent) else f"{base}^({exponent})"

    def root(self, inner: str, degree: int) -> str:
        """√(a² + b²)."""
        sign = {2: "√", 3: "∛"}[degree]
        return f"{sign}{inner}" if re.fullmatch(r"[\w.]+", inner) else f"{sign}({inner})"

    def size(self, inner: str) -> str:
        """|a|."""
        return f"|{inner}|"

    def call(self, head: str, arguments: Sequence[str]) -> str:
        """min(a, b)."""
        return f"{head}({', '.join(arguments)})"

    def total(self, index: str, values: str, body: str) -> str:
        """Σ[i in values] body."""
        return f"Σ[{index} in {values}] {body}"

    def choice(self, cases: Sequence[tuple[str, str]], otherwise: str) -> str:
        """In words: a if x < 0; b otherwise."""
        return "; ".join(
            [*(f"{value} if {when}" for value, when in cases), f"{otherwise} otherwise"]
        )


class TypstMath:
    """Typst's math mode. What is made here may be evaluated: no text of a user gets in."""

    bars = True
    _signs: Mapping[str, str] = {
        "*": "dot.op",
        "==": "=",
        "and": 'quad "and" quad',
        "or": 'quad "or" quad',
    }

    def symbol(self, name: str) -> str:
        """F_pedal becomes F_("pedal"), with the word upright."""
        parts = Symbol.read(name)
        mark = parts.mark.replace("′", "'").replace("*", "^*")
        lowered = f"_({self._letter(', '.join(parts.lowered))})" if parts.lowered else ""
        return self._letter(parts.head) + lowered + mark

    def number(self, mantissa: str, exponent: int) -> str:
        """Groups of digits stay together; "no value" is a word."""
        digits = mantissa if re.fullmatch(r"-?[\d.]+|-?∞", mantissa) else self.word(mantissa)
        ten = self.power("10", f"{exponent}")
        return self.infix(digits, "*", ten).removeprefix("1 dot.op ") if exponent else digits

    def word(self, text: str) -> str:
        """Quoted, so upright and never read as a command."""
        return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'

    def infix(self, left: str, sign: str, right: str) -> str:
        """A blank beside a quoted word would be printed, so there is none."""
        before = "" if left.endswith('"') else " "
        behind = "" if right.startswith('"') else " "
        return f"{left}{before}{self._signs.get(sign, sign)}{behind}{right}"

    def before(self, sign: str, right: str) -> str:
        """-a."""
        return f'"{sign} "{right}' if sign.isalpha() else sign + right

    def brackets(self, inner: str) -> str:
        """They grow with what is inside."""
        return f"({inner})"

    def over(self, above: str, below: str) -> str:
        """A bar."""
        return f"frac({above}, {below})"

    def power(self, base: str, exponent: str) -> str:
        """The brackets round an exponent are not printed."""
        return f"{base}^({exponent})"

    def root(self, inner: str, degree: int) -> str:
        """A root sign over all of it."""
        return f"sqrt({inner})" if degree == 2 else f"root({degree}, {inner})"

    def size(self, inner: str) -> str:
        """Upright bars."""
        return f"abs({inner})"

    def call(self, head: str, arguments: Sequence[str]) -> str:
        """The head, then brackets."""
        return f"{head}({', '.join(arguments)})"

    def total(self, index: str, values: str, body: str) -> str:
        """The index under a large sigma."""
        index = self.brackets(index) if "," in index else index
        return f"sum_({self.infix(index, 'in', values)}) {body}"

    def choice(self, cases: Sequence[tuple[str, str]], otherwise: str) -> str:
        """One line for each case."""
        rows = [f'display({value}) quad &"if "{when}' for value, when in cases]
        rows.append(f'display({otherwise}) quad &"otherwise"')
        return f"cases({', '.join(rows)})"

    def _letter(self, text: str) -> str:
        if text.startswith("Δ") and len(text) > 1:
            return f"Delta {self._letter(text[1:])}"
        if text in _GREEK_NAMES:
            return _GREEK_NAMES[text]
        return text if text.isdigit() or (len(text) == 1 and text.isalpha()) else self.word(text)
