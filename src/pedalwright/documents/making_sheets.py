"""What a design asks to be made: templates, cards, cut lists, what to buy, order of work, DXF."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import isfinite

from pedalwright.design import Design
from pedalwright.documents.making_cards import Card
from pedalwright.documents.making_donors import donor_table
from pedalwright.documents.making_joints import bolt_table, count_table, rivet_table
from pedalwright.documents.making_lists import (
    bar_table,
    buying_table,
    drill_table,
    finding_table,
    sheet_table,
)
from pedalwright.documents.making_steps import order_table
from pedalwright.documents.making_table import Table, as_csv, as_data, key_of
from pedalwright.documents.making_welds import weld_table
from pedalwright.documents.outside import METRIC, Units
from pedalwright.documents.tiles import Template
from pedalwright.drawing import Drawing
from pedalwright.making import cutting, fastening, planning
from pedalwright.making.buying import buying
from pedalwright.making.car import (
    SERVICED,
    Plate,
    bar_pieces,
    box,
    car_fasteners,
    car_jigs,
    car_jobs,
    car_profiles,
    car_welds,
    jig_drawings,
    own_bars,
    own_sheets,
    packs,
    plate_parts,
    shortened,
)
from pedalwright.making.cutting import (
    Bar,
    BarPlan,
    SheetPlan,
    check_bars,
    cut_bars,
    cut_sheets,
)
from pedalwright.making.cutting.drawn import bars_drawing, sheet_drawings
from pedalwright.making.fastening import check_bolt, check_rivet, counts, set_bolt, set_rivet
from pedalwright.making.fastening.counts import PACK
from pedalwright.making.planning import order
from pedalwright.making.profiles import Profile, drill_card, profile_drawing, seen_from

_CURES = {**cutting.CURES, **planning.CURES, **fastening.CURES}

#: A bar as a shop sells it, and what is filed off to square its end, mm (ours).
SHOP_BAR, SQUARED = 1000.0, 2.0
#: Between two plates on a sheet, and from its edge, mm: a saw and a file (ours).
GAP, MARGIN = 4.0, 3.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Made:
    """What a folder of sheets is made of; a list with nothing in it is left out."""

    design: Design
    units: Units
    profiles: tuple[Profile, ...]
    drilling: tuple[Table, ...]
    #: Of arms that come from another car.
    donors: tuple[Table, ...]
    welds: tuple[Table, ...]
    #: By their pedal: from above, from the side.
    jigs: Mapping[str, tuple[Drawing, ...]]
    #: Bars, then plates, with the pictures of how they are cut.
    cutting: tuple[Table, ...]
    nesting: tuple[Drawing, ...]
    joints: tuple[Table, ...]
    buying: tuple[Table, ...]
    plan: Table
    #: What cannot be made as it is.
    faults: tuple[Table, ...]

    @classmethod
    def of(cls, design: Design, units: Units = METRIC) -> "Made":
        """All that a design itself asks to be made; drawings in the builder's units."""
        profiles, stock = car_profiles(design), design.stock
        drilled = [drill_card(profile) for profile in profiles]
        wanted = bar_pieces(design)
        there = {
            section: [*own_bars(stock, section), Bar(name=section, length=SHOP_BAR)]
            for section in wanted
        }
        bars = {
            section: cut_bars(pieces, there[section], kerf=float(stock.kerf), trim=SQUARED)
            for section, pieces in wanted.items()
        }
        plates = {
            plate: cut_sheets(parts, own_sheets(stock, plate), gap=GAP, margin=MARGIN)
            for plate, parts in plate_parts(design).items()
        }
        held = car_fasteners(design)
        rivets, bolts = [set_rivet(row) for row in held.rivets], [set_bolt(b) for b in held.bolts]
        counted = counts(rivets, bolts, box(stock), {**PACK, **packs(stock)}, held.others)
        welds, fluid = car_welds(design), design.brake.plumbing.fluid
        jobs = car_jobs(design)
        plan = order(jobs)
        found = (
            *(
                f
                for name, made in bars.items()
                for f in check_bars(wanted[name], there[name], made)
            ),
            *planning.check(jobs, plan, serviced=SERVICED),
            *(f for bolt in bolts if isfinite(bolt.total) for f in check_bolt(bolt)),
            *(f for rivet in rivets if isfinite(rivet.total) for f in check_rivet(rivet)),
        )
        bought = buying(
            bars=bars,
            sheets=plates.values(),
            blanks={plate.words: plan.missing for plate, plan in plates.items()},
            counts=counted,
            drilling=[row for rows in drilled for row in rows],
            fluid=fluid.grade if fluid else "",
        )
        return cls(
            design=design,
            profiles=profiles,
            drilling=tuple(
                drill_table(one.name, rows) for one, rows in zip(profiles, drilled, strict=True)
            ),
            donors=tuple(donor_table(design, one) for one in shortened(design)),
            welds=(weld_table(welds),) if welds else (),
            units=units,
            jigs={jig.name: jig_drawings(jig, units.lengths) for jig in car_jigs(design)},
            cutting=(
                *(bar_table(section, plan) for section, plan in bars.items()),
                *(sheet_table(plan, plate.words) for plate, plan in plates.items() if plan.sheets),
            ),
            nesting=(*_bars(bars), *_sheets(plates)),
            joints=(
                *((rivet_table(rivets),) if rivets else ()),
                *((bolt_table(bolts),) if bolts else ()),
                count_table(counted, held.open),
            ),
            buying=(buying_table(bought),),
            plan=order_table(plan),
            faults=(finding_table(found, _CURES),) if not all(f.ok for f in found) else (),
        )

    @property
    def tables(self) -> tuple[Table, ...]:
        """Every list, in the order of use."""
        return (
            *(*self.faults, self.plan, *self.buying, *self.joints, *self.cutting),
            *(*self.donors, *self.drilling, *self.welds),
        )


def _bars(plans: Mapping[str, BarPlan]) -> Iterator[Drawing]:
    for section, plan in plans.items():
        if plan.bars:
            drawn = bars_drawing(plan, f"bars-{key_of(section)}")
            yield replace(drawn, title=f"Cutting {section}")


def _sheets(plans: Mapping[Plate, SheetPlan]) -> Iterator[Drawing]:
    for plate, plan in plans.items():
        yield from sheet_drawings(plan, f"sheet-{key_of(plate.words)}")


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
    return [_template(made, profile) for profile in made.profiles]


def _template(made: Made, profile: Profile) -> Template:
    design, written = made.design, made.units.lengths
    part = design.brake if profile.name.startswith("brake") else design.clutch
    donated = next((one for one in shortened(design) if f"{one.pedal} arm" == profile.name), None)
    offset = float(part.pedal.pad_offset)
    relay = "relay" in profile.name
    metal = f"donor's {donated.donor.metal} arm" if donated else profile.metal or "plate"
    said = "seen from the car's left" if relay else seen_from(part.pedal)
    unit = " mm" if made.units is METRIC else ""
    hand = "right" if offset > 0.0 else "left"
    return Template(
        drawing=profile_drawing(profile, written),
        face=f"{said}: scribe {said.rpartition(' ')[2].upper()} on this face",
        hand=f"pad {written(abs(offset), 1)}{unit} to the car's {hand} of the arm, see the jig"
        if offset and not relay
        else "",
        made_of=f"{metal}, {written(profile.thickness, 2)}{unit}, {profile.count} off",
        way_up="" if relay else "way the pad moves when pressed",
    )


def order_cards(made: Made) -> list[Card]:
    """The order of work by itself: it hangs on the wall. What cannot be made comes before it."""
    faults = [Card(title="Before you cut", tables=made.faults)] if made.faults else []
    return [*faults, Card(title="Order of work", tables=(made.plan,))]


def buying_cards(made: Made) -> list[Card]:
    """What goes along to the shops."""
    return [
        Card(title="Buying list", tables=made.buying),
        Card(title="Fasteners and joints", tables=made.joints),
    ]


def making_cards(made: Made) -> list[Card]:
    """What to saw, a card for each part, what to weld and in which jig."""
    donors = {table.key: table for table in made.donors}
    parts = [
        Card(
            title=profile.name.capitalize(),
            drawings=(profile_drawing(profile, made.units.lengths),),
            tables=(
                *(t for key, t in donors.items() if key == f"donor-{key_of(profile.name)}"),
                table,
            ),
        )
        for profile, table in zip(made.profiles, made.drilling, strict=True)
    ]
    cards = [
        Card(title="Cutting", drawings=made.nesting, tables=made.cutting),
        *parts,
        *(Card(title=f"Jig for the {name} pedal", drawings=d) for name, d in made.jigs.items()),
        Card(title="Weld card", tables=made.welds),
    ]
    return [card for card in cards if card.drawings or card.tables]
