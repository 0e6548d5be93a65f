"""Every picture of the dossier, in the order a reader meets them."""

from dataclasses import dataclass, replace

from pedalwright.assess import Assessment
from pedalwright.design import Design
from pedalwright.documents.pictures.charts import (
    balance_chart,
    clutch_travel_chart,
    force_travel_chart,
    give_chart,
    opening_chart,
    ratio_chart,
    rod_angle_chart,
    share_chart,
    travel_chart,
)
from pedalwright.documents.pictures.lever import lever_layout
from pedalwright.documents.pictures.shown import PEDALS
from pedalwright.documents.pictures.side import side_elevation
from pedalwright.drawing import Drawing, svg

#: Room for an elevation on a page laid across, mm.
WIDE, HIGH = 270.0, 160.0
#: Room for a lever on an upright page, mm.
TALL = (172.0, 225.0)


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
    """The side elevations, the levers and the charts."""
    elevations = [side_elevation(design, assessment, pedal).fitted(WIDE, HIGH) for pedal in PEDALS]
    levers = [lever_layout(design, assessment, pedal).fitted(*TALL) for pedal in PEDALS]
    charts = [
        ratio_chart(assessment),
        rod_angle_chart(assessment),
        force_travel_chart(assessment),
        travel_chart(assessment),
        clutch_travel_chart(assessment),
        give_chart(assessment),
        balance_chart(assessment),
        share_chart(assessment),
        opening_chart(assessment),
    ]
    return [
        *(_picture(elevation, _scaled(elevation), wide=True) for elevation in elevations),
        *(_picture(lever, _scaled(lever)) for lever in levers),
        *(_picture(chart, chart.title) for chart in charts),
    ]


def full_size(design: Design, assessment: Assessment) -> list[Picture]:
    """The levers at 1:1, to lay the arms on."""
    levers = [lever_layout(design, assessment, pedal) for pedal in PEDALS]
    named = [replace(lever, name=f"{lever.name}-full-size") for lever in levers]
    return [_picture(lever, _scaled(lever)) for lever in named]


def _scaled(drawing: Drawing) -> str:
    return f"{drawing.title}, {drawing.scale_text}, dimensions in mm"


def _picture(drawing: Drawing, caption: str, *, wide: bool = False) -> Picture:
    return Picture(
        key=drawing.name,
        title=drawing.title,
        caption=caption,
        alt=drawing.description or drawing.title,
        svg=svg(drawing, physical=True),
        wide=wide,
    )
