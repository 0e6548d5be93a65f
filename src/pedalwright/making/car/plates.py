"""Flat pieces that a design asks for, by the plate they are cut from."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.drawing import Box
from pedalwright.making.car.donors import shortened
from pedalwright.making.car.formulas import plate_along
from pedalwright.making.car.profiles import car_profiles
from pedalwright.making.cutting import Part
from pedalwright.making.profiles import polygon
from pedalwright.structure.trims.parts import CoverPlates, Gussets, Trim

#: Stiffer metals are steels, MPa.
STEEL = 150_000.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Plate:
    """A plate by what is asked of it."""

    metal: Literal["steel", "alloy"]
    thickness: float
    #: At least, MPa.
    yield_strength: float

    @property
    def words(self) -> str:
        """As a stockist understands it."""
        return f"{self.metal} plate {self.thickness:g} mm, yield {self.yield_strength:g} MPa"


def plate_parts(design: Design) -> Mapping[Plate, tuple[Part, ...]]:
    """Rectangles by plate: arms that come from no donor, and what goes back after trims."""
    found: dict[Plate, tuple[Part, ...]] = {}
    for plate, part in (*_arms(design), *_trims(design)):
        found[plate] = (*found.get(plate, ()), part)
    return found


def _arms(design: Design) -> Iterator[tuple[Plate, Part]]:
    donated = {f"{one.pedal} arm" for one in shortened(design)}
    for profile in car_profiles(design):
        if profile.name in donated:
            continue
        pedal = design.brake if profile.name.startswith("brake") else design.clutch
        relay = pedal.carrier.relay
        arm = relay if relay is not None and "relay" in profile.name else pedal.carrier.arm
        plate = Plate(
            metal="steel" if float(arm.elastic) > STEEL else "alloy",
            thickness=profile.thickness,
            yield_strength=round(float(arm.yield_strength)),
        )
        box = Box.around(polygon(profile.outline))
        assert box is not None, "an outline has places"
        size = (round(box.width, 1), round(box.height, 1))
        yield plate, Part(name=profile.name, length=size[0], width=size[1], count=profile.count)


def _trims(design: Design) -> Iterator[tuple[Plate, Part]]:
    lines = {line.name: line for line in design.survey.lines}
    for trim in design.trims:
        back = trim.put_back
        if isinstance(back, CoverPlates) and trim.member in lines:
            part = _along(trim, back.lap, lines[trim.member].diameter, "cover plate")
        elif isinstance(back, Gussets):
            part = _along(trim, back.lap, back.height, "gusset")
        else:
            continue
        yield _steel(trim, back), part


def _along(trim: Trim, lap: Num, width: Num, what: str) -> Part:
    length = float(plate_along(trim.length, lap))
    return Part(name=f"{trim.name} {what}", length=length, width=float(width), count=2)


def _steel(trim: Trim, back: CoverPlates | Gussets) -> Plate:
    return Plate(
        metal="steel",
        thickness=float(back.thickness),
        yield_strength=round(float(trim.yield_strength)),
    )
