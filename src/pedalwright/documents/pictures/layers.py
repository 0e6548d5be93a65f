"""Layers laid under and over the big drawing: where shoes go, and what room is left."""

from collections.abc import Iterator
from itertools import pairwise
from math import dist

from pedalwright.assess import Assessment
from pedalwright.assess.stroke import pressed
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.documents.pictures.feet import Scene, seat_of, shoe_outline
from pedalwright.documents.pictures.shown import near
from pedalwright.documents.pictures.stroke import Look
from pedalwright.documents.pictures.views import View, hull, words
from pedalwright.drawing import XY, Fill, Item, Leader, Line, Polyline, Tone

#: Places of the stroke at which a shoe is drawn; its way is filled from each to the next.
STATIONS = (0.0, 0.5, 1.0)
#: Nearer on the drawing than this and one stands over the other, mm.
APART = 12.0
#: So many of the nearest things are named.
NEAREST = 4


def sweep(view: View, design: Design, assessment: Assessment, look: Look) -> Iterator[Item]:
    """The shoe of everybody who is drawn, over the whole stroke."""
    first = look.drivers[:1]
    stations = [pressed(design, assessment, look.pedal, share, *first) for share in STATIONS]
    bodies = {one.name: seat_of(one, look.pedal).body for one in assessment.drivers}
    for name in look.drivers:
        postures = [leg.posture for station in stations for leg in station.legs if leg.name == name]
        outlines = [shoe_outline(view, bodies[name], posture) for posture in postures]
        title = f"where the shoe of {name} goes"
        for one, other in pairwise(outlines):
            yield Polyline(
                hull((*one, *other)), closed=True, line=Line.NONE, fill=Fill.TINT,
                part=f"sweep-{name}", title=title,
            )  # fmt: skip
        for outline in outlines:
            yield Polyline(
                outline, closed=True, line=Line.THIN, tone=Tone.QUIET, part=f"sweep-{name}"
            )


def room(
    view: View, shown: Scene, pad: Point, assessment: Assessment, look: Look
) -> Iterator[Item]:
    """From the pad to what arm and pad come nearest to over the stroke, with the least room left.

    The line shows which thing is meant; where along the stroke the least occurs it does not say.
    """
    start = view(pad)
    for thing, least in near(assessment, look.pedal)[:NEAREST]:
        there = _nearest(view, shown, thing, pad)
        if there is None or not dist(start, there) > APART:  # one lies over the other, or nowhere
            continue
        yield Polyline(
            (start, there), line=Line.THIN, tone=Tone.ACCENT, part="room",
            title=f"least room to the {thing} over the whole stroke",
        )  # fmt: skip
        says = f"{look.units.lengths(least, 1)} to {thing}"
        yield Leader(there, says, to=(5.0, 5.0), tone=Tone.ACCENT, part="room")


def _nearest(view: View, shown: Scene, thing: str, pad: Point) -> XY | None:
    """Where a thing is nearest to the pad's middle, on the paper."""
    survey = shown.design.survey
    for face in survey.faces:
        if words(face.name) == thing:
            normal = face.plane.normal
            return view(pad - normal * float(face.plane.height(pad)))
    for line in survey.lines:
        if words(line.name) == thing:
            return view(_on_line(line.start, line.end, pad))
    for box in survey.obstacles:
        if words(box.name) == thing:
            return view(_in_box(box.low, box.high, pad))
    for built in shown.pedals:
        if thing in {built.name, built.which}:
            return view(built.lever.pad)
    return None


def _on_line(start: Point, end: Point, pad: Point) -> Point:
    way = end - start
    share = float((pad - start).dot(way)) / float(way.dot(way))
    return start + way * min(1.0, max(0.0, share))


def _in_box(low: Point, high: Point, pad: Point) -> Point:
    return Point(
        *(
            min(max(float(at), float(a)), float(b))
            for at, a, b in zip(
                (pad.x, pad.y, pad.z), (low.x, low.y, low.z), (high.x, high.y, high.z), strict=True
            )
        )
    )
