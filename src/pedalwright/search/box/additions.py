"""Parts that would stiffen a box, as large as there is room for."""

from pedalwright.assess.stroke import PedalName
from pedalwright.design import Design
from pedalwright.panels.parts import Bolts, Cheeks, Doubler, Rivets, Wall
from pedalwright.panels.recipes.ground import lying, place
from pedalwright.search.box.built import carrier, part, wall_under
from pedalwright.search.changes import one
from pedalwright.shell.parts import Plane

#: A channel reaches so far below and above the cylinder's middle; clear of an edge, mm (ours).
LOW, HIGH, CLEAR_OF_EDGE = 100.0, 90.0, 8.0
BOLTED = Bolts(diameter=6.0, pitch=60.0, edge=12.0)
RIVETED = Rivets(diameter=4.8, pitch=35.0, edge=10.0)


def plate(
    design: Design, pedal: PedalName, wall: Wall, wide: float, thickness: float
) -> Doubler | None:
    """A plate about the cylinder's middle, as far as the wall goes; None where none fits.

    In the place of the one that carries the cylinder now, if there is one.
    """
    rod = design.brake.rod if pedal == "brake" else design.clutch.rod
    there = part(design.box, carrier(design, pedal).mount.cylinder_on)
    plane = lying(design.survey.face(wall.face))
    middle = there.middle if isinstance(there, Doubler) else rod.socket
    x, y = place(plane, middle)
    low, high = place(plane, wall.low), place(plane, wall.high)
    room_x = min(x - min(low[0], high[0]), max(low[0], high[0]) - x) - CLEAR_OF_EDGE / 2
    room_y = min(y - min(low[1], high[1]), max(low[1], high[1]) - y) - CLEAR_OF_EDGE / 2
    half_x, half_y = min(wide / 2, room_x), min(wide / 2, room_y)
    if min(half_x, half_y) < one(carrier(design, pedal).mount.flange_height):
        return None
    return Doubler(
        name=there.name if isinstance(there, Doubler) else f"{pedal}_plate",
        on=wall.name,
        middle=plane.point((x, y)),
        width=2 * half_x,
        height=2 * half_y,
        thickness=thickness,
        metal="S275",
        joined=there.joined if isinstance(there, Doubler) else RIVETED,
    )


def channel_for(design: Design, pedal: PedalName) -> Cheeks | None:
    """A channel that reaches from below the cylinder to beyond the pivot; None where none fits."""
    wall = wall_under(design, pedal)
    if wall is None:
        return None
    own = design.brake if pedal == "brake" else design.clutch
    plane = lying(design.survey.face(wall.face))
    pivot, socket = own.pedal.pivot, place(plane, own.rod.socket)
    top = max(place(plane, wall.low)[1], place(plane, wall.high)[1])
    bottom = min(place(plane, wall.low)[1], place(plane, wall.high)[1])
    above = min(HIGH, top - socket[1] - CLEAR_OF_EDGE / 2)
    below = min(LOW, socket[1] - bottom - CLEAR_OF_EDGE / 2)
    off = float(plane.height(pivot))
    reach = place(plane, pivot)[1]
    if not (off > 20.0 and above > 30.0 and below > 30.0):
        return None
    rail, rise, deep = _rail_above(design, plane, socket[1] + above, off)
    if not rail and reach > socket[1] + above:
        rise = reach + 25.0 - socket[1] - above
    return Cheeks(
        name=f"{pedal}_channel",
        on=wall.name,
        pivot=pivot,
        cylinder=plane.point(socket),
        spacing=one(own.carrier.pivot.span),
        below=below,
        above=above,
        rise=rise,
        depth_above=deep,
        depth_below=60.0,
        thickness=3.0,
        metal="S275",
        flange=25.0 if rail else 0.0,
        rail=rail,
        joined=BOLTED,
    )


def _rail_above(design: Design, plane: Plane, top: float, off: float) -> tuple[str, float, float]:
    """A rail that the cheeks can reach, how far they rise to it, how deep they are there."""
    for rail in design.box.rails:
        line = design.survey.line(rail.line)
        middle = (line.start + line.end) * 0.5
        half = one(line.diameter if line.height is None else line.height) / 2
        rise = place(plane, middle)[1] - half - top
        stands = float(plane.height(middle))
        if 0.0 <= rise < 80.0 and off - 60.0 < stands < off + 120.0:
            return rail.name, rise, stands + one(line.diameter) / 2 + 7.0
    return "", 0.0, off + 25.0
