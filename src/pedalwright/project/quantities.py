"""One number of a file: from what was typed to a value with its provenance, or a trouble."""

import re
from collections.abc import Iterator
from math import isnan, nan
from typing import NamedTuple

from pedalwright.core.quantity import QuantityError, Reading, is_missing, parse, show, write
from pedalwright.project import rules
from pedalwright.project.entries import Entry, Trouble, typed
from pedalwright.project.provenance import Provenance


class Quantity(NamedTuple):
    """A number inside, or nan, with its provenance and all that is wrong with it."""

    value: float
    told: Provenance
    troubles: tuple[Trouble, ...] = ()


def quantity(said: Entry, shape: str, unit: str) -> Quantity:
    """Read a number that stands in the file. What nobody knows is missing: nan, never 0.

    `shape` is the entry's path with `*` for names.
    """
    if is_missing(said.value):
        return Quantity(nan, missing(unit, typed(said.value), said.note), said.troubles)
    if isinstance(said.value, bool) or not isinstance(said.value, (str, int, float)):
        return _none(said, unit, Trouble(typed(said.value), "A number with its unit, as a text."))
    try:
        reading = parse(said.value, unit, bare=bare_unit(unit))
    except QuantityError as error:
        accepts = f"{error.reason} Accepted: {error.accepts}."
        offers = tuple(offer for offer in error.offers if _fits(offer, shape, unit))
        return _none(said, unit, Trouble(error.read, accepts, offers))
    slip = _out_of_range(reading, shape)
    if slip is not None:
        return _none(said, unit, slip)
    plus_minus, why, doubts = _plus_minus(said, reading, shape)
    told = Provenance(
        tag=said.tag,
        plus_minus=plus_minus,
        plus_minus_why=why,
        note=said.note,
        text=reading.text,
        shown=_shown(reading),
        unit=unit,
        like=reading.like,
    )
    return Quantity(reading.value, told, (*said.troubles, *doubts))


def left_out(shape: str, unit: str, own_default: object) -> Quantity:
    """A number that is not in the file: its packaged default, its field's default, or missing."""
    packaged = rules.default(shape)
    if packaged is not None:
        return _default(packaged.value, packaged.why, shape, unit)
    if not isinstance(own_default, (int, float)):
        return Quantity(nan, missing(unit))
    if isnan(own_default):
        return Quantity(nan, _told_default(unit, "not measured", "estimated from the rest"))
    return _default(write(own_default, unit), "nothing else was said", shape, unit)


def missing(unit: str, text: str = "", note: str = "") -> Provenance:
    """The provenance of a number nobody knows."""
    return Provenance(
        tag="missing", plus_minus=None, note=note, text=text, shown="no value", unit=unit, like=""
    )


def bare_unit(unit: str) -> str:
    """What a number without a unit is read in: degrees for an angle, else the inside unit."""
    return "deg" if unit == "rad" else unit


def _none(said: Entry, unit: str, trouble: Trouble) -> Quantity:
    return Quantity(nan, missing(unit, typed(said.value)), (*said.troubles, trouble))


def _default(text: str, why: str, shape: str, unit: str) -> Quantity:
    value, told, troubles = quantity(Entry(text, "default", why), shape, unit)
    assert not troubles, f"the default of {shape}: {troubles}"
    not_typed = _told_default(unit, told.shown, why, told.plus_minus, told.plus_minus_why)
    return Quantity(value, not_typed)


def _told_default(
    unit: str, shown: str, note: str, plus_minus: float | None = None, why: str = ""
) -> Provenance:
    return Provenance(
        tag="default",
        plus_minus=plus_minus,
        plus_minus_why=why,
        note=note,
        text="",
        shown=shown,
        unit=unit,
        like="",
    )


def _shown(reading: Reading) -> str:
    bare = re.fullmatch(r"[-+]?[\d.,]+", reading.text.strip())
    unit = bare_unit(reading.unit)
    return f"{reading.shown} (no unit, read as {unit})" if bare and unit != "1" else reading.shown


def _plus_minus(
    said: Entry, reading: Reading, shape: str
) -> tuple[float | None, str, tuple[Trouble, ...]]:
    """Half width inside, and why, if the builder did not give it."""
    if said.plus_minus is None or is_missing(said.plus_minus):
        if reading.plus_minus is not None:
            return reading.plus_minus, "", ()
        kind = rules.within(shape)
        return (None, "", ()) if kind is None else (kind.of(reading), kind.why, ())
    text = typed(said.plus_minus)
    if reading.plus_minus is not None:
        return None, "", (Trouble(text, "The ± is in the value already.", (), "plus_minus"),)
    nominal = write(reading.value, reading.unit, like=reading.like)
    try:
        both = parse(f"{nominal} ±{text}", reading.unit, bare=bare_unit(reading.unit))
    except QuantityError as error:
        accepts = f"{error.reason} A ± is written like the number it belongs to."
        return None, "", (Trouble(text, accepts, (), "plus_minus"),)
    return both.plus_minus, "", ()


def _out_of_range(reading: Reading, shape: str) -> Trouble | None:
    bounds = rules.plausible(shape, reading.unit)
    if bounds is None or bounds[0] <= reading.value <= bounds[1]:
        return None
    low, high = (show(bound, reading.unit) for bound in bounds)
    meant = tuple(_meant(reading, bounds))
    would = ", ".join(other.shown for other in meant)
    accepts = f"It can be from {low} to {high}" + (f"; {would} would fit." if would else ".")
    return Trouble(reading.text, accepts, tuple(other.text for other in meant))


def _fits(text: str, shape: str, unit: str) -> bool:
    return _out_of_range(parse(text, unit, bare=bare_unit(unit)), shape) is None


def _meant(reading: Reading, bounds: tuple[float, float]) -> Iterator[Reading]:
    """The same digits in another unit, or without their minus, where that would be plausible."""
    written = write(reading.value, reading.unit, like=reading.like)
    number = written.removesuffix(f" {reading.like}").removesuffix(":1")
    texts = [f"{number} {slip}".strip() for slip in rules.slips(reading.unit)]
    if reading.value < 0:
        texts.append(written.removeprefix("-"))
    for text in texts:
        try:
            other = parse(text, reading.unit, bare=bare_unit(reading.unit))
        except QuantityError:
            continue
        if bounds[0] <= other.value <= bounds[1]:
            yield other
