"""The register of formulas: listed, shown on a card, or worked out with the reader's numbers."""

import importlib
import pkgutil
from collections.abc import Mapping
from difflib import get_close_matches
from typing import Any

import numpy as np

import pedalwright
from pedalwright.core.faults import Fault, InputError
from pedalwright.core.figures import unit_text
from pedalwright.core.quantity import QuantityError, Reading, parse
from pedalwright.core.typeset import plain, substituted
from pedalwright.core.working import FORMULAS, Formula, working
from pedalwright.documents.outside import outside


def listed() -> list[dict[str, str]]:
    """Every formula of the house: name, equation, meaning, source."""
    return [
        {"name": f.name, "formula": plain(f), "meaning": f.meaning, "source": f.source}
        for f in _all().values()
    ]


def listed_text() -> str:
    """The list as text, a chapter for each room."""
    lines: list[str] = []
    room = ""
    for made in _all().values():
        if made.room != room:
            room = made.room
            lines += ["", room.upper()]
        lines += [f"  {made.name}", f"      {plain(made)}", f"      {made.meaning}"]
    return "\n".join(lines).lstrip("\n")


def card(name: str) -> dict[str, Any]:
    """One formula with its arguments and units, as plain data for text and JSON."""
    made = _named(name)
    units = {key: unit for key, unit in made.units.items() if key != "return"}
    arguments = "\n".join(f"  {key:<12} {_said(unit)}" for key, unit in units.items())
    answer = _said(made.units["return"])
    text = f"{plain(made)}\n\n{made.meaning}\n\nneeds\n{arguments}\ngives {answer}"
    return {
        "name": made.name,
        "formula": plain(made),
        "meaning": made.meaning,
        "source": made.source,
        "arguments": units,
        "unit": made.units["return"],
        "text": f"{text}\nsource: {made.source}",
    }


def work_out(name: str, texts: Mapping[str, str]) -> dict[str, Any]:
    """The formula with the reader's numbers in it. Raises InputError naming every fault."""
    made = _named(name)
    units = {key: unit for key, unit in made.units.items() if key != "return"}
    numbers: dict[str, float] = {}
    shown: dict[str, str] = {}
    faults = [
        Fault(where=f"{name}, {key}", read=text, accepts=f"It needs {', '.join(units)}.")
        for key, text in texts.items()
        if key not in units
    ]
    for key, unit in units.items():
        try:
            reading = _read(texts[key], unit)
        except KeyError:
            faults.append(
                Fault(where=f"{name}, {key}", read="", accepts=f"Give {key} in {_said(unit)}.")
            )
        except QuantityError as error:
            faults.append(
                Fault(
                    where=f"{name}, {key}",
                    read=texts[key],
                    accepts=error.reason,
                    offers=error.offers,
                )
            )
        else:
            numbers[key], shown[key] = np.float64(reading.value), reading.shown
    if faults:
        raise InputError(tuple(faults))
    with working() as steps, np.errstate(invalid="ignore", divide="ignore"):
        made(**numbers)
    step = steps[-1]
    value, unit = outside(step.value, made.units["return"])
    finite = bool(np.isfinite(value))
    lines = [plain(made), *(f"  {key} = {text}" for key, text in shown.items()), substituted(step)]
    return {
        "name": made.name,
        "value": float(value) if finite else None,
        "unit": unit,
        "arguments": {key: {"value": numbers[key], "unit": units[key]} for key in units},
        "source": made.source,
        "text": "\n".join(lines) if finite else "\n".join([*lines, "no value: out of its range"]),
    }


def _named(name: str) -> Formula[...]:
    formulas = _all()
    if name in formulas:
        return formulas[name]
    near = get_close_matches(name, formulas, n=3) or [
        known for known in formulas if name.split(".")[-1] in known
    ]
    raise InputError(
        (
            Fault(
                where="formula",
                read=name,
                accepts="`pedalwright formula` lists every name.",
                offers=tuple(near[:3]),
            ),
        )
    )


def _all() -> dict[str, Formula[...]]:
    """Every formula, by room and name; imports every room, so that none is missing."""
    for module in pkgutil.walk_packages(pedalwright.__path__, "pedalwright."):
        if "formulas" in module.name or module.name.endswith("yardsticks"):
            importlib.import_module(module.name)
    return dict(sorted(FORMULAS.items()))


def _read(text: str, unit: str) -> Reading:
    """A number in a unit; joules, kelvins and the like, which nobody types, are plain numbers."""
    try:
        parse("1", unit)
    except ValueError:
        return parse(text, "1")
    return parse(text, unit)


def _said(unit: str) -> str:
    return unit_text(unit) or "a plain number"
