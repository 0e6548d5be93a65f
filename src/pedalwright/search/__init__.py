"""Search: candidates for a builder's question, each a design, assessed together and compared."""

from pedalwright.search.balance import brake_balance
from pedalwright.search.bores import which_bore
from pedalwright.search.clutch import clutch_release
from pedalwright.search.drag import brake_drag
from pedalwright.search.levers import most_to_cut, which_ratio
from pedalwright.search.pedal_feel import pedal_effort, pedal_give, pedal_travel
from pedalwright.search.robust import Held, Rest, Robustness, robustness
from pedalwright.search.throttle import full_throttle

__all__ = [
    "Held",
    "Rest",
    "Robustness",
    "brake_balance",
    "brake_drag",
    "clutch_release",
    "full_throttle",
    "most_to_cut",
    "pedal_effort",
    "pedal_give",
    "pedal_travel",
    "robustness",
    "which_bore",
    "which_ratio",
]
