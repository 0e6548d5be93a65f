"""The parts of the pedal box on paper: cards, templates, rivets row by row."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from pedalwright.documents.making_cards import Card
from pedalwright.documents.making_joints import count_words, substitute_table
from pedalwright.documents.making_lists import bend_table, drill_table
from pedalwright.documents.making_table import Column, Table, key_of
from pedalwright.documents.outside import METRIC, Units
from pedalwright.documents.tiles import Template
from pedalwright.drawing import Box
from pedalwright.making.box import BoxWork, Joint, Piece, piece_drawing
from pedalwright.making.fastening import Count, Item, RivetRow, set_rivet, substitutes
from pedalwright.making.fastening.counts import in_all
from pedalwright.making.planning import rivet_sequence
from pedalwright.making.profiles import drill_card
from pedalwright.panels.made import Made


def piece_tables(piece: Piece) -> tuple[Table, ...]:
    """How it is bent, and every hole."""
    holes = drill_table(piece.name, drill_card(piece.profile), there=piece.there)
    holes = replace(holes, says=f"{holes.says} {_corner(piece)}".strip())
    if not piece.steps:
        return (holes,) if holes.rows else ()
    return (bend_table(piece.name, piece.steps), holes)


def piece_card(piece: Piece, units: Units) -> Card:
    """One part with its drawing."""
    name = piece.name.replace("_", " ").capitalize()
    return Card(
        title=f"{name}: there already, only drilled" if piece.there else name,
        drawings=(piece_drawing(piece, units.lengths, brief=True),),
        tables=piece_tables(piece),
    )


def piece_template(piece: Piece, units: Units) -> Template:
    """One part at true size, with which way up, which face and which hand."""
    written = units.lengths
    unit = " mm" if units is METRIC else ""
    metal = f"{piece.panel.metal.name}, {written(piece.panel.thickness, 2)}{unit}"
    return Template(
        drawing=piece_drawing(piece, written),
        way_up=piece.up,
        face=f"{piece.seen}: {_shown(piece)}",
        hand=_hand(piece),
        made_of=f"{metal}: there already, only drilled"
        if piece.there
        else f"{metal}, {piece.profile.count} off",
    )


def rivet_order(made: Made, joints: Sequence[Joint]) -> Table | None:
    """In which order each row is filled; None without rivets."""
    rows: list[tuple[str, str, str, str]] = []
    for joint, row in zip(joints, made.rows, strict=True):
        if joint.what != "rivets":
            continue
        panel = made.panel(row.through[-1].rpartition(".")[0])
        assert panel is not None, f"{row.through[-1]} is a face of no panel"
        plane = panel.flat(row.through[-1].rpartition(".")[2]).plane
        at = [plane.place(place) for place in row.places]
        steps = rivet_sequence([(float(x), float(y)) for x, y in at])
        pinned = [str(step.hole + 1) for step in steps if step.pinned]
        free = [str(step.hole + 1) for step in steps if not step.pinned]
        pins = " ".join(sorted(pinned, key=int))
        rows.append((joint.mark, joint.name, pins, " ".join(free)))
    if not rows:
        return None
    return Table(
        key="rivet-order",
        title="Rivet by rivet",
        says="Skin pins first, in the holes named; then the rivets in this order, from the middle "
        "outward; at last pull the pins one by one and fill their holes.",
        columns=(
            Column(key="row", heading="row"),
            Column(key="name", heading="what"),
            Column(key="pins", heading="skin pins in"),
            Column(key="order", heading="then rivets in"),
        ),
        rows=tuple(rows),
    )


def rivets_in_all(rivets: Sequence[RivetRow], have: Mapping[Item, int]) -> Table | None:
    """All rivets of a diameter together, whatever their length; None without rivets."""
    sizes = sorted({row.diameter for row in rivets})
    rows = [_in_all(size, rivets, have) for size in sizes]
    if not rows:
        return None
    return Table(
        key="rivets-in-all",
        title="Rivets in all",
        says="By diameter, all lengths together. Only a length that grips the sheets may go in: "
        "what is short of each length stands in the fastener box.",
        columns=(
            Column(key="diameter", heading="rivet"),
            Column(key="rows", heading="rows"),
            Column(key="need", heading="need"),
            Column(key="spare", heading="spare"),
            Column(key="have", heading="have"),
            Column(key="buy", heading="buy"),
            Column(key="says", heading="in words"),
        ),
        rows=tuple(rows),
        ticked=False,
    )


def instead_tables(rivets: Sequence[RivetRow], counted: Sequence[Count]) -> Iterator[Table]:
    """What may go in for rivets that are not there, with its price in strength."""
    short = [one.item for one in counted if one.item.kind == "blind rivet" and one.buy]
    lacking = {(item.size, item.length, item.make) for item in short}
    groups: dict[tuple[float, str, float], list[RivetRow]] = {}
    for row in rivets:
        if (f"{row.diameter:g}", set_rivet(row).length, row.body) in lacking:
            total = round(sum(layer.thickness for layer in row.layers), 3)
            groups.setdefault((row.diameter, row.body, total), []).append(row)
    for (size, body, total), rows in groups.items():
        whole = replace(rows[0], count=sum(row.count for row in rows))
        marks = ", ".join(row.name.partition(":")[0] for row in rows)
        words = f"{size:g} {body} through {total:g} mm ({marks})"
        table = substitute_table(words, list(substitutes(whole)))
        says = f"Now {whole.count} of {size:g} mm, {body}."
        yield replace(table, title=f"Instead of rivets {words}", says=says)


def _in_all(
    size: float, rivets: Sequence[RivetRow], have: Mapping[Item, int]
) -> tuple[str | int, ...]:
    own = [row for row in rivets if row.diameter == size]
    one = in_all(size, own, have)
    rows = " + ".join(f"{row.count} ({row.name.partition(':')[0]})" for row in own)
    return f"{size:g}", rows, one.need, one.spare, one.have, one.buy, count_words(one)


def _corner(piece: Piece) -> str:
    """Where the corner that is measured from lies on the car, for a wall."""
    if not piece.there:
        return ""
    box = Box.around(piece.pattern.outline)
    assert box is not None, "an outline has places"
    lying = piece.panel.lying
    at = lying.point((box.left, box.bottom)) + lying.normal * (piece.panel.thickness / 2)
    x, y, z = (round(float(number), 1) + 0.0 for number in (at.x, at.y, at.z))
    return f"Left and lower edge meet at x {x:g}, y {y:g}, z {z:g} on the car."


def _shown(piece: Piece) -> str:
    face = "NEAR (the feet's side)"
    if piece.there:
        return f"this is its {face}"
    if piece.steps:
        return f"scribe {face} on this face; bends marked up come towards you"
    return f"scribe {face} on this face"


def _hand(piece: Piece) -> str:
    if piece.mirrored:
        return f"HANDED: the mirror image of {' and '.join(piece.mirrored)}, never two alike"
    return f"just like {', '.join(piece.alike)}" if piece.alike else ""


def box_files(work: BoxWork, units: Units) -> Iterator[tuple[str, str, str, bytes]]:
    """DXF and SVG of every part that is made: file, title, what it is for, content."""
    from pedalwright.documents.making_dxf import dxf  # 0.2 s: only when a file is wanted
    from pedalwright.drawing import svg

    for piece in work.pieces:
        if piece.there:
            continue
        key, name = key_of(piece.name), piece.name
        use = "For a shop that cuts: millimetres, layers CUT, DRILL, BEND_UP, BEND_DOWN, MARK."
        yield f"{key}.dxf", f"DXF: {name}", use, dxf(piece.profile)
        drawn = svg(piece_drawing(piece, units.lengths), physical=True)
        yield f"{key}.svg", f"Drawing: {name}", "At true size, for a plotter or a screen.", drawn
