"""A driver on one pedal that goes from one point to another, with nothing else in the car."""

import numpy as np

from pedalwright.core.points import REARWARD, Plane, Point
from pedalwright.core.units import Num
from pedalwright.driver import Driver, Footwell, Seated, Tread, place
from pedalwright.driver.parts import Heel
from pedalwright.survey.parts import Line

FAR = Footwell(
    rim=Point(500.0, 0.0, 9000.0),
    column=Line(name="column", start=Point(0, 0, 9000), end=Point(600, 0, 9000), diameter=20.0),
    wall=Plane(normal=REARWARD, offset=-9000.0),
)


def tread(
    *pads: Point,
    places: tuple[str, ...] = ("rest", "full"),
    heel: Heel = "slides",
    rounding: float = 0.0,
    side: float = 1.0,
    faces: Num | None = None,
) -> Tread:
    """A pedal with its pad at those points."""
    x, y, z = (np.stack(np.broadcast_arrays(*row)) for row in zip(*map(xyz, pads), strict=True))
    return Tread(
        name="brake",
        places=places,
        pads=Point(x, y, z),
        faces=np.full(np.shape(x), 1.0) if faces is None else faces,
        heel=heel,
        side=side,
        rounding=rounding,
    )


def xyz(point: Point) -> tuple[Num, Num, Num]:
    return point.x, point.y, point.z


def on(
    driver: Driver, rest: Point, full: Point, floor: Num, footwell: Footwell = FAR, **more: object
) -> Seated:
    """The leg on such a pedal."""
    (seated,) = place(driver, [tread(rest, full, **more)], floor, footwell)
    return seated
