"""Questions about the sheet metal that carries the pedals, each tried as a design of its own."""

from pedalwright.search.box.doubler import doubler
from pedalwright.search.box.fasteners import rivets
from pedalwright.search.box.load_path import load_path
from pedalwright.search.box.thickness import thickness
from pedalwright.search.box.welds import weld

__all__ = ["doubler", "load_path", "rivets", "thickness", "weld"]
