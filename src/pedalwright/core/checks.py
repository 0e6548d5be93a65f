"""A limit says who asks; a finding is a limit met by a value."""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from pedalwright.core.units import Num, Truth

Kind = Literal["regulation", "standard", "handbook", "trade", "ours"]
Sense = Literal["at most", "at least"]
Weight = Literal["must", "should"]


@dataclass(frozen=True, slots=True)
class Source:
    """Where a limit comes from. A clause we did not read is called `to verify`."""

    document: str
    clause: str
    kind: Kind


@dataclass(frozen=True, slots=True)
class Limit:
    """One demand on the design: stable code, one plain sentence, sense, unit, who asks."""

    code: str
    asks: str
    sense: Sense
    unit: str
    source: Source
    weight: Weight = "must"

    def check(self, value: Num, bound: Num, about: str = "") -> "Finding":
        """Meet the demand with a value; `about` names the driver, pedal or circuit judged.

        The margin is the share of the bound in hand, so a bound of zero is not allowed:
        write the clearance that is really wanted.
        """
        sign = 1.0 if self.sense == "at most" else -1.0
        return Finding(self, value, bound, sign * (bound - value) / np.abs(bound), about)


@dataclass(frozen=True, slots=True)
class Finding:
    """A limit met by a value. `margin` is nan, and `ok` False, where there is no value."""

    limit: Limit
    value: Num
    bound: Num
    margin: Num
    about: str = ""

    @property
    def room(self) -> str:
        """The trade room that asks, e.g. `brake` findings come from `brakes`."""
        return self.limit.code.split(".")[0]

    @property
    def ok(self) -> Truth:
        """True where the demand is met; False where it fails or could not be judged."""
        return np.greater_equal(self.margin, 0.0)

    @property
    def judged(self) -> Truth:
        """False where a number is missing or the mechanism has no answer."""
        return np.logical_not(np.isnan(self.margin))
