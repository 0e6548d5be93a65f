"""The answer to a text: a number in the unit asked for, or an error that offers what was meant."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import inf, isinf

from pedalwright.core.quantity.amount import Amount
from pedalwright.core.quantity.doubt import DoubtError
from pedalwright.core.quantity.grammar import read_amounts
from pedalwright.core.quantity.kinds import accepts, check_kind
from pedalwright.core.quantity.missing import is_missing
from pedalwright.core.quantity.sharing import settled
from pedalwright.core.quantity.tokens import Cursor
from pedalwright.core.quantity.unit_table import PERCENT, Unit
from pedalwright.core.quantity.unit_words import unit_named
from pedalwright.core.quantity.writing import home, pretty, show

_LARGEST_WHOLE = 10**30


@dataclass(frozen=True, slots=True)
class Reading:
    """A quantity as it was understood."""

    #: In the unit asked for; never nan.
    value: float
    #: The unit asked for.
    unit: str
    #: As typed.
    text: str
    #: Read back in plain words: `1 5/8 in = 41.275 mm`.
    shown: str
    #: The ± in the unit asked for, if the text carried one.
    plus_minus: float | None
    #: Unit or form of the text, for `write`: `in`, `psi`, `ft in`, `SWG`.
    like: str


class QuantityError(ValueError):
    """A text that is no quantity of the kind wanted, or that can be read in several ways."""

    def __init__(self, read: str, reason: str, offered: tuple[Reading, ...], accepts: str) -> None:
        #: As typed.
        self.read = read
        #: What is the matter, in one sentence.
        self.reason = reason
        #: Texts that may have been meant; each can be read.
        self.offers = tuple(reading.text for reading in offered)
        #: What is accepted instead.
        self.accepts = accepts
        meant = " or ".join(", ".join(r.shown for r in offered).rsplit(", ", 1))
        super().__init__(
            f"{reason} Did you mean {meant}?" if offered else f"{reason} Accepted: {accepts}."
        )


def parse(text: str | float, unit: str, *, bare: str | None = None) -> Reading:
    """Read a quantity as a builder writes it, or raise a `QuantityError`.

    `unit` is the unit wanted, such as `mm`, `N*mm` or `1`. A number without a unit is in
    `bare`, or in the unit wanted; a bare fraction of a length is of an inch. A quantity of
    another kind, a doubtful text and anything left over are refused.
    """
    typed = str(text) if isinstance(text, str) else _digits(text)
    bare = bare or unit
    try:
        return _read(typed, unit, bare)
    except DoubtError as doubt:
        offered = tuple(_readable(doubt.offers, unit, bare))
        line = accepts(unit_named(unit), unit_named(bare))
        raise QuantityError(typed, doubt.reason, offered, line) from None


def _digits(number: object) -> str:
    """A number from a file as text; what is no number at all becomes a text nobody can read."""
    if number is None:
        return ""
    if isinstance(number, float):
        return repr(float(number))
    if isinstance(number, int) and not isinstance(number, bool):
        return str(int(number)) if abs(number) < _LARGEST_WHOLE else "a number too large to be one"
    return repr(number)


@lru_cache(maxsize=4096)
def _read(text: str, unit: str, bare: str) -> Reading:
    if is_missing(text):
        raise DoubtError(f"“{text}” is a missing number.")
    wanted = unit_named(unit)
    bare_unit = unit_named(bare, wanted.dimension)
    cursor = Cursor(text)
    written, written_within = read_amounts(cursor, wanted.dimension)
    nominal, within = settled(written, written_within, wanted.dimension, bare_unit)
    value = _converted(cursor, nominal, wanted)
    plus_minus = None if within is None else _converted(cursor, within, wanted)
    as_inches = written.unit is None and written.is_fraction and nominal.unit is not bare_unit
    shown = _in_words(nominal, within, " read as inches" if as_inches else "")
    if not _is_plain(nominal, within, unit):
        shown += f" = {show(value, unit, plus_minus=plus_minus)}"
    like = nominal.form or nominal.known_unit.symbol or "1"
    return Reading(value, unit, text, shown, plus_minus, like)


def _converted(cursor: Cursor, amount: Amount, wanted: Unit) -> float:
    check_kind(cursor, amount, wanted)
    unit = amount.known_unit
    same = unit is wanted or unit.size == wanted.size
    number = amount.number if same else amount.number * unit.size / wanted.size
    try:
        value = float(number)
    except OverflowError:
        value = inf
    if isinf(value) or (number and not value):
        raise DoubtError(f"{amount.text} is out of all proportion.")
    return value


def _in_words(nominal: Amount, within: Amount | None, unit: str) -> str:
    """What was typed, plainly: `3 ±1/16 in`."""
    unit = unit or pretty(nominal.known_unit)
    whole = nominal.words if nominal.form else nominal.words + unit
    if within is None:
        return whole
    shared = within.unit == nominal.unit is not PERCENT
    if shared and not (nominal.form or within.form):
        return f"{nominal.words} ±{within.words}{unit}"
    around = within.words if within.form else within.words + pretty(within.known_unit)
    return f"{whole} ±{around}"


def _is_plain(nominal: Amount, within: Amount | None, unit: str) -> bool:
    """True for decimals in the unit they are shown in: nothing is left to say."""
    shown_in = unit_named(home(unit))
    amounts = (nominal,) if within is None else (nominal, within)
    return all(
        amount.known_unit.size == shown_in.size
        and not (amount.form or amount.is_fraction or "e" in amount.words)
        for amount in amounts
    )


def _readable(offers: tuple[str, ...], unit: str, bare: str) -> Iterator[Reading]:
    """Those offers that can be read themselves, each meaning once."""
    meanings: set[tuple[float, float | None]] = set()
    for offer in offers:
        try:
            reading = _read(" ".join(offer.split()), unit, bare)
        except DoubtError:
            continue
        if (meaning := (reading.value, reading.plus_minus)) not in meanings:
            meanings.add(meaning)
            yield reading
