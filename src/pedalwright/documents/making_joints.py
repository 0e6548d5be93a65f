"""Lists of fasteners: how each row is set, how many there must be, what goes between."""

from collections.abc import Iterable, Sequence
from math import isnan

from pedalwright.documents.making_table import Column, Table, key_of
from pedalwright.making.fastening import Count, Layer, SetBolt, SetRivet, Substitute, Treatment


def rivet_table(rows: Sequence[SetRivet]) -> Table:
    """Each row of rivets with its grip."""
    return Table(
        key="rivets",
        title="Rivets",
        says="Length by the sheets it holds together. Skin pins first, rivets from the middle "
        "outward, pins' holes last.",
        columns=(
            Column(key="row", heading="row"),
            Column(key="count", heading="count"),
            Column(key="sheets", heading="through"),
            Column(key="total", heading="together", unit="mm"),
            Column(key="rivet", heading="rivet"),
            Column(key="hole", heading="drill", unit="mm"),
            Column(key="shear", heading="shear of one", unit="N", digits=0),
        ),
        rows=tuple(
            (
                one.row.name,
                one.row.count,
                " + ".join(_layer(layer) for layer in one.row.layers),
                one.total,
                f"{one.row.diameter:g} × {one.length:g}, {one.row.body}"
                if one.length
                else "measure what it grips"
                if isnan(one.total)
                else "none grips",
                one.hole,
                one.shear,
            )
            for one in rows
        ),
    )


def bolt_table(rows: Sequence[SetBolt]) -> Table:
    """Each bolt with its lock and its torque."""
    return Table(
        key="bolts",
        title="Bolts",
        says="Torque on a clean thread, lightly oiled, without the drag of a locking nut; a "
        "greased bolt wants the lower figure. What turns on its bolt is not clamped: nut "
        "finger-tight, back to the next slot, split pin. New locking nuts each time, a paint line "
        "over each.",
        columns=(
            Column(key="row", heading="where"),
            Column(key="count", heading="count"),
            Column(key="bolt", heading="bolt"),
            Column(key="grip", heading="through", unit="mm"),
            Column(key="lock", heading="locked by"),
            Column(key="torque", heading="torque", unit="N m"),
            Column(key="greased", heading="greased", unit="N m"),
        ),
        rows=tuple(
            (
                one.row.name,
                one.row.count,
                f"{one.row.size} × {one.length:g}, {one.row.grade}"
                if one.length
                else f"{one.row.size}, {one.row.grade}; measure what it clamps"
                if isnan(one.total)
                else "none is long enough",
                one.total,
                one.locking,
                _newton_metres(one.torque),
                _newton_metres(one.torque_greased),
            )
            for one in rows
        ),
    )


def count_table(counts: Sequence[Count], unsaid: Sequence[str] = ()) -> Table:
    """Need, spare, have, buy; `unsaid` is what the design does not tell the fasteners of."""
    lacking = (
        f" NOT COUNTED, because the file does not say how they are fixed: {', '.join(unsaid)}."
        if unsaid
        else ""
    )
    return Table(
        key="fasteners",
        title="Fastener box",
        says="Spare: a tenth, at least five, of bolts, pins, forks and bushes at least one; bought "
        f"in whole packs.{lacking}",
        columns=(
            Column(key="item", heading="item"),
            Column(key="need", heading="need"),
            Column(key="spare", heading="spare"),
            Column(key="have", heading="have"),
            Column(key="buy", heading="buy"),
            Column(key="says", heading="in words"),
        ),
        rows=tuple(
            (one.item.words, one.need, one.spare, one.have, one.buy, count_words(one))
            for one in counts
        ),
    )


def count_words(one: Count) -> str:
    """As a builder says it: need 88 + 9 spare, have 62: buy 40."""
    said = f"need {one.need} + {one.spare} spare, have {one.have}"
    return f"{said}: buy {one.buy}" if one.buy else f"{said}: enough"


def substitute_table(row: str, found: Sequence[Substitute]) -> Table:
    """What may go in instead, and its price."""
    return Table(
        key=f"instead-{key_of(row)}",
        title=f"Instead of the rivets of the {row}",
        columns=(
            Column(key="instead", heading="instead"),
            Column(key="strength", heading="as strong", digits=2),
            Column(key="count", heading="how many"),
            Column(key="hole", heading="drill", unit="mm"),
            Column(key="remark", heading="mind"),
        ),
        rows=tuple((s.instead, s.strength, s.count, s.hole, s.remark) for s in found),
        ticked=False,
    )


def treatment_table(found: Iterable[Treatment]) -> Table:
    """What goes between the sheets."""
    return Table(
        key="between-metals",
        title="Between the metals",
        columns=(
            Column(key="row", heading="row"),
            Column(key="what", heading="what"),
            Column(key="why", heading="why"),
        ),
        rows=tuple((one.row, one.what, one.why) for one in found),
    )


def _layer(layer: Layer) -> str:
    return layer.name if isnan(layer.thickness) else f"{layer.name} {layer.thickness:g}"


def _newton_metres(torque: float) -> float:
    return torque / 1000
