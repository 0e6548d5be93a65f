"""The working: every formula knows its symbol, its source and, from its hints, its units.

A formula is a pure function with a docstring and one `return`. When somebody asks for the
working (`with working() as sheet:`), each call leaves a `Step` with the arguments and the
value it really had, so what the dossier prints is the code that ran and is written once.
"""

import ast
import inspect
import textwrap
from collections.abc import Callable, Generator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from functools import cached_property
from typing import Generic, ParamSpec, get_type_hints

from pedalwright.core.units import Num

P = ParamSpec("P")


@dataclass(frozen=True)
class Step:
    """One formula as it ran: what went in, what came out, and for which part of the car."""

    formula: "Formula[...]"
    arguments: dict[str, Num]
    value: Num
    subject: str


_sheet: ContextVar[list[Step] | None] = ContextVar("sheet", default=None)
_subject: ContextVar[str] = ContextVar("subject", default="")


@dataclass(frozen=True)
class Formula(Generic[P]):
    """A pure function that can show its own working."""

    rule: Callable[P, Num]
    symbol: str
    source: str
    empirical: bool = False

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> Num:
        """The value of the formula; leaves a step where somebody asked for the working."""
        value = self.rule(*args, **kwargs)
        if (sheet := _sheet.get()) is not None:
            bound = self.signature.bind(*args, **kwargs)
            bound.apply_defaults()
            sheet.append(Step(self, dict(bound.arguments), value, _subject.get()))
        return value

    @cached_property
    def signature(self) -> inspect.Signature:
        """Argument names in the order of the source."""
        return inspect.signature(self.rule)

    @cached_property
    def room(self) -> str:
        """The trade room the formula belongs to, e.g. `brakes`."""
        return self.rule.__module__.split(".")[1]

    @cached_property
    def name(self) -> str:
        """What the formula is called everywhere: room, then function, e.g. `brakes.disc_torque`."""
        return f"{self.room}.{self.rule.__name__}"

    @cached_property
    def units(self) -> dict[str, str]:
        """Unit of each argument, and of the answer under `return`, read from the hints."""
        hints = get_type_hints(self.rule, include_extras=True)
        return {name: hint.__metadata__[0] for name, hint in hints.items()}

    @cached_property
    def expression(self) -> ast.expr:
        """The returned expression, read from the source text of the code that ran."""
        tree = ast.parse(textwrap.dedent(inspect.getsource(self.rule)))
        return next(
            node.value
            for node in ast.walk(tree)
            if isinstance(node, ast.Return) and node.value is not None
        )

    @cached_property
    def meaning(self) -> str:
        """First paragraph of the docstring: what the formula says, in plain words."""
        return " ".join((inspect.getdoc(self.rule) or "").split("\n\n")[0].split())


#: Every formula of the house by name; filled as the rooms are imported.
FORMULAS: dict[str, Formula[...]] = {}


def formula(
    symbol: str, *, source: str, empirical: bool = False
) -> Callable[[Callable[P, Num]], Formula[P]]:
    """Make a function traceable and enter it in the register.

    `symbol` is the answer's symbol in the source. `source` begins with a key of
    docs/sources.md. `empirical` marks constants that hide units: the dimension test skips
    such a formula, and a reference value becomes compulsory.
    """

    def enter(rule: Callable[P, Num]) -> Formula[P]:
        made = Formula(rule, symbol, source, empirical)
        assert made.name not in FORMULAS, f"two formulas are called {made.name}"
        FORMULAS[made.name] = made
        return made

    return enter


@contextmanager
def working() -> Generator[list[Step]]:
    """Collect every formula that runs inside the block, in order."""
    sheet: list[Step] = []
    token = _sheet.set(sheet)
    try:
        yield sheet
    finally:
        _sheet.reset(token)


def recorded() -> bool:
    """True where somebody asked for the working: what was found for many at once is shown again."""
    return _sheet.get() is not None


class subject:  # noqa: N801 (reads as a word: `with subject("front circuit"):`)
    """Say which part of the car the formulas inside the block speak of, e.g. `front circuit`."""

    __slots__ = ("_name", "_token")

    def __init__(self, name: str) -> None:
        self._name = name

    def __enter__(self) -> None:
        outer = _subject.get()
        self._token = _subject.set(f"{outer}, {self._name}" if outer else self._name)

    def __exit__(self, *_: object) -> None:
        _subject.reset(self._token)


class unrecorded:  # noqa: N801
    """Run formulas without leaving steps: sweeps over many stations, of which one is shown."""

    __slots__ = ("_token",)

    def __enter__(self) -> None:
        self._token = _sheet.set(None)

    def __exit__(self, *_: object) -> None:
        _sheet.reset(self._token)
