"""What is asked of a driver's posture and room.

Comfort angles are bands from several studies that do not agree on method, most of them known
second-hand, so all but the outermost are wishes. A foot that cannot be held, a heel that hangs
in the air over the brake and a leg that is too short are not matters of comfort.
"""

from collections.abc import Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.points import at
from pedalwright.core.units import N
from pedalwright.driver.body import body_doubt
from pedalwright.driver.parts import Body, Person, Seated
from pedalwright.driver.population import leg_from_survey
from pedalwright.driver.push import HARDEST, most_push

BANDS = Source("common practice", "bands of driving posture studies, to verify", "trade")
CLEARANCES = Source("common practice", "no source", "trade")
OURS = "pedalwright"

#: Below this ankle angle a foot that may lift its heel does so.
LEAST_ANKLE = np.deg2rad(75.0)
MOST_ANKLE_REST, MOST_ANKLE_FULL = np.deg2rad(105.0), np.deg2rad(115.0)
LEAST_KNEE_REST, MOST_KNEE_FULL = np.deg2rad(95.0), np.deg2rad(160.0)
LEAST_HIP = np.deg2rad(80.0)
KNEE_ROOM, SHIN_ROOM, TOE_ROOM = 50.0, 50.0, 25.0
TOE_COVER_ROOM, INSTEP_ROOM = 10.0, 30.0
MOST_TILT = np.deg2rad(45.0)
MOST_DEVIATIONS = 2.0
LEG_DOUBT = 25.0

ANKLE_MIN = Limit(
    "driver.ankle_min",
    "The foot is not bent up further than it can be held.",
    "at least",
    "rad",
    Source(OURS, "75 degrees; the bands end at 73 to 78, to verify", "ours"),
)
ANKLE_MAX = Limit(
    "driver.ankle_max",
    "The foot is not stretched further than is comfortable, 10 degrees more at full travel.",
    "at most",
    "rad",
    BANDS,
    "should",
)
KNEE_REST = Limit(
    "driver.knee_rest",
    "At rest the knee is not bent more than is comfortable.",
    "at least",
    "rad",
    BANDS,
    "should",
)
KNEE_FULL = Limit(
    "driver.knee_full",
    "At full travel the knee is still bent, so that the leg can push.",
    "at most",
    "rad",
    Source("common practice", "best force at 110 to 160 degrees, never above 165", "trade"),
)
HIP = Limit(
    "driver.hip",
    "The thigh is not folded up against the trunk.",
    "at least",
    "rad",
    BANDS,
    "should",
)
HEEL_LIFT = Limit(
    "driver.heel_lift",
    "The pad is no higher above the heel's rest than the sole is long, so the heel stays down.",
    "at most",
    "mm",
    Source(OURS, "a foot without a rest cannot measure out a push", "ours"),
)
HEEL_LIFT_CLUTCH = Limit(
    "driver.heel_lift_clutch",
    "The clutch pad, too, can be worked with the heel on its rest.",
    "at most",
    "mm",
    Source(OURS, "a clutch may be worked with the whole leg", "ours"),
    "should",
)
REACH = Limit(
    "driver.reach",
    "The leg is long enough to press the pedal to full travel.",
    "at most",
    "mm",
    Source(OURS, "thigh and shank in one line", "ours"),
)
KNEE_RIM = Limit(
    "driver.knee_rim",
    "Knee and thigh keep clear of the steering wheel.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)
SHIN_COLUMN = Limit(
    "driver.shin_column",
    "The shin keeps clear of the steering column.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)
TOE_WALL = Limit(
    "driver.toe_wall",
    "At full travel the toes keep clear of the wall ahead.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)
LEG_ESTIMATE = Limit(
    "driver.leg_estimate",
    "Two ways to guess the length of the leg agree, else it has to be measured.",
    "at most",
    "mm",
    Source(OURS, "one standard deviation of people of one stature", "ours"),
    "should",
)
TOE_COVER = Limit(
    "driver.toe_height",
    "The toes keep clear of what covers the footwell.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)
INSTEP = Limit(
    "driver.instep",
    "The top of the shoe keeps clear of pivot tubes and boxes over the whole stroke.",
    "at least",
    "mm",
    CLEARANCES,
    "should",
)
PAD_RAKE = Limit(
    "driver.pad_rake",
    "The pad's face stays flat enough against the sole over the stroke.",
    "at most",
    "rad",
    Source(OURS, "half a right angle, beyond which only the pad's edge bears", "ours"),
    "should",
)
REACH_BACK = Limit(
    "driver.reach_back",
    "With the seat slid fully back the leg still presses the pedal to full travel.",
    "at most",
    "mm",
    Source(OURS, "thigh and shank in one line", "ours"),
    "should",
)
BRACED = Limit(
    "driver.braced_push",
    "A leg of modest strength, bent as it is then, can push as hard as a full stop takes.",
    "at least",
    "N",
    Source("common practice", "500 N at 120 degrees of knee, curve from memory", "trade"),
    "should",
)
READING = Limit(
    "driver.body_reading",
    "What was measured on the driver is what people of his stature have, else read it again.",
    "at most",
    "1",
    Source(OURS, "two standard deviations, which one person in twenty exceeds", "ours"),
    "should",
)


def check(seated: Seated, about: str) -> Iterator[Finding]:
    """Judge one driver's leg on one pedal; `about` names both, e.g. `D1, brake`."""
    legs, near = seated.stroke, seated.near
    ends = [(0, f"{about}, rest"), (seated.places.index("full"), f"{about}, full")]
    if HARDEST in seated.places:
        ends.append((seated.places.index(HARDEST), f"{about}, {HARDEST}"))
    for place, here in ends:
        yield ANKLE_MIN.check(at(legs.ankle_angle, place), LEAST_ANKLE, here)
        most = MOST_ANKLE_REST if place == 0 else MOST_ANKLE_FULL
        yield ANKLE_MAX.check(at(legs.ankle_angle, place), most, here)
    (_, rest), *pressed = ends
    yield KNEE_REST.check(at(legs.knee_angle, 0), LEAST_KNEE_REST, rest)
    yield HIP.check(at(legs.hip_angle, 0), LEAST_HIP, rest)
    for place, here in pressed:
        yield KNEE_FULL.check(at(legs.knee_angle, place), MOST_KNEE_FULL, here)
        yield REACH.check(at(legs.needed, place), at(legs.reach, place), here)
        yield TOE_WALL.check(at(near.toe_wall, place), TOE_ROOM, here)
    heel = HEEL_LIFT_CLUTCH if seated.heel == "may lift" else HEEL_LIFT
    yield heel.check(seated.pad_above_heel, seated.body.heel_to_ball, about)
    if seated.heel != "stays":  # a pad that the sole slides on is taken to be round
        yield PAD_RAKE.check(seated.tilt, MOST_TILT, about)
    yield KNEE_RIM.check(near.knee_rim, KNEE_ROOM, about)
    yield SHIN_COLUMN.check(near.shin_column, SHIN_ROOM, about)
    if near.instep is not None:
        yield INSTEP.check(near.instep, INSTEP_ROOM, about)
    if near.toe_cover is not None:
        yield TOE_COVER.check(near.toe_cover, TOE_COVER_ROOM, about)
    if seated.reach_back is not None:
        yield REACH_BACK.check(seated.reach_back, at(legs.reach, ends[1][0]), ends[1][1])


def check_push(seated: Seated, wanted: N, about: str) -> Iterator[Finding]:
    """Judge a braced leg at the hardest push against the push that a full stop takes."""
    push = most_push(seated.at(HARDEST).knee_angle)
    yield BRACED.check(push, wanted, f"{about}, {HARDEST}")


def check_body(person: Person, body: Body, about: str) -> Iterator[Finding]:
    """Compare what was measured, or the leg that is drawn, with what a survey says.

    What was read on the driver is judged by how far people stray; a leg guessed from the stature
    alone by a second guess, which knows the inside leg.
    """
    doubt = body_doubt(person)
    if doubt is not None:
        yield READING.check(doubt, MOST_DEVIATIONS, about)
    if person.people is None and not np.all(np.isfinite(person.thigh + person.shank)):
        drawn = body.thigh + body.shank
        yield LEG_ESTIMATE.check(np.abs(drawn - leg_from_survey(person)), LEG_DOUBT, about)
