"""Headlines of a driver: the lengths of his legs, and how they stand on each pedal."""

from collections.abc import Iterator

from pedalwright.assess.headlines.headline import Headline
from pedalwright.assess.parts import Placed
from pedalwright.driver import Posture, Seated


def sitting(placed: Placed) -> Iterator[Headline]:
    """One driver on all three pedals."""
    yield from _body(placed)
    seats = (("clutch", placed.clutch), ("brake", placed.brake), ("throttle", placed.throttle))
    for pedal, seat in seats:
        for when, posture in (("rest", seat.rest), ("full", seat.full)):
            yield from _posture(f"driver.{placed.name}.{pedal}.{when}", posture)
        yield from _pad(f"driver.{placed.name}.{pedal}", seat)


def _body(placed: Placed) -> Iterator[Headline]:
    name, body, spread = f"driver.{placed.name}", placed.brake.body, placed.spread
    lengths = (
        ("thigh", body.thigh, spread.thigh),
        ("shank", body.shank, spread.shank),
        ("heel_to_ball", body.heel_to_ball, spread.heel_to_ball),
    )
    for part, length, doubt in lengths:
        yield Headline(f"{name}.{part}", length, "mm", "As measured, else guessed from stature.")
        yield Headline(f"{name}.{part}_spread", doubt, "mm", "How far off it may be, 1 SD.")


def _posture(name: str, posture: Posture) -> Iterator[Headline]:
    yield Headline(f"{name}.knee", posture.knee_angle, "rad", "Thigh to shank; 180 is straight.")
    yield Headline(f"{name}.ankle", posture.ankle_angle, "rad", "Shank to sole.")
    yield Headline(f"{name}.hip", posture.hip_angle, "rad", "Trunk to thigh.")
    yield Headline(f"{name}.sole", posture.sole_angle, "rad", "Sole above the horizontal.")


def _pad(name: str, seat: Seated) -> Iterator[Headline]:
    yield Headline(
        f"{name}.pad_above_heel",
        seat.pad_above_heel,
        "mm",
        "Pad centre above the heel's rest, at its highest.",
    )
