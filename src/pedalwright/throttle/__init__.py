"""The accelerator: pad, levers, rods and cables, spindle, return springs."""

from pedalwright.throttle.limits import check
from pedalwright.throttle.parts import (
    BallEnd,
    BallEnds,
    BallRod,
    Barrel,
    Cable,
    CutRod,
    EngineRock,
    Follower,
    Opening,
    Spring,
    SquareRod,
    Stage,
    Throttle,
    Turn,
)
from pedalwright.throttle.solve import STATIONS, respond
from pedalwright.throttle.stages import placed, turned, turned_back

__all__ = [
    "STATIONS",
    "BallEnd",
    "BallEnds",
    "BallRod",
    "Barrel",
    "Cable",
    "CutRod",
    "EngineRock",
    "Follower",
    "Opening",
    "Spring",
    "SquareRod",
    "Stage",
    "Throttle",
    "Turn",
    "check",
    "placed",
    "respond",
    "turned",
    "turned_back",
]
