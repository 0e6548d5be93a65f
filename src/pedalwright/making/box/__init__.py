"""The pedal box on the bench: flat pieces, holes, fasteners, blanks and work."""

from pedalwright.making.box.blanks import blanks, part_of, plate_of, ties
from pedalwright.making.box.drawn import piece_drawing
from pedalwright.making.box.limits import CURES
from pedalwright.making.box.parts import Joint, Piece
from pedalwright.making.box.rows import Rows
from pedalwright.making.box.solve import BoxWork, box_work

__all__ = [
    "CURES",
    "BoxWork",
    "Joint",
    "Piece",
    "Rows",
    "blanks",
    "box_work",
    "part_of",
    "piece_drawing",
    "plate_of",
    "ties",
]
