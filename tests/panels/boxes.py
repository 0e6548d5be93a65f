"""Invented pedal boxes for tests."""

from pedalwright.core.points import REARWARD, UP, Plane, Point
from pedalwright.panels.parts import (
    Bolts,
    Box,
    Cheeks,
    Cover,
    Doubler,
    FootTub,
    Gusset,
    Hanger,
    HeelPlate,
    Rail,
    Rivets,
    Stiffener,
    Tie,
    Wall,
)
from pedalwright.survey.parts import Face, Line, Survey

RIVETS = Rivets(diameter=4.8, pitch=35.0, edge=10.0)
BOLTS = Bolts(diameter=6.0, pitch=60.0, edge=10.0)
SURVEY = Survey(
    faces=(
        Face(name="front_wall", plane=Plane(normal=REARWARD, offset=0.0)),
        Face(name="floor", plane=Plane(normal=UP, offset=0.0)),
    ),
    lines=(
        Line(
            name="cowl_rail",
            start=Point(150.0, 0.0, 420.0),
            end=Point(150.0, 600.0, 420.0),
            diameter=25.0,
            height=25.0,
            wall=2.0,
        ),
    ),
)
RAIL = Rail(name="cowl rail", line="cowl_rail", metal="S235")
WALL = Wall(
    name="front wall",
    face="front_wall",
    low=Point(0.0, 165.0, 0.0),
    high=Point(0.0, 545.0, 390.0),
    thickness=1.6,
    metal="5251-H22",
)
FLOOR = Wall(
    name="floor",
    face="floor",
    low=Point(0.0, 165.0, 0.0),
    high=Point(500.0, 545.0, 0.0),
    thickness=1.6,
    metal="5251-H22",
)
PATCH = Doubler(
    name="patch",
    on="front wall",
    middle=Point(0.0, 385.0, 286.0),
    width=160.0,
    height=160.0,
    thickness=3.0,
    metal="S275",
    joined=RIVETS,
)
HANGER = Hanger(
    name="brake hanger",
    rail="cowl rail",
    pivot=Point(120.0, 385.0, 350.0),
    spacing=60.0,
    width=40.0,
    thickness=3.0,
    metal="S275",
)
CHEEKS = Cheeks(
    name="brake box",
    on="front wall",
    pivot=Point(120.0, 385.0, 350.0),
    cylinder=Point(0.0, 385.0, 293.0),
    spacing=60.0,
    below=100.0,
    above=90.0,
    rise=24.5,
    depth_above=170.0,
    depth_below=60.0,
    thickness=3.0,
    metal="S275",
    flange=25.0,
    rail="cowl rail",
    joined=BOLTS,
)
FIRST = Box(walls=(WALL,), doublers=(PATCH,), rails=(RAIL,), hangers=(HANGER,))
SECOND = Box(walls=(WALL,), rails=(RAIL,), cheeks=(CHEEKS,))
EVERYTHING = Box(
    walls=(WALL, FLOOR),
    rails=(RAIL,),
    cheeks=(CHEEKS,),
    gussets=(
        Gusset(
            name="gusset",
            one="front wall",
            other="floor",
            at=Point(0.0, 250.0, 0.0),
            leg_one=120.0,
            leg_other=150.0,
            flange=25.0,
            thickness=2.0,
            metal="DC01",
            joined=RIVETS,
        ),
    ),
    stiffeners=(
        Stiffener(
            name="stiffener",
            on="front wall",
            start=Point(0.0, 180.0, 200.0),
            end=Point(0.0, 330.0, 200.0),
            height=25.0,
            foot=25.0,
            thickness=1.6,
            metal="5251-H22",
            side="far",
            joined=RIVETS,
        ),
    ),
    ties=(
        Tie(
            name="tie",
            start=Point(0.0, 300.0, 350.0),
            end=Point(300.0, 545.0, 350.0),
            start_on="front wall",
            outside=16.0,
            inside=12.0,
            metal="E235+N",
        ),
    ),
    covers=(
        Cover(
            name="lid",
            on="front wall",
            middle=Point(0.0, 480.0, 150.0),
            width=100.0,
            height=140.0,
            depth=15.0,
            thickness=1.6,
            metal="5251-H22",
            joined=RIVETS,
        ),
    ),
    foot_tubs=(
        FootTub(
            name="foot-tub",
            on="floor",
            middle=Point(265.0, 365.0, 0.0),
            length=370.0,
            width=310.0,
            depth=75.0,
            flange=20.0,
            thickness=1.6,
            metal="5251-H22",
            joined=RIVETS,
        ),
    ),
    heel_plates=(
        HeelPlate(
            name="heel plate",
            on="floor",
            middle=Point(480.0, 365.0, 0.0),
            length=30.0,
            width=200.0,
            lip=20.0,
            thickness=1.6,
            metal="5251-H22",
            joined=RIVETS,
        ),
    ),
)
