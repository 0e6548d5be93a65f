"""Every picture of the dossier, in the order a reader meets them."""

from dataclasses import dataclass

from pedalwright.assess import Assessment
from pedalwright.design import Design
from pedalwright.documents.pictures.charts import (
    balance_chart,
    force_travel_chart,
    give_chart,
    opening_chart,
    ratio_chart,
    travel_chart,
)
from pedalwright.documents.pictures.side import PEDALS, side_elevation
from pedalwright.drawing import Drawing, svg

#: Room for an elevation on a page laid across, mm.
WIDE, HIGH = 270.0, 160.0


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing ready for a page."""

    key: str
    title: str
    caption: str
    alt: str
    svg: bytes
    #: Needs a page laid across.
    wide: bool


def pictures(design: Design, assessment: Assessment) -> list[Picture]:
    """The side elevations and the charts."""
    elevations = [side_elevation(design, assessment, pedal).fitted(WIDE, HIGH) for pedal in PEDALS]
    charts = [
        ratio_chart(assessment),
        force_travel_chart(assessment),
        travel_chart(assessment),
        give_chart(assessment),
        balance_chart(assessment),
        opening_chart(assessment),
    ]
    return [
        *(_picture(e, f"{e.title}, {e.scale_text}, dimensions in mm", True) for e in elevations),
        *(_picture(chart, chart.title, False) for chart in charts),
    ]


def _picture(drawing: Drawing, caption: str, wide: bool) -> Picture:
    return Picture(
        key=drawing.name,
        title=drawing.title,
        caption=caption,
        alt=drawing.description or drawing.title,
        svg=svg(drawing, physical=True),
        wide=wide,
    )
