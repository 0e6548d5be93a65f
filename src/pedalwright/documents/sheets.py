"""Every sheet for the bench, in the order they are used: file, title, what it is for, who makes it.

A new sheet is one more row of `SHEETS`. Its maker takes the `Work` and gives the file's bytes; the
same work gives the same bytes.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from pedalwright.assess import Assessment, assess
from pedalwright.design import Design
from pedalwright.documents.about import About
from pedalwright.documents.card_leg import card_leg_pdf
from pedalwright.documents.making_cards import Card, cards_pdf
from pedalwright.documents.making_sheets import (
    Made,
    buying_cards,
    data_files,
    lists_json,
    making_cards,
    making_templates,
    order_cards,
)
from pedalwright.documents.pictures import side_elevation
from pedalwright.documents.pictures.lever import lever_layout
from pedalwright.documents.pictures.shown import PEDALS
from pedalwright.documents.sheets_page import sheets_page
from pedalwright.documents.survey_sheet import Readings, survey_sheet_pdf
from pedalwright.documents.tiles import UNCORRECTED, Origin, templates_pdf
from pedalwright.documents.trial_fit import trial_fit
from pedalwright.drawing import Drawing
from pedalwright.making.tiling import A4, Paper, Printer


@dataclass(frozen=True, kw_only=True, slots=True)
class Work:
    """What every sheet is made from."""

    about: About
    design: Design
    assessment: Assessment
    #: What the design asks to be made.
    made: Made
    paper: Paper
    printer: Printer
    #: The marks and readings the survey's sheet asks for.
    readings: Readings | None = None

    @classmethod
    def of(
        cls,
        about: About,
        design: Design,
        *,
        paper: Paper = A4,
        printer: Printer = UNCORRECTED,
        readings: Readings | None = None,
    ) -> "Work":
        """Assess a design and work out what it asks to be made."""
        return cls(
            about=about,
            design=design,
            assessment=assess(design),
            made=Made.of(design, about.units),
            paper=paper,
            printer=printer,
            readings=readings,
        )

    @property
    def origin(self) -> Origin:
        """What stands on every sheet."""
        about = self.about
        return Origin(car=about.car, file=about.file, date=about.date, version=about.version)


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """One file of the folder."""

    file: str
    title: str
    #: One sentence for the builder: when he takes it in hand, and for what.
    use: str
    make: Callable[[Work], bytes]
    #: Whether a design has anything to put on it.
    wanted: Callable[[Work], bool] = lambda _: True


@dataclass(frozen=True, kw_only=True, slots=True)
class Written:
    """A sheet with its content."""

    file: str
    title: str
    use: str
    content: bytes


def sheets(work: Work) -> Iterator[Written]:
    """The page that lists them, then every file in the order of use; those for machines last."""
    files = tuple(_files(work))
    yield Written(
        file="index.html",
        title="What is in this folder",
        use="Open it first.",
        content=sheets_page(work.about, files, tuple(_shown(work))),
    )
    yield from files


def _shown(work: Work) -> Iterator[Drawing]:
    """Drawings to look at on the page."""
    design, found, units = work.design, work.assessment, work.about.units
    yield side_elevation(design, found, "brake", units)
    yield from (lever_layout(design, found, which, units) for which in PEDALS)
    for views in work.made.jigs.values():
        yield from views
    yield from work.made.nesting


def _files(work: Work) -> Iterator[Written]:
    for sheet in SHEETS:
        if sheet.wanted(work):
            yield Written(
                file=sheet.file, title=sheet.title, use=sheet.use, content=sheet.make(work)
            )
    for file, title, use, content in data_files(work.made):
        yield Written(file=file, title=title, use=use, content=content)


def _survey_sheet(work: Work) -> bytes:
    assert work.readings is not None, "only wanted where there are some"
    return survey_sheet_pdf(work.about, work.readings, paper=work.paper.name)


def _card_leg(work: Work) -> bytes:
    return card_leg_pdf(
        work.design,
        work.origin,
        paper=work.paper,
        printer=work.printer,
        units=work.about.units,
    )


def _templates(work: Work) -> bytes:
    templates = making_templates(work.made)
    return templates_pdf(templates, work.origin, paper=work.paper, printer=work.printer)


def _trial_fit(work: Work) -> bytes:
    templates = list(trial_fit(work.design, work.assessment, work.about.units))
    return templates_pdf(templates, work.origin, paper=work.paper, printer=work.printer)


def _order(work: Work) -> bytes:
    return _booklet(work, order_cards(work.made), "Order of work")


def _buying(work: Work) -> bytes:
    return _booklet(work, buying_cards(work.made), "To buy")


def _cards(work: Work) -> bytes:
    return _booklet(work, making_cards(work.made), "Cards for the bench")


def _booklet(work: Work, cards: list[Card], title: str) -> bytes:
    return cards_pdf(cards, work.origin, title=title, paper=work.paper, units=work.about.units)


#: In the order they are used.
SHEETS: tuple[Sheet, ...] = (
    Sheet(
        file="order-of-work.pdf",
        title="Order of work",
        use="Hang it on the wall: one step after the other, where to stop and sit in it, what "
        "cannot be undone. Tick as you go.",
        make=_order,
    ),
    Sheet(
        file="survey-sheet.pdf",
        title="Survey sheet",
        use="Take it into the car with tape, plumb line and phone; a helper can fill it in.",
        make=_survey_sheet,
        wanted=lambda work: work.readings is not None,
    ),
    Sheet(
        file="card-leg.pdf",
        title="Card legs",
        use="Cut out and joint each driver's leg; try it in the car before anything is made.",
        make=_card_leg,
        wanted=lambda work: bool(work.design.drivers),
    ),
    Sheet(
        file="trial-fit.pdf",
        title="Levers and pads for the trial in card",
        use="Brake and clutch at full size as they stand, with the paths of pad and pin: cut them "
        "in card, hang them on their pivots, sit in it.",
        make=_trial_fit,
    ),
    Sheet(
        file="buying.pdf",
        title="Buying list and fastener box",
        use="Take it to the shops before the first cut: by dimension, what you have taken off.",
        make=_buying,
    ),
    Sheet(
        file="templates.pdf",
        title="Templates at true size",
        use="Measure both check bars, then glue to card for the trial fit, to metal for the saw.",
        make=_templates,
    ),
    Sheet(
        file="cards.pdf",
        title="Cards for the bench",
        use="What to saw from what, drill where, hold in which jig and weld how; tick as you go.",
        make=_cards,
    ),
    Sheet(
        file="lists.json",
        title="Every list as data",
        use="For other programs: numbers as numbers, units beside them.",
        make=lambda work: lists_json(work.made),
    ),
)
