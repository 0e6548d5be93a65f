"""Every picture of the dossier, in the order a reader meets them."""

from dataclasses import dataclass, replace

from pedalwright.assess import Assessment
from pedalwright.assess.full import FullTier
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.charts import charts
from pedalwright.documents.pictures.deformed import deformed_pictures
from pedalwright.documents.pictures.front import front_view
from pedalwright.documents.pictures.lever import lever_layout
from pedalwright.documents.pictures.load_loop import load_loop_picture
from pedalwright.documents.pictures.oblique import box_picture
from pedalwright.documents.pictures.plan import plan
from pedalwright.documents.pictures.shown import PEDALS, Which
from pedalwright.documents.pictures.side import side_elevation
from pedalwright.drawing import Drawing, svg

#: Room for the footwell on a page laid across, mm.
WIDE, HIGH = 270.0, 160.0
#: Room on an upright page, mm.
TALL = (172.0, 225.0)
#: Beginnings of the names of what is drawn about strength and give.
ABOUT_STRENGTH = ("load", "give", "box")


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

    @property
    def about_strength(self) -> bool:
        """Whether it belongs to what is said of strength and give."""
        return self.key.startswith(ABOUT_STRENGTH)


def pictures(
    design: Design, assessment: Assessment, units: Units, full: FullTier | None = None
) -> list[Picture]:
    """The footwell from its three sides, the levers, the charts, and who bears and gives what.

    With a full answer of the box also how that moves and works.
    """
    footwell = [
        *(side_elevation(design, assessment, which, units) for which in PEDALS),
        plan(design, assessment, units),
    ]
    upright = [
        front_view(design, assessment, units),
        *(lever_layout(design, assessment, which, units) for which in PEDALS),
    ]
    return [
        *(_drawing(drawing.fitted(WIDE, HIGH), units, wide=True) for drawing in footwell),
        *(_drawing(drawing.fitted(*TALL), units) for drawing in upright),
        *(_picture(chart, chart.title) for chart in charts(assessment, units)),
        *(_loop(design, assessment, which, units) for which in PEDALS),
        _in_space(box_picture(design, assessment).fitted(*TALL)),
        *(_picture(one, one.title) for one in deformed_pictures(design, full, units)),
    ]


def _in_space(drawing: Drawing) -> Picture:
    return _picture(drawing, f"{drawing.title}, in a parallel view")


def _loop(design: Design, assessment: Assessment, which: Which, units: Units) -> Picture:
    loop = load_loop_picture(design, assessment, which, units)
    return _picture(loop, f"{loop.title}; each arrow as long as its force is large", wide=True)


def full_size(design: Design, assessment: Assessment, units: Units) -> list[Picture]:
    """The levers at 1:1, to lay the arms on."""
    levers = [lever_layout(design, assessment, which, units) for which in PEDALS]
    return [_drawing(replace(lever, name=f"{lever.name}-full-size"), units) for lever in levers]


def _drawing(drawing: Drawing, units: Units, *, wide: bool = False) -> Picture:
    """A drawing to scale; the caption says to which, and in what its dimensions are."""
    caption = f"{drawing.title}, {drawing.scale_text}, {units.dimensions}"
    return _picture(drawing, caption, wide=wide)


def _picture(drawing: Drawing, caption: str, *, wide: bool = False) -> Picture:
    return Picture(
        key=drawing.name,
        title=drawing.title,
        caption=caption,
        alt=drawing.description or drawing.title,
        svg=svg(drawing, physical=True),
        wide=wide,
    )
