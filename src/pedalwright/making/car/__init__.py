"""What a design itself asks to be made: arms, tubes and rods, and the order of the work."""

from pedalwright.making.car.bars import bar_pieces
from pedalwright.making.car.jobs import SERVICED, PanelWork, car_jobs
from pedalwright.making.car.profiles import car_profiles

__all__ = ["SERVICED", "PanelWork", "bar_pieces", "car_jobs", "car_profiles"]
