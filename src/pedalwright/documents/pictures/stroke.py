"""One pedal anywhere on its stroke, with the legs on it: the picture a builder works on.

Seen from the car's left, front to the left, like the side elevation. Visible lines show the
pedal where it is now; long-dash double-dot lines its two ends (ISO 128-2). Text keeps its size
on paper, so the paper is as wide as the place the picture is looked at.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import dist, isfinite
from typing import Literal, TypeAlias

from pedalwright.assess import Assessment
from pedalwright.assess.stroke import Leg, PedalName, Pressed, pressed
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.documents.outside import METRIC, Units
from pedalwright.documents.pictures.footwell import footwell
from pedalwright.documents.pictures.places import pad_outline, seen, swing
from pedalwright.documents.pictures.shown import Chain, chain
from pedalwright.drawing import (
    XY,
    Angular,
    Arc,
    Box,
    CentreCross,
    Circle,
    Drawing,
    Fill,
    Group,
    Item,
    Leader,
    Line,
    Linear,
    Polyline,
    Tone,
)
from pedalwright.driver import heel_height

SideName: TypeAlias = Literal["side", "plan", "front"]

#: Paper narrower than this has no room for names and heights, mm.
ROOM_FOR_NOTES = 130.0
#: What is seen around things, as a share of the picture.
AROUND = 0.08


@dataclass(frozen=True, kw_only=True, slots=True)
class Look:
    """What is looked at, and on how large a paper."""

    pedal: PedalName
    #: Per cent of the stroke: 0 at rest, 100 at its end.
    down: int = 0
    #: Whose legs are drawn, by name; the pedal box stands where the first of them has it.
    drivers: tuple[str, ...] = ()
    #: Only the pedal and the foot, not the whole leg.
    close: bool = False
    #: Where one looks from.
    side: SideName = "side"
    #: Where the shoes go over the whole stroke.
    sweep: bool = False
    #: What room is left to what the pedal comes nearest to.
    room: bool = False
    #: Width and height of the paper, mm.
    paper: tuple[float, float] = (200.0, 130.0)
    units: Units = METRIC

    @property
    def notes(self) -> bool:
        """Whether there is room for names and heights."""
        return self.paper[0] >= ROOM_FOR_NOTES


def paper(pixels: tuple[int, int]) -> tuple[float, float]:
    """How large a place on a screen is on paper, mm: 96 of a page's pixels are an inch."""
    wide, high = pixels
    return wide * _PIXEL, high * _PIXEL


_PIXEL = 25.4 / 96.0


def looked_at(design: Design, assessment: Assessment, look: Look) -> Pressed:
    """The pedal as it is looked at."""
    first = look.drivers[0] if look.drivers else ""
    return pressed(design, assessment, look.pedal, look.down / 100.0, first)


def footwell_picture(design: Design, look: Look, window: Box) -> Drawing:
    """What stands still behind the pedal."""
    scale, heel = _scale(look, window), heel_level(design)
    return Drawing(
        name="footwell",
        title="The footwell from the car's left, front to the left",
        shapes=tuple(footwell(design.survey, heel, window, scale, notes=look.notes)),
        scale=scale,
        window=window,
    )


def stroke_picture(design: Design, now: Pressed, look: Look, window: Box) -> Drawing:
    """The pedal where it is now, between its two ends, to be laid over the footwell."""
    legs = [leg for leg in now.legs if leg.name in look.drivers]
    names = " and ".join(leg.name for leg in legs)
    heel = heel_level(design)
    return Drawing(
        name=f"{look.pedal}-stroke",
        title=f"{look.pedal.capitalize()} pedal, {where(look.down)}",
        description=(
            f"The {look.pedal} pedal from the car's left, {where(look.down)}"
            + (f", with the legs of {names}." if names else ".")
        ),
        shapes=(
            *(shape for i, leg in enumerate(legs) for shape in _leg(leg, look, first=i == 0)),
            *_pedal(design, now, look),
            *_sizes(now, look, heel),
        ),
        scale=_scale(look, window),
        window=window,
    )


def window(design: Design, now: Pressed, look: Look) -> Box:
    """What is seen: all of the leg, or the pedal and the foot; of the shape of the paper."""
    box = Box.around(at for at in _things(design, now, look) if isfinite(sum(at)))
    box = box or Box(0.0, -100.0, 1000.0, 500.0)
    box = box.grown(AROUND * max(box.width, box.height))
    wide, high = look.paper
    width = max(box.width, box.height * wide / high)
    height = max(box.height, box.width * high / wide)
    x, y = (box.left + box.right - width) / 2.0, (box.bottom + box.top - height) / 2.0
    return Box(x, y, x + width, y + height)


def _scale(look: Look, window: Box) -> float:
    return min(look.paper[0] / window.width, look.paper[1] / window.height)


def heel_level(design: Design) -> float:
    """Height of the heel rest, as the drivers are placed on it."""
    floor, rest = design.survey.face("floor"), design.heel_rest
    return float(heel_height(floor.offset, rest.drop, rest.plate))


def _things(design: Design, now: Pressed, look: Look) -> Iterator[XY]:
    """Places that must be seen."""
    lever, wall = now.lever, design.survey.face("front_wall")
    yield from map(seen, (lever.pivot, lever.pad, lever.pin, now.pad_full))
    if now.rod is not None:
        yield from (end for rod in _chain(now, pressed=False).rods for end in rod)
    yield float(wall.offset / wall.normal.x), heel_level(design)
    for leg in now.legs:
        if leg.name in look.drivers:
            yield seen(leg.posture.heel)
            yield seen(leg.posture.toe)
            if not look.close:
                yield seen(leg.posture.knee)
                yield seen(leg.posture.hip)
    if not look.close:
        yield seen(design.survey.mark("rim_bottom"))


def where(down: int) -> str:
    """How far a pedal is down, in words."""
    if down <= 0:
        return "at rest"
    return "at the end of its stroke" if down >= 100 else f"{down} % down"


def _leg(leg: Leg, look: Look, *, first: bool) -> Iterator[Item]:
    """Thigh, shank and shoe with their joints; the first driver's in visible lines."""
    p, line = leg.posture, Line.VISIBLE if first else Line.HIDDEN
    tone = Tone.INK if first else Tone.QUIET
    hip, knee, ankle = seen(p.hip), seen(p.knee), seen(p.ankle)
    shoe = (ankle, seen(p.heel), seen(p.toe))
    joints = (("ball of the foot", p.ball), ("hip", p.hip), ("knee", p.knee), ("ankle", p.ankle))
    yield Group(
        (
            Polyline((hip, knee, ankle), line=line, tone=tone, part=f"leg-{leg.name}"),
            Polyline(shoe, closed=True, line=line, tone=tone, part=f"foot-{leg.name}"),
            *(
                Circle(
                    seen(at),
                    5.0,
                    line=Line.THIN,
                    fill=Fill.PAPER,
                    tone=tone,
                    part=f"{joint.split()[0]}-{leg.name}",
                    title=joint,
                )
                for joint, at in joints
            ),
        ),
        part=f"driver-{leg.name}",
        title=f"leg of {leg.name}",
    )
    if look.notes and not look.close:
        yield Leader(hip, f"{leg.name}, hip", to=(-4.0, -9.0) if first else (-5.0, 10.0))


def _chain(now: Pressed, *, pressed: bool) -> Chain:
    assert now.rod is not None, "an accelerator has no rod to a cylinder"
    if pressed and now.position is not None:
        here = now.position
        return chain(here.pin, here.socket, here.relay, now.rod.relay)
    return chain(now.lever.pin, now.rod.socket, now.rod.relay, now.rod.relay)


def _pedal(design: Design, now: Pressed, look: Look) -> Iterator[Item]:
    """Where it is now in visible lines, its two ends as other positions, the pad's path."""
    pivot, rest = seen(now.lever.pivot), seen(now.lever.pad)
    path = swing(pivot, rest, seen(now.pad_full))
    yield Arc(pivot, dist(pivot, rest), *path, line=Line.CENTRE, tone=Tone.QUIET, part="pad-path")
    if look.down < 100:
        yield _arm(now, now.pad_full, None, Line.OTHER_POSITION)
    if look.down > 0:
        rods = None if now.rod is None else _chain(now, pressed=False)
        yield _arm(now, now.lever.pad, rods, Line.OTHER_POSITION)
    rods = None if now.rod is None else _chain(now, pressed=True)
    yield _arm(now, now.pad, rods, Line.VISIBLE)
    tube = _tube_radius(design, look)
    yield Circle(pivot, tube, tone=Tone.ACCENT, fill=Fill.PAPER, part="pivot", title="pivot tube")
    yield CentreCross(pivot, tube, part="pivot")
    if now.rod is not None and look.notes and look.close:
        yield Leader(seen(now.rod.socket), "rod socket", to=(4.0, -10.0))


def _arm(now: Pressed, pad_at: Point, rods: Chain | None, line: Line) -> Item:
    """Arm, pad and, where they are given, rods at one place of the stroke."""
    pivot, pad = seen(now.lever.pivot), seen(pad_at)
    tone = Tone.ACCENT if line is Line.VISIBLE else Tone.QUIET
    face = pad_outline(now.pedal, now.lever, pad_at)
    return Group(
        (
            Polyline((pivot, pad), line=line, tone=tone, part="arm", title="pedal arm"),
            *(() if rods is None else _driven(pivot, rods, line, tone)),
            Polyline(
                face, closed=True, fill=Fill.PAPER, line=line, tone=tone, part="pad", title="pad"
            ),
        ),
        part="pedal",
        title="pedal" if line is Line.VISIBLE else "pedal at an end of its stroke",
    )


def _driven(pivot: XY, rods: Chain, line: Line, tone: Tone) -> Iterator[Item]:
    """From the pivot to the pin, by the rods and a relay lever to the socket."""
    pin, relay = rods.rods[0][0], rods.relay or ()
    yield Polyline((pivot, pin), line=line, tone=tone, part="arm")
    yield Polyline(relay, line=line, tone=tone, part="relay", title="relay lever")
    for rod in rods.rods:
        yield Polyline(rod, line=line, tone=tone, part="push-rod", title="push rod")
    for at, size, part in (
        *((at, 5.0, "rod-pin") for at in (pin, *relay[::2])),
        *((at, 8.0, "relay") for at in relay[1:2]),
        (rods.rods[-1][1], 3.0, "rod-socket"),
    ):
        yield Circle(at, size, line=Line.THIN, fill=Fill.PAPER, tone=tone, part=part)


def _tube_radius(design: Design, look: Look) -> float:
    """The pivot tube; an accelerator's is nowhere given, and drawn as a thin one."""
    parts = {"brake": design.brake.carrier, "clutch": design.clutch.carrier}
    carrier = parts.get(look.pedal)
    return 6.0 if carrier is None else float(carrier.pivot.tube_outside) / 2.0


def _sizes(now: Pressed, look: Look, heel: float) -> Iterator[Item]:
    """Radii on the arm at rest; the swing and the pad's height where there is room for them."""
    lever, written = now.lever, look.units.lengths
    pivot, pad, pin = seen(lever.pivot), seen(lever.pad), seen(lever.pin)
    yield Linear(pivot, pad, "aligned", offset=15.0, written=written, part="pad-radius")
    if now.rod is not None:
        yield Linear(pivot, pin, "aligned", offset=8.0, written=written, part="pin-radius")
    if not look.notes:
        return
    turn = swing(pivot, pad, seen(now.pad_full))
    yield Angular(pivot, *turn, radius=0.45 * dist(pivot, pad), sides=False)
    below = (min(pad[0], pivot[0]), heel)
    yield Linear(below, pad, "vertical", offset=-14.0, base=below[0], written=written)
