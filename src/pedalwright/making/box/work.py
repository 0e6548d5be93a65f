"""The box's parts as the order of work sees them: what waits for what, what shuts in what."""

from collections.abc import Iterator, Sequence

from pedalwright.making.box.parts import Joint, Piece
from pedalwright.making.car.jobs import PanelWork
from pedalwright.panels.made import Made, Panel
from pedalwright.panels.plane import inside


def panel_work(made: Made, pieces: Sequence[Piece], joints: Sequence[Joint]) -> list[PanelWork]:
    """Every part that is made, those that others lie on first."""
    return [_work(piece, made, pieces, joints) for piece in pieces if not piece.there]


def nuts_of(joint: Joint) -> str:
    """What has to be reached to tighten a row."""
    return f"nuts of {joint.mark}, {joint.name}"


def _work(piece: Piece, made: Made, pieces: Sequence[Piece], joints: Sequence[Joint]) -> PanelWork:
    # a row is set with the last of its parts that comes
    order = [one.name for one in pieces]
    own = [
        joint
        for joint in joints
        if piece.name in joint.parts and max(joint.parts, key=order.index) == piece.name
    ]
    there = {one.name for one in pieces if one.there}
    rivets = [joint for joint in own if joint.what == "rivets"]
    held = [joint for joint in own if joint.what in ("bolts", "rivet nuts")]
    rail = next((t.name for t in made.tubes for c in t.carries if _part(c.sheet) == piece.name), "")
    return PanelWork(
        name=piece.name,
        bends=len(piece.steps),
        rivets=sum(joint.count for joint in rivets),
        bolts=sum(joint.count for joint in held),
        welds=sum(joint.count for joint in own if joint.what == "welds"),
        drills=tuple(sorted({p for joint in own for p in joint.parts if p != piece.name})),
        lies_on=tuple(name for name in piece.lies_on if name not in there),
        cuts=next((n for n in piece.lies_on if piece.panel.face.name == "bottom"), ""),
        rail=rail,
        cylinders=tuple(m.name for m in piece.profile.marks if m.name.endswith(" cylinder")),
        hides=tuple(_hidden(piece.panel, made, joints)),
        reaches=tuple(nuts_of(joint) for joint in held if joint.what == "bolts"),
        screwed=bool(held) and not rivets,
    )


def _hidden(lid: Panel, made: Made, joints: Sequence[Joint]) -> Iterator[str]:
    """Nuts on the wall that a lid or a tray lies on, within it: nobody gets a spanner on them.

    A rivet nut is captive, so it needs no hand.
    """
    if lid.counted:  # only lids, trays and heel plates shut anything in
        return
    flat = lid.flats()[0]
    walls = {
        sheet
        for row in made.rows
        if row.through and lid.name in _parts(row.through)
        for sheet in row.through
        if _part(sheet) != lid.name
    }
    for joint, row in zip(joints, made.rows, strict=True):
        if joint.what != "bolts" or lid.name in joint.parts or not walls & set(row.through):
            continue
        at = [flat.plane.place(place) for place in row.places]
        if any(inside((float(x), float(y)), flat.outline) for x, y in at):
            yield nuts_of(joint)


def _parts(through: Sequence[str]) -> set[str]:
    return {_part(sheet) for sheet in through}


def _part(sheet: str) -> str:
    return sheet.rpartition(".")[0]
