"""Planning: what comes before what, where to stop and try, what cannot be undone."""

from pedalwright.making.planning.limits import CURES, check
from pedalwright.making.planning.order import ancestors, order
from pedalwright.making.planning.parts import Job, Order, RivetStep, Timed
from pedalwright.making.planning.rivets import rivet_sequence, skin_pins

__all__ = [
    "CURES",
    "Job",
    "Order",
    "RivetStep",
    "Timed",
    "ancestors",
    "check",
    "order",
    "rivet_sequence",
    "skin_pins",
]
