"""The weld card."""

from collections.abc import Sequence

from pedalwright.documents.making_table import Column, Table
from pedalwright.making.car import Weld


def weld_table(welds: Sequence[Weld]) -> Table:
    """Every weld in its order; what must not be welded has a column of its own."""
    minded = any(weld.forbidden for weld in welds)
    return Table(
        key="welds",
        title="Weld card",
        says="By a qualified welder; every weld on a pedal needs sign-off. Ask whether your "
        "scheme allows a welded pedal. Never weld cast or alloy arms, cylinders, hardened pins, "
        "a balance bar, a push rod, or anything plated (zinc fumes) or cleaned with chlorine. "
        "Tack everything, put it in the jig, check it, then weld. A leg left open is as thick as "
        "the thinner part.",
        columns=(
            Column(key="order", heading="no."),
            Column(key="part", heading="part"),
            Column(key="joins", heading="weld"),
            Column(key="leg", heading="leg", unit="mm"),
            Column(key="length", heading="long", unit="mm", digits=0),
            Column(key="how", heading="how"),
            *((Column(key="forbidden", heading="STOP"),) if minded else ()),
        ),
        rows=tuple(
            (n, w.part, w.joins, w.leg, w.length, w.how, *((w.forbidden,) if minded else ()))
            for n, w in enumerate(welds, 1)
        ),
    )
