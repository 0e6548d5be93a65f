"""Arms taken from another car: what is cut off, and where its old hole ends up."""

from dataclasses import dataclass
from typing import Literal

from pedalwright.design import Design
from pedalwright.making.car.formulas import cut_off
from pedalwright.shelf.stock import DonorArm

PedalName = Literal["brake", "clutch"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Shortened:
    """A donor's arm and what becomes of it."""

    pedal: PedalName
    donor: DonorArm
    #: To take off at the pad's end; less than nought where the donor is too short.
    off: float
    #: Old hole to new one, along the arm.
    apart: float

    @property
    def redrilled(self) -> bool:
        """Whether the rod pin moves at all."""
        return abs(self.apart) > SAME_HOLE


#: A hole within this of where it is wanted stays, mm (half of what the drill card allows).
SAME_HOLE = 0.1


def shortened(design: Design) -> tuple[Shortened, ...]:
    """Every pedal that is made from a donor's arm."""
    found: list[Shortened] = []
    names: tuple[PedalName, ...] = ("brake", "clutch")
    for name in names:
        pedal = (design.brake if name == "brake" else design.clutch).pedal
        donor = next((arm for arm in design.stock.arms if arm.name == name), None)
        if donor is not None:
            off = float(cut_off(donor.pad_radius, pedal.pad_radius))
            moved = float(cut_off(donor.pin_radius, pedal.pin_radius))
            found.append(Shortened(pedal=name, donor=donor, off=off, apart=moved))
    return tuple(found)
