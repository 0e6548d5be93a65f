"""Throttle chains drawn at random: rods on any axes, cables, springs."""

from hypothesis import assume
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from pedalwright.core.points import Point
from pedalwright.throttle import (
    BallRod,
    Cable,
    Spring,
    SquareRod,
    Stage,
    Throttle,
)


def between(low: float, high: float) -> SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


@st.composite
def directions(draw: DrawFn) -> Point:
    """An axis of any direction but straight up."""
    return Point(draw(between(-0.9, 0.9)), draw(st.sampled_from([1.0, -1.0])), draw(between(-1, 1)))


@st.composite
def ball_rods(draw: DrawFn, axes: SearchStrategy[Point] | None = None) -> BallRod:
    """A rod, pushed or pulled, that starts more or less along the paths of both its pins."""
    flat = axes is not None
    axis = draw(directions() if axes is None else axes)
    far_axis = draw(directions() if axes is None else axes)
    across = Point(draw(between(-1, 1)), 0.0, draw(st.sampled_from([1.0, -1.0])))
    arm = axis.unit().cross(across).cross(axis.unit()).unit() * draw(between(40, 90))
    push = draw(st.sampled_from([1.0, -1.0]))
    path = axis.unit().cross(arm).unit()
    tilt = arm.unit() * draw(between(-0.3, 0.3))
    out_of_plane = 0.0 if flat else draw(between(-0.2, 0.2))
    rod = (path + tilt + axis.unit() * out_of_plane).unit() * (push * draw(between(120, 400)))
    way = rod.unit() * push
    assume(abs(far_axis.unit().dot(way)) < 0.6)
    far_arm = way.cross(far_axis.unit()).unit() * draw(between(40, 90))
    far_arm = far_arm + way * draw(between(-15, 15))
    if not flat:
        far_arm = far_arm + far_axis.unit() * draw(between(-20, 20))
    pivot = Point(draw(between(-300, 300)), draw(between(-500, 500)), draw(between(0, 400)))
    pin = pivot + arm
    return BallRod(
        driving_pivot=pivot,
        driving_axis=axis,
        driving_pin=pin,
        driven_pivot=pin + rod - far_arm,
        driven_axis=far_axis,
        driven_pin=pin + rod,
    )


SQUARE_RODS = st.builds(
    SquareRod,
    driving_radius=between(40, 90),
    driven_radius=between(40, 90),
    rod_length=between(120, 600),
)
CABLES = st.builds(
    Cable, driving_radius=between(30, 150), driven_radius=between(20, 50), slack=between(0, 3)
)
STAGES = ball_rods() | SQUARE_RODS | CABLES
RODS = ball_rods() | SQUARE_RODS
SPRINGS = st.builds(Spring, torque_closed=between(50, 900), rate=between(0, 300))


@st.composite
def throttles(draw: DrawFn, stages: SearchStrategy[Stage] = STAGES, most: int = 3) -> Throttle:
    return Throttle(
        pad_room=draw(between(30, 80)),
        stages=tuple(draw(st.lists(stages, min_size=1, max_size=most))),
        full_opening=draw(between(1.1, 1.5)),
        springs=tuple(draw(st.lists(SPRINGS, min_size=2, max_size=3))),
        friction=draw(between(20, 200)),
    )


PADS = between(150, 260)
