"""What a design asks to be made: templates, cards, cut lists, what to buy, order of work, DXF."""

import json
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import isfinite

from pedalwright.core.checks import Finding
from pedalwright.design import Design
from pedalwright.documents.making_box import (
    box_files,
    instead_tables,
    piece_card,
    piece_tables,
    piece_template,
    rivet_order,
    rivets_in_all,
)
from pedalwright.documents.making_cards import Card
from pedalwright.documents.making_donors import donor_table
from pedalwright.documents.making_joints import (
    bolt_table,
    count_table,
    rivet_table,
    treatment_table,
)
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
from pedalwright.making import bending, cutting, fastening, planning
from pedalwright.making import box as making_box
from pedalwright.making.box import BoxWork, blanks, box_work, ties
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
    Part,
    Piece,
    SheetPlan,
    Stock,
    check_bars,
    check_sheets,
    cut_bars,
    cut_sheets,
)
from pedalwright.making.cutting.drawn import bars_drawing, sheet_drawings
from pedalwright.making.cutting.limits import ON_STOCK
from pedalwright.making.fastening import (
    BoltRow,
    RivetRow,
    check_bolt,
    check_rivet,
    counts,
    set_bolt,
    set_rivet,
    treatments,
)
from pedalwright.making.fastening.counts import PACK
from pedalwright.making.planning import order, skin_pins
from pedalwright.making.profiles import Profile, drill_card, profile_drawing, seen_from
from pedalwright.shelf.stock import Stock as Shelf

_CURES = {
    **cutting.CURES,
    **planning.CURES,
    **fastening.CURES,
    **bending.CURES,
    **making_box.CURES,
}

#: A bar as a shop sells it, and what is filed off to square its end, mm (ours).
SHOP_BAR, SQUARED = 1000.0, 2.0
#: Between two plates on a sheet, and from its edge, mm: a saw and a file (ours).
GAP, MARGIN = 4.0, 2.0
#: The largest sheet most stockists have, mm (common practice).
SOLD = 2500.0, 1250.0


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
    #: The parts of the pedal box.
    box: BoxWork
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
        profiles, stock, work = car_profiles(design), design.stock, box_work(design)
        drilled = [drill_card(profile) for profile in profiles]
        wanted = _gathered(bar_pieces(design), ties(design.box))
        there = {
            section: [*own_bars(stock, section), Bar(name=section, length=SHOP_BAR)]
            for section in wanted
        }
        bars = {
            section: cut_bars(pieces, there[section], kerf=float(stock.kerf), trim=SQUARED)
            for section, pieces in wanted.items()
        }
        parts = _merged(plate_parts(design), blanks(work.pieces))
        plates = _cut(parts, stock)
        held, rows = car_fasteners(design), work.rows
        rivets = [set_rivet(row) for row in (*held.rivets, *rows.rivets)]
        bolts = [set_bolt(row) for row in (*held.bolts, *rows.bolts)]
        others = Counter(held.others) + Counter(rows.others)
        counted = counts(rivets, bolts, box(stock), {**PACK, **packs(stock)}, others)
        fastened: tuple[RivetRow | BoltRow, ...] = (*rows.rivets, *rows.bolts)
        between = [one for row in fastened for one in treatments(row)]
        panelled = [drill_card(piece.profile) for piece in work.pieces]
        welds, fluid = car_welds(design), design.brake.plumbing.fluid
        jobs = car_jobs(design, work.work)
        plan = order(jobs)
        found = (
            *work.findings,
            *(f for plate, own in parts.items() for f in _on_a_sheet(own, plates[plate])),
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
            drilling=[row for card in (*drilled, *panelled) for row in card],
            skin_pins=_pins(work),
            treatments=between,
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
            box=work,
            jigs={jig.name: jig_drawings(jig, units.lengths) for jig in car_jigs(design)},
            cutting=(
                *(bar_table(section, plan) for section, plan in bars.items()),
                *(sheet_table(plan, plate.words) for plate, plan in plates.items() if plan.sheets),
            ),
            nesting=(*_bars(bars), *_sheets(plates)),
            joints=(
                *((rivet_table(rivets),) if rivets else ()),
                *((bolt_table(bolts),) if bolts else ()),
                *filter(None, (rivets_in_all(rows.rivets, box(stock)),)),
                count_table(counted, (*held.open, *rows.open)),
                *instead_tables(rows.rivets, counted),
                *((treatment_table(between),) if between else ()),
                *filter(None, (rivet_order(work.made, rows.joints),)),
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
            *(table for piece in self.box.pieces for table in piece_tables(piece)),
        )


def _gathered(
    pieces: Mapping[str, Sequence[Piece]], more: Iterable[tuple[str, Piece]]
) -> dict[str, tuple[Piece, ...]]:
    """Bars by their section, ties among them."""
    found = {section: tuple(own) for section, own in pieces.items()}
    for section, piece in more:
        found[section] = (*found.get(section, ()), piece)
    return found


def _merged(
    one: Mapping[Plate, tuple[Part, ...]], other: Mapping[Plate, tuple[Part, ...]]
) -> dict[Plate, tuple[Part, ...]]:
    """Parts by their plate; the strongest plate first, so that it gets the sheets it needs."""
    plates = sorted({*one, *other}, key=lambda p: (p.metal, p.thickness, -p.yield_strength))
    return {plate: (*one.get(plate, ()), *other.get(plate, ())) for plate in plates}


def _cut(parts: Mapping[Plate, tuple[Part, ...]], stock: Shelf) -> dict[Plate, SheetPlan]:
    """Every plate on the sheets that serve it; a sheet that is used is used once."""
    plans: dict[Plate, SheetPlan] = {}
    used: Counter[str] = Counter()
    for plate, own in parts.items():
        there = [
            replace(sheet, count=(sheet.count or 0) - used[sheet.name])
            for sheet in own_sheets(stock, plate)
        ]
        plans[plate] = cut_sheets(own, there, gap=GAP, margin=MARGIN)
        used.update(cut.stock.name for cut in plans[plate].sheets)
    return plans


def _on_a_sheet(parts: Sequence[Part], plan: SheetPlan) -> Iterator[Finding]:
    """Whether the largest sheet a shop sells holds every part that no sheet of one's own does."""
    sold = Stock(name="the largest sheet sold", length=SOLD[0], width=SOLD[1])
    if plan.missing:
        yield from (f for f in check_sheets(parts, [sold], plan) if f.limit is ON_STOCK)


def _pins(work: BoxWork) -> int:
    """As many as the part with the most rivets wants at once."""
    return max(
        (
            sum(
                skin_pins(j.count)
                for j in work.rows.joints
                if j.what == "rivets" and name in j.parts
            )
            for name in (piece.name for piece in work.pieces if not piece.there)
        ),
        default=0,
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
    yield from box_files(made.box, made.units)
    for table in made.tables:
        use = "For a spreadsheet, units in the headings."
        yield f"{table.key}.csv", table.title, use, as_csv(table).encode()


def lists_json(made: Made) -> bytes:
    """Every list in one file."""
    data = {table.key: as_data(table) for table in made.tables}
    return json.dumps(data, indent=1, ensure_ascii=False, allow_nan=False).encode()


def making_templates(made: Made) -> list[Template]:
    """Every flat part at true size."""
    return [
        *(_template(made, profile) for profile in made.profiles),
        *(piece_template(piece, made.units) for piece in made.box.pieces if piece.profile.bores),
    ]


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
        *(piece_card(piece, made.units) for piece in made.box.pieces if piece.profile.bores),
        *(Card(title=f"Jig for the {name} pedal", drawings=d) for name, d in made.jigs.items()),
        Card(title="Weld card", tables=made.welds),
    ]
    return [card for card in cards if card.drawings or card.tables]
