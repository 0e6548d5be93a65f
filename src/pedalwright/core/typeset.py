"""Print the working: a formula as mathematics, read from the code that ran.

    plain(line_pressure)        p = F_pedal · i · share / A
    substituted(step)           p = 500 · 4.03 · 0.92 / 506.7 = 3.659 MPa

`typst_math` and `typst_substituted` say the same in Typst's math mode. Nothing is written a
second time: change the code of a formula and its working changes with it. A call that is not
known here is shown under its own name, never left out.
"""

from collections.abc import Mapping

import numpy as np

from pedalwright.core.expression import written
from pedalwright.core.figures import figure
from pedalwright.core.notation import Notation, Plain, TypstMath
from pedalwright.core.units import Num
from pedalwright.core.working import Formula, Step


def plain(formula: Formula[...]) -> str:
    """The formula as one line of text."""
    return _equation(formula, Plain(), {})


def typst_math(formula: Formula[...]) -> str:
    """The formula in Typst's math mode, without dollar signs."""
    return _equation(formula, TypstMath(), {})


def substituted(step: Step) -> str:
    """The formula with the numbers it had and its answer, as one line of text."""
    return f"{_equation(step.formula, Plain(), step.arguments)} = {_answer(step)}"


def typst_substituted(step: Step) -> str:
    """The formula with the numbers it had and its answer, in Typst's math mode."""
    words = TypstMath()
    equation = _equation(step.formula, words, step.arguments)
    return words.infix(equation, "=", words.word(_answer(step).replace("-", "−")))


def _answer(step: Step) -> str:
    return figure(step.value, step.formula.units["return"])


def _equation(formula: Formula[...], notation: Notation, values: Mapping[str, Num]) -> str:
    around: dict[str, object] = getattr(formula.rule, "__globals__", {})
    known = {k: v for k, v in around.items() if k not in formula.signature.parameters}
    single = {name: value for name, value in values.items() if np.ndim(value) == 0}
    right = written(formula.expression, notation, known, single)
    return notation.infix(notation.symbol(formula.symbol), "=", right)
