"""Quantities as a builder writes them: `1 5/8`, `5' 2 1/2"`, `19,05`, `16 SWG`, `54.5 ±0.5 mm`.

`parse` reads a text into a number in the units of the house, or refuses it and offers what may
have been meant; nothing doubtful is read silently. `show` writes a number for people, `write`
for a file, so that `parse` reads the same number back; `converted` gives it in another unit.

The way of a text: `tokens` cuts it into words, `amounts` and `unit_words` are the grammar,
`unit_table` and `gauges` the knowledge, `reading` the answer. A text the grammar doubts leaves
as a `DoubtError` and reaches the builder as a `QuantityError`.
"""

from pedalwright.core.quantity.converting import converted
from pedalwright.core.quantity.missing import is_missing
from pedalwright.core.quantity.reading import QuantityError, Reading, parse
from pedalwright.core.quantity.writing import show, write

__all__ = ["QuantityError", "Reading", "converted", "is_missing", "parse", "show", "write"]
