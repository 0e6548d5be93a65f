"""A finding as a short reason: `needs 517 N for a full stop, 500 N at most`."""

from pedalwright.core.answers import Sentence, sentence
from pedalwright.core.checks import Finding
from pedalwright.search.changes import one

#: Short words for the demands that decide between candidates; value first, then bound.
_WORDS = {
    "brakes.effort": "needs {} for a full stop, {} at most",
    "brakes.touchy": "a full stop takes only {}, {} at least",
    "brakes.one_circuit": "gives {}, {} at least",
    "brakes.lock_order": "rear wheels lock first from {}, not before {}",
    "brakes.travel": "pad uses {} at the hard stop, {} wished at most",
    "brakes.lost_travel": "pad goes {}, there is room for {}",
    "driver.ankle_min": "bends the ankle to {}, {} at least",
    "driver.ankle_max": "stretches the ankle to {}, {} wished at most",
    "driver.knee_rest": "bends the knee to {}, {} wished at least",
    "driver.knee_full": "stretches the knee to {}, {} at most",
    "driver.hip": "folds the hip to {}, {} wished at least",
    "driver.heel_lift": "pad stands {} above the heel's rest, the sole is {} to the ball",
    "driver.heel_lift_clutch": "pad stands {} above the heel's rest, the sole is {} to the ball",
    "driver.reach": "leg has to span {} and is {} long",
    "driver.reach_back": "leg has to span {} with the seat back and is {} long",
    "driver.knee_rim": "knee or thigh has {} to the wheel, {} wished",
    "driver.shin_column": "shin has {} to the column, {} wished",
    "driver.toe_wall": "toes have {} to the wall ahead, {} wished",
    "driver.toe_height": "toes have {} below the cover, {} wished",
    "driver.instep": "instep has {} around it, {} wished",
    "driver.pad_rake": "pad's face stands {} off the sole, {} wished at most",
    "driver.braced_push": "a modest leg pushes {} there, a full stop takes {}",
    "driver.shoes_apart": "shoes on clutch and brake have {} between them, {} wished",
    "driver.shoe_next_pad": "a shoe has {} to the next pad, {} wished",
    "driver.shoe_wall": "shoe has {} to the wall beside it, {} wished",
    "driver.gap_accelerator_brake": "accelerator and brake pads are {} apart, {} for a new car",
    "driver.gap_brake_clutch": "brake and clutch pads are {} apart, {} for a new car",
    "driver.gap_clutch_wall": "clutch pad has {} to its wall, {} for a new car",
    "driver.foot_rest": "left foot has {} beside the clutch, {} wished",
    "hydraulics.stroke": "uses {} of the stroke, {} at most",
    "clutch.release": "needs {} of pad travel, has {}",
    "clutch.stroke": "needs {} of the master's stroke, has {}",
    "clutch.effort": "takes {} to hold down, {} wished at most",
    "clutch.over_stroke": "pushed to the wall it lifts the bearing {}, {} wished at most",
    "clutch.stop_window": "leaves {} to set a stop in, {} wished",
    "throttle.full_opening": "opens {}, {} wanted",
    "throttle.beyond": "pulls the spindle {} beyond its stop, {} wished at most",
    "throttle.dead_point": "a rod comes within {} of its lever, {} at least",
    "throttle.one_spring": "one spring lost leaves {}, {} at least",
    "throttle.return_force": "comes back with {}, {} wished",
    "throttle.effort": "takes {} to hold, {} wished at most",
    "linkage.rod_fits": "rod is {} too long or too short, {} can be set",
    "structure.give": "gives {} at the pad, {} at most",
    "structure.flange_give": "flange moves {}, {} at most",
    "structure.rod_buckling": "rod takes {}, {} at most",
}


def reason(finding: Finding) -> Sentence:
    """Why a candidate misses a demand, with its figures."""
    limit = finding.limit
    unit = "share" if limit.code == "hydraulics.stroke" else limit.unit
    figures = ((one(finding.value), unit), (one(finding.bound), unit))
    about = f"{finding.about.replace('{}', '()')}: " if finding.about else ""
    words = _WORDS.get(limit.code)
    if words is not None and finding.judged:
        return sentence(about + words, *figures)
    return sentence(f"{about}{limit.asks.rstrip('.')}: {{}}, {limit.sense} {{}}", *figures)


def joined(parts: list[Sentence], between: str = "; ") -> Sentence:
    """Several as one."""
    whole = sentence("")
    for i, part in enumerate(parts):
        whole = whole + (sentence(between) + part if i else part)
    return whole
