"""The working says what the code computes: expected, evaluated back, printed."""

import ast
import importlib
import itertools
import math
import pkgutil
import re
from collections.abc import Mapping
from fractions import Fraction

import numpy as np
import pytest
import typst
from numpy import pi

import pedalwright
from pedalwright.core.expression import written
from pedalwright.core.figures import figure, unit_text
from pedalwright.core.notation import Notation, Plain, TypstMath
from pedalwright.core.typeset import plain, substituted, typst_math, typst_substituted
from pedalwright.core.units import MPa, N, Num, Ratio, mm, mm2, rad
from pedalwright.core.working import FORMULAS, Formula, Step

FACTOR = 1.15


def _area(d: mm) -> mm2:
    """Area of a bore."""
    return pi / 4 * d**2


area = Formula(_area, "A_m", "geometry")


def _pressure(F_pedal: N, i: Ratio, share: Ratio, A: mm2) -> MPa:
    """Pressure behind one piston."""
    return F_pedal * i * share / A


pressure = Formula(_pressure, "p", "Pascal")


def _nested(F: N, d: mm, lambda_: Ratio) -> MPa:
    """A formula that calls another, knows a constant and has a name Python keeps for itself."""
    return FACTOR * lambda_ * F / area(d) + F / area.rule(d=d) ** 2


nested = Formula(_nested, "σ", "invented")


def _reach(x: mm, y: mm) -> rad:
    """An angle."""
    return np.arctan2(-y, x)


reach = Formula(_reach, "phi_1", "geometry")


def in_notation(code: str, notation: Notation, known: Mapping[str, object] | None = None) -> str:
    return written(ast.parse(code, mode="eval").body, notation, known or {"pi": pi}, {})


@pytest.mark.parametrize(
    ("code", "expected", "expected_typst"),
    [
        ("a - (b - c)", "a - (b - c)", "a - (b - c)"),
        ("a - b - c", "a - b - c", "a - b - c"),
        ("a + (b + c)", "a + b + c", "a + b + c"),
        ("a + (-b + c)", "a + (-b + c)", "a + (-b + c)"),
        ("a * (b + c)", "a · (b + c)", "a dot.op (b + c)"),
        ("a * (-b)", "a · (-b)", "a dot.op (-b)"),
        ("-(a + b)", "-(a + b)", "-(a + b)"),
        ("-a * b", "-a · b", "-a dot.op b"),
        ("c - (-a) * b", "c - (-a · b)", "c - (-a dot.op b)"),
        ("-x**2", "-x²", "-x^(2)"),
        ("(-x)**2", "(-x)²", "(-x)^(2)"),
        ("(a / b)**2", "(a / b)²", "(frac(a, b))^(2)"),
        ("(a * b)**n", "(a · b)^n", "(a dot.op b)^(n)"),
        ("a**(n + 1)", "a^(n + 1)", "a^(n + 1)"),
        ("(a**b)**2", "(a^b)²", "(a^(b))^(2)"),
        ("a**-1", "a⁻¹", "a^(-1)"),
        ("a / (b * c)", "a / (b · c)", "frac(a, b dot.op c)"),
        ("a / b / c", "a / b / c", "frac(a, b dot.op c)"),
        ("a / (b / c)", "a / (b / c)", "frac(a, frac(b, c))"),
        ("a / b * c / d", "a / b · c / d", "frac(a dot.op c, b dot.op d)"),
        ("a / -b", "a / (-b)", "frac(a, -b)"),
        ("(a + b) / 2", "(a + b) / 2", "frac(a + b, 2)"),
        ("pi / 4 * d**2", "π / 4 · d²", "frac(pi, 4) dot.op d^(2)"),
        ("2 / 3 * a * b / c", "2 / 3 · a · b / c", "frac(2, 3) dot.op frac(a dot.op b, c)"),
        ("pi / 4 / c", "π / 4 / c", "frac(frac(pi, 4), c)"),
        ("sqrt(a**2 + b**2)", "√(a² + b²)", "sqrt(a^(2) + b^(2))"),
        ("np.sqrt(x)**2", "(√x)²", "(sqrt(x))^(2)"),
        ("x**0.5", "√x", "sqrt(x)"),
        ("x**(1 / 3)", "∛x", "root(3, x)"),
        ("np.hypot(a + b, c)", "√((a + b)² + c²)", "sqrt((a + b)^(2) + c^(2))"),
        ("np.sin(theta)**2", "sin²(θ)", '"sin"^(2)(theta)'),
        ("np.sin(theta)**-1", "(sin(θ))⁻¹", '("sin"(theta))^(-1)'),
        ("a * np.arcsin(x)", "a · arcsin(x)", 'a dot.op"arcsin"(x)'),
        ("np.arctan2(y, x)", "atan2(y, x)", '"atan2"(y, x)'),
        ("np.abs(a - b)", "|a - b|", "abs(a - b)"),
        ("np.minimum(a, 2 * b)", "min(a, 2 · b)", '"min"(a, 2 dot.op b)'),
        ("np.clip(x, 0, 1)", "min(max(x, 0), 1)", '"min"("max"(x, 0), 1)'),
        (
            "np.where((a <= b) & (c > 0), a, np.where(b > 2, b, 0.0))",
            "a if a ≤ b and c > 0; b if b > 2; 0 otherwise",
            (
                'cases(display(a) quad &"if "a <= b quad "and" quad c > 0, '
                'display(b) quad &"if "b > 2, display(0) quad &"otherwise")'
            ),
        ),
        (
            "2 * np.where(a < b, a, b)",
            "2 · (a if a < b; b otherwise)",
            '2 dot.op (cases(display(a) quad &"if "a < b, display(b) quad &"otherwise"))',
        ),
        ("F_pedal * mu_1", "F_pedal · μ_1", 'F_("pedal") dot.op mu_(1)'),
        ("d1 + tau_max_rear", "d_1 + τ_max_rear", 'd_(1) + tau_("max, rear")'),
        ("np.minimum(np.minimum(a, b), c)", "min(a, b, c)", '"min"(a, b, c)'),
        (
            "np.minimum(np.maximum(a, b), c)",
            "min(max(a, b), c)",
            '"min"("max"(a, b), c)',
        ),
        (
            "2 * sum(w / (a + u) for u, w in GAUSS) * lam",
            "2 · (Σ[u, w in GAUSS] w / (a + u)) · λ",
            '2 dot.op (sum_((u, w) in"GAUSS") frac(w, a + u)) dot.op lambda',
        ),
        ("sum(x**2 for x in xs) - a", "Σ[x in xs] x² - a", 'sum_(x in"xs") x^(2) - a'),
        ("0.4**0.5", "√0.4", "sqrt(0.4)"),
        ("Delta_sigma_D + Delta_x", "Δσ_D + Δx", "Delta sigma_(D) + Delta x"),
        ("Delta_sigma**2", "(Δσ)²", "(Delta sigma)^(2)"),
        ("x_prime / C_star", "x′ / C*", "frac(x', C^*)"),
        ("C_star**2", "(C*)²", "(C^*)^(2)"),
        ("1e-9 * rate * 206000.0", "10⁻⁹ · rate · 206\u202f000", None),
        ("unheard_of(a, b=c)", "unheard_of(a, b = c)", '"unheard_of"(a, "b"= c)'),
        ("a % b", "a % b", '"a % b"'),
    ],
)
def test_an_expression_is_written_as_expected(
    code: str, expected: str, expected_typst: str | None
) -> None:
    assert in_notation(code, Plain()) == expected
    if expected_typst is not None:
        assert in_notation(code, TypstMath()) == expected_typst


def trees(signs: int) -> list[str]:
    """Every expression with so many of the signs + - * / - ⁴, leaves written as _."""
    if not signs:
        return ["_"]
    sides = [(left, signs - 1 - left) for left in range(signs)]
    pairs = [pair for a, b in sides for pair in itertools.product(trees(a), trees(b))]
    return [
        *(f"({x}) {sign} ({y})" for sign in "+-*/" for x, y in pairs),
        *(f"-({x})" for x in trees(signs - 1)),
        *(f"({x})**4" for x in trees(signs - 1)),
    ]


def named(tree: str) -> str:
    letters = iter("abcd")
    return re.sub("_", lambda _: next(letters), tree)


EXPRESSIONS = [named(tree) for signs in range(4) for tree in trees(signs)]
VALUES = {"a": Fraction(7, 3), "b": Fraction(-5, 2), "c": Fraction(11, 13), "d": Fraction(3, 17)}


def evaluated(code: str) -> Fraction:
    exact = re.sub(r"\b(\d+)\b", r"Fraction(\1)", code)
    names = {"Fraction": Fraction, "frac": lambda x, y: x / y, **VALUES}
    return Fraction(eval(exact, {"__builtins__": {}}, names))


def test_what_is_written_has_the_value_of_the_code() -> None:
    assert len(EXPRESSIONS) == 811
    for code in EXPRESSIONS:
        line = in_notation(code, Plain()).replace("⁴", "**4").replace("·", "*")
        math_mode = in_notation(code, TypstMath()).replace("dot.op", "*").replace("^", "**")
        assert evaluated(line) == evaluated(code), code
        assert evaluated(math_mode) == evaluated(code), code


def brackets(text: str) -> list[str]:
    """The text again and again, each time without one of its pairs of round brackets."""
    opened: list[int] = []
    fewer: list[str] = []
    for place, letter in enumerate(text):
        if letter == "(":
            opened.append(place)
        if letter == ")":
            start = opened.pop()
            fewer.append(text[:start] + text[start + 1 : place] + text[place + 1 :])
    return fewer


def test_no_bracket_of_the_plain_line_is_superfluous() -> None:
    for code in EXPRESSIONS:
        line = in_notation(code, Plain()).replace("⁴", "**4").replace("·", "*")
        for fewer in brackets(line):
            # two signs in a row are no mathematics, though Python would read them
            twice = re.search(r"[-+*/] ?-", fewer)
            assert twice or ast.dump(ast.parse(fewer)) != ast.dump(ast.parse(line)), line
            # an even power hides a sign, so only the tree can tell there
            assert twice or "**" in line or evaluated(fewer) != evaluated(code), line


def test_a_formula_is_printed_with_its_symbol() -> None:
    assert plain(pressure) == "p = F_pedal · i · share / A"
    assert typst_math(pressure) == 'p = frac(F_("pedal") dot.op i dot.op"share", A)'


def test_a_called_formula_appears_by_its_symbol_and_a_constant_by_its_name() -> None:
    assert plain(nested) == "σ = FACTOR · λ · F / A_m(d) + F / A_m(d = d)²"


def test_an_inspector_sees_the_numbers_that_ran() -> None:
    step = Step(pressure, {"F_pedal": 500.0, "i": 4.03, "share": 0.92, "A": 506.7}, 3.65862, "")
    assert substituted(step) == "p = 500 · 4.03 · 0.92 / 506.7 = 3.659 MPa"
    assert typst_substituted(step) == ('p = frac(500 dot.op 4.03 dot.op 0.92, 506.7) ="3.659 MPa"')


def test_numbers_put_in_keep_their_signs_apart() -> None:
    step = Step(reach, {"x": 10.0, "y": -10.0}, math.pi / 4, "")
    assert substituted(step) == "φ_1 = atan2(-(-10), 10) = 0.7854 rad (45°)"


def test_a_constant_is_put_in_but_pi_stays_pi() -> None:
    step = Step(nested, {"F": 100.0, "d": 20.0, "lambda_": 1.0}, 0.366, "")
    assert substituted(step).startswith("σ = 1.15 · 1 · 100 / A_m(20)")
    assert substituted(Step(area, {"d": 20.0}, 314.159, "")) == "A_m = π / 4 · 20² = 314.2 mm²"


def test_a_batch_keeps_its_symbol_and_shows_its_range() -> None:
    bores = np.array([20.0, 25.4])
    step = Step(area, {"d": bores}, area.rule(bores), "")
    assert substituted(step) == "A_m = π / 4 · d² = 314.2 … 506.7 mm² (2 values)"


@pytest.mark.parametrize(
    ("value", "unit", "expected"),
    [
        (500.0, "N", "500 N"),
        (3.65862, "MPa", "3.659 MPa"),
        (107123.4, "N*mm", "107\u202f123 N·mm"),
        (9999.96, "mm", "10\u202f000 mm"),
        (1234.5, "mm", "1234 mm"),
        (0.0004213, "mm/N", "0.0004213 mm/N"),
        (4.2134e-6, "mm/N", "4.213·10⁻⁶ mm/N"),
        (-2.5e9, "mm4", "-2.5·10⁹ mm⁴"),
        (6.43, "m/s2", "6.43 m/s²"),
        (0.25, "1", "0.25"),
        (-0.0, "mm", "0 mm"),
        (math.pi / 9, "rad", "0.3491 rad (20°)"),
        (math.nan, "mm", "no value"),
        (math.inf, "1", "∞"),
        (np.array([math.nan, 2.0]), "mm", "2 mm (2 values)"),
        (np.array([math.nan]), "mm", "no value (1 tried)"),
    ],
)
def test_a_figure_is_readable(value: Num, unit: str, expected: str) -> None:
    assert figure(value, unit) == expected


def test_units_are_written_as_the_trade_reads_them() -> None:
    assert [unit_text(u) for u in ("N*mm/rad", "N/mm2", "kg", "mm**3", "s-1")] == [
        "N·mm/rad",
        "N/mm²",
        "kg",
        "mm³",
        "s⁻¹",
    ]


def test_every_formula_of_the_house_can_be_printed() -> None:
    for module in pkgutil.walk_packages(pedalwright.__path__, "pedalwright."):
        if not module.name.endswith("__main__"):
            importlib.import_module(module.name)
    assert FORMULAS
    for formula in FORMULAS.values():
        assert plain(formula).startswith(Plain().symbol(formula.symbol) + " = ")
    shown = [*FORMULAS.values(), area, pressure, nested, reach]
    steps = [Step(f, dict.fromkeys(f.signature.parameters, -1234567.8), 1e-9, "") for f in shown]
    lines = [typst_math(f) for f in shown] + [typst_substituted(step) for step in steps]
    page = "\n".join(f"$ {line} $" for line in lines)
    assert typst.compile(page.encode(), format="pdf").startswith(b"%PDF")
