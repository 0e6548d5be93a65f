"""Search: candidates for a builder's question, each a design, assessed together and compared."""

from pedalwright.search.balance import brake_balance
from pedalwright.search.bores import which_bore
from pedalwright.search.clutch import clutch_release
from pedalwright.search.throttle import full_throttle

__all__ = ["brake_balance", "clutch_release", "full_throttle", "which_bore"]
