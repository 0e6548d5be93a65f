"""Lists of sheet and bar: bend cards, drill cards, cut lists, what to buy, what does not pass."""

from collections.abc import Iterable, Mapping, Sequence
from math import degrees

from pedalwright.core.checks import Finding
from pedalwright.core.quantity import show
from pedalwright.documents.making_table import Column, Table, key_of
from pedalwright.making.bending import BendStep
from pedalwright.making.buying import Purchase
from pedalwright.making.cutting import BarPlan, SheetPlan
from pedalwright.making.profiles import DrillRow


def bend_table(name: str, steps: Sequence[BendStep]) -> Table:
    """How each bend is set and turned."""
    neutral = steps[0].bend.neutral if steps else None
    rests = (
        f"Neutral line {neutral.share:.3f} of the thickness, by {neutral.source}. "
        if neutral
        else ""
    )
    return Table(
        key=f"bends-{key_of(name)}",
        title=f"Bend card: {name}",
        says=f"{rests}Set the sight line flush with the nose of the clamp; it lies a radius into "
        "the bend. Bend once on scrap first.",
        columns=(
            Column(key="order", heading="no."),
            Column(key="bend", heading="bend"),
            Column(key="way", heading="way"),
            Column(key="angle", heading="angle", unit="deg"),
            Column(key="turn_to", heading="turn to", unit="deg"),
            Column(key="radius", heading="radius", unit="mm"),
            Column(key="left_radius", heading="comes out", unit="mm", digits=2),
            Column(key="length", heading="length", unit="mm"),
            Column(key="allowance", heading="in the bend", unit="mm", digits=2),
            Column(key="deduction", heading="legs lose", unit="mm", digits=2),
        ),
        rows=tuple(
            (
                step.number,
                step.bend.name,
                "up" if step.bend.up else "down",
                degrees(abs(step.bend.angle)),
                degrees(step.turn_to),
                step.bend.radius,
                step.left_radius,
                step.length,
                step.bend.allowance,
                step.bend.deduction,
            )
            for step in steps
        ),
    )


def drill_table(name: str, rows: Sequence[DrillRow], *, there: bool = False) -> Table:
    """Every hole of a part; one that is `there` already is drilled where it is."""
    edges = rows[0].edges if rows else ""
    return Table(
        key=f"holes-{key_of(name)}",
        title=f"Drill card: {name}",
        says=_drilled_words(edges, there=there) if edges else "",
        columns=(
            Column(key="hole", heading="hole"),
            Column(key="use", heading="for"),
            Column(key="along", heading="along", unit="mm"),
            Column(key="up", heading="up", unit="mm"),
            Column(key="plus_minus", heading="±", unit="mm"),
            Column(key="drills", heading="drills", unit="mm"),
            Column(key="final", heading="final", unit="mm", digits=2),
            Column(key="finish", heading="then"),
            Column(key="when", heading="when"),
        ),
        rows=tuple(
            (
                row.bore.name,
                row.bore.use,
                row.from_left,
                row.from_below,
                row.tolerance,
                ", ".join(f"{drill:.3g}" for drill in row.drills),
                row.bore.diameter,
                row.finish,
                _when(row, there=there),
            )
            for row in rows
        ),
    )


def _drilled_words(edges: str, *, there: bool) -> str:
    if there:
        return (
            f"Measured {edges}, to check where the parts lie: the holes themselves are drilled "
            "through the parts' own pilot holes, clamped in their place."
        )
    return f"Measured {edges}, on the flat. Punch, drill in the order given, deburr."


def _when(row: DrillRow, *, there: bool) -> str:
    if there:
        through = f"through the {row.bore.matched}" if row.bore.matched else "if it is not there"
        return f"{through}, after the trial"
    said = "after bending" if row.bore.after_bending else "on the flat"
    if not row.bore.matched:
        return said
    return f"pilot {said}; to size together with {row.bore.matched}"


def bar_table(section: str, plan: BarPlan) -> Table:
    """Which piece comes from which bar."""
    proof = (
        "No cut list buys less."
        if plan.bought.best
        else f"No list buys less than {plan.bought.bound:g} mm; this one {plan.bought.cost:g}."
    )
    return Table(
        key=f"bars-{key_of(section)}",
        title=f"Cut list: {section}",
        says=f"Saw cuts of {plan.kerf:g} mm between pieces, {plan.trim:g} mm off the first end to "
        f"square it. {proof}{_lacking(plan.missing)}",
        columns=(
            Column(key="bar", heading="bar"),
            Column(key="stock", heading="from"),
            Column(key="piece", heading="piece"),
            Column(key="length", heading="length", unit="mm"),
        ),
        rows=tuple(
            row
            for number, cut in enumerate(plan.bars, 1)
            for row in (
                *(
                    (number, _stock(cut.bar.name, cut.bar.bought), p.name, p.length)
                    for p in cut.pieces
                ),
                (number, _stock(cut.bar.name, cut.bar.bought), "left over", cut.left),
            )
        ),
    )


def sheet_table(plan: SheetPlan, of: str = "") -> Table:
    """Where each part lies on its sheet; `of` is the plate that is cut."""
    proof = (
        "No plan buys fewer sheets."
        if plan.bought.best
        else f"By area no plan buys fewer than {plan.bought.bound:g} sheets; this one "
        f"{plan.bought.cost:g}."
    )
    return Table(
        key=f"sheets-{key_of(of)}" if of else "sheets",
        title=f"Cutting {of}" if of else "Cutting the sheets",
        says=f"{plan.gap:g} mm between parts, {plan.margin:g} mm from the edge; sheets are rolled "
        f"along their length. {proof} Parts fill {plan.filled:.0%} of the sheets."
        f"{_lacking(plan.missing)}",
        columns=(
            Column(key="sheet", heading="sheet"),
            Column(key="stock", heading="from"),
            Column(key="part", heading="part"),
            Column(key="along", heading="from left", unit="mm"),
            Column(key="up", heading="from below", unit="mm"),
            Column(key="length", heading="along", unit="mm"),
            Column(key="width", heading="across", unit="mm"),
        ),
        rows=tuple(
            (
                number,
                _stock(sheet.stock.name, sheet.stock.bought),
                placed.part.name,
                placed.x,
                placed.y,
                placed.along,
                placed.across,
            )
            for number, sheet in enumerate(plan.sheets, 1)
            for placed in sheet.parts
        ),
    )


def buying_table(found: Sequence[Purchase]) -> Table:
    """By kind of shop."""
    return Table(
        key="buying",
        title="Buying list",
        says="By dimension, not by brand. What is on the shelf already is not on it.",
        columns=(
            Column(key="shop", heading="shop"),
            Column(key="what", heading="what"),
            Column(key="quantity", heading="how many"),
            Column(key="why", heading="why"),
        ),
        rows=tuple((one.shop, one.what, one.quantity, one.why) for one in found),
    )


def finding_table(found: Iterable[Finding], cures: Mapping[str, str]) -> Table:
    """What does not pass, with its cure."""
    return Table(
        key="making-findings",
        title="Before you cut",
        says="What does not pass, and what to do about it.",
        columns=(
            Column(key="about", heading="where"),
            Column(key="weight", heading=""),
            Column(key="asks", heading="what is asked"),
            Column(key="value", heading="is"),
            Column(key="bound", heading="wanted"),
            Column(key="cure", heading="cure"),
        ),
        rows=tuple(
            (
                one.about,
                one.limit.weight,
                one.limit.asks,
                show(float(one.value), one.limit.unit) if one.judged else "not known",
                f"{one.limit.sense} {show(float(one.bound), one.limit.unit)}" if one.judged else "",
                cures[one.limit.code],
            )
            for one in sorted(found, key=lambda one: one.limit.weight)
            if not one.ok
        ),
    )


def _stock(name: str, bought: bool) -> str:
    return f"{name} (buy)" if bought else name


def _lacking(missing: Sequence[object]) -> str:
    return f" {len(missing)} kinds find no stock." if missing else ""
