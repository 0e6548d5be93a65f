"""In whose units a file is written, so that what is made of it can be shown in the same."""

from collections import Counter
from typing import Literal, get_args

from pedalwright.project.entries import Trouble
from pedalwright.project.errors import nearest
from pedalwright.project.report import Report, Spot

#: Metric units throughout, or inches, pounds and what goes with them.
Hand = Literal["mm", "inch"]
HANDS: tuple[Hand, ...] = get_args(Hand)
KEY = "shown_in"

#: Units and forms that only one kind of rule has; a gauge says nothing, sheet has one anywhere.
_RULES: dict[str, Hand] = {
    "mm": "mm",
    "cm": "mm",
    "m": "mm",
    "in": "inch",
    "ft": "inch",
    "ft in": "inch",
    "thou": "inch",
}


def hand_of(said: str, report: Report) -> Hand:
    """What the head of a file says, else what most of its lengths are typed in, else mm."""
    if said in HANDS:
        return said
    if said:
        accepts = f"{KEY} is “{'” or “'.join(HANDS)}”; left out, most of the lengths decide."
        report.complain(Spot().below(KEY), Trouble(said, accepts, nearest(said, HANDS)))
    lengths = [told.like for told in report.provenance.values() if told.unit == "mm"]
    used = Counter(_RULES[like] for like in lengths if like in _RULES)
    return "inch" if used["inch"] > used["mm"] else "mm"
