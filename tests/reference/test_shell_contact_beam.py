"""A clamped strip over a stop beside it: closed form of the touched cantilever.

A strip with a load at its end meets a second, stiffer strip that lies under it with no gap; with
the second strip short, the first one tips over its end. Beam theory: the upper strip's end moves by
P L³/3EI - R (3 L a² - a³)/6EI, with the press R at a from the equal move of both strips there.
"""

import numpy as np
import pytest
from shell.benches import STEEL, flat, rectangle

from pedalwright.core.points import Point
from pedalwright.shell.build import build
from pedalwright.shell.parts import Bench, Contact, Patch, Support
from pedalwright.shell.solve import solve

LENGTH, SHORT, WIDTH, UPPER, LOWER = 200.0, 100.0, 10.0, 2.0, 3.0


def test_two_strips_that_only_touch() -> None:
    upper = flat("upper", rectangle(LENGTH, WIDTH), z=2.5, t=UPPER)
    lower = flat("lower", rectangle(SHORT, WIDTH), t=LOWER)
    bench = Bench(
        sheets=(upper, lower),
        contacts=(Contact(layer="lower", base="upper"),),
        patches=(Patch(name="tip", sheet="upper", centre=Point(LENGTH - 4, 5.0, 2.5), width=7.0),),
        supports=tuple(
            Support(name=f"{z}", at=(Point(0.0, 0.0, z), Point(0.0, WIDTH, z))) for z in (0.0, 2.5)
        ),
        size=4.0,
    )
    built = build(bench)
    down = solve(built.mesh, built.mesh.loads({"tip": (0, 0, -10.0)}, {"tip": (0, 0, 10.0)}))
    give = down.moves[:, built.mesh.points["tip"], 2]
    # The load's place is the patch's middle; what lies beyond it is not bent.
    reach, stiff = LENGTH - 4.0, STEEL.elastic * WIDTH / 12
    free = 10.0 * reach**3 / (3 * stiff * UPPER**3)
    assert give[1] == pytest.approx(free, rel=0.03)
    at_end = 10.0 * (3 * reach * SHORT**2 - SHORT**3) / (6 * stiff * UPPER**3)
    both = SHORT**3 / (3 * stiff) * (1 / UPPER**3 + 1 / LOWER**3)
    pressed = at_end / both
    touched = free - pressed * (3 * reach * SHORT**2 - SHORT**3) / (6 * stiff * UPPER**3)
    assert -give[0] == pytest.approx(touched, rel=0.03)
    assert np.sum(down.pressed[0]) == pytest.approx(pressed, rel=0.08)
    assert np.sum(down.pressed[1]) == 0.0
