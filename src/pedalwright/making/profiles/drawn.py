"""A profile as shapes, grouped by tool; and a flat piece as a profile."""

from collections.abc import Iterator
from math import atan2, cos, degrees, pi, sin

from pedalwright.core.lengths import Written, millimetres
from pedalwright.drawing import (
    CentreCross,
    Circle,
    Drawing,
    Group,
    Item,
    Leader,
    Line,
    Polyline,
    Text,
    polar,
)
from pedalwright.making.bending import FlatPattern, drawn_oval
from pedalwright.making.bending.drawn import BEND, CUT, DRILL, MARK
from pedalwright.making.profiles.parts import BendLine, Bore, Profile
from pedalwright.making.profiles.shape import corners, polygon

#: Holes nearer to the upper edge have their note above it; from note to note, mm.
NEAR_TOP, LINE = 60.0, 6.5


def profile_of(pattern: FlatPattern) -> Profile:
    """A flat piece as it is marked out: bends by their middle lines."""
    return Profile(
        name=pattern.name,
        outline=corners(pattern.outline),
        bores=tuple(
            Bore(
                name=hole.name,
                centre=hole.centre,
                diameter=hole.diameter,
                after_bending=drawn_oval(pattern, hole),
            )
            for hole in pattern.holes
        ),
        bends=tuple(
            BendLine(
                name=bend.name,
                start=bend.middle[0],
                end=bend.middle[1],
                way="up" if bend.up else "down",
                angle=abs(bend.angle),
                radius=bend.radius,
            )
            for bend in pattern.bends
        ),
        metal=pattern.sheet.metal,
        thickness=pattern.sheet.thickness,
    )


def profile_drawing(profile: Profile, written: Written = millimetres) -> Drawing:
    """The part at full size."""
    return Drawing(
        name=profile.name.replace(" ", "-"),
        title=profile.name,
        description=f"Outline with {len(profile.bores)} holes and {len(profile.bends)} bends.",
        shapes=(
            Group((Polyline(polygon(profile.outline), closed=True),), part=CUT, title="cut"),
            Group(tuple(_bends(profile)), part=BEND, title="bend"),
            Group(tuple(_bores(profile, written)), part=DRILL, title="drill"),
            Group(tuple(_marks(profile, written)), part=MARK, title="mark"),
        ),
    )


def bend_line_words(bend: BendLine) -> str:
    """What is written along a bend."""
    return f"{bend.name} {bend.way} {round(degrees(bend.angle), 1):g}° R{bend.radius:g}"


def bore_words(bore: Bore, written: Written = millimetres) -> str:
    """What is written beside a hole."""
    return f"{bore.name} Ø{written(bore.diameter, 2)}"


def _bends(profile: Profile) -> Iterator[Item]:
    for bend in profile.bends:
        line = Line.CENTRE if bend.way == "up" else Line.HIDDEN
        yield Polyline((bend.start, bend.end), line=line, part=bend.name)


def _bores(profile: Profile, written: Written) -> Iterator[Item]:
    for bore in profile.bores:
        yield Circle(
            bore.centre, bore.diameter / 2, part=bore.name, title=bore_words(bore, written)
        )
        yield CentreCross(bore.centre, bore.diameter / 2)


def _marks(profile: Profile, written: Written) -> Iterator[Item]:
    for bend in profile.bends:
        angle = atan2(bend.end[1] - bend.start[1], bend.end[0] - bend.start[0])
        if cos(angle) < -1e-9:
            angle += pi
        at = (
            bend.start[0] + 0.3 * (bend.end[0] - bend.start[0]) - 1.0 * sin(angle),
            bend.start[1] + 0.3 * (bend.end[1] - bend.start[1]) + 1.0 * cos(angle),
        )
        yield Text(at, bend_line_words(bend), angle=angle)
    top = max(y for _, y in polygon(profile.outline))
    # the leftmost note stands highest, so that no leader runs through another's words
    rightmost_first = sorted(profile.bores, key=lambda bore: -bore.centre[0])
    for level, bore in enumerate(rightmost_first):
        tip = polar(bore.centre, bore.diameter / 2, pi / 3)
        words = f"{bore_words(bore, written)} {bore.use}".strip()
        step = LINE * level if top - tip[1] < NEAR_TOP else 0.0
        yield Leader(tip, words, to=(6.0, _over(tip[1], top) + step), end="arrow")
    for mark in profile.marks:
        yield CentreCross(mark.at, 4.0, part=mark.name)
        yield Leader(mark.at, mark.name, to=(-6.0, _over(mark.at[1], top)))


def _over(y: float, top: float) -> float:
    """How far up to write, clear of the saw's line where that is near."""
    return top - y + 3.0 if top - y < NEAR_TOP else 9.0
