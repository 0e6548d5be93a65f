"""Paper: what a printer makes of a millimetre, and how many sheets a length takes."""

import numpy as np

from pedalwright.core.units import Ratio, mm
from pedalwright.core.working import formula


@formula("k", source="geometry")
def stretch(l_bar: mm, l_read: mm) -> Ratio:
    """What to draw a length with so that this printer makes it true.

    `l_read` is what a rule reads on the printed check bar that should be `l_bar` long.
    """
    return l_bar / l_read


@formula("n", source="geometry")
def sheets_along(L: mm, w: mm, o: mm) -> Ratio:
    """Sheets that a length takes, each showing `w` and overlapping the next by `o`."""
    return np.maximum(1.0, np.ceil((L - o) / (w - o) - 1e-9))
