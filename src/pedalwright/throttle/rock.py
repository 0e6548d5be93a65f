"""An engine that rocks: how far it opens the throttle with the foot still."""

import numpy as np

from pedalwright.core.points import REARWARD
from pedalwright.core.units import Num, mm, rad
from pedalwright.throttle.parts import EngineRock
from pedalwright.throttle.rods import Linked
from pedalwright.throttle.stages import Fitted, FittedSquare

#: Movement of the engine, either way, mm.
MOVEMENT = 10.0


def rock_turn(rock: EngineRock, last: Fitted, driving: rad) -> rad:
    """Largest turn of the spindle for 10 mm of the engine either way.

    `driving` is the turn of the lever that drives it, (stations,) or (stations, variants); the
    rod keeps its length. nan where the engine pulls the rod out of reach.
    """
    held = last.turned(driving).angle
    turns = [_moved(last, rock, way).turned(driving).angle - held for way in (-MOVEMENT, MOVEMENT)]
    apart: Num = np.abs(np.stack(turns))
    largest: rad = np.max(apart, axis=(0, 1))
    return largest


def _moved(last: Fitted, rock: EngineRock, way: mm) -> Fitted:
    match last:
        case Linked():
            return last.moved(rock.direction.unit() * way)
        case FittedSquare():
            return last.moved(REARWARD * way)  # its rod lies along this axis of its own
        case _:
            return last
