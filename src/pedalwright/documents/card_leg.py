"""The card leg: a driver's thigh, shank and shoe at full size, to cut out and joint.

Each piece is drawn as its leg is worked: pivot to pivot as measured or guessed, and as thick as
the clearances take it to be. Of a bare pair of boards and a seat it tells more than a drawing.
"""

from collections.abc import Iterator
from functools import partial
from math import acos, pi

from pedalwright.assess import Placed, assess
from pedalwright.design import Design
from pedalwright.documents.outside import METRIC, Units
from pedalwright.documents.tiles import UNCORRECTED, Origin, Template, templates_pdf
from pedalwright.drawing import (
    XY,
    CentreCross,
    Circle,
    Drawing,
    Item,
    Leader,
    Line,
    Linear,
    Polyline,
    Text,
    polar,
)
from pedalwright.driver import Body
from pedalwright.driver.body import TAPE
from pedalwright.driver.clearances import KNEE_RADIUS, OUTLINE, SHIN_RADIUS, SHOE_HEIGHT, TOE_HEIGHT
from pedalwright.making.tiling import A4, Paper, Printer

#: Round the hip joint, and half a hole for a paper fastener, mm (ours).
HIP_RADIUS, HOLE = 70.0, 3.0
#: Upper of the shoe round the ankle, before and behind its joint, mm (ours).
ANKLE_FRONT, ANKLE_BACK, COLLAR = 40.0, 35.0, 14.0
#: How far the toe of the sole is rounded, mm (ours).
TIP = 10.0
LETTERING = 5.0
MADE_OF = "stiff card, 1 off; holes 6 mm at the crosses, joined with paper fasteners"


def card_leg_pdf(
    design: Design,
    origin: Origin,
    *,
    paper: Paper = A4,
    printer: Printer = UNCORRECTED,
    units: Units = METRIC,
) -> bytes:
    """Every driver's leg, piece after piece; the same input gives the same bytes."""
    return templates_pdf(list(card_legs(design, units)), origin, paper=paper, printer=printer)


def card_legs(design: Design, units: Units = METRIC) -> Iterator[Template]:
    """Three pieces for each driver."""
    for driver, placed in zip(design.drivers, assess(design).drivers, strict=True):
        hip = [units.said(at, "mm") for at in (driver.hip.x, driver.hip.z)]
        for drawing in (thigh(placed, units), shank(placed, units), shoe(placed, units)):
            yield Template(
                drawing=drawing,
                face=f"seen from the car's right; hip pinned at x {hip[0]}, z {hip[1]}",
                hand="serves either leg",
                made_of=MADE_OF,
            )


def thigh(placed: Placed, units: Units = METRIC) -> Drawing:
    """From the hip on the left to the knee."""
    length, spread = float(placed.brake.body.thigh), float(placed.spread.thigh)
    radii = (HIP_RADIUS, KNEE_RADIUS)
    return _bone(placed.name, "thigh", ("hip", "knee"), length, spread, radii, units)


def shank(placed: Placed, units: Units = METRIC) -> Drawing:
    """From the knee on the left to the ankle."""
    length, spread = float(placed.brake.body.shank), float(placed.spread.shank)
    radii = (KNEE_RADIUS, SHIN_RADIUS)
    return _bone(placed.name, "shank", ("knee", "ankle"), length, spread, radii, units)


def shoe(placed: Placed, units: Units = METRIC) -> Drawing:
    """On its sole, toes to the right, the heel point at the origin."""
    body = placed.brake.body
    ankle = (float(body.ankle_forward), float(body.ankle_height))
    ball, length = float(body.heel_to_ball), float(body.shoe_length)
    name = f"{placed.name}'s shoe"
    size = partial(Linear, written=units.lengths)
    return Drawing(
        name=f"card-shoe-{placed.name}",
        title=f"{name}, {units.said(length, 'mm')} long",
        description=f"{name} from the side with its ankle joint and the ball of the foot.",
        shapes=(
            Polyline(tuple(_upper(body)), closed=True, part="shoe", title=name),
            *_pivot(ankle, "ankle"),
            Polyline(((ball, 0.0), (ball, 12.0)), line=Line.THIN, part="ball"),
            Leader((ball, 0.0), "ball of the foot, on the pad", to=(-12.0, 22.0)),
            Leader((0.0, 0.0), "heel point, on the mat", to=(10.0, 12.0)),
            size((0.0, 0.0), (ball, 0.0), "horizontal", offset=-12.0),
            size((0.0, 0.0), (length, 0.0), "horizontal", offset=-20.0),
            size((0.0, 0.0), ankle, "vertical", offset=-12.0),
            size((0.0, 0.0), ankle, "horizontal", offset=12.0, base=ankle[1] + COLLAR),
            Text((0.45 * length, 45.0), placed.name, height=LETTERING),
        ),
    )


def _bone(
    name: str,
    part: str,
    joints: tuple[str, str],
    length: float,
    spread: float,
    radii: tuple[float, float],
    units: Units,
) -> Drawing:
    """Two rounds and what lies between them, pivot on the left and pivot on the right."""
    left, right = (0.0, 0.0), (length, 0.0)
    about, unit = units.outside(spread, "mm")
    known = "as measured" if spread <= TAPE else f"guessed, ± {float(about):.2g} {unit} (1 SD)"
    title = f"{name}'s {part}, {units.said(length, 'mm')}, {known}"
    return Drawing(
        name=f"card-{part}-{name}",
        title=title,
        description=f"{title}: from {joints[0]} to {joints[1]} with the flesh round both.",
        shapes=(
            Polyline(tuple(_round_both(length, *radii)), closed=True, part=part, title=title),
            Polyline((left, right), line=Line.CENTRE, part=part),
            *_pivot(left, joints[0]),
            *_pivot(right, joints[1]),
            Linear(left, right, "aligned", offset=16.0, written=units.lengths),
            Text((length / 2, -22.0), f"{name} {part}", height=LETTERING),
        ),
    )


def _pivot(at: XY, joint: str) -> Iterator[Item]:
    yield Circle(at, HOLE, part=f"pivot-{joint}", title=f"{joint} joint")
    yield CentreCross(at, 3 * HOLE)
    yield Text((at[0], at[1] - 18.0), joint, height=3.5)


def _round_both(length: float, first: float, second: float) -> Iterator[XY]:
    """The outline round two circles on a level line, anticlockwise."""
    turn = acos((first - second) / length)
    steps = 24
    for i in range(steps + 1):
        yield polar((0.0, 0.0), first, turn + (2.0 * pi - 2.0 * turn) * i / steps)
    for i in range(steps + 1):
        yield polar((length, 0.0), second, -turn + 2.0 * turn * i / steps)


def _upper(body: Body) -> Iterator[XY]:
    """Sole, toecap, instep, the upper round the ankle, heel."""
    length, ankle = float(body.shoe_length), (float(body.ankle_forward), float(body.ankle_height))
    (vamp, _), (cap, _), _ = OUTLINE
    back, top = min(ankle[0] - ANKLE_BACK, 6.0), ankle[1] + COLLAR
    yield (0.0, 0.0)
    yield (length - TIP, 0.0)
    yield (length, TIP)
    yield (length - 2.0, TOE_HEIGHT / 2)
    yield (length - TIP, 0.8 * TOE_HEIGHT)
    yield (cap * length, TOE_HEIGHT + 4.0)
    yield (vamp * length, SHOE_HEIGHT + 12.0)
    yield (ankle[0] + ANKLE_FRONT, ankle[1])
    yield (ankle[0] + ANKLE_FRONT - 4.0, top)
    yield (back, top)
    yield (back - 5.0, ankle[1] - COLLAR)
    yield (-4.0, TOE_HEIGHT)
    yield (-3.0, 8.0)
