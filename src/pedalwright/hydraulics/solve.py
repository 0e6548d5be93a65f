"""From cylinders and fluid demand to strokes and pressures."""

import numpy as np

from pedalwright.core.units import MPa, N, Ratio, mm, mm2, mm3
from pedalwright.core.working import subject
from pedalwright.hydraulics.formulas import (
    bar_travel,
    bore_area,
    front_rod_share,
    hose_loss,
    limited_pressure,
    line_pressure,
    piston_stroke,
    refill_flow,
)
from pedalwright.hydraulics.parts import Circuit, Demand, Feed, Limiter, Masters, Strokes, Tandem
from pedalwright.hydraulics.servo import gain

#: Glycol fluid near freezing: about 60 mm2/s and 1.06 kg/l (from memory), as MPa s.
COLD_FLUID = 60e-6 * 1060e-6
#: Time in which a pedal let go comes back, s (ours).
COMES_BACK_IN = 0.3


def circuits(masters: Masters) -> tuple[Circuit, Circuit]:
    """Front and rear circuit as the cylinders feed them."""
    if isinstance(masters, Tandem):
        half = Circuit(area=bore_area(masters.bore), share=1.0, stroke=masters.stroke / 2)
        return half, half
    share = front_rod_share(masters.bar.spacing, masters.bar.offset)
    with subject("front cylinder"):
        front = bore_area(masters.front.bore)
    with subject("rear cylinder"):
        rear = bore_area(masters.rear.bore)
    return (
        Circuit(area=front, share=share, stroke=masters.front.stroke),
        Circuit(area=rear, share=1 - share, stroke=masters.rear.stroke),
    )


def strokes(masters: Masters, demand: Demand, dead_stroke: mm) -> Strokes:
    """Rod travel until everything presses, and with one circuit lost.

    A lost circuit's piston runs to the end of its own stroke first. In a tandem the dead
    stroke is that of both pistons together; the lost piston's half of it lies within its stroke.
    """
    front, rear = circuits(masters)
    with subject("front circuit"):
        s_front = piston_stroke(demand.front, front.area)
    with subject("rear circuit"):
        s_rear = piston_stroke(demand.rear, rear.area)
    if isinstance(masters, Tandem):
        return Strokes(
            hard_stop=s_front + s_rear + dead_stroke,
            front_alone=s_front + dead_stroke / 2 + rear.stroke,
            rear_alone=s_rear + dead_stroke / 2 + front.stroke,
            front_piston=s_front + dead_stroke / 2,
            rear_piston=s_rear + dead_stroke / 2,
        )
    s_front, s_rear = s_front + dead_stroke, s_rear + dead_stroke
    with subject("rear circuit lost"):
        front_alone = bar_travel(front.share, s_front, rear.stroke)
    with subject("front circuit lost"):
        rear_alone = bar_travel(front.share, front.stroke, s_rear)
    return Strokes(
        hard_stop=bar_travel(front.share, s_front, s_rear),
        front_alone=front_alone,
        rear_alone=rear_alone,
        front_piston=s_front,
        rear_piston=s_rear,
    )


def feed_losses(feed: Feed, masters: Masters, strokes: Strokes) -> tuple[MPa, MPa]:
    """Pressure that a remote reservoir's hose loses as each piston comes back, front and rear."""
    front, rear = circuits(masters)

    def lost(area: mm2, stroke: mm) -> MPa:
        flow = refill_flow(area, stroke, COMES_BACK_IN)
        return hose_loss(COLD_FLUID, feed.length, flow, feed.bore)

    with subject("front reservoir's hose"):
        front_loss = lost(front.area, strokes.front_piston)
    with subject("rear reservoir's hose"):
        rear_loss = lost(rear.area, strokes.rear_piston)
    return front_loss, rear_loss


def rod_travel(masters: Masters, front_volume: mm3, rear_volume: mm3) -> mm:
    """Rod travel at the pedal that moves these volumes; dead stroke not counted."""
    front, rear = circuits(masters)
    if isinstance(masters, Tandem):
        return front_volume / front.area + rear_volume / rear.area
    return front.share * front_volume / front.area + rear.share * rear_volume / rear.area


def pressures(
    masters: Masters, push: N, ratio: Ratio, efficiency: Ratio, limiter: Limiter | None = None
) -> tuple[MPa, MPa]:
    """Front and rear pressure for a push on the pad.

    A servo multiplies the pedal's ratio; a limiter bends the rear pressure.
    """
    front, rear = circuits(masters)
    helped = ratio * gain(masters, push * ratio)
    with subject("front circuit"):
        p_front = line_pressure(push, helped, efficiency, front.share, front.area)
    with subject("rear circuit"):
        p_rear = line_pressure(push, helped, efficiency, rear.share, rear.area)
        if limiter is not None:
            p_rear = limited_pressure(p_rear, limiter.knee, limiter.slope)
    return p_front, p_rear


def shortest_reserve(masters: Masters, found: Strokes) -> Ratio:
    """Share of its own stroke that the fuller circuit has used at the hard stop."""
    front, rear = circuits(masters)
    return np.maximum(found.front_piston / front.stroke, found.rear_piston / rear.stroke)
