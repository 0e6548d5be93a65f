"""One result that other tools may lean on."""

from dataclasses import dataclass

from pedalwright.core.units import Num


@dataclass(frozen=True, slots=True)
class Headline:
    """One result: `room.name`, its value in inside units, and what it is."""

    name: str
    value: Num
    unit: str
    says: str
