"""Numbers that cannot all be true of one car: a slip of the pen, not a bad design.

Each rule speaks only where its numbers are known; nan agrees with everything.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import isnan
from statistics import median

from pedalwright.brakes.wheels import Disc, Drum, ShoeDrum, WheelBrake
from pedalwright.clutch.parts import CableFork, RodFork
from pedalwright.core.points import Point
from pedalwright.core.quantity import QuantityError, parse, show
from pedalwright.core.units import Num
from pedalwright.design.tree import ClutchDesign, Design
from pedalwright.driver.parts import Driver
from pedalwright.linkage.parts import Pedal
from pedalwright.project import paths
from pedalwright.project.errors import FileFault, nearest
from pedalwright.structure.parts import Pivot, PushRod
from pedalwright.survey.parts import Obstacle


@dataclass(frozen=True, slots=True)
class Clash:
    """A number that contradicts another one."""

    path: str
    accepts: str
    offers: tuple[str, ...] = ()


def clashes(design: Design) -> Iterator[Clash]:
    """Every contradiction found."""
    yield from _sides(design)
    for name, pedal in _pedals(design):
        yield from _pin_on_arm(f"{name}.pedal", pedal)
    for driver in design.drivers:
        yield from _driver(driver, design.brake.pedal)
    for name, brake in (("front", design.brake.front), ("rear", design.brake.rear)):
        yield from _wheel_brake(f"brake.{name}", brake)
    for name, carrier in (("brake", design.brake.carrier), ("clutch", design.clutch.carrier)):
        yield from _hollow(f"{name}.carrier", carrier.pivot, carrier.push_rod)
    yield from _no_master(design.clutch)
    for obstacle in design.survey.obstacles:
        yield from _corners(obstacle)
    yield from _no_member(design)


def forgotten(design: Design) -> Iterator[tuple[str, str]]:
    """What may be left out elsewhere, but not beside what else is in this file; and why."""
    if design.clutch.master is None and not isinstance(
        design.clutch.release.actuator, (CableFork, RodFork)
    ):
        yield "clutch.master", "what works the slave"
    for name, part in (("brake", design.brake), ("clutch", design.clutch)):
        mount = part.carrier.mount
        for key in ("cylinder_stiffness", "pivot_stiffness"):
            if not mount.in_box and getattr(mount, key) is None:
                yield f"{name}.carrier.mount.{key}", "no box is described that carries it"


def _no_master(part: ClutchDesign) -> Iterator[Clash]:
    if part.master is not None and isinstance(part.release.actuator, (CableFork, RodFork)):
        yield Clash("clutch.master.bore", "A clutch worked by a cable has no master cylinder.")


def _no_member(design: Design) -> Iterator[Clash]:
    known = [line.name for line in design.survey.lines]
    for trim in design.trims:
        if trim.member not in known:
            accepts = f"A trim is in a line of the survey: {', '.join(known) or 'none so far'}."
            path = paths.join("trims", trim.name, "member")
            yield Clash(path, accepts, nearest(trim.member, known))


def _corners(obstacle: Obstacle) -> Iterator[Clash]:
    for axis, low, high in zip("xyz", _xyz(obstacle.low), _xyz(obstacle.high), strict=True):
        if low > high:
            path = paths.join("survey", "obstacles", obstacle.name, "low", axis)
            accepts = f"The low corner has the smaller {axis}; the high one is at {_mm(high)}."
            yield Clash(path, accepts)


def explained(fault: FileFault, design: Design) -> FileFault:
    """A ratio typed for a pin radius, with the radius that gives it on this arm."""
    for name, pedal in _pedals(design):
        if fault.key == f"{name}.pedal.pin_radius":
            try:
                ratio = parse(fault.read, "1").value
            except QuantityError:
                return fault
            if pedal.pad_radius > 0.0 < ratio:
                pin = _mm(pedal.pad_radius / ratio)
                accepts = (
                    f"The pin's distance from the pivot. For a ratio of {ratio:g} with the pad "
                    f"at {_mm(pedal.pad_radius)} and a square rod it is {pin}."
                )
                return replace(fault, accepts=accepts, offers=(pin,))
    return fault


def _pedals(design: Design) -> tuple[tuple[str, Pedal], ...]:
    return (
        ("brake", design.brake.pedal),
        ("clutch", design.clutch.pedal),
        ("throttle", design.throttle.pedal),
    )


def _sides(design: Design) -> Iterator[Clash]:
    """Whatever belongs to the driver's place but stands on the other side of the car."""
    across = {f"{name}.pedal.pivot.y": pedal.pivot.y for name, pedal in _pedals(design)}
    for driver in design.drivers:
        across[paths.join("drivers", driver.name, "hip", "y")] = driver.hip.y
    across["survey.lines.column.start.y"] = design.survey.line("column").start.y
    across["survey.lines.column.end.y"] = design.survey.line("column").end.y
    across["survey.marks.rim_bottom.at.y"] = design.survey.mark("rim_bottom").y
    known = {path: float(y) for path, y in across.items() if not isnan(y)}
    middle = median(known.values()) if known else 0.0
    known |= _walls_beside(design)
    for path, y in known.items():
        if abs(y - middle) > _HALF_A_FOOTWELL > abs(-y - middle):
            accepts = (
                f"Pedals, column and seat are about y {_mm(middle)}; this is on the other side of "
                "the car. y grows to the car's right, whichever way you face: left and right may "
                "be swapped."
            )
            yield Clash(path, accepts, (_mm(-y),))
    if _pad_y(design.throttle.pedal) < _pad_y(design.brake.pedal) < _pad_y(design.clutch.pedal):
        accepts = "The clutch stands on the right and the accelerator on the left: swap their y."
        yield Clash("clutch.pedal.pivot.y", accepts, (_mm(design.throttle.pedal.pivot.y),))


def _walls_beside(design: Design) -> dict[str, float]:
    """How far across the car each wall beside the feet stands, where it meets the car's axes."""
    beside: dict[str, float] = {}
    for face in design.survey.faces:
        across, offset = float(face.plane.normal.y), float(face.plane.offset)
        if abs(across) > _BESIDE and not isnan(offset):
            beside[paths.join("survey", "faces", face.name, "plane", "through", "y")] = (
                offset / across
            )
    return beside


def _pad_y(pedal: Pedal) -> Num:
    return pedal.pivot.y + pedal.pad_offset


def _pin_on_arm(path: str, pedal: Pedal) -> Iterator[Clash]:
    if pedal.pin_radius >= pedal.pad_radius:
        accepts = f"The pin is nearer to the pivot than the pad, {_mm(pedal.pad_radius)}."
        yield Clash(f"{path}.pin_radius", accepts)


def _driver(driver: Driver, brake: Pedal) -> Iterator[Clash]:
    person, path = driver.person, paths.join("drivers", driver.name)
    if driver.hip.x <= brake.pivot.x:
        accepts = f"x grows rearward, so a hip is behind the brake's pivot at {_mm(brake.pivot.x)}."
        turned = -driver.hip.x > brake.pivot.x
        yield Clash(f"{path}.hip.x", accepts, (_mm(-driver.hip.x),) if turned else ())
    if person.inside_leg >= person.stature:
        accepts = f"An inside leg is shorter than its person, {_mm(person.stature)}."
        yield Clash(f"{path}.person.inside_leg", accepts)
    if person.shoe_width >= person.shoe_length:
        accepts = f"A shoe is longer than wide; its length is {_mm(person.shoe_length)}."
        yield Clash(f"{path}.person.shoe_width", accepts)


def _wheel_brake(path: str, brake: WheelBrake) -> Iterator[Clash]:
    match brake:
        case Disc():
            name, three = "friction", (brake.friction_low, brake.friction, brake.friction_high)
            if brake.pistons_one_side > brake.pistons_moved:
                accepts = f"Of its {brake.pistons_moved:g} pistons no more press on one side."
                yield Clash(f"{path}.pistons_one_side", accepts)
        case Drum():
            name, three = "factor", (brake.factor_low, brake.factor, brake.factor_high)
        case ShoeDrum():
            name, three = "friction", (brake.friction_low, brake.friction, brake.friction_high)
    low, usual, high = three
    found = ", ".join(f"{value:g}" for value in three)
    accepts = f"{name}_low, {name} and {name}_high do not fall; they are {found}."
    if low > usual:
        yield Clash(f"{path}.{name}_low", accepts)
    if usual > high:
        yield Clash(f"{path}.{name}_high", accepts)


def _hollow(path: str, pivot: Pivot, rod: PushRod) -> Iterator[Clash]:
    if pivot.tube_inside >= pivot.tube_outside:
        accepts = f"A tube is wider outside, {_mm(pivot.tube_outside)}, than inside."
        yield Clash(f"{path}.pivot.tube_inside", accepts)
    if rod.inside >= rod.outside:
        accepts = f"A rod is wider outside, {_mm(rod.outside)}, than inside."
        yield Clash(f"{path}.push_rod.inside", accepts)


#: Pedals, seat, column and walls of one driver stand within this of their middle.
_HALF_A_FOOTWELL = 350.0
#: A wall that looks across the car at least by this share is beside the feet.
_BESIDE = 0.9


def _xyz(point: Point) -> tuple[Num, Num, Num]:
    return point.x, point.y, point.z


def _mm(length: Num) -> str:
    return show(float(length), "mm")
