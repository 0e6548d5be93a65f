"""The load loop: one push from the foot to the frame, drawn where it goes and part by part.

Three pictures side by side, from the car's left as the side elevation: the way of the push through
the metal, what acts on the parts that carry the pedal, what acts on the pedal. Every force is drawn
to one scale, with its figure, and acts at its arrow's tip. A table below says what each part takes
and what it hands on.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise
from math import dist, hypot, isfinite

from pedalwright.assess import Assessment
from pedalwright.assess.loop import FRAME, MOUNT_SAID, Act, Body, Loop, load_loop
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.arrows import Arrow, Rows, Way
from pedalwright.documents.pictures.places import pad_outline, seen
from pedalwright.documents.pictures.shown import Shown, Which, shown
from pedalwright.documents.pictures.views import hull, words
from pedalwright.drawing import (
    XY,
    Box,
    Circle,
    Drawing,
    Fill,
    Hatch,
    Item,
    Leader,
    Line,
    Polyline,
    Text,
    Tone,
)
from pedalwright.panels.made import Made

#: Millimetres of the drawing for each newton: the largest at which the largest force has room.
SCALES, ROOM = (0.2, 0.15, 0.1, 0.08, 0.06, 0.05, 0.04, 0.03, 0.02, 0.01), 126.0
#: Length and width of a cylinder as it is drawn, half a mount, half the frame's hatching, mm.
CYLINDER, MOUNT, FRAME_HALF = (90.0, 30.0), 20.0, (34.0, 9.0)
#: From picture to picture, and how far outside everything the way through the frame runs, mm.
BETWEEN, OUTSIDE = 130.0, 36.0
#: Room beside a pivot for what is said of its mount, mm.
NOTE = 220.0
#: A sheet whose outline on the paper is narrower than this is seen edge on, mm.
EDGE_ON = 1.0
#: Room on a page laid across, mm, and the scales that are tried for it: it is a picture of forces,
#: from which no length is taken.
PAPER, REDUCED = (268.0, 158.0), (1 / 4, 1 / 5, 1 / 6, 1 / 7, 1 / 8, 1 / 10)
#: The scale bar's force, N.
BAR = 1000.0
SAYS = {
    "closed": "closed in the metal: the frame bears the foot's push and no more",
    "open": "open: the push comes back through the frame",
    "said": f"{MOUNT_SAID}: whether push and pull meet in the metal is not known",
    "not judged": "the box cannot be judged: whether push and pull meet is not known",
}

#: Where a point of the car stands on the sheet.
Put = Callable[[Point], XY]


def load_loop_picture(
    design: Design, assessment: Assessment, which: Which, units: Units
) -> Drawing:
    """The loop of one pedal, at the push its give is judged at."""
    loop = load_loop(design, assessment, which)
    push = units.said(loop.push, "N")
    sheet = _Sheet(loop, shown(design, assessment, which), units, force_scale(loop))
    drawing = Drawing(
        name=f"load-{which}",
        title=f"Where {push} on the {which} pad go",
        description=(
            f"Where {push} on the {which} pad go, with every force on the parts that carry them; "
            f"{SAYS[loop.closing]}."
        ),
        shapes=tuple(sheet.shapes()),
    )
    return next((own for own in map(partial(_at, drawing), REDUCED) if own), drawing)


def _at(drawing: Drawing, scale: float) -> Drawing | None:
    """At a scale, if there it has room."""
    own = replace(drawing, scale=scale)
    window = own.laid_out().window
    fits = window.width * scale <= PAPER[0] and window.height * scale <= PAPER[1]
    return own if fits or scale == REDUCED[-1] else None


def force_scale(loop: Loop) -> float:
    """Millimetres of the drawing for each newton."""
    sizes = [float(act.size) for body in loop.bodies for act in body.acts]
    most = max((size for size in sizes if isfinite(size)), default=0.0)
    return next((scale for scale in SCALES if scale * most <= ROOM), SCALES[-1])


@dataclass(frozen=True, slots=True)
class _Sheet:
    """One loop, ready to be laid out; `per` is mm of the drawing for each newton."""

    loop: Loop
    drawn: Shown
    units: Units
    per: float

    def shapes(self) -> Iterator[Item]:
        """Three pictures, then the table and the scale of the forces."""
        box, pedal = list(self._box_places()), list(self._pedal_places())
        arms = [tail for act in self.loop.bodies[0].acts for tail in self._reach(act)]
        held = [tail for body in self._carriers() for act in body.acts for tail in self._reach(act)]
        around = Box.around(at for at in (*box, *pedal, *arms, *held) if isfinite(sum(at)))
        if around is None:
            return
        bottom, top = around.bottom, around.top + 12.0
        right = 0.0
        for title, places, draws in (
            ("the way of the push", [*box, *pedal, *self._noted()], self._whole),
            ("on what carries it", [*box, *held], self._on_carriers),
            ("on the pedal", [*self._pedal_places(shoe=False), *arms], self._on_pedal),
        ):
            own = Box.around(at for at in places if isfinite(sum(at)))
            if own is None:
                continue
            put = _shifted(right - own.left)
            yield from draws(put)
            yield Text((right, top + OUTSIDE), title, height=3.5, align="start")
            right += max(own.width, 235.0) + BETWEEN
        yield from self._below(bottom - (14.0 if self._above else 84.0), right - BETWEEN)

    # What stands where.

    def _carriers(self) -> Sequence[Body]:
        """What the box, or each mount, takes: all between the cylinder and the frame."""
        names = {body.name for body in self.loop.bodies if any(a.by == FRAME for a in body.acts)}
        return [body for body in self.loop.bodies if body.name in names - {"relay lever"}]

    def _reach(self, act: Act) -> tuple[XY, XY]:
        x, z = seen(act.at)
        return (x, z), (x - float(act.force.x) * self.per, z - float(act.force.z) * self.per)

    def _pedal_places(self, *, shoe: bool = True) -> Iterator[XY]:
        yield seen(self.loop.pivot)
        yield from pad_outline(self.drawn.part.pedal, self.drawn.lever, self.loop.here.pad)
        for rod in self.drawn.pressed.rods:
            yield from rod
        if shoe:
            yield from self._shoe()

    def _box_places(self) -> Iterator[XY]:
        loop = self.loop
        yield from (seen(place) for path in (loop.through, *loop.out) for place in path.places)
        yield from self._cylinder(seen)
        if loop.made is not None:
            for panel in loop.made.panels:
                for flat in panel.flats():
                    yield from (seen(flat.plane.point(place)) for place in flat.outline)
            yield from (seen(end) for tube in loop.made.tubes for end in (tube.start, tube.end))
            yield from _frame_places(loop.made)

    def _noted(self) -> Iterator[XY]:
        """Room for the note on mounts."""
        if self.loop.made is None:
            x, z = seen(self.loop.pivot)
            yield x + NOTE, z

    # The three pictures.

    def _whole(self, put: Put) -> Iterator[Item]:
        loop = self.loop
        yield from self._box(put)
        yield Polyline(
            tuple(self._cylinder(put)), closed=True, fill=Fill.PAPER, part="cylinder",
            title=loop.far,
        )  # fmt: skip
        yield from self._pedal(put)
        yield from self._way(put)
        yield from self._names(put)
        foot = loop.bodies[0].acts[0]
        yield self._arrow(foot, put, "foot", (4.0, -5.0))

    def _on_carriers(self, put: Put) -> Iterator[Item]:
        yield from self._box(put)
        for body in self._carriers():
            for act in body.acts:
                tone = Tone.ACCENT if act.by == FRAME else Tone.INK
                up = 5.0 if act.by == FRAME or "pedal" in act.by else -5.0
                side = -3.0 if float(act.force.x) > 0.0 else 3.0
                name = {f"{self.loop.pedal} pedal": "pivot on it"}.get(act.by, f"{act.by} on it")
                yield self._arrow(act, put, name, (side, up), tone)

    def _on_pedal(self, put: Put) -> Iterator[Item]:
        yield from self._pedal(put, whole=False)
        for act in self.loop.bodies[0].acts:
            side = -3.0 if float(act.force.x) > 0.0 else 3.0
            pivot = act is self.loop.bodies[0].acts[-1]
            up, name = (5.0, "pivot") if pivot else (-5.0, act.by)
            yield self._arrow(act, put, name, (side, up))

    def _arrow(self, act: Act, put: Put, name: str, to: XY, tone: Tone = Tone.INK) -> Arrow:
        force = (float(act.force.x) * self.per, float(act.force.z) * self.per)
        says = f"{name}\n{self.units.said(act.size, 'N')}"
        return Arrow(put(act.at), force, says, to, tone)

    # Things.

    def _box(self, put: Put) -> Iterator[Item]:
        loop = self.loop
        if loop.made is None:
            yield from self._mounts(put)
        else:
            on = {*loop.through.parts, *(part for path in loop.out for part in path.parts)}
            yield from _sheets(loop.made, on, put)
            yield from _frame(loop.made, put)
        yield Circle(put(loop.pivot), 6.0, fill=Fill.PAPER, part="pivot", title="pivot's shaft")

    def _cylinder(self, put: Put) -> Iterator[XY]:
        """From its flange on, the way the piston moves."""
        (x, z), (ax, az) = put(self._flange()), seen(self.loop.ahead)
        length, half = CYLINDER[0], CYLINDER[1] / 2
        for along, side in ((0.0, half), (length, half), (length, -half), (0.0, -half)):
            yield x + ax * along - az * side, z + az * along + ax * side

    def _flange(self) -> Point:
        loop = self.loop
        first = (*loop.through.places, *loop.out[0].places)[:1]
        return first[0] if first else loop.here.socket

    def _mounts(self, put: Put) -> Iterator[Item]:
        """Blocks for flange and pivot, of which only the stiffness was said."""
        for at in (self._flange(), self.loop.pivot):
            x, z = put(at)
            low, high = (x - MOUNT, z - MOUNT), (x + MOUNT, z + MOUNT)
            corners = (low, (high[0], low[1]), high, (low[0], high[1]))
            yield Hatch(corners, part="mount")
            yield Polyline(corners, closed=True, line=Line.HIDDEN, part="mount", title=MOUNT_SAID)

    def _pedal(self, put: Put, *, whole: bool = True) -> Iterator[Item]:
        loop, drawn = self.loop, self.drawn
        by = put(Point(0.0, 0.0, 0.0))[0]
        pivot, pad, pin = put(loop.pivot), put(loop.here.pad), put(loop.here.pin)
        yield Polyline((pin, pivot, pad), part="arm", title="pedal arm")
        if whole:
            yield Polyline(
                _by(self._shoe(), by), closed=True, line=Line.THIN, tone=Tone.QUIET, part="shoe",
                title="shoe",
            )  # fmt: skip
            for rod in drawn.pressed.rods:
                yield Polyline(_by(rod, by), part="push-rod", title="push rod")
            yield Polyline(_by(drawn.pressed.relay or (), by), part="relay", title="relay lever")
        for at, size in ((pivot, 8.0), (pin, 4.5)):
            yield Circle(at, size, fill=Fill.PAPER, part="pedal-joint")
        face = pad_outline(drawn.part.pedal, drawn.lever, loop.here.pad)
        yield Polyline(_by(face, by), closed=True, fill=Fill.PAPER, part="pad", title="pad")

    def _shoe(self) -> tuple[XY, ...]:
        for name, seat in self.drawn.seats[:1]:
            back = -dict(self.drawn.aft).get(name, 0.0)
            return _by(map(seen, (seat.full.ankle, seat.full.heel, seat.full.toe)), back)
        return ()

    def _way(self, put: Put) -> Iterator[Item]:
        """Pin to pivot by the arm, pin to flange by the rod, and how those two meet."""
        loop = self.loop
        rods = [put(loop.here.socket), put(loop.here.pin), put(loop.pivot)]
        if loop.here.relay is not None and self.drawn.pressed.relay:
            by = put(Point(0.0, 0.0, 0.0))[0]
            rods[1:1] = list(_by(self.drawn.pressed.relay[::-1], by))
        says = SAYS[loop.closing]
        if loop.closing == "closed":
            back = [put(place) for place in loop.through.places]
            one, other = max(pairwise(back), key=lambda ends: dist(*ends))
            middle = ((one[0] + other[0]) / 2.0, (one[1] + other[1]) / 2.0)
            yield Way((*rods, *back[::-1], rods[0]), part="loop", title=says)
            yield Leader(middle, says.split(":")[0], to=(14.0, 9.0), tone=Tone.ACCENT, part="says")
            return
        if not loop.out[0].places or not loop.out[1].places:
            yield Way(tuple(rods), part="loop", title=says)
            yield from self._unknown(rods[0], rods[-1])
            return
        first, last = ([put(place) for place in path.places] for path in loop.out)
        yield Way((*first[::-1], *rods, *last[1:]), part="loop", title=says)
        yield from self._frame_way(first[-1], last[-1])

    @property
    def _above(self) -> bool:
        """Whether the way through the frame runs above everything, or below."""
        ends = [float(place.z) for path in self.loop.out for place in path.places[-1:]]
        return not ends or sum(ends) > len(ends) * float(self.loop.pivot.z)

    def _frame_way(self, one: XY, other: XY) -> Iterator[Item]:
        """Round outside everything, from where one end meets the frame to where the other does."""
        box = [at for at in (*self._box_places(), *self._pedal_places()) if isfinite(sum(at))]
        high, low = max(z for _, z in box), min(z for _, z in box)
        above = self._above
        level = high + OUTSIDE if above else low - OUTSIDE
        left, right = sorted((one, other))
        apart = 15.0 if right[0] - left[0] < 30.0 else 0.0
        across = ((left[0] - apart, level), (right[0] + apart, level))
        yield Way((left, across[0], across[1], right), broken=True, part="open",
                  title=SAYS["open"])  # fmt: skip
        says = SAYS["open"].replace("comes ", "comes\n")
        yield Leader(
            across[1], says, to=(4.0, -3.0 if above else -4.0), tone=Tone.ACCENT, part="says"
        )

    def _unknown(self, flange: XY, pivot: XY) -> Iterator[Item]:
        middle = ((flange[0] + pivot[0]) / 2.0, (flange[1] + pivot[1]) / 2.0)
        yield Way((flange, pivot), broken=True, tone=Tone.QUIET, part="not-known",
                  title=SAYS[self.loop.closing])  # fmt: skip
        yield Leader(middle, "closed or open:\nnot known", to=(16.0, -24.0), part="says")

    def _names(self, put: Put) -> Iterator[Item]:
        loop = self.loop
        yield Leader(put(loop.here.pin), "push rod" if loop.bodies[1].name == "push rod"
                     else loop.bodies[1].name, to=(9.0, 1.0))  # fmt: skip
        corners = list(self._cylinder(put))
        end = ((corners[1][0] + corners[2][0]) / 2.0, (corners[1][1] + corners[2][1]) / 2.0)
        yield Leader(end, loop.far, to=(2.0, -9.0))
        if loop.made is None:
            says = MOUNT_SAID.replace(", ", ",\n") if loop.closing == "said" else "not judged"
            yield Leader(put(loop.pivot), f"each a {says}", to=(9.0, -6.0))
            return
        held = (one.part for one in loop.made.held)
        tubes = (tube.name for tube in loop.made.tubes)
        ways = (path.parts for path in (loop.through, *loop.out))
        named = dict.fromkeys((*(part for way in ways for part in way), *held, *tubes))
        for name in named:
            at = _stands(loop.made, name)
            if at is not None:
                yield Leader(put(at), words(name).split(",")[0], to=(-6.0, 7.0), tone=Tone.QUIET)
        for x, z in sorted(_frame_places(loop.made), key=lambda at: at[1])[:1]:
            beside = put(Point(x + FRAME_HALF[0], 0.0, z))
            yield Leader(beside, "frame", to=(6.0, 3.0), end="none", tone=Tone.QUIET)

    # Below.

    def _below(self, top: float, right: float) -> Iterator[Item]:
        said = self.units.said
        rows = [("part", "takes", "hands on")]
        for body in self.loop.bodies:
            takes, hands = _takes(body)
            rows.append(
                (
                    words(body.name).split(",")[0],
                    ", ".join(f"{_named(a)} {said(a.size, 'N')}" for a in takes),
                    ", ".join(f"{_named(a)} {said(a.size, 'N')}" for a in hands),
                )
            )
        wide = [max(len(row[i]) for row in rows) * 2.07 + 3.0 for i in range(2)]
        yield Rows((0.0, top), tuple(rows), (0.0, wide[0], wide[0] + wide[1]))
        length = BAR * self.per
        yield Arrow((right, top - 10.0), (length, 0.0), said(BAR, "N"), (2.0, 1.5), Tone.QUIET)


def _takes(body: Body) -> tuple[list[Act], list[Act]]:
    """What comes from the foot's side, and what goes on to the frame's."""
    if body.name == FRAME:
        return list(body.acts), []
    if body.acts[0].by == "foot":
        return list(body.acts[:1]), list(body.acts[1:])
    return list(body.acts[:-1]), list(body.acts[-1:])


def _named(act: Act) -> str:
    """By whom, as short as it can be told."""
    name = words(act.by).split(" on ")[0].split(",")[0]
    return "box" if " to " in name else name


def _shifted(by: float) -> Put:
    def put(point: Point) -> XY:
        x, z = seen(point)
        return x + by, z

    return put


def _by(places: Iterable[XY], by: float) -> tuple[XY, ...]:
    return tuple((x + by, z) for x, z in places)


def _sheets(made: Made, on_way: set[str], put: Put) -> Iterator[Item]:
    """Panels as they are seen, those on the way of the force tinted; tubes."""
    for panel in sorted(made.panels, key=lambda panel: panel.name in on_way):
        tint = panel.name in on_way
        for flat in panel.flats():
            places = hull(put(flat.plane.point(place)) for place in flat.outline)
            yield Polyline(
                places, closed=True, fill=Fill.TINT if tint and _broad(places) else Fill.NONE,
                line=Line.VISIBLE if tint else Line.THIN, tone=Tone.INK if tint else Tone.QUIET,
                part="sheet", title=words(panel.name),
            )  # fmt: skip
    for tube in made.tubes:
        half = tube.width / 2.0
        (x, z), (x2, z2) = put(tube.start), put(tube.end)
        if hypot(x2 - x, z2 - z) < tube.width:
            corners = ((x - half, z - half), (x + half, z - half), (x + half, z + half),
                       (x - half, z + half))  # fmt: skip
            yield Polyline(
                corners, closed=True, fill=Fill.TINT, part="tube", title=words(tube.name)
            )
        else:
            yield Polyline(((x, z), (x2, z2)), part="tube", title=words(tube.name))


def _broad(places: Sequence[XY]) -> bool:
    box = Box.around(places)
    return box is not None and min(box.width, box.height) > EDGE_ON


def _frame(made: Made, put: Put) -> Iterator[Item]:
    """Hatching wherever the frame holds an edge that is seen end on, or a tube."""
    by = put(Point(0.0, 0.0, 0.0))[0]
    for x, z in dict.fromkeys(_frame_places(made)):
        wide, high = FRAME_HALF
        corners = ((x - wide, z - high), (x + wide, z - high), (x + wide, z + high),
                   (x - wide, z + high))  # fmt: skip
        yield Hatch(_by(corners, by), part="frame", pitch=1.3)


def _frame_places(made: Made) -> Iterator[XY]:
    for held in made.held:
        start, end = seen(held.start), seen(held.end)
        if hypot(end[0] - start[0], end[1] - start[1]) < EDGE_ON:
            yield round(start[0], 1), round(start[1], 1)
    for tube in made.tubes:
        for how, at in ((tube.start_held, tube.start), (tube.end_held, tube.end)):
            if how != "free":
                yield round(float(at.x), 1), round(float(at.z), 1)


def _stands(made: Made, name: str) -> Point | None:
    """A place on a part by which it is pointed out."""
    panel = made.panel(name)
    if panel is not None:
        flat = max(panel.flats(), key=lambda one: len(one.outline))
        return max((flat.plane.point(place) for place in flat.outline), key=lambda at: float(at.z))
    for tube in made.tubes:
        if tube.name == name:
            return tube.end
    return None
