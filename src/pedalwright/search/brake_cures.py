"""Changes to a brake that a builder can make; each is tried before it is recommended."""

from collections.abc import Iterator

from pedalwright.assess.stroke import PedalName
from pedalwright.brakes import Disc, WheelBrake
from pedalwright.core.answers import Change, sentence
from pedalwright.design import Design
from pedalwright.hydraulics import Tandem
from pedalwright.search.bore_row import bore_row
from pedalwright.search.changes import Changes, number, one, pin_at
from pedalwright.search.cures import Cure
from pedalwright.search.prices import (
    ALL_LININGS,
    BRAKE_CYLINDER,
    BRAKE_CYLINDERS,
    DEEPER_ARM,
    HOSES,
    LINING_LIFT,
    PIN_HOLE,
    ROD_GAP,
    STIFFER_MOUNT,
    THICKER_ROD,
)

#: Pin moved by, mm; linings brought closer by, mm, and the least they keep (ours).
PIN_STEP = 4.0
CLOSER, LEAST_LIFT = 0.1, 0.1
#: Dead stroke taken off, mm, and the least that leaves the port open (ours).
LESS_DEAD, LEAST_DEAD = 0.5, 1.0
#: Grippier linings against the present ones (ours: one class of linings higher).
GRIPPIER = 1.15


def other_bore(design: Design, larger: bool) -> Iterator[Cure]:
    """The next bore up or down; both cylinders of a pair."""
    masters = design.brake.masters
    paths = (
        ("brake.masters.bore",)
        if isinstance(masters, Tandem)
        else ("brake.masters.front.bore", "brake.masters.rear.bore")
    )
    changes: list[Change] = []
    names: dict[str, None] = {}
    for path in paths:
        fitted = number(design, path)
        row = bore_row(fitted)
        sizes = [entry for entry in row if (entry[1] > fitted if larger else entry[1] < fitted)]
        if not sizes:
            return
        name, size = sizes[0] if larger else sizes[-1]
        names[name] = None
        changes.append(Change(path, size, "mm"))
    one_cylinder = isinstance(masters, Tandem)
    plural = "" if one_cylinder else "s"
    yield Cure(
        what=sentence(
            f"Fit the next {'larger' if larger else 'smaller'} master cylinder{plural}, "
            f"{' and '.join(names)}."
        ),
        changes=tuple(changes),
        job=BRAKE_CYLINDER if one_cylinder else BRAKE_CYLINDERS,
    )


def other_pin(design: Design, further: bool) -> Iterator[Cure]:
    """The rod's pin further from the pivot, for less travel, or nearer, for a lighter pedal."""
    step = PIN_STEP if further else -PIN_STEP
    radius = number(design, "brake.pedal.pin_radius") + step
    where = "further from" if further else "nearer to"
    yield Cure(
        what=sentence(f"Drill the pin hole {{}} {where} the pivot.", (abs(step), "mm")),
        changes=pin_at(design, "brake", radius),
        job=PIN_HOLE,
    )


def closer_linings(design: Design) -> Iterator[Cure]:
    """Linings that lift less, front and rear by themselves."""
    for axle, brake in (("front", design.brake.front), ("rear", design.brake.rear)):
        lift = one(brake.lift)
        if lift - CLOSER >= LEAST_LIFT:
            yield Cure(
                what=sentence(_how_closer(axle, brake), (CLOSER, "mm")),
                changes=(Change(f"brake.{axle}.lift", lift - CLOSER, "mm"),),
                job=LINING_LIFT,
            )


def _how_closer(axle: str, brake: WheelBrake) -> str:
    if isinstance(brake, Disc):
        return f"True the {axle} discs and free the callipers, until the pads lift {{}} less."
    return f"Adjust the {axle} shoes, until each lifts {{}} less."


def less_dead_stroke(design: Design) -> Iterator[Cure]:
    """The rod's gap set finer; the port has to stay open."""
    dead = number(design, "brake.plumbing.dead_stroke")
    if dead - LESS_DEAD >= LEAST_DEAD:
        yield Cure(
            what=sentence(
                "Set the rod's gap {} finer, with play still to feel.", (LESS_DEAD, "mm")
            ),
            changes=(Change("brake.plumbing.dead_stroke", dead - LESS_DEAD, "mm"),),
            job=ROD_GAP,
        )


def new_hoses(design: Design) -> Iterator[Cure]:
    """Hoses that swell half as much: supposed, until they are known."""
    yield Cure(
        what=sentence("Fit new hoses that swell half as much, and bleed."),
        changes=(
            Change("brake.plumbing.hoses", number(design, "brake.plumbing.hoses") / 2, "mm3"),
        ),
        job=HOSES,
        assumed=True,
    )


def stiffer_mounts(design: Design, pedal: PedalName = "brake") -> Iterator[Cure]:
    """Cylinder and pivot held twice as stiffly, each by itself; none that a box holds."""
    for part, what in (
        ("cylinder", "Carry the cylinder's flange to the frame with cheeks, twice as stiff."),
        ("pivot", "Tie the pivot's bracket to the cylinder's flange, twice as stiff."),
    ):
        path = f"{pedal}.carrier.mount.{part}_stiffness"
        stiffness = number(design, path)
        if stiffness > 0.0:
            yield Cure(
                what=sentence(what),
                changes=(Change(path, 2 * stiffness, "N/mm"),),
                job=STIFFER_MOUNT,
                assumed=True,
            )


def stiffer_arm(design: Design) -> Iterator[Cure]:
    """An arm a quarter deeper, a rod a quarter thicker."""
    paths = [f"brake.carrier.arm.depth_at_{end}" for end in ("pivot", "pad")]
    yield Cure(
        what=sentence("Make the arm a quarter deeper."),
        changes=tuple(Change(path, 1.25 * number(design, path), "mm") for path in paths),
        job=DEEPER_ARM,
    )
    rod = "brake.carrier.push_rod.outside"
    yield Cure(
        what=sentence("Fit a rod a quarter thicker."),
        changes=(Change(rod, 1.25 * number(design, rod), "mm"),),
        job=THICKER_ROD,
    )


def grippier_linings(design: Design) -> Iterator[Cure]:
    """Linings with more friction on both axles, so that the balance stays."""
    changes: Changes = ()
    for axle, brake in (("front", design.brake.front), ("rear", design.brake.rear)):
        kind = "friction" if isinstance(brake, Disc) else "factor"
        changes += tuple(
            Change(path, GRIPPIER * number(design, path), "1")
            for path in (f"brake.{axle}.{kind}{end}" for end in ("_low", "", "_high"))
        )
    yield Cure(
        what=sentence(
            "Fit linings with {} more friction on both axles.", (GRIPPIER - 1.0, "share")
        ),
        changes=changes,
        job=ALL_LININGS,
        assumed=True,
    )
