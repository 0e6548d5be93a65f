"""Fastening: rivets that grip, bolts that stay, how many to have, metals kept apart."""

from pedalwright.making.fastening.bolts import set_bolt
from pedalwright.making.fastening.counts import counts
from pedalwright.making.fastening.limits import (
    CURES,
    check_bolt,
    check_counts,
    check_metals,
    check_rivet,
)
from pedalwright.making.fastening.metals import contact, contacts, treatments
from pedalwright.making.fastening.parts import (
    BoltRow,
    Contact,
    Count,
    Item,
    Layer,
    RivetRow,
    SetBolt,
    SetRivet,
    Substitute,
    Treatment,
)
from pedalwright.making.fastening.rivets import set_rivet, substitutes

__all__ = [
    "CURES",
    "BoltRow",
    "Contact",
    "Count",
    "Item",
    "Layer",
    "RivetRow",
    "SetBolt",
    "SetRivet",
    "Substitute",
    "Treatment",
    "check_bolt",
    "check_counts",
    "check_metals",
    "check_rivet",
    "contact",
    "contacts",
    "counts",
    "set_bolt",
    "set_rivet",
    "substitutes",
    "treatments",
]
