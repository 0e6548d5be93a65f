"""Everything for the bench in one folder: templates, drill cards, cut lists, order of work, DXF."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pedalwright.design import Design
from pedalwright.documents.making_cards import Card, cards_pdf
from pedalwright.documents.making_dxf import dxf
from pedalwright.documents.making_lists import bar_table, drill_table
from pedalwright.documents.making_steps import order_table
from pedalwright.documents.making_table import Table, as_csv, as_data, key_of
from pedalwright.documents.tiles import UNCORRECTED, Origin, Template, templates_pdf
from pedalwright.making.car import bar_pieces, car_jobs, car_profiles
from pedalwright.making.cutting import Bar, cut_bars
from pedalwright.making.planning import order
from pedalwright.making.profiles import Profile, drill_card, profile_drawing
from pedalwright.making.tiling import A4, Paper, Printer

#: A bar as a shop sells it, where nobody said what there is, and a hacksaw's cut, mm (ours).
SHOP_BAR, KERF = 1000.0, 1.5


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheets:
    """What a folder of sheets is made of."""

    profiles: tuple[Profile, ...]
    drilling: tuple[Table, ...]
    lists: tuple[Table, ...]
    plan: Table

    @classmethod
    def of(cls, design: Design) -> "Sheets":
        """All that a design itself asks to be made."""
        profiles = car_profiles(design)
        return cls(
            profiles=profiles,
            drilling=tuple(drill_table(one.name, drill_card(one)) for one in profiles),
            lists=tuple(
                bar_table(
                    section,
                    cut_bars(pieces, [Bar(name=section, length=SHOP_BAR)], kerf=KERF),
                )
                for section, pieces in bar_pieces(design).items()
            ),
            plan=order_table(order(car_jobs(design))),
        )

    @property
    def tables(self) -> tuple[Table, ...]:
        """Every list."""
        return (*self.drilling, *self.lists, self.plan)


def making_sheets(
    design: Design, origin: Origin, *, paper: Paper = A4, printer: Printer = UNCORRECTED
) -> Mapping[str, bytes]:
    """Files by name; the same input gives the same bytes."""
    made = Sheets.of(design)
    return dict(_files(made, origin, paper, printer))


def _files(
    made: Sheets, origin: Origin, paper: Paper, printer: Printer
) -> Iterator[tuple[str, bytes]]:
    templates = [_template(profile) for profile in made.profiles]
    yield "templates.pdf", templates_pdf(templates, origin, paper=paper, printer=printer)
    yield "cards.pdf", cards_pdf(_cards(made), origin, title="Cards for the bench", paper=paper)
    for profile in made.profiles:
        yield f"{key_of(profile.name)}.dxf", dxf(profile)
    for table in made.tables:
        yield f"{table.key}.csv", as_csv(table).encode()
    data = {table.key: as_data(table) for table in made.tables}
    yield "lists.json", json.dumps(data, indent=1, ensure_ascii=False).encode()


def _template(profile: Profile) -> Template:
    metal = profile.metal or "as in the file"
    return Template(
        drawing=profile_drawing(profile),
        face="seen from the car's right",
        made_of=f"{metal}, {profile.thickness:g} mm, {profile.count} off",
    )


def _cards(made: Sheets) -> list[Card]:
    drilled = [
        Card(title=profile.name, drawings=(profile_drawing(profile),), tables=(table,))
        for profile, table in zip(made.profiles, made.drilling, strict=True)
    ]
    return [
        Card(title="Order of work", tables=(made.plan,)),
        *drilled,
        Card(title="Bars and tubes to cut", tables=made.lists),
    ]
