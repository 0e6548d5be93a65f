"""Laws for every formula and every limit of the house, those of tomorrow included.

A formula that has no answer for plain positive numbers gets its ranges in RANGES.
"""

import ast
import importlib
import inspect
import pkgutil
import re
import textwrap
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from types import ModuleType
from typing import Annotated, Any, get_args
from zlib import crc32

import numpy as np
import pint
import pytest

import pedalwright
from pedalwright.core.checks import Kind, Limit
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import MPa, N, Num, mm, mm2
from pedalwright.core.working import FORMULAS, Formula

HERE = Path(__file__)
VARIANTS = 7

#: Ranges of arguments by unit; others are drawn between 1 and 9.
PLAIN = {"1": (0.2, 0.8), "rad": (0.1, 0.6)}
#: Ranges by formula, where an argument has to lie in order with another one.
CAR = {"psi": (0.4, 0.6), "h": (1.0, 2.0), "L": (8.0, 9.0)}
RANGES: dict[str, dict[str, tuple[float, float]]] = {
    "brakes.rear_adhesion": CAR,
    "brakes.front_lock": {**CAR, "phi": (0.6, 0.8)},
    "brakes.front_lock_past_knee": {**CAR, "sigma": (0.1, 0.3)},
    "brakes.leading_factor": {"b": (8.0, 9.0)},
    "clutch.ring_area": {"D": (5.0, 9.0), "d": (1.0, 4.0)},
    "clutch.spring_peak": {"h": (5.0, 9.0), "t": (1.0, 3.0)},
    "clutch.spring_shape_k1": {"delta": (1.5, 3.0)},
    "clutch.spring_shape_log": {"delta": (1.5, 3.0)},
    "clutch.spring_valley": {"h": (5.0, 9.0), "t": (1.0, 3.0)},
    "driver.contact_along_sole": {"r": (1.0, 2.0), "e": (5.0, 9.0)},
    "driver.knee_angle": {"T": (5.0, 6.0), "S": (5.0, 6.0), "D": (6.0, 9.0)},
    "driver.sole_angle": {"h_pad": (1.0, 4.0), "b": (5.0, 9.0)},
    "driver.sole_on_round_pad": {"r": (1.0, 2.0), "e": (5.0, 9.0)},
    "driver.swing_angle": {"e": (1.0, 4.0), "b": (5.0, 9.0)},
    "structure.cycles": {"Delta_sigma": (5.0, 9.0), "Delta_sigma_C": (5.0, 9.0)},
    "survey.semi_minor": {"s_xx": (5.0, 9.0), "s_yy": (5.0, 9.0), "s_xy": (1.0, 4.0)},
    "throttle.rod_turn": {"A": (5.0, 9.0), "B": (5.0, 9.0), "C": (1.0, 5.0)},
}


#: No formula may live here: these show numbers, they make none.
EDGE = re.compile(r"pedalwright\.(__main__|app|cli|documents|project)\b")


def modules(path: Iterable[str], prefix: str) -> Iterator[ModuleType]:
    for found in pkgutil.iter_modules(path, prefix):
        if not EDGE.match(found.name):
            module = importlib.import_module(found.name)
            yield module
            if found.ispkg:
                yield from modules(module.__path__, f"{found.name}.")


MODULES = list(modules(pedalwright.__path__, "pedalwright."))


def each(formulas: Mapping[str, Formula[...]]) -> pytest.MarkDecorator:
    return pytest.mark.parametrize("made", formulas.values(), ids=formulas.keys())


EVERY = each(FORMULAS)
EMPIRICAL = {name: made for name, made in FORMULAS.items() if made.empirical}
EXACT = {name: made for name, made in FORMULAS.items() if not made.empirical}
LIMITS = {
    limit.code: (module, limit)
    for module in MODULES
    for limit in vars(module).values()
    if isinstance(limit, Limit) and module.__name__.endswith(".limits")
}


def drawn(made: Formula[...], n: int) -> dict[str, np.ndarray]:
    """`n` sets of arguments, the same ones in every run."""
    rng = np.random.default_rng(crc32(made.name.encode()))
    own = RANGES.get(made.name, {})
    return {
        name: rng.uniform(*own.get(name, PLAIN.get(unit, (1.0, 9.0))), n)
        for name, unit in made.units.items()
        if name != "return"
    }


@no_answer_is_nan
def worked(made: Formula[...], arguments: Mapping[str, Any]) -> Any:
    """The answer; a branch of `np.where` that is not taken may have none."""
    return made(**arguments)


# -- units ------------------------------------------------------------------------------

UNITS: pint.UnitRegistry = pint.UnitRegistry()


def quantity(value: float, unit: str) -> pint.Quantity:
    return UNITS.Quantity(value, re.sub(r"(?<=[A-Za-z])(?=\d)", "**", unit))


def assert_units_hold(made: Formula[...]) -> None:
    """With real quantities the answer has the unit of the hint and the bare number's value."""
    for i in range(3):
        bare = {name: float(values[i]) for name, values in drawn(made, 3).items()}
        real = {name: quantity(value, made.units[name]) for name, value in bare.items()}
        answer = UNITS.Quantity(worked(made, real)).to(quantity(1.0, made.units["return"]).units)
        assert answer.magnitude == pytest.approx(float(worked(made, bare)), rel=1e-12)


@each(EXACT)
def test_units_hold(made: Formula[...]) -> None:
    assert_units_hold(made)


def hidden_factor(F: N, d: mm) -> Annotated[Num, "N*m"]:
    """A moment that leaves the units of the house by a number."""
    return F * d / 1000


def forgotten_square(F: N, d: mm) -> MPa:
    """A pressure that is none."""
    return F / d


def added_apples(A: mm2, d: mm) -> mm2:
    """An area and a length, added."""
    return A + d


@pytest.mark.parametrize(
    ("rule", "fault"),
    [
        (hidden_factor, AssertionError),
        (forgotten_square, pint.DimensionalityError),
        (added_apples, pint.DimensionalityError),
    ],
)
def test_the_unit_test_notices(rule: Callable[..., Num], fault: type[Exception]) -> None:
    rule.__module__ = "pedalwright.brakes.formulas"  # a formula is named after its room
    with pytest.raises(fault):
        assert_units_hold(Formula(rule, "x", "invented"))


# -- batches ----------------------------------------------------------------------------


@EVERY
def test_a_batch_equals_its_singles(made: Formula[...]) -> None:
    batch = drawn(made, VARIANTS)
    together = np.asarray(worked(made, batch))
    assert together.shape == (VARIANTS,)
    assert np.all(np.isfinite(together)), "give its arguments sensible RANGES"
    for i in range(VARIANTS):
        alone = worked(made, {name: float(values[i]) for name, values in batch.items()})
        assert np.ndim(alone) == 0
        assert together[i] == pytest.approx(float(alone), rel=1e-12)


# -- form -------------------------------------------------------------------------------


@pytest.mark.parametrize("name", RANGES)
def test_ranges_speak_of_formulas_that_exist(name: str) -> None:
    assert set(RANGES[name]) <= set(FORMULAS[name].signature.parameters)


@EVERY
def test_a_formula_is_a_docstring_and_one_return(made: Formula[...]) -> None:
    (function,) = ast.parse(textwrap.dedent(inspect.getsource(made.rule))).body
    assert isinstance(function, ast.FunctionDef)
    said, returned = function.body
    assert isinstance(said, ast.Expr)
    assert isinstance(said.value, ast.Constant)
    assert isinstance(said.value.value, str)
    assert isinstance(returned, ast.Return)
    assert returned.value is not None


@EVERY
def test_every_argument_has_a_unit(made: Formula[...]) -> None:
    assert set(made.units) == {*made.signature.parameters, "return"}
    for unit in made.units.values():
        assert quantity(1.0, unit).magnitude == 1.0


def is_one_sentence(text: str) -> bool:
    return bool(re.fullmatch(r"[A-Z].+[a-z0-9²)`'%]\.", text)) and not re.search(
        r"[.!?] +[A-Z]", text
    )


@EVERY
def test_the_meaning_is_one_plain_sentence(made: Formula[...]) -> None:
    assert is_one_sentence(made.meaning), made.meaning


@pytest.mark.parametrize("text", ["no capital.", "No full stop", "Two. Sentences.", "", "Stop.."])
def test_what_is_no_sentence_is_noticed(text: str) -> None:
    assert not is_one_sentence(text)


@each(EMPIRICAL)
def test_hidden_units_are_proved_by_a_reference_value(made: Formula[...]) -> None:
    texts = (p.read_text(encoding="utf-8") for p in HERE.parents[1].glob("reference/test_*.py"))
    called = re.compile(rf"\b{made.rule.__name__}\(")
    assert any(called.search(text) for text in texts), f"{made.name} has no reference value"


# -- sources ----------------------------------------------------------------------------


def known_sources(checkout: Path) -> dict[str, list[str]]:
    """Rows of the tables in docs/sources.md by their first cell."""
    text = (checkout / "docs" / "sources.md").read_text(encoding="utf-8")
    rows = [line.strip("| \n").split(" | ") for line in text.splitlines() if line.startswith("| ")]
    return {key.strip(): [cell.strip() for cell in cells] for key, *cells in rows}


def source_key(source: str) -> str:
    """What stands before the first comma or semicolon, without a clause or table number."""
    return re.sub(r" T?\d+(\.\d+)+$", "", re.split("[,;]", source)[0].strip())


@pytest.mark.parametrize(
    ("source", "key"),
    [
        ("geometry", "geometry"),
        ("geometry; moments about the pivot", "geometry"),
        ("EN 1993-1-8, 3.6.1", "EN 1993-1-8"),
        ("EN 1993-1-8 4.5.3.2", "EN 1993-1-8"),
        ("Roark T17.1", "Roark"),
        ("AC 43.13-1B", "AC 43.13-1B"),
        ("Drillis & Contini 1966", "Drillis & Contini 1966"),
    ],
)
def test_the_key_of_a_source(source: str, key: str) -> None:
    assert source_key(source) == key


@EVERY
def test_the_source_of_a_formula_is_listed(made: Formula[...], checkout: Path) -> None:
    key = source_key(made.source)
    assert key in known_sources(checkout), f"docs/sources.md has no row for {key!r} ({made.name})"


@pytest.mark.parametrize("code", LIMITS)
def test_who_asks_is_listed(code: str, checkout: Path) -> None:
    _, limit = LIMITS[code]
    key = source_key(limit.source.document)
    row = known_sources(checkout).get(key)
    assert row, f"docs/sources.md has no row for {key!r} ({code})"
    assert limit.source.kind in row[0], f"{code} calls {key!r} {limit.source.kind}"


def test_every_source_is_used_and_says_how_we_know_it(checkout: Path) -> None:
    used = {source_key(made.source) for made in FORMULAS.values()}
    used |= {source_key(limit.source.document) for _, limit in LIMITS.values()}
    listed = known_sources(checkout)
    for key, cells in listed.items():
        if key in {"key", "---"}:
            continue
        kind, reference, taken, status = cells
        assert set(kind.split(", ")) <= set(get_args(Kind)), f"{key}: {kind}"
        assert len(reference) > 10, f"{key}: {reference}"
        assert len(taken) > 10, f"{key}: {taken}"
        assert re.match("read|second-hand|from memory|derived", status), f"{key}: {status}"
    assert set(listed) - {"key", "---"} - used == set(), "nobody takes anything from these"


# -- limits -----------------------------------------------------------------------------


@pytest.mark.parametrize("code", LIMITS)
def test_a_limit_is_one_plain_sentence_of_its_own_room(code: str) -> None:
    module, limit = LIMITS[code]
    assert limit.code.split(".")[0] == module.__name__.split(".")[1]
    assert is_one_sentence(limit.asks), limit.asks
    assert quantity(1.0, limit.unit).magnitude == 1.0
    assert limit.source.clause, "a clause nobody read is called `to verify`"


def test_no_two_limits_share_a_code_and_all_live_with_the_limits() -> None:
    every = {id(x): x for module in MODULES for x in vars(module).values() if isinstance(x, Limit)}
    assert sorted(limit.code for limit in every.values()) == sorted(LIMITS)
