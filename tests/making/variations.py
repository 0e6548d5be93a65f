"""Larkfield with its flange fixed in one way or another, or with a member of its frame trimmed."""

from dataclasses import replace

from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.project import car_text, read
from pedalwright.structure.fixings.parts import Bolted, Riveted, Run, Sheet, Welded
from pedalwright.structure.trims import CoverPlates, Gussets, Triangle, Trim
from pedalwright.survey import Line

FOUR = tuple(Point(0.0, y, z) for y in (-20.0, 20.0) for z in (-20.0, 20.0))
FORWARD = Point(-1.0, 0.0, 0.0)
WALL = Sheet(thickness=3.0, yield_strength=235.0, tensile_strength=360.0, edge=16.0)
BOLTED = Bolted(
    holes=FOUR,
    axis=FORWARD,
    toe=15.0,
    sheet=WALL,
    diameter=8.0,
    pitch=1.25,
    tensile_strength=800.0,
    head=13.0,
)
RIVETED = Riveted(
    holes=FOUR,
    axis=FORWARD,
    toe=15.0,
    sheet=WALL,
    diameter=4.8,
    shear=2400.0,
    pull=3020.0,
    head=9.5,
)
WELDED = Welded(
    runs=(Run(start=FOUR[0], end=FOUR[1]),),
    axis=FORWARD,
    throat=2.1,
    thickness=3.0,
    tensile_strength=360.0,
    correlation=0.8,
)


def design(name: str = "larkfield-improved") -> Design:
    return read(car_text(name)).design


def held(fixing: Bolted | Riveted | Welded) -> Design:
    """Larkfield with its brake's flange fixed so."""
    made = design()
    mount = replace(made.brake.carrier.mount, flange=fixing)
    carrier = replace(made.brake.carrier, mount=mount)
    return replace(made, brake=replace(made.brake, carrier=carrier))


def trimmed_by(back: CoverPlates | Gussets | Triangle) -> Design:
    made, at = design(), Point(0.0, 0.0, 0.0)
    rail = Line(
        name="rung", start=at, end=Point(0.0, 600.0, 0.0), diameter=25.0, height=30.0, wall=2.0
    )
    survey = replace(made.survey, lines=(*made.survey.lines, rail))
    trim = Trim(name="toes", member="rung", way="notch", depth=8.0, length=120.0, put_back=back)
    return replace(made, survey=survey, trims=(trim,))
