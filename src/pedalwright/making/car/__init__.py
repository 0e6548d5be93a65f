"""What a design itself asks to be made: arms, tubes and rods, joints, and the order of the work."""

from pedalwright.making.car.bars import bar_pieces
from pedalwright.making.car.donors import Shortened, shortened
from pedalwright.making.car.fasteners import Fasteners, car_fasteners
from pedalwright.making.car.holding import box, own_bars, own_sheets, packs
from pedalwright.making.car.jig import Jig, car_jigs, jig_drawings
from pedalwright.making.car.jobs import SERVICED, PanelWork, car_jobs
from pedalwright.making.car.plates import Plate, plate_parts
from pedalwright.making.car.profiles import car_profiles
from pedalwright.making.car.welds import Weld, car_welds

__all__ = [
    "SERVICED",
    "Fasteners",
    "Jig",
    "PanelWork",
    "Plate",
    "Shortened",
    "Weld",
    "bar_pieces",
    "box",
    "car_fasteners",
    "car_jigs",
    "car_jobs",
    "car_profiles",
    "car_welds",
    "jig_drawings",
    "own_bars",
    "own_sheets",
    "packs",
    "plate_parts",
    "shortened",
]
