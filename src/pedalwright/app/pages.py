"""Markup: every page and every part of one is a template, filled with what was assessed."""

import json
from collections.abc import Sequence
from functools import cache
from math import nan
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from jinja2.filters import do_mark_safe

from pedalwright import __version__
from pedalwright.core.answers import Change, Figure
from pedalwright.documents.about import About
from pedalwright.documents.answers import MARKS, said, shown, typed
from pedalwright.documents.cautions import CAUTIONS, FIRST_CAUTION
from pedalwright.documents.helps import question_for
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.hints import hint, sketch
from pedalwright.documents.questions import QUESTIONS
from pedalwright.documents.text import bar
from pedalwright.documents.verdict import asked_by, compared, percent, state
from pedalwright.drawing import svg
from pedalwright.project.paths import split


@cache
def _templates() -> Environment:
    made = Environment(
        loader=PackageLoader("pedalwright.app"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    known: dict[str, Any] = made.globals
    known.update(
        {
            "version": __version__,
            "cautions": CAUTIONS,
            "caution": FIRST_CAUTION,
            "value_of": value_of,
            "questions": QUESTIONS,
            "marks": MARKS,
            "sketched": sketched,
        }
    )
    filters: dict[str, Any] = made.filters
    filters.update(
        {
            "state": state,
            "compared": compared,
            "percent": percent,
            "bar": _bar,
            "asked_by": asked_by,
            "question": question_for,
            "said": said,
            "as_is": do_mark_safe,
            "drawn": drawn,
            "cell": _cell,
            "typed": _typed,
        }
    )
    return made


def page(template: str, **filled: object) -> str:
    """A template filled in; whatever a builder wrote is escaped."""
    return _templates().get_template(template).render(filled)


def drawn(picture: bytes) -> str:
    """A drawing of ours as markup: it was escaped when it was made."""
    return do_mark_safe(picture.decode())


def sketched(path: str, name: str) -> str:
    """How to measure a number, as a small sketch; empty where its words say enough."""
    found = hint(split(path))
    return "" if found is None else drawn(svg(sketch(found, f"{name}-how"), physical=False))


def _bar(margin: float) -> str:
    return bar(float(margin))


def _cell(value: float | None, unit: str, units: Units) -> str:
    """A number in a table."""
    return shown(Figure(nan if value is None else value, unit), units)


def _typed(changes: Sequence[Change], about: About) -> str:
    """Changes of the file as JSON, each as a builder would type it."""
    return json.dumps({change.path: value_of(change, about) for change in changes})


def value_of(change: Change, about: About) -> str:
    """A change as it is typed, without its path."""
    _, _, text = typed(change, about.hand(change.path, change.unit)).partition(" = ")
    return text.strip('"')
