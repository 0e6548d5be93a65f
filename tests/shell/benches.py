"""Small benches for tests, of invented sheets."""

from pedalwright.core.points import REARWARD, RIGHT, UP, Point
from pedalwright.shell.mesh import Material
from pedalwright.shell.parts import (
    Bench,
    Contact,
    Fastener,
    Hole,
    Patch,
    Place,
    Plane,
    Seam,
    Sheet,
    Support,
)

STEEL = Material(elastic=210000.0, poisson=0.3, yield_strength=235.0)
ALLOY = Material(elastic=70000.0, poisson=0.33, yield_strength=125.0)


def rectangle(length: float, height: float) -> tuple[Place, ...]:
    return ((0.0, 0.0), (length, 0.0), (length, height), (0.0, height))


def flat(name: str, outline: tuple[Place, ...], *, z: float = 0.0, t: float = 2.0) -> Sheet:
    """A level steel sheet."""
    plane = Plane(origin=Point(0.0, 0.0, z), along=REARWARD, across=RIGHT)
    return Sheet(name=name, plane=plane, outline=outline, thickness=t, material=STEEL)


def box(size: float) -> Bench:
    """An open box: a front wall with a hole and a riveted doubler, a floor and two cheeks."""
    corner = Point(0.0, 0.0, 0.0)
    cheek = ((0, 0), (450, 0), (450, 250), (300, 400), (0, 400))
    wall = Sheet(
        name="wall",
        plane=Plane(origin=corner, along=RIGHT, across=UP),
        outline=rectangle(500, 400),
        thickness=1.6,
        material=ALLOY,
        holes=(Hole(centre=(230, 200), diameter=40), Hole(centre=(400, 300), diameter=60)),
    )
    doubler = Sheet(
        name="doubler",
        plane=Plane(origin=Point(2.3, 150.0, 120.0), along=RIGHT, across=UP),
        outline=rectangle(160, 160),
        thickness=3.0,
        material=STEEL,
        holes=(Hole(centre=(80, 80), diameter=40),),
    )
    floor = Sheet(
        name="floor",
        plane=Plane(origin=corner, along=REARWARD, across=RIGHT),
        outline=rectangle(450, 500),
        thickness=1.6,
        material=ALLOY,
    )
    cheeks = tuple(
        Sheet(
            name=f"cheek {side}",
            plane=Plane(origin=Point(0.0, y, 0.0), along=REARWARD, across=UP),
            outline=cheek,
            thickness=1.6,
            material=ALLOY,
        )
        for side, y in (("left", 0.0), ("right", 500.0))
    )
    rivets = [(y, z) for y in (160, 230, 300) for z in (130, 200, 270) if (y, z) != (230, 200)]
    return Bench(
        sheets=(wall, floor, *cheeks, doubler),
        seams=(
            seam("wall", "floor", (0, 0, 0), (0, 500, 0)),
            seam("wall", "cheek left", (0, 0, 0), (0, 0, 400)),
            seam("wall", "cheek right", (0, 500, 0), (0, 500, 400)),
            seam("floor", "cheek left", (0, 0, 0), (450, 0, 0)),
            seam("floor", "cheek right", (0, 500, 0), (450, 500, 0)),
        ),
        fasteners=tuple(
            Fastener(
                name=f"rivet {y} {z}",
                at=Point(0.0, float(y), float(z)),
                sheets=("wall", "doubler"),
                shear=2e4,
                axial=5e4,
                part="rivets",
            )
            for y, z in rivets
        ),
        contacts=(Contact(layer="doubler", base="wall"),),
        patches=tuple(
            Patch(name=f"bolt {y}", sheet="doubler", centre=Point(2.3, y, 200.0), width=16.0)
            for y in (195.0, 265.0)
        ),
        supports=(
            Support(name="rear", at=(Point(450.0, 0.0, 0.0), Point(450.0, 500.0, 0.0))),
            Support(name="left", at=(Point(450.0, 0.0, 0.0), Point(450.0, 0.0, 250.0))),
        ),
        size=size,
    )


def seam(
    first: str, second: str, start: tuple[float, float, float], end: tuple[float, float, float]
) -> Seam:
    return Seam(
        name=f"{first} to {second}",
        start=Point(*map(float, start)),
        end=Point(*map(float, end)),
        sheets=(first, second),
    )
