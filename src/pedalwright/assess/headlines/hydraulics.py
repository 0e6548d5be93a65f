"""Headlines of the cylinders: their strokes, and the tilt of a balance bar."""

from collections.abc import Iterator

from pedalwright.assess.headlines.headline import Headline
from pedalwright.assess.parts import BrakePedal


def stroking(brake: BrakePedal) -> Iterator[Headline]:
    """How far the pistons move, and how the bar between them tilts, where there is one."""
    yield Headline(
        "hydraulics.front_stroke",
        brake.strokes.front_piston,
        "mm",
        "Travel of the front circuit's piston at the hard stop, dead stroke included.",
    )
    yield Headline(
        "hydraulics.rear_stroke",
        brake.strokes.rear_piston,
        "mm",
        "Travel of the rear circuit's piston at the hard stop, dead stroke included.",
    )
    if brake.bar is not None:
        yield Headline(
            "hydraulics.bar_tilt",
            brake.bar.hard_stop,
            "rad",
            "Tilt of the balance bar at the hard stop; positive with the front rod ahead.",
        )
        yield Headline(
            "hydraulics.bar_tilt_rear_lost",
            brake.bar.rear_lost,
            "rad",
            "The same with the rear circuit lost and its cylinder at its end.",
        )
        yield Headline(
            "hydraulics.bar_tilt_front_lost",
            brake.bar.front_lost,
            "rad",
            "The same with the front circuit lost and its cylinder at its end.",
        )
