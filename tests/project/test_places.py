"""The scanner finds in a text exactly what `tomllib` reads from it, and where it stands."""

import tomllib
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.project.places import Keys, places
from pedalwright.project.syntax import quoted


def leaves(raw: Any, keys: Keys = ()) -> Iterator[tuple[Keys, Any]]:
    if isinstance(raw, dict):
        for key, below in raw.items():
            yield from leaves(below, (*keys, key))
    elif isinstance(raw, list):
        for count, below in enumerate(raw):
            yield from leaves(below, (*keys, count))
    else:
        yield keys, raw


def cut_out(text: str) -> dict[Keys, Any]:
    """Each value, read alone from the piece of text the scanner found for it."""
    found = places(text).values
    alone = {k: tomllib.loads(f"x = {text[p.start : p.end]}")["x"] for k, p in found.items()}
    return {k: v for k, v in alone.items() if not isinstance(v, (dict, list))}


HARD = [
    "",
    "# only a remark",
    "a = 1",
    'a = "x # y" # z',
    "a.b . c = 1\na.d = 2",
    '"a.b"."c d" = 1\n\'e"f\' = 2',
    '"\\u00e9\\n" = 1',
    "[t]\n[t.u]\nx = 1\n[ v . w ]\ny=2",
    "[[r]]\nk = 1\n[[r]]\nk = 2\n[r.s]\nz = 3\n[[r.q]]\nm = 1\n[[r.q]]\nm = 2\n[[r]]\n[[r.q]]\nm=3",
    "a = [1, 2,\n  3, # four ]\n]\nb = 5",
    "a = []\nb = {}\nc = [ [1], [ ], [[2]] ]",
    "a = { b = 1, c.d = 'x}', e = [ {f = 1}, {f = 2} ] }",
    'a = """one "two" """\nb = \'\'\'it\'s\'\'\'\nc = """""x"""""',
    'a = """\\\n  joined \\"""x"""',
    "a = 1979-05-27 07:32:00 # a date\nb = 07:32:00",
    "a = 1\r\nb = [\r\n 2\r\n]\r\n[c]\r\nd = 3",
    "a = 'x'\n\n\n   b = 2   \n\t[c]\t# d\n\te = 4",
    "a = +1_000.5e-3\nb = 0xff\nc = inf\nd = true",
]


@pytest.mark.parametrize("text", HARD)
def test_everything_is_found_where_it_stands(text: str) -> None:
    read = dict(leaves(tomllib.loads(text)))
    assert cut_out(text) == read


keys = st.one_of(
    st.from_regex(r"[A-Za-z0-9_-]{1,4}", fullmatch=True), st.text(max_size=4).map(quoted)
)
scalars = st.one_of(
    st.text(max_size=8).map(quoted),
    st.integers().map(str),
    st.booleans().map(lambda b: str(b).lower()),
    st.text('abc "#]}\n', max_size=8).map(lambda t: f"'''\n{t}'''"),
)
blank = st.sampled_from(["", " ", "\n", " # a ] remark }\n", "\r\n"])
values = st.recursive(
    scalars,
    lambda below: st.lists(st.tuples(blank, below, blank), max_size=3).map(
        lambda items: "[" + ",".join(a + b + c for a, b, c in items) + "]"
    ),
    max_leaves=6,
)
entries = st.lists(st.tuples(keys, values, st.sampled_from(["", "  # said [so]"])), max_size=4).map(
    lambda rows: "".join(f"{k} = {v}{remark}\n" for k, v, remark in rows)
)
tables = st.lists(
    st.tuples(st.sampled_from(["[{}]\n", "[[{}]]\n", "[{}.sub]\n"]), keys, entries), max_size=4
).map(lambda rows: "".join(head.format(key) + body for head, key, body in rows))


@given(first=entries, rest=tables)
def test_whatever_tomllib_reads_is_found(first: str, rest: str) -> None:
    text = first + rest
    try:
        read = tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        return
    assert repr(sorted(cut_out(text).items(), key=repr)) == repr(sorted(leaves(read), key=repr))


def test_lines_count_from_one_and_fall_back_on_the_table_around() -> None:
    found = places(
        "# top\na = 1\n[t]\np = [\n  1,\n  2]\nq.r = { s = 1 }\n[[rows]]\n[[rows]]\nx = 1"
    )
    assert found.line(("a",)) == 2
    assert found.line(("t",)) == 3
    assert found.line(("t", "p", 0)) == 5
    assert found.line(("t", "p", 1)) == 6
    assert found.line(("t", "q")) == 7
    assert found.line(("t", "q", "r", "s")) == 7
    assert found.line(("t", "absent")) == 3
    assert found.line(("rows", 1)) == 9
    assert found.line(("absent",)) is None
