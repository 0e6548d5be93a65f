"""What a design asks to be made: templates, drill cards, cut lists, order of work, DXF."""

import json
from collections.abc import Iterator
from dataclasses import dataclass

from pedalwright.design import Design
from pedalwright.documents.making_cards import Card
from pedalwright.documents.making_lists import bar_table, drill_table
from pedalwright.documents.making_steps import order_table
from pedalwright.documents.making_table import Table, as_csv, as_data, key_of
from pedalwright.documents.tiles import Template
from pedalwright.making.car import bar_pieces, car_jobs, car_profiles
from pedalwright.making.cutting import Bar, cut_bars
from pedalwright.making.planning import order
from pedalwright.making.profiles import Profile, drill_card, profile_drawing

#: A bar as a shop sells it, where nobody said what there is, and a hacksaw's cut, mm (ours).
SHOP_BAR, KERF = 1000.0, 1.5


@dataclass(frozen=True, kw_only=True, slots=True)
class Made:
    """What a folder of sheets is made of."""

    profiles: tuple[Profile, ...]
    drilling: tuple[Table, ...]
    lists: tuple[Table, ...]
    plan: Table

    @classmethod
    def of(cls, design: Design) -> "Made":
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


def data_files(made: Made) -> Iterator[tuple[str, str, str, bytes]]:
    """For a shop and for spreadsheets: file, title, what it is for, content."""
    from pedalwright.documents.making_dxf import dxf  # 0.2 s: only when a file is wanted

    for profile in made.profiles:
        use = "For a shop that cuts: millimetres, layers CUT, DRILL, BEND_UP, BEND_DOWN, MARK."
        yield f"{key_of(profile.name)}.dxf", f"DXF: {profile.name}", use, dxf(profile)
    for table in made.tables:
        use = "For a spreadsheet, units in the headings."
        yield f"{table.key}.csv", table.title, use, as_csv(table).encode()


def lists_json(made: Made) -> bytes:
    """Every list in one file."""
    data = {table.key: as_data(table) for table in made.tables}
    return json.dumps(data, indent=1, ensure_ascii=False, allow_nan=False).encode()


def making_templates(made: Made) -> list[Template]:
    """Every flat part at true size."""
    return [_template(profile) for profile in made.profiles]


def _template(profile: Profile) -> Template:
    metal = profile.metal or "as in the file"
    return Template(
        drawing=profile_drawing(profile),
        face="seen from the car's right",
        made_of=f"{metal}, {profile.thickness:g} mm, {profile.count} off",
    )


def making_cards(made: Made) -> list[Card]:
    """The order of work, a drill card for each part, what to saw."""
    drilled = [
        Card(title=profile.name, drawings=(profile_drawing(profile),), tables=(table,))
        for profile, table in zip(made.profiles, made.drilling, strict=True)
    ]
    return [
        Card(title="Order of work", tables=(made.plan,)),
        *drilled,
        Card(title="Bars and tubes to cut", tables=made.lists),
    ]
