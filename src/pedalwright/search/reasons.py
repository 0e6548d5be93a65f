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
