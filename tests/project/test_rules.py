"""The tables of defaults, ± and ranges fit the tree: no dead row, no wrong unit, no gap."""

from fnmatch import fnmatchcase

import pytest

from pedalwright.core.quantity import parse
from pedalwright.design.tree import Design
from pedalwright.project import rules
from pedalwright.project.schema import Number, leaves, schema

NUMBERS = {path: node.unit for path, node in leaves(schema(Design)) if isinstance(node, Number)}

ROWS = [
    pytest.param(patterns, id=patterns)
    for table in (rules.defaults(), rules.withins(), rules.ranges())
    for row in table
    for patterns in row.paths
]


@pytest.mark.parametrize("pattern", ROWS)
def test_a_row_speaks_of_something_in_the_tree(pattern: str) -> None:
    assert any(fnmatchcase(path, pattern) for path in NUMBERS)


def test_every_row_says_why() -> None:
    rows = (*rules.defaults(), *rules.withins(), *rules.all_wanted())
    assert [row for row in rows if len(row.why) < 4] == []


@pytest.mark.parametrize(("path", "unit"), NUMBERS.items())
def test_every_number_has_a_plausible_range(path: str, unit: str) -> None:
    bounds = rules.plausible(path, unit)
    assert bounds is not None
    assert bounds[0] < bounds[1]


@pytest.mark.parametrize(("path", "unit"), NUMBERS.items())
def test_defaults_and_plus_minus_are_in_a_unit_that_fits(path: str, unit: str) -> None:
    bounds = rules.plausible(path, unit)
    assert bounds is not None
    default = rules.default(path)
    if default is not None:
        assert bounds[0] <= parse(default.value, unit).value <= bounds[1]
    around = rules.within(path)
    if around is not None:
        assert 0.0 <= around.of(parse(bounds[1], unit)) < bounds[1] - bounds[0]


#: A strength is the least that may be counted on, counts are exact, frictions and factors are
#: given as low, usual and high.
EXACT = {
    *("tensile_strength", "correlation"),
    *("yield_strength", "tube_yield", "shaft_yield", "elastic", "poisson", "bush_pressure"),
    *("pistons_one_side", "pistons_moved", "friction_low", "friction", "friction_high"),
    *("factor_low", "factor", "factor_high"),
}


def test_every_length_angle_and_force_has_a_plus_minus_by_kind() -> None:
    without = {path for path in NUMBERS if rules.within(path) is None}
    names = {path.rpartition(".")[2] for path in without}
    assert names <= EXACT
    assert {path for path in without if path == "throttle.opening.friction"} == set()


@pytest.mark.parametrize("unit", sorted(set(NUMBERS.values())))
def test_every_unit_knows_what_it_is_mistaken_for(unit: str) -> None:
    assert len(rules.slips(unit)) > 1
    for slip in rules.slips(unit):
        parse(f"1 {slip}".strip(), unit)


def test_what_findings_look_for_is_in_a_table_of_named_things() -> None:
    tables = {path.rpartition("*")[0].strip(".") for path in NUMBERS if path.startswith("survey")}
    assert {row.path.rpartition(".")[0] for row in rules.all_wanted()} <= tables
