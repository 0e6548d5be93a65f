"""Sheet and wire gauges by number. A bare "16 gauge" names three thicknesses, so it is refused.

Sources. SWG: Imperial Standard Wire Gauge, Order in Council of 23 August 1883, later BS 3737:1964;
in inches. MSG: Manufacturers' Standard Gauge for sheet steel, weights of the US Act of 3 March
1893 at 41.82 lb per square foot and inch, to the printed four decimals. AWG: Brown & Sharpe, the
gauge of American aluminium sheet, the geometric series from 0.46 in (4/0) to 0.005 in (36).
"""

from fractions import Fraction
from typing import NamedTuple

_SWG_THOUSANDTHS = (
    "324 300 276 252 232 212 192 176 160 144 128 116 104 92 80 72 64 56 48 40 36 32 28 24 22 20 18 "
    "16.4 14.8 13.6 12.4"
)  # from number 0
_MSG_THOUSANDTHS = (
    "239.1 224.2 209.2 194.3 179.3 164.4 149.5 134.5 119.6 104.6 89.7 74.7 67.3 59.8 53.8 47.8 "
    "41.8 35.9 32.9 29.9 26.9 23.9 20.9 17.9 16.4 14.9 13.5 12"
)  # from number 3
_LAST = 30


class Gauge(NamedTuple):
    """A series of thicknesses by number, in inches."""

    name: str
    meant: str
    inches: dict[int, Fraction]


def _listed(first: int, thousandths: str) -> dict[int, Fraction]:
    return {n: Fraction(t) / 1000 for n, t in enumerate(thousandths.split(), first)}


def _brown_and_sharpe(number: int) -> Fraction:
    return Fraction(0.005 * 92 ** ((36 - number) / 39))


SWG = Gauge("SWG", "British", _listed(0, _SWG_THOUSANDTHS))
MSG = Gauge("MSG", "American steel", _listed(3, _MSG_THOUSANDTHS))
AWG = Gauge("AWG", "American aluminium", {n: _brown_and_sharpe(n) for n in range(_LAST + 1)})

#: What "16 gauge" may mean.
SHEETS = (SWG, MSG, AWG)

#: Each gauge under its name, in capitals.
GAUGES = {"SWG": SWG, "S.W.G": SWG, "MSG": MSG, "AWG": AWG, "B&S": AWG}

#: Words for a gauge that do not say which.
SOME_GAUGE = frozenset({"ga", "gauge", "gage"})
