"""The order of work that a design asks for: what waits for what, where to stop and try.

Hours are guesses of ours for a first-time builder; his own replace them. Nothing is sawn before
the driver has sat in card, nothing welded, reamed or riveted before he has sat in metal.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from pedalwright.design import Design
from pedalwright.making.planning import Job

#: Nuts that have to come undone in later years.
SERVICED = ("brake cylinder nuts", "clutch cylinder nuts", "brake rod lock-nut", "brake pivot nut")


@dataclass(frozen=True, kw_only=True, slots=True)
class PanelWork:
    """A panel as the order of work sees it."""

    name: str
    bends: int = 0
    rivets: int = 0
    #: Nuts that nobody reaches any more once it is on.
    hides: tuple[str, ...] = ()
    #: Whether it comes off again with a spanner.
    screwed: bool = False


def car_jobs(
    design: Design, panels: Sequence[PanelWork] = (), hours: Mapping[str, float] | None = None
) -> tuple[Job, ...]:
    """Every job of the car; `hours` are the builder's own, by the job's name."""
    own = hours or {}
    # a riveted panel that hides nothing goes on while there is room to hold a riveter
    open_panels = tuple(f"rivet-{p.name}" for p in panels if not p.screwed and not p.hides)
    jobs = (
        *_before(),
        *_pedal("brake", open_panels, hydraulic=True),
        *_pedal("clutch", open_panels, hydraulic=design.clutch.master is not None),
        *(job for panel in panels for job in _panel(panel)),
        *_trial([panel.name for panel in panels]),
        *(job for panel in panels for job in _closing(panel)),
        *_after(design, [panel.name for panel in panels if not panel.screwed]),
    )
    unknown = sorted(set(own) - {job.name for job in jobs})
    assert not unknown, f"no job is called {unknown}"
    return tuple(replace(job, hours=own.get(job.name, job.hours)) for job in jobs)


def _before() -> Iterator[Job]:
    yield Job(
        name="survey",
        does="Scribe the datum, take the survey twice, both diagonals of each face",
        hours=3.0,
        undo="measure again",
    )
    yield Job(
        name="strip",
        does="Bend a test strip of each sheet, measure it before and after",
        hours=0.5,
        after=("survey",),
        undo="bend another",
    )
    yield Job(
        name="card",
        does="Print the templates, check both bars, make arms, pads and panels in card; clamp them",
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


def _pedal(name: str, open_panels: tuple[str, ...], *, hydraulic: bool) -> Iterator[Job]:
    yield Job(
        name=f"{name}-arm",
        does=f"Saw the {name} arm, drill its pivot; drill the rod pin to pilot size only",
        hours=2.0,
        after=("trial-in-card",),
        one_way=True,
    )
    yield Job(
        name=f"{name}-tack",
        does=f"Cut the {name}'s pivot tube, tack it and the pad to the arm with two spots each",
        hours=1.0,
        after=(f"{name}-arm",),
        undo="grind the spots off, 20 minutes",
    )
    yield Job(
        name=f"{name}-weld",
        does=f"Have the {name}'s tube and pad welded by a qualified welder; no cast or alloy arm",
        hours=1.0,
        after=("trial-in-metal", f"{name}-tack"),
        one_way=True,
    )
    yield Job(
        name=f"{name}-pin",
        does=f"Drill and ream the {name}'s rod pin where the trial left it",
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
        does=f"Hang the {name} pedal: grease, pin and split pin; set the rod's free play, lock it",
        hours=1.0,
        after=(f"{name}-cylinder",) if hydraulic else ("paint", f"{name}-pin", *open_panels),
        undo="pull the pin; use a new split pin",
        reaches=(f"{name} pivot nut", f"{name} rod lock-nut"),
    )


def _panel(panel: PanelWork) -> Iterator[Job]:
    name = panel.name
    yield Job(
        name=f"cut-{name}",
        does=f"Cut the {name} and drill its holes to pilot size",
        hours=1.5,
        after=("trial-in-card", "strip"),
        one_way=True,
    )
    if panel.bends:
        yield Job(
            name=f"bend-{name}",
            does=f"Bend the {name} in the order of its card",
            hours=0.5 + 0.2 * panel.bends,
            after=(f"cut-{name}",),
            one_way=True,
        )
    yield Job(
        name=f"clamp-{name}",
        does=f"Clamp the {name} in its place with skin pins, no rivets",
        hours=0.5,
        after=(f"bend-{name}" if panel.bends else f"cut-{name}",),
        undo="pull the skin pins",
    )


def _trial(panels: Sequence[str]) -> Iterator[Job]:
    yield Job(
        name="trial-in-metal",
        does="Sit in it again, tacked and clamped: full strokes, ratio by rule, gaps, spanner room",
        hours=1.0,
        after=("brake-tack", "clutch-tack", *(f"clamp-{name}" for name in panels)),
        gate=True,
        undo="move the clamps",
    )
    yield Job(
        name="paint",
        does="Take it apart, deburr, degrease, prime and paint; keep bores and threads clean",
        hours=3.0,
        after=("brake-pin", "clutch-pin"),
        undo="strip the paint",
    )


def _closing(panel: PanelWork) -> Iterator[Job]:
    if panel.screwed:
        yield Job(
            name=f"screw-{panel.name}",
            does=f"Screw the {panel.name} on",
            hours=0.5,
            after=("paint", f"clamp-{panel.name}"),
            undo="undo the screws",
            hides=panel.hides,
        )
        return
    yield Job(
        name=f"rivet-{panel.name}",
        does=f"Final drill, deburr, jointing compound; rivet the {panel.name} from the middle out",
        hours=0.5 + 0.02 * panel.rivets,
        after=("paint", f"clamp-{panel.name}"),
        one_way=True,
        hides=panel.hides,
    )


def _after(design: Design, riveted: Sequence[str]) -> Iterator[Job]:
    bled = ["brake-hang"]
    if design.clutch.master is not None:
        bled.append("clutch-hang")
    fixed = tuple(f"rivet-{name}" for name in riveted)
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
        does="Fill and bleed, fluid of one kind only",
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
