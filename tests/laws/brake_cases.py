"""Cars, cylinders and brakes drawn at random for the laws of the brakes."""

from dataclasses import dataclass

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from pedalwright.brakes import (
    BrakeResult,
    Braking,
    Car,
    Disc,
    Drum,
    Load,
    Plumbing,
    Ratios,
    WheelBrake,
    brake_at,
    respond,
)
from pedalwright.core.units import Num
from pedalwright.hydraulics import (
    BalanceBar,
    Boost,
    Cylinder,
    Demand,
    Limiter,
    Masters,
    Servo,
    Tandem,
    Twin,
)


def between(low: float, high: float) -> SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


CARS = st.builds(
    Car,
    mass=between(500, 1500),
    front_share=between(0.38, 0.58),
    wheelbase=between(2000, 2800),
    cg_height=between(350, 600),
    tyre_radius=between(260, 340),
)
CYLINDERS = st.builds(Cylinder, bore=between(15, 26), stroke=between(25, 38))
TANDEMS = st.builds(Tandem, bore=between(15, 26), stroke=between(25, 38))
TWINS = st.builds(
    Twin,
    front=CYLINDERS,
    rear=CYLINDERS,
    bar=st.builds(BalanceBar, spacing=between(50, 80), offset=between(-10, 10)),
)
DISCS = st.builds(
    Disc,
    piston_bore=between(30, 60),
    pistons_one_side=st.sampled_from([1.0, 2.0]),
    pistons_moved=st.sampled_from([1.0, 2.0, 4.0]),
    effective_radius=between(90, 130),
    friction_low=between(0.28, 0.34),
    friction=between(0.35, 0.4),
    friction_high=between(0.41, 0.5),
    lift=between(0.1, 0.6),
)
DRUMS = st.builds(
    Drum,
    cylinder_bore=between(15, 26),
    pistons_moved=st.just(2.0),
    drum_radius=between(90, 140),
    factor_low=between(1.5, 2.0),
    factor=between(2.1, 2.6),
    factor_high=between(2.7, 4.4),
    lift=between(0.3, 1.0),
)
PLUMBINGS = st.builds(
    Plumbing, hoses=between(200, 2000), dead_stroke=between(0, 3), efficiency=between(0.8, 1.0)
)
#: A run-out servo, a limiter, a load: each may be there or not.
ASSISTED = st.builds(
    Tandem,
    bore=between(15, 26),
    stroke=between(25, 38),
    servo=st.builds(
        Servo,
        points=st.tuples(st.builds(Boost, push=between(200, 900), force=between(1000, 4000))),
    ),
)
LIMITED = st.builds(
    Plumbing,
    hoses=between(200, 2000),
    dead_stroke=between(0, 3),
    efficiency=between(0.8, 1.0),
    limiter=st.builds(Limiter, knee=between(0.5, 8), slope=st.just(0.0) | between(0.01, 1)),
)
LOADED = st.builds(
    Car,
    mass=between(500, 1500),
    front_share=between(0.38, 0.58),
    wheelbase=between(2000, 2800),
    cg_height=between(350, 600),
    tyre_radius=between(260, 340),
    grip=between(0.3, 1.1),
    load=st.builds(
        Load, mass=between(50, 300), front_share=between(0, 0.5), cg_height=between(350, 600)
    ),
)
DEMANDS = st.builds(Demand, front=between(500, 4000), rear=between(500, 4000))
PUSHES, RATIOS = between(50, 1500), between(2.5, 7)


@dataclass(frozen=True, kw_only=True, slots=True)
class Case:
    """Everything the brakes room is given."""

    car: Car
    masters: Masters
    front: WheelBrake
    rear: WheelBrake
    plumbing: Plumbing
    ratios: Ratios
    pad_travel: tuple[Num, Num, Num]
    push: Num

    def braking(self) -> Braking:
        ratio = self.ratios.hard_stop
        parts = (self.car, self.masters, self.front, self.rear, self.plumbing)
        return brake_at(*parts, push=self.push, ratio=ratio)

    def result(self) -> BrakeResult:
        parts = (self.car, self.masters, self.front, self.rear, self.plumbing)
        return respond(*parts, ratios=self.ratios, pad_travel=self.pad_travel)


def cases(
    masters: SearchStrategy[Masters] = TANDEMS | TWINS,
    front: SearchStrategy[WheelBrake] = DISCS | DRUMS,
    rear: SearchStrategy[WheelBrake] = DISCS | DRUMS,
    car: SearchStrategy[Car] = CARS,
    plumbing: SearchStrategy[Plumbing] = PLUMBINGS,
) -> SearchStrategy[Case]:
    return st.builds(
        Case,
        car=car,
        masters=masters,
        front=front,
        rear=rear,
        plumbing=plumbing,
        ratios=st.builds(Ratios, hard_stop=RATIOS, front_alone=RATIOS, rear_alone=RATIOS),
        pad_travel=st.tuples(between(40, 120), between(60, 180), between(60, 180)),
        push=PUSHES,
    )


@st.composite
def likes(draw: DrawFn) -> list[Case]:
    """Two to four cars with the same kinds of part, so that they make a batch."""
    masters = draw(st.sampled_from([TANDEMS, TWINS, ASSISTED]))
    front, rear = draw(st.sampled_from([DISCS, DRUMS])), draw(st.sampled_from([DISCS, DRUMS]))
    car, plumbing = (
        draw(st.sampled_from([CARS, LOADED])),
        draw(st.sampled_from([PLUMBINGS, LIMITED])),
    )
    like = cases(masters, front, rear, car, plumbing)
    return draw(st.lists(like, min_size=2, max_size=4))
