"""Hot drums make a long pedal: Brackwater's, weighed, after five stops."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.brakes import Drum
from pedalwright.design import Design
from pedalwright.hydraulics import Feed, Reservoirs, Twin
from pedalwright.project import car_text, read


@pytest.fixture(scope="module")
def weighed() -> Design:
    return read(car_text("brackwater-fix2")).design


def test_the_long_pedal_by_hand(weighed: Design) -> None:
    """Each piston goes twice its drum's growth further; the bar shares out what that takes."""
    brake = assess(weighed).brake
    masters = weighed.brake.masters
    assert isinstance(masters, Twin)
    longer = 0.0
    for wheel, rise, master, share in (
        (weighed.brake.front, brake.result.front_rise, masters.front, 0.5),
        (weighed.brake.rear, brake.result.rear_rise, masters.rear, 0.5),
    ):
        assert isinstance(wheel, Drum)
        assert rise is not None
        growth = 11e-6 * float(wheel.drum_radius) * float(rise.five_stops)
        volume = 2 * float(wheel.pistons_moved) * float(wheel.cylinder_bore) ** 2 * 2 * growth
        longer += share * volume / float(master.bore) ** 2
    assert brake.hot_travel is not None
    by_ratio = (brake.hot_travel - brake.result.pad_travel_hard_stop) / longer
    assert by_ratio == pytest.approx(float(brake.hard_stop.ratio), rel=0.02)


def test_discs_and_drums_nobody_weighed_are_not_asked(weighed: Design) -> None:
    front = replace(weighed.brake.front, rotor=None)
    rear = replace(weighed.brake.rear, rotor=None)
    cold = replace(weighed, brake=replace(weighed.brake, front=front, rear=rear))
    assert assess(cold).brake.hot_travel is None
    asked = {f.limit.code for f in assess(cold).findings}
    assert "brakes.hot_travel" not in asked
    assert "brakes.hot_travel" in {f.limit.code for f in assess(weighed).findings}


def test_a_remote_reservoir_is_asked_about_where_there_is_one(weighed: Design) -> None:
    feed = Feed(bore=8.0, length=600.0, above_port=150.0)
    tank = Reservoirs(front=90e3, rear=90e3, height=200.0, feed=feed)
    plumbing = replace(weighed.brake.plumbing, reservoirs=tank)
    design = replace(weighed, brake=replace(weighed.brake, plumbing=plumbing))
    found = {(f.limit.code, f.about): f for f in assess(design).findings}
    front = found["hydraulics.feed", "front circuit"]
    assert bool(front.ok)
    assert np.isfinite(front.value)
    assert bool(found["hydraulics.above_port", ""].ok)
