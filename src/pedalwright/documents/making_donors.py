"""A donor's arm on its way to the new pedal: what is sawn off, what becomes of the old hole."""

from collections.abc import Iterator
from typing import Literal

from pedalwright.design import Design
from pedalwright.documents.making_table import Cell, Column, Table
from pedalwright.fitting.rescue import Hole, Rescue, RescuePlan, hole_rescue
from pedalwright.making.car import Shortened

Metal = Literal["steel", "cast", "alloy", "unknown"]

_WAYS = {
    "keep": "leave the pin in the old hole",
    "bush": "bore the old hole out and press in a bush with the new hole in it",
    "drill afresh": "drill the new hole beside it",
    "fill and drill": "fill the old hole, weld it flush, drill the new one",
    "side plates": "weld or bolt a plate on each side and drill through both",
}
_WHY = {
    "": "",
    "holes run together": "the two holes run together",
    "thin land": "too little metal between the holes",
    "arm too narrow": "the arm is too narrow for it",
    "metal not to be welded": "this metal must not be welded",
    "hole too far out": "the hole is beyond the pad",
}


def donor_table(design: Design, one: Shortened) -> Table:
    """Saw and holes, then every way to deal with the old hole, least work first."""
    hole = Hole(radius=one.donor.pin_radius, diameter=one.donor.pin_hole)
    plan = hole_rescue(design, one.pedal, hole, metal=one.donor.metal) if one.redrilled else None
    return Table(
        key=f"donor-{one.pedal}-arm",
        title=f"From the donor's {one.pedal} arm",
        says=" ".join(_says(one, plan)),
        columns=(
            Column(key="way", heading="old hole: way out"),
            Column(key="minutes", heading="time", unit="min", digits=0),
            Column(key="ratio", heading="ratio then", digits=2),
            Column(key="drill", heading="hole", unit="mm"),
            Column(key="verdict", heading=""),
        ),
        rows=tuple(_rows(plan)) if plan else (),
        ticked=False,
    )


def _says(one: Shortened, plan: RescuePlan | None) -> Iterator[str]:
    donor = one.donor
    if one.off < 0.0:
        yield f"The donor is {-one.off:.1f} mm too short: lengthen the pad's neck, not the arm."
    elif one.off > 0.0:
        yield (
            f"Saw {one.off:.1f} mm off at the pad's end ({float(donor.pad_radius):g} becomes "
            f"{float(donor.pad_radius) - one.off:g}) and put the pad back on."
        )
    if plan is None:
        yield "The old hole is where the new one is wanted."
        return
    way = "towards the pivot" if one.apart > 0.0 else "towards the pad"
    yield (f"The new hole stands {abs(one.apart):.1f} mm {way} from the old one, middle to middle.")
    if float(plan.land) < 0.0:
        yield "They run into each other: a drill started there walks into the old hole."
    if plan.best is not None:
        yield f"Least work that keeps the pedal as planned: {_WAYS[plan.best.way]}."


def _rows(plan: RescuePlan) -> Iterator[tuple[Cell, ...]]:
    for way in plan.ways:
        yield (
            _WAYS[way.way],
            way.minutes,
            float(way.outcome.ratio),
            float(way.drill) or None,
            _verdict(way),
        )


def _verdict(way: Rescue) -> str:
    if not way.possible:
        return f"no: {_WHY[way.because]}"
    return "as planned" if way.as_wanted else "works, but is another pedal: assess it first"
