"""Read a formula from its code and write it as mathematics, with the brackets it needs."""

import ast
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import reduce
from math import isfinite

import numpy as np

from pedalwright.core.figures import digits, grouped
from pedalwright.core.notation import Notation, Symbol
from pedalwright.core.units import Num
from pedalwright.core.working import Formula


def written(
    expression: ast.expr,
    notation: Notation,
    known: Mapping[str, object],
    values: Mapping[str, Num],
) -> str:
    """An expression in a notation.

    `known` says what the names of the code stand for (functions, constants); an argument has
    no entry. Where `values` has the number of an argument, the number is written.
    """
    return _Reader(notation, known, values).piece(expression).text


#: Functions that are another way to write something else.
_SAME_AS = {
    "hypot": "sqrt(a**2 + b**2)",
    "square": "a**2",
    "power": "a**b",
    "pow": "a**b",
    "float_power": "a**b",
    "radians": "a * pi / 180",
    "deg2rad": "a * pi / 180",
    "degrees": "a * 180 / pi",
    "rad2deg": "a * 180 / pi",
    "clip": "minimum(maximum(a, b), c)",
    "logical_and": "a and b",
    "logical_or": "a or b",
    "logical_not": "not a",
}

#: Functions with a name of their own in mathematics.
_UPRIGHT = {
    "sin": "sin",
    "cos": "cos",
    "tan": "tan",
    "arcsin": "arcsin",
    "arccos": "arccos",
    "arctan": "arctan",
    "asin": "arcsin",
    "acos": "arccos",
    "atan": "arctan",
    "arctan2": "atan2",
    "exp": "exp",
    "log": "ln",
    "log10": "lg",
    "sign": "sgn",
    "minimum": "min",
    "fmin": "min",
    "maximum": "max",
    "fmax": "max",
}

_COMPARED: dict[type[ast.cmpop], str] = {
    ast.Lt: "<",
    ast.LtE: "<=",
    ast.Gt: ">",
    ast.GtE: ">=",
    ast.Eq: "==",
    ast.NotEq: "!=",
}

#: How tightly a piece binds, loosest first.
_CHOICE, _RELATION, _SUM, _PRODUCT, _POWER, _ATOM = range(6)


@dataclass(frozen=True, slots=True)
class _Piece:
    """Part of a formula as written, how tightly it binds, whether it begins with a minus."""

    text: str
    binds: int = _ATOM
    minus: bool = False


class _Reader(ast.NodeVisitor):
    """Walks over an expression; sets brackets where a piece binds more loosely than its place."""

    def __init__(
        self, notation: Notation, known: Mapping[str, object], values: Mapping[str, Num]
    ) -> None:
        self.notation = notation
        self.known = known
        self.values = values

    def piece(self, node: ast.expr) -> _Piece:
        made: _Piece = self.visit(node)
        return made

    def held(self, piece: _Piece, place: int, *, inside: bool = False) -> str:
        """The text of a piece, in brackets if it has to be; `inside` something stands before it."""
        loose = piece.binds < place or (inside and piece.minus)
        return self.notation.brackets(piece.text) if loose else piece.text

    def meant(self, node: ast.expr) -> object:
        """What a name of the code stands for, if it was not an argument: a function, a constant."""
        if isinstance(node, ast.Name):
            return self.known.get(node.id)
        if isinstance(node, ast.Attribute):
            return getattr(self.meant(node.value), node.attr, None)
        return None

    def visit_Name(self, node: ast.Name) -> _Piece:
        if node.id in self.values:
            return self.number(float(self.values[node.id]))
        return self.symbol(node, node.id)

    def visit_Attribute(self, node: ast.Attribute) -> _Piece:
        return self.symbol(node, node.attr)

    def symbol(self, node: ast.expr, name: str) -> _Piece:
        meant = self.meant(node)
        if isinstance(meant, int | float) and name != "pi" and (self.values or not isfinite(meant)):
            return self.number(float(meant))
        return _Piece(self.notation.symbol(name), _ATOM if Symbol.read(name).one else _POWER)

    def visit_Constant(self, node: ast.Constant) -> _Piece:
        if isinstance(node.value, float) and node.value and not 1e-4 <= abs(node.value) < 1e7:
            mantissa, exponent = np.format_float_scientific(node.value, trim="-").split("e")
            return _Piece(self.notation.number(mantissa, int(exponent)), _PRODUCT)
        return _Piece(self.notation.number(grouped(str(node.value).removesuffix(".0")), 0))

    def number(self, value: float) -> _Piece:
        mantissa, exponent = digits(value)
        minus = mantissa.startswith("-")
        text = self.notation.number(mantissa, exponent)
        return _Piece(text, _PRODUCT if minus or exponent else _ATOM, minus)

    def visit_UnaryOp(self, node: ast.UnaryOp) -> _Piece:
        operand = self.piece(node.operand)
        if isinstance(node.op, ast.UAdd):
            return operand
        if isinstance(node.op, ast.USub):
            text = self.notation.before("-", self.held(operand, _PRODUCT, inside=True))
            return _Piece(text, _PRODUCT, minus=True)
        return _Piece(self.notation.before("not", self.held(operand, _RELATION)), _RELATION)

    def visit_BinOp(self, node: ast.BinOp) -> _Piece:
        match node.op:
            case ast.Add():
                return self.joined(node, "+", _SUM, _SUM)
            case ast.Sub():
                return self.joined(node, "-", _SUM, _PRODUCT)
            case ast.Mult():
                return self.joined(node, "*", _PRODUCT, _PRODUCT)
            case ast.Div():
                return self.quotient(node)
            case ast.Pow():
                return self.power(node)
            case ast.BitAnd() | ast.BitOr():
                sign = "and" if isinstance(node.op, ast.BitAnd) else "or"
                return self.joined(node, sign, _RELATION, _RELATION, binds=_CHOICE)
            case _:
                return self.generic_visit(node)

    def joined(
        self, node: ast.BinOp, sign: str, left: int, right: int, binds: int | None = None
    ) -> _Piece:
        return self.side_by_side(
            self.piece(node.left), sign, self.piece(node.right), left, right, binds
        )

    def side_by_side(
        self, a: _Piece, sign: str, b: _Piece, left: int, right: int, binds: int | None = None
    ) -> _Piece:
        text = self.notation.infix(self.held(a, left), sign, self.held(b, right, inside=True))
        return _Piece(text, left if binds is None else binds, a.minus and a.binds >= left)

    def quotient(self, node: ast.BinOp) -> _Piece:
        """A bar takes a whole chain, a / b / c * d being a * d over b * c; a line does not."""
        if not self.notation.bars:
            return self.joined(node, "/", _PRODUCT, _POWER)
        factor, above, below = self.chain(node)
        if not below:
            return factor or self.product(above)
        if factor and not above:
            above, factor = [factor], None
        fraction = _Piece(
            self.notation.over(self.product(above).text, self.product(below).text), _PRODUCT
        )
        return fraction if factor is None else self.product([factor, fraction])

    def chain(self, node: ast.expr) -> tuple[_Piece | None, list[_Piece], list[_Piece]]:
        """Leading ratio of numbers such as 2/3 or pi/4, then what is above and below the bar."""
        match node:
            case ast.BinOp(ast.expr() as left, ast.Div(), ast.expr() as right):
                if self.is_number(left) and self.is_number(right):
                    text = self.notation.over(self.piece(left).text, self.piece(right).text)
                    return _Piece(text, _PRODUCT), [], []
                factor, above, below = self.chain(left)
                return factor, above, [*below, self.piece(right)]
            case ast.BinOp(ast.expr() as left, ast.Mult(), ast.expr() as right):
                factor, above, below = self.chain(left)
                return factor, [*above, self.piece(right)], below
            case _:
                return None, [self.piece(node)], []

    def is_number(self, node: ast.expr) -> bool:
        return isinstance(node, ast.Constant) or self.meant(node) == np.pi

    def product(self, pieces: Sequence[_Piece]) -> _Piece:
        return reduce(lambda a, b: self.side_by_side(a, "*", b, _PRODUCT, _PRODUCT), pieces)

    def power(self, node: ast.BinOp) -> _Piece:
        degree = {"0.5": 2, "1 / 2": 2, "1 / 3": 3}.get(ast.unparse(node.right))
        if degree:
            return _Piece(self.notation.root(self.piece(node.left).text, degree), _POWER)
        exponent = self.piece(node.right).text
        if isinstance(node.left, ast.Call) and exponent.isdigit():
            name = self.function(node.left.func)
            if name in _UPRIGHT:
                head = self.notation.power(self.notation.word(_UPRIGHT[name]), exponent)
                return _Piece(self.notation.call(head, self.arguments(node.left)))
        base = self.held(self.piece(node.left), _ATOM)
        return _Piece(self.notation.power(base, exponent), _POWER)

    def visit_Compare(self, node: ast.Compare) -> _Piece:
        text = self.held(self.piece(node.left), _SUM)
        for sign, right in zip(node.ops, node.comparators, strict=True):
            text = self.notation.infix(
                text, _COMPARED[type(sign)], self.held(self.piece(right), _SUM)
            )
        return _Piece(text, _RELATION)

    def visit_BoolOp(self, node: ast.BoolOp) -> _Piece:
        sign = "and" if isinstance(node.op, ast.And) else "or"
        texts = [self.held(self.piece(value), _RELATION) for value in node.values]
        return _Piece(reduce(lambda a, b: self.notation.infix(a, sign, b), texts), _CHOICE)

    def visit_IfExp(self, node: ast.IfExp) -> _Piece:
        return self.choice(node)

    def visit_Call(self, node: ast.Call) -> _Piece:
        callee = node.func
        if isinstance(callee, ast.Attribute) and callee.attr == "rule":
            callee = callee.value
        meant = self.meant(callee)
        if isinstance(meant, Formula):
            return _Piece(
                self.notation.call(self.notation.symbol(meant.symbol), self.arguments(node))
            )
        name = self.function(callee)
        if name == "where":
            return self.choice(node)
        match node:
            case ast.Call(
                args=[ast.GeneratorExp(body, [ast.comprehension(index, values, [])])]
            ) if name == "sum":
                return self.total(index, values, body)
            case _:
                pass
        if name in _SAME_AS:
            return self.piece(_filled_in(_SAME_AS[name], node.args))
        if name in ("sqrt", "cbrt"):
            degree = 2 if name == "sqrt" else 3
            return _Piece(self.notation.root(self.piece(node.args[0]).text, degree), _POWER)
        if name in ("abs", "absolute", "fabs"):
            return _Piece(self.notation.size(self.piece(node.args[0]).text))
        if name in ("minimum", "maximum"):
            node = ast.Call(callee, list(self.least(node, name)), [])
        head = self.notation.word(_UPRIGHT.get(name, name))
        return _Piece(self.notation.call(head, self.arguments(node)), _POWER)

    def total(self, index: ast.expr, values: ast.expr, body: ast.expr) -> _Piece:
        names = index.elts if isinstance(index, ast.Tuple) else [index]
        shown = ", ".join(self.piece(name).text for name in names)
        inner = self.held(self.piece(body), _PRODUCT)
        return _Piece(self.notation.total(shown, self.piece(values).text, inner), _SUM)

    def least(self, node: ast.expr, name: str) -> Iterator[ast.expr]:
        """All that a minimum of minimums, or a maximum of maximums, chooses from."""
        if isinstance(node, ast.Call) and self.function(node.func) == name:
            for value in node.args:
                yield from self.least(value, name)
        else:
            yield node

    def function(self, callee: ast.expr) -> str:
        """The name of a function, whatever it was imported as."""
        last = ast.unparse(callee).split(".")[-1]
        return str(getattr(self.meant(callee), "__name__", last))

    def arguments(self, call: ast.Call) -> list[str]:
        named = [
            self.notation.infix(self.notation.word(f"{keyword.arg}"), "=", value.text)
            for keyword in call.keywords
            for value in [self.piece(keyword.value)]
        ]
        return [self.held(self.piece(value), _RELATION) for value in call.args] + named

    def choice(self, node: ast.expr) -> _Piece:
        """Nested choices in the last place become further cases of one list."""
        cases: list[tuple[str, str]] = []
        while (parts := self.choice_parts(node)) is not None:
            when, value, node = parts
            cases.append((self.held(self.piece(value), _SUM), self.piece(when).text))
        return _Piece(self.notation.choice(cases, self.held(self.piece(node), _SUM)), _CHOICE)

    def choice_parts(self, node: ast.expr) -> tuple[ast.expr, ast.expr, ast.expr] | None:
        match node:
            case ast.IfExp(when, value, otherwise):
                return when, value, otherwise
            case ast.Call(callee, [when, value, otherwise]) if self.function(callee) == "where":
                return when, value, otherwise
            case _:
                return None

    def generic_visit(self, node: ast.AST) -> _Piece:
        """What is not known is shown as it stands in the code."""
        return _Piece(self.notation.word(ast.unparse(node)), _CHOICE)


def _filled_in(pattern: str, arguments: Sequence[ast.expr]) -> ast.expr:
    """The pattern with its letters a, b, c replaced by the arguments of a call."""
    given = dict(zip("abc", arguments, strict=False))

    class Fill(ast.NodeTransformer):
        def visit_Name(self, node: ast.Name) -> ast.expr:
            return given.get(node.id, node)

    filled: ast.expr = Fill().visit(ast.parse(pattern, mode="eval").body)
    return filled
