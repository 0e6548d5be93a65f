"""The order of work that a design asks for: what waits for what, where to stop and try.

Hours are guesses of ours for a first-time builder; his own replace them. Nothing is sawn before
the driver has sat in card, nothing welded, reamed or riveted before he has sat in metal.
"""

from collections.abc import Container, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from pedalwright.design import Design
from pedalwright.design.tree import BrakeDesign, ClutchDesign
from pedalwright.hydraulics.parts import Twin
from pedalwright.making.car.donors import PedalName, Shortened, shortened
from pedalwright.making.planning import Job

#: Nuts that have to come undone in later years.
SERVICED = ("brake cylinder nuts", "clutch cylinder nuts", "brake rod lock-nut", "brake pivot nut")


@dataclass(frozen=True, kw_only=True, slots=True)
class PanelWork:
    """A panel as the order of work sees it."""

    name: str
    bends: int = 0
    #: Fasteners that are set when it goes on.
    rivets: int = 0
    bolts: int = 0
    welds: int = 0
    #: What is drilled together with it.
    drills: tuple[str, ...] = ()
    #: Parts, made as well, that it is laid on.
    lies_on: tuple[str, ...] = ()
    #: The wall that it wants an opening in.
    cuts: str = ""
    #: The tube that it is fixed to; empty for none.
    rail: str = ""
    #: Cylinders that are bolted to it.
    cylinders: tuple[str, ...] = ()
    #: Nuts that nobody reaches any more once it is on, and those that are tightened with it.
    hides: tuple[str, ...] = ()
    reaches: tuple[str, ...] = ()
    #: Whether it comes off again with a spanner.
    screwed: bool = False

    @property
    def key(self) -> str:
        """Its name in the names of jobs."""
        return _key(self.name)

    @property
    def closing(self) -> str:
        """The job that fixes it for good."""
        return f"{'bolt' if self.screwed else 'rivet' if self.rivets else 'fix'}-{self.key}"

    @property
    def matched(self) -> bool:
        """Whether it is drilled together with what it goes on."""
        return bool(self.drills and (self.rivets or self.bolts))


def car_jobs(
    design: Design, panels: Sequence[PanelWork] = (), hours: Mapping[str, float] | None = None
) -> tuple[Job, ...]:
    """Every job of the car; `hours` are the builder's own, by the job's name."""
    own = hours or {}
    # a panel that hides nothing goes on while there is room for riveter and spanner
    open_panels = tuple(panel.closing for panel in panels if not panel.hides)
    jobs = (
        *_before(panels),
        *_pedal("brake", design, open_panels),
        *_pedal("clutch", design, open_panels),
        *(job for panel in panels for job in _panel(panel)),
        *_trial(design, panels),
        *(
            _closing(panel, [one for one in panels if one.name in panel.lies_on])
            for panel in panels
        ),
        *_after(design, [panel.closing for panel in panels]),
    )
    unknown = sorted(set(own) - {job.name for job in jobs})
    assert not unknown, f"no job is called {unknown}"
    return tuple(replace(job, hours=own.get(job.name, job.hours)) for job in jobs)


def _before(panels: Sequence[PanelWork]) -> Iterator[Job]:
    yield Job(
        name="survey",
        does="Scribe the datum, take the survey twice, both diagonals of each face",
        hours=3.0,
        undo="measure again",
    )
    if any(panel.bends for panel in panels):
        yield Job(
            name="strip",
            does="Bend a strip of each sheet that is bent, measure it before and after, write it "
            "into the file (`stock.strips`) and print the templates again",
            hours=0.5,
            after=("buy",),
            undo="bend another",
        )
    yield Job(
        name="card",
        does="Print templates and card legs, measure both bars; make arms and pads in card, clamp "
        "them on their pivots",
        hours=2.0,
        after=("survey",),
        undo="throw it away",
    )
    yield Job(
        name="trial-in-card",
        does="Each driver sits in it in his shoes: reach, gaps, knees under the rim, full stroke",
        hours=1.0,
        after=("card",),
        gate=True,
        undo="move the card",
    )
    yield Job(
        name="buy",
        does="Count the fastener box, then buy everything on the buying list: nothing is cut "
        "before it is there",
        hours=3.0,
        after=("trial-in-card",),
        undo="take it back",
    )


def _pedal(name: PedalName, design: Design, open_panels: tuple[str, ...]) -> Iterator[Job]:
    part = design.brake if name == "brake" else design.clutch
    hydraulic = isinstance(part, BrakeDesign) or part.master is not None
    donor = next((one for one in shortened(design) if one.pedal == name), None)
    yield _arm(name, donor)
    yield Job(
        name=f"{name}-tack",
        does=f"Saw the {name}'s pivot tube, put it and the arm in the jig, check them square; tack "
        "tube and pad with two spots each",
        hours=1.0,
        after=(f"{name}-arm",),
        undo="grind the spots off, 20 minutes",
    )
    yield Job(
        name=f"{name}-weld",
        does=f"Have the {name}'s welds done by a qualified welder, in the jig, as on the weld card",
        hours=1.0,
        after=("trial-in-metal", f"{name}-tack"),
        one_way=True,
    )
    yield Job(
        name=f"{name}-pin",
        does=_pin_words(name, part, donor),
        hours=0.5,
        after=(f"{name}-weld",),
        one_way=True,
    )
    if hydraulic:
        yield Job(
            name=f"{name}-cylinder",
            does=f"Bolt the {name} cylinder on, new locking nuts, witness marks",
            hours=1.0,
            after=("paint", f"{name}-pin", *open_panels),
            undo="undo the nuts; use new ones",
            reaches=(f"{name} cylinder nuts",),
        )
    yield Job(
        name=f"{name}-hang",
        does=_hang_words(name, part, hydraulic=hydraulic),
        hours=1.0,
        after=(f"{name}-cylinder",) if hydraulic else ("paint", f"{name}-pin", *open_panels),
        undo="pull the pin; use a new split pin",
        reaches=(f"{name} pivot nut", f"{name} rod lock-nut"),
    )


def _arm(name: PedalName, donor: Shortened | None) -> Job:
    """Sawn from plate, or from the donor's; a hole that stays for the trial is not drilled yet."""
    if donor is None:
        does = (
            f"Saw the {name} arm by its template, drill its pivot; drill the hole of the rod only "
            "to pilot size"
        )
    else:
        hole = (
            "leave its old rod hole, the trial is done on it"
            if donor.redrilled
            else "its rod hole stays"
        )
        does = (
            f"Strip the donor's {name} arm, look for cracks and for signs that it is cast; saw "
            f"{donor.off:.0f} mm off at the pad's end, drill the pivot; {hole}"
        )
    return Job(
        name=f"{name}-arm", does=does, hours=2.0, after=("trial-in-card", "buy"), one_way=True
    )


def _pin_words(name: PedalName, part: BrakeDesign | ClutchDesign, donor: Shortened | None) -> str:
    if isinstance(part, BrakeDesign) and isinstance(part.masters, Twin):
        return f"Ream the {name}'s pivot tube and the balance bar's; bar and bearing slide, no play"
    where = "where the trial left it"
    if donor is not None:
        where = "by the template's R, as the donor's card says" if donor.redrilled else "to size"
    return f"Ream the {name}'s pivot tube for its bushes; drill and ream the rod pin {where}"


def _hang_words(name: PedalName, part: BrakeDesign | ClutchDesign, *, hydraulic: bool) -> str:
    said = [f"Hang the {name} pedal: grease, castle nut, split pin"]
    if isinstance(part, BrakeDesign) and isinstance(part.masters, Twin):
        said.append("balance bar square, its adjuster locked")
    if part.rest_stop is not None:
        said.append("set the rest stop, lock it")
    said.append(
        "set the rod so that the piston is fully back with a little play, lock-nut, pin clipped"
        if hydraulic
        else "set the cable's free play, lock it"
    )
    if part.return_spring is not None:
        said.append("spring on")
    if part.stop is not None:
        said.append("set the stop at full travel")
    return "; ".join(said)


def _panel(panel: PanelWork) -> Iterator[Job]:
    name, key = panel.name, panel.key
    pilot = " and drill its holes to pilot size" if panel.rivets or panel.bolts else ""
    yield Job(
        name=f"cut-{key}",
        does=f"Cut the {name} by its template{pilot}; those of its drill card that wait for the "
        "bend are left"
        if panel.bends
        else f"Cut the {name} by its template{pilot}",
        hours=1.5,
        after=("trial-in-card", "buy", *(("strip",) if panel.bends else ())),
        one_way=True,
    )
    if panel.bends:
        yield Job(
            name=f"bend-{key}",
            does=f"Bend the {name} in the order of its card; then drill what waited, to pilot size",
            hours=0.5 + 0.2 * panel.bends,
            after=(f"cut-{key}",),
            one_way=True,
        )
    made = f"bend-{key}" if panel.bends else f"cut-{key}"
    if panel.cuts:
        yield Job(
            name=f"open-{_key(panel.cuts)}",
            does=f"Lay the {name} on the {panel.cuts}, scribe round it, cut the opening, file it",
            hours=1.5,
            after=(made,),
            one_way=True,
        )
    yield Job(
        name=f"clamp-{key}",
        does=f"Hold the {name} in its place with clamps, props and tape; nothing is drilled in the "
        "body yet",
        hours=0.5,
        after=(
            f"open-{_key(panel.cuts)}" if panel.cuts else made,
            *(f"clamp-{_key(other)}" for other in panel.lies_on),
        ),
        undo="take the clamps off",
    )


def _trial(design: Design, panels: Sequence[PanelWork]) -> Iterator[Job]:
    on_old_hole = " and ".join(one.pedal for one in shortened(design) if one.redrilled)
    ratio = (
        f"the ratio of the {on_old_hole} is still that of the donor's hole, see its card"
        if on_old_hole
        else "ratio by rule"
    )
    yield Job(
        name="trial-in-metal",
        does=f"Sit in it again, tacked and clamped: full strokes, gaps, spanner room; {ratio}",
        hours=1.0,
        after=("brake-tack", "clutch-tack", *(f"clamp-{one.key}" for one in panels)),
        gate=True,
        undo="move the clamps",
    )
    matched = {panel.key for panel in panels if panel.matched}
    for panel in panels:
        if panel.matched:
            yield _matched(panel, matched)
    yield Job(
        name="paint",
        does="Take it apart, deburr, degrease, prime and paint; keep bores and threads clean",
        hours=3.0,
        after=(
            "brake-pin",
            "clutch-pin",
            *(f"drill-{one.key}" for one in panels if one.matched),
        ),
        undo="strip the paint",
    )


def _matched(panel: PanelWork, matched: Container[str]) -> Job:
    """Two parts are drilled as one, so that their holes are one; what is welded on has none."""
    below = [_key(other) for other in panel.lies_on if _key(other) in matched]
    return Job(
        name=f"drill-{panel.key}",
        does=f"{_pinned(panel)}hrough the pilot holes of the {panel.name} drill "
        f"{' and '.join(panel.drills)}, middle hole first, a skin pin in every fourth; then all "
        f"to size. {_spigots(panel)}Mark "
        "which way it lies, take it off, deburr both sides",
        hours=0.5 + 0.03 * (panel.rivets + panel.bolts),
        after=("trial-in-metal", *(f"drill-{other}" for other in below)),
        one_way=True,
    )


def _pinned(panel: PanelWork) -> str:
    """What it is laid on has to be back in its place."""
    return f"Pin {' and '.join(panel.lies_on)} on again; t" if panel.lies_on else "T"


def _spigots(panel: PanelWork) -> str:
    """A cylinder brings its own holes."""
    return "".join(
        f"Lay the {name}'s own flange on its mark, drill its spigot and its bolts through all. "
        for name in panel.cylinders
    )


def _closing(panel: PanelWork, below: Sequence[PanelWork]) -> Job:
    return Job(
        name=panel.closing,
        does=_fixing(panel),
        hours=0.5 + 0.02 * panel.rivets + 0.05 * panel.bolts,
        after=(
            "paint",
            f"clamp-{panel.key}",
            *(other.closing for other in below),
        ),
        undo="undo the nuts; use new ones" if panel.screwed else "",
        one_way=not panel.screwed,
        hides=panel.hides,
        reaches=panel.reaches,
    )


def _fixing(panel: PanelWork) -> str:
    """How it is fixed for good."""
    rail = f"; fix its flanges to the {panel.rail}" if panel.rail else ""
    if panel.screwed:
        return (
            f"Bolt the {panel.name} on with compound or sealant between, as the cards say; torque, "
            f"paint line over each nut{rail}"
        )
    if panel.rivets:
        bolts = f", then its {panel.bolts} bolts" if panel.bolts else ""
        return (
            f"Rivet the {panel.name} on with compound or sealant between, as the cards say: skin "
            f"pins in every fourth hole, {panel.rivets} rivets from the middle out, the holes of "
            f"the pins last{bolts}{rail}"
        )
    if panel.welds:
        return f"Have the {panel.name} welded on by a qualified welder, {panel.welds} welds{rail}"
    if panel.rail:
        return f"Fix the {panel.name} to the {panel.rail}: the file does not say with what"
    return f"Fix the {panel.name}: degrease, abrade, bond, hold it until it has set"


def _after(design: Design, fixed: Sequence[str]) -> Iterator[Job]:
    bled = ["brake-hang"]
    if design.clutch.master is not None:
        bled.append("clutch-hang")
    yield Job(
        name="throttle",
        does="Fit the throttle: full opening at the pedal's stop, both springs, no dead point",
        hours=1.5,
        after=("paint",),
        undo="take it off",
    )
    yield Job(
        name="pipes",
        does="Pipes, hoses and reservoirs; no hose rubs through full travel and full lock",
        hours=4.0,
        after=tuple(name.replace("-hang", "-cylinder") for name in bled),
        undo="undo the unions, catch the fluid",
    )
    yield Job(
        name="bleed",
        does="Fill and bleed, fresh fluid of one kind only; the pedal is hard and stays there",
        hours=1.0,
        after=("pipes", *bled, *fixed),
        undo="bleed again",
    )
    yield Job(
        name="push-test",
        does="Push 500 N on the brake, hold 60 s: no leak, give as worked out, port opens after",
        hours=0.5,
        after=("bleed", "clutch-hang", "throttle"),
        gate=True,
        undo="find what gives",
    )
    yield Job(
        name="roll",
        does="Wheels free; then roll at walking pace on private flat ground, hand brake proven",
        hours=1.0,
        after=("push-test",),
        gate=True,
        undo="adjust and test again",
    )


def _key(name: str) -> str:
    """A part's name without blanks."""
    return "-".join(name.replace(",", " ").split())
