"""The row of pads across the footwell: gaps between pads, walls and shoes."""

from pedalwright.core.units import mm
from pedalwright.driver.parts import Row, ShoeRoom, Spacing


def spacing(row: Row) -> Spacing:
    """Gaps between the pads and to the walls, across the car."""
    return Spacing(
        accelerator_brake=row.accelerator.left - row.brake.right,
        brake_clutch=row.brake.left - row.clutch.right,
        clutch_wall=row.clutch.left - row.left_wall,
        brake_left_wall=row.brake.left - row.left_wall,
        brake_right_wall=row.right_wall - row.brake.right,
    )


def shoe_room(row: Row, shoe_width: mm) -> ShoeRoom:
    """What is left beside shoes on the middle of clutch, brake and accelerator."""
    return ShoeRoom(
        between_shoes=row.brake.middle - row.clutch.middle - shoe_width,
        left_wall=row.clutch.middle - shoe_width / 2 - row.left_wall,
        right_wall=row.right_wall - row.accelerator.middle - shoe_width / 2,
    )
