"""Bolts, blind rivets and welds: sums by hand, laws, and one fixing that breaks only one limit."""

from dataclasses import replace
from math import sqrt
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.assess import assess
from pedalwright.core.batch import over
from pedalwright.core.points import REARWARD, RIGHT, UP, Point
from pedalwright.project import car_text, read
from pedalwright.structure import Bolted, Fastened, Load, Riveted, Run, Sheet, Welded, WeldUse
from pedalwright.structure.fixings.group import shared
from pedalwright.structure.fixings.limits import check_fixing
from pedalwright.structure.fixings.solve import fixed

SHEET = Sheet(thickness=3.0, yield_strength=275.0, tensile_strength=410.0, edge=20.0)
#: Four M8 of 8.8 in a rectangle of 60 across and 40 up on a wall that faces rearward.
BOLTS = Bolted(
    holes=tuple(Point(0.0, y, z) for y in (-30.0, 30.0) for z in (-20.0, 20.0)),
    axis=REARWARD,
    toe=10.0,
    sheet=SHEET,
    diameter=8.0,
    pitch=1.25,
    tensile_strength=800.0,
    head=12.0,
)
RIVETS = Riveted(
    holes=BOLTS.holes,
    axis=REARWARD,
    toe=10.0,
    sheet=SHEET,
    diameter=4.8,
    shear=2500.0,
    pull=3000.0,
    head=9.5,
)
WELD = Welded(
    runs=(
        Run(start=Point(0.0, -30.0, -20.0), end=Point(0.0, -30.0, 20.0)),
        Run(start=Point(0.0, 30.0, -20.0), end=Point(0.0, 30.0, 20.0)),
    ),
    axis=REARWARD,
    throat=3.0,
    thickness=4.0,
    tensile_strength=410.0,
    correlation=0.85,
)
STRAIGHT = Load(at=Point(50.0, 0.0, 0.0), force=REARWARD * 4000.0)


def fastened(fixing: Bolted | Riveted, load: Load) -> Fastened:
    used = fixed(fixing, load)
    assert isinstance(used, Fastened)
    return used


# -- who takes how much -------------------------------------------------------------------


def test_a_straight_pull_is_shared_evenly() -> None:
    used = fastened(BOLTS, STRAIGHT)
    assert used.pull == pytest.approx(1000.0)
    assert used.shear == pytest.approx(0.0, abs=1e-9)


def test_a_push_onto_the_sheet_pulls_no_bolt() -> None:
    used = fastened(BOLTS, Load(at=STRAIGHT.at, force=-STRAIGHT.force))
    assert used.pull == 0.0
    assert used.pull_through == 0.0


def test_a_bracket_tips_over_its_toe_by_hand() -> None:
    """1000 N up, 80 off the wall: it tips over its upper toe, 10 above the upper holes.

    80 000 N mm over two bolts 10 and two 50 from there: 80 000 x 50 / (2 x 10² + 2 x 50²).
    """
    used = fastened(BOLTS, Load(at=Point(80.0, 0.0, 0.0), force=UP * 1000.0))
    assert used.pull == pytest.approx(80_000.0 * 50.0 / 5200.0)
    assert used.shear == pytest.approx(250.0)


def test_two_bolts_in_a_line_tip_over_the_toe_alone() -> None:
    two = replace(BOLTS, holes=(Point(0.0, -30.0, 0.0), Point(0.0, 30.0, 0.0)), toe=25.0)
    used = fastened(two, Load(at=Point(80.0, 0.0, 0.0), force=UP * 1000.0))
    assert used.pull == pytest.approx(80_000.0 / (2 * 25.0))


def test_a_load_beside_the_middle_turns_the_group_by_hand() -> None:
    """1000 N up, 100 beside: even 250; turning 100 000 / (4 x (30² + 20²)) for each mm of reach."""
    used = fastened(BOLTS, Load(at=Point(0.0, 100.0, 0.0), force=UP * 1000.0))
    per_mm = 100_000.0 / 5200.0
    assert used.shear == pytest.approx(sqrt((250.0 + 30.0 * per_mm) ** 2 + (20.0 * per_mm) ** 2))


forces = st.floats(-3000.0, 3000.0)
places = st.floats(-150.0, 150.0)


@given(x=forces, y=forces, z=forces, out=places, beside=places, above=places)
def test_pulls_and_shears_hold_the_part_still(
    x: float, y: float, z: float, out: float, beside: float, above: float
) -> None:
    """Pulls make the even part and the tipping moments; shears the force in the plane."""
    load = Load(at=Point(out, beside, above), force=Point(x, y, z))
    found = shared(BOLTS.holes, BOLTS.axis, BOLTS.toe, load)
    tip_y, tip_z = x * beside - y * out, x * above - z * out
    even = max(x, 0.0)
    arms_y = 2 * (10.0 + 70.0) / (2 * (10.0**2 + 70.0**2))
    arms_z = 2 * (10.0 + 50.0) / (2 * (10.0**2 + 50.0**2))
    total = even + abs(tip_y) * arms_y + abs(tip_z) * arms_z
    assert np.sum(found.pull) == pytest.approx(total, rel=1e-9, abs=1e-6)
    assert np.max(found.shear) >= np.hypot(y, z) / 4 - 1e-9


@given(turn=st.floats(-3.0, 3.0))
def test_a_turned_car_is_held_as_well(turn: float) -> None:
    def turned(point: Point) -> Point:
        return point.turned(UP, turn)

    load = Load(at=Point(60.0, 15.0, 25.0), force=Point(900.0, -400.0, 700.0))
    there = fastened(BOLTS, load)
    away = fastened(
        replace(BOLTS, holes=tuple(map(turned, BOLTS.holes)), axis=turned(REARWARD)),
        Load(at=turned(load.at), force=turned(load.force)),
    )
    assert away.pull == pytest.approx(there.pull, rel=1e-9)
    assert away.shear == pytest.approx(there.shear, rel=1e-9)
    assert away.one_missing == pytest.approx(there.one_missing, rel=1e-9)


def test_on_a_floor_it_is_the_same_bracket() -> None:
    """Laid on its back: the wall's rearward is the floor's up, its up is the floor's forward."""

    def laid(point: Point) -> Point:
        return Point(-point.z, point.y, point.x)

    load = Load(at=Point(60.0, 15.0, 25.0), force=Point(900.0, -400.0, 700.0))
    there = fastened(BOLTS, load)
    floor = fastened(
        replace(BOLTS, holes=tuple(map(laid, BOLTS.holes)), axis=UP),
        Load(at=laid(load.at), force=laid(load.force)),
    )
    assert floor.pull == pytest.approx(there.pull, rel=1e-9)
    assert floor.together == pytest.approx(there.together, rel=1e-9)


# -- what they bear -----------------------------------------------------------------------


def test_bolts_by_the_code_by_hand() -> None:
    """M8 8.8: 36.6 mm²; shear 0.6 x 800 x A / 1.25, pull 0.9 x 800 x A / 1.25; both together."""
    area = np.pi / 4 * (8.0 - 0.9382 * 1.25) ** 2
    used = fastened(BOLTS, Load(at=Point(0.0, 0.0, 0.0), force=Point(4000.0, 0.0, 2000.0)))
    expected = 500.0 / (0.48 * 800.0 / 0.8 * area / 1.0 * 0.8) + 1000.0 / (
        1.4 * 0.9 * 800.0 * area / 1.25
    )
    assert used.together == pytest.approx(expected, rel=1e-9)
    assert used.pull_through == pytest.approx(
        1000.0 / (0.6 * np.pi * 12.0 * 3.0 * 410.0 / 1.25), rel=1e-9
    )


def test_one_of_two_gone_leaves_the_other_all_of_it() -> None:
    two = replace(BOLTS, holes=(Point(0.0, -30.0, 0.0), Point(0.0, 30.0, 0.0)), toe=1e6)
    centred = fastened(two, Load(at=Point(0.0, 0.0, 0.0), force=REARWARD * 4000.0))
    assert centred.one_missing == pytest.approx(2 * float(centred.pull_through), rel=0.05)
    lone = fastened(replace(two, holes=two.holes[:1]), STRAIGHT)
    assert lone.one_missing == np.inf


def test_two_fillets_bent_in_their_own_plane_by_hand() -> None:
    """EN 1993-1-8's plate on edge: 3 M / (a l²) at the ends, and V / (2 a l) along."""
    used = fixed(WELD, Load(at=Point(60.0, 0.0, 0.0), force=UP * 2000.0))
    assert isinstance(used, WeldUse)
    bending = 3.0 * 120_000.0 / (3.0 * 40.0**2)
    along = 2000.0 / (2.0 * 3.0 * 40.0)
    bears = 410.0 / (sqrt(3.0) * 0.85 * 1.25)
    assert used.use == pytest.approx(np.hypot(bending, along) / bears, rel=1e-9)


# -- limits -------------------------------------------------------------------------------

HARD = Load(at=Point(30.0, 0.0, 0.0), force=Point(9000.0, 0.0, 6000.0))


def broken(fixing: Bolted | Riveted | Welded, load: Load) -> set[str]:
    found = check_fixing(fixed(fixing, load), 0.625, "bracket")
    return {finding.limit.code for finding in found if not finding.ok}


def test_sound_fixings_break_none() -> None:
    assert broken(BOLTS, HARD) == set()
    assert broken(replace(RIVETS, shear=4000.0, pull=5000.0), STRAIGHT) == set()
    assert broken(WELD, STRAIGHT) == set()


@pytest.mark.parametrize(
    ("code", "fixing", "load"),
    [
        (
            "structure.fasteners",
            replace(BOLTS, tensile_strength=380.0),
            Load(at=HARD.at, force=HARD.force * 2.0),
        ),
        (
            "structure.fastener_holes",
            replace(BOLTS, sheet=replace(SHEET, edge=6.0, thickness=1.5)),
            Load(at=Point(0.0, 0.0, 0.0), force=UP * 6000.0),
        ),
        (
            "structure.pull_through",
            replace(BOLTS, sheet=replace(SHEET, thickness=0.6)),
            Load(at=Point(0.0, 0.0, 0.0), force=REARWARD * 32000.0),
        ),
        (
            "structure.one_missing",
            replace(BOLTS, toe=1.0, holes=BOLTS.holes[:3]),
            Load(at=Point(60.0, 0.0, 0.0), force=UP * 5000.0),
        ),
        (
            "structure.weld",
            replace(WELD, throat=0.8),
            Load(at=STRAIGHT.at, force=REARWARD * 18000.0),
        ),
        ("structure.weld_thin", replace(WELD, thickness=1.5), STRAIGHT),
    ],
)
def test_one_fixing_breaks_only_this_one(
    code: str, fixing: Bolted | Riveted | Welded, load: Load
) -> None:
    assert broken(fixing, load) - {code} <= {"structure.one_missing"}
    assert code in broken(fixing, load)


def test_a_batch_is_its_singles() -> None:
    def spread(number: float) -> Any:
        return number * np.array([1.0, 1.1, 0.9])

    many = fastened(over(spread, BOLTS), HARD)
    for i, factor in enumerate((1.0, 1.1, 0.9)):
        one = fastened(over(lambda number, factor=factor: number * factor, BOLTS), HARD)
        assert np.asarray(many.together)[i] == pytest.approx(one.together, rel=1e-12)
        assert np.asarray(many.one_missing)[i] == pytest.approx(one.one_missing, rel=1e-12)


# -- in a car -----------------------------------------------------------------------------


@pytest.mark.parametrize("axis", [REARWARD, -REARWARD])
def test_larkfields_flange_is_pulled_off_only_from_the_far_side(axis: Point) -> None:
    """On the cabin side of the wall the rod presses the flange on; on the other it draws it off."""
    design = read(car_text("larkfield-improved")).design
    brake = design.brake
    socket = brake.rod.socket
    flange = replace(
        BOLTS, holes=tuple(socket + RIGHT * side for side in (-40.0, 40.0)), axis=axis, toe=20.0
    )
    mount = replace(brake.carrier.mount, flange=flange, bracket=flange)
    made = replace(brake, carrier=replace(brake.carrier, mount=mount))
    before, after = assess(design), assess(replace(design, brake=made))
    used = after.brake.strength.flange
    assert before.brake.strength.flange is None
    assert isinstance(used, Fastened)
    force = 2000.0 * float(after.brake.hard_stop.ratio)
    assert used.pull == pytest.approx(0.0 if axis == REARWARD else force / 2, abs=0.05 * force)
    about = {f.about for f in after.findings if f.limit.code == "structure.fasteners"}
    assert about == {"brake, 2000 N, cylinder's flange", "brake, 2000 N, bracket"}
