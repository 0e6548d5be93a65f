"""The box's rows as fasteners to count, to buy and to set."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from pedalwright.making.box.parts import Joint, What
from pedalwright.making.car.threads import metric, thread
from pedalwright.making.fastening import BoltRow, Item, Layer, RivetRow
from pedalwright.making.fastening.parts import Body
from pedalwright.panels.made import Made, Panel, Row
from pedalwright.panels.parts import Bolts, RivetNuts, Rivets
from pedalwright.shelf.fasteners import RivetStrength, rivet_strengths
from pedalwright.shelf.rivets import grips
from pedalwright.shelf.stock import Stock, StockRivets

#: A rivet's diameter in its table is that of the file, within, mm.
NEAR = 0.11
#: Property class of the bolts that go into rivet nuts.
INTO_NUTS = "8.8"


@dataclass(frozen=True, kw_only=True, slots=True)
class Rows:
    """Everything that is fastened."""

    joints: tuple[Joint, ...]
    rivets: tuple[RivetRow, ...]
    bolts: tuple[BoltRow, ...]
    others: Mapping[Item, int]
    #: What has no fastener of its own in the file, in words.
    open: tuple[str, ...]


def rows(made: Made, stock: Stock, walls: frozenset[str]) -> Rows:
    """Every row of a box; what goes through a wall is sealed."""
    joints: list[Joint] = []
    rivets: list[RivetRow] = []
    bolts: list[BoltRow] = []
    others: Counter[Item] = Counter()
    for number, row in enumerate(made.rows, 1):
        joint = _joint(number, row)
        joints.append(joint)
        layers = tuple(_layers(row, made))
        sealed = bool(set(joint.parts) & walls)
        match row.joining:
            case Rivets():
                rivets.append(_riveted(joint, row.joining, layers, stock, sealed=sealed))
            case Bolts() | RivetNuts() if metric(joint.diameter) is None:
                size = thread(joint.diameter)
                others[Item(kind="bolt", size=size, make="length by what it goes through")] += (
                    joint.count
                )
            case Bolts():
                bolts.append(_bolted(joint, row.joining.grade, layers, sealed=sealed))
            case RivetNuts():
                bolts.append(_bolted(joint, INTO_NUTS, layers, sealed=sealed, captive=True))
                size = thread(float(row.joining.diameter))
                others[Item(kind="rivet nut", size=size)] += joint.count
            case _:
                pass
    return Rows(
        joints=tuple(joints),
        rivets=tuple(rivets),
        bolts=tuple(bolts),
        others=dict(others),
        open=tuple(_open(made)),
    )


def _joint(number: int, row: Row) -> Joint:
    joining = row.joining
    what: What
    match joining:
        case Rivets():
            what = "rivets"
        case Bolts():
            what = "bolts"
        case RivetNuts():
            what = "rivet nuts"
        case _:
            what = "welds"
    return Joint(
        mark=f"F{number}",
        name=row.name,
        what=what,
        diameter=float(joining.diameter),
        count=len(row.places),
        parts=tuple(sheet.rpartition(".")[0] for sheet in row.through),
    )


def _layers(row: Row, made: Made) -> Iterator[Layer]:
    """From the head's side on: a fastener is put in from the cabin."""
    for sheet in reversed(row.through):
        panel = made.panel(sheet.rpartition(".")[0])
        assert panel is not None, f"{sheet} is a face of no panel"
        yield Layer(
            name=panel.name,
            thickness=panel.thickness,
            surface=_surface(panel),
            strength=panel.metal.tensile_strength,
        )


def _surface(panel: Panel) -> str:
    return "steel" if panel.metal.steel else "aluminium"


def _riveted(
    joint: Joint, joining: Rivets, layers: tuple[Layer, ...], stock: Stock, *, sealed: bool
) -> RivetRow:
    """With the body that is there and grips; else the weakest that bears what is counted on."""
    sizes = {row.diameter for row in rivet_strengths()}
    size = min(sizes, key=lambda one: abs(one - joint.diameter))
    body: str = _body(joining, size)
    total = sum(layer.thickness for layer in layers)
    there = [tin for tin in stock.rivets if _serves(tin, size, body)]
    gripping = [tin for tin in there if _grips(tin, total)]
    if chosen := (gripping or there):
        body = chosen[0].body
    return RivetRow(
        name=f"{joint.mark}: {joint.name}",
        count=joint.count,
        layers=layers,
        diameter=size,
        body=body,  # type: ignore[arg-type]  # the table has these words and no others
        length=float(gripping[0].length) if gripping else None,
        sealed=sealed,
    )


def _body(joining: Rivets, size: float) -> Body:
    """The weakest that bears what the file says of one rivet; without a word of it, alloy."""
    if joining.shear is None:
        return "alloy"
    own = [row for row in rivet_strengths() if row.diameter == size]
    strong = [row for row in own if row.shear >= float(joining.shear)]
    row = min(strong, key=_shear) if strong else max(own, key=_shear)
    return row.body  # type: ignore[return-value]  # the table has these words and no others


def _shear(row: RivetStrength) -> float:
    return row.shear


def _serves(tin: StockRivets, size: float, body: str) -> bool:
    """Whether rivets on the shelf are as thick, and bear as much."""
    bears = {row.body: row.shear for row in rivet_strengths() if row.diameter == size}
    return abs(float(tin.diameter) - size) < NEAR and bears[tin.body] >= bears[body]


def _grips(tin: StockRivets, total: float) -> bool:
    return any(
        grip.least <= total <= grip.most
        for grip in grips()
        if abs(grip.diameter - float(tin.diameter)) < NEAR and grip.length == float(tin.length)
    )


def _bolted(
    joint: Joint,
    grade: str,
    layers: tuple[Layer, ...],
    *,
    sealed: bool,
    captive: bool = False,
) -> BoltRow:
    return BoltRow(
        name=f"{joint.mark}: {joint.name}",
        count=joint.count,
        layers=layers,
        size=thread(joint.diameter),
        grade=grade,
        captive=captive,
        sealed=sealed,
    )


def _open(made: Made) -> Iterator[str]:
    """Where one part is held to another and the file does not say with what."""
    for tube in made.tubes:
        for clamp in tube.carries:
            part, _, face = clamp.sheet.rpartition(".")
            yield f"{part} ({face}) to {tube.name}"
        if tube.turns:
            ends: Sequence[str] = [
                clamp.sheet.rpartition(".")[0] if clamp else "the frame"
                for clamp in (tube.start_on, tube.end_on)
            ]
            yield f"{tube.name}, one bolt at each end, to {' and '.join(ends)}"
