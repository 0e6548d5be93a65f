"""Search: candidates for a builder's question, each a design, assessed together and compared."""

from pedalwright.search.balance import brake_balance
from pedalwright.search.bores import which_bore
from pedalwright.search.clutch import clutch_release
from pedalwright.search.drag import brake_drag
from pedalwright.search.floor_drop import floor_drop
from pedalwright.search.leg_room import leg_room
from pedalwright.search.levers import most_to_cut, which_ratio
from pedalwright.search.pedal_feel import pedal_effort, pedal_give, pedal_travel
from pedalwright.search.pedal_height import pedal_height
from pedalwright.search.re_measure import re_measure, worth_lines
from pedalwright.search.robust import Held, Rest, Robustness, robustness
from pedalwright.search.spacing import spacing
from pedalwright.search.throttle import full_throttle
from pedalwright.search.worth import Worth, Worths, worth_measuring

__all__ = [
    "Held",
    "Rest",
    "Robustness",
    "Worth",
    "Worths",
    "brake_balance",
    "brake_drag",
    "clutch_release",
    "floor_drop",
    "full_throttle",
    "leg_room",
    "most_to_cut",
    "pedal_effort",
    "pedal_give",
    "pedal_height",
    "pedal_travel",
    "re_measure",
    "robustness",
    "spacing",
    "which_bore",
    "which_ratio",
    "worth_lines",
    "worth_measuring",
]
