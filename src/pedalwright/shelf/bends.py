"""Sheet in a bend: how sharply a metal may be bent, and where its neutral line lies."""

from dataclasses import dataclass

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class BendRadius:
    """Least inside radius of a right-angled bend across the grain, by metal and thickness."""

    name: str
    #: Thickness the row holds for: more than `over`, up to and with `up_to`, mm.
    over: float
    up_to: float
    #: Least radius over thickness.
    thicknesses: float
    source: str
    mark: str


@dataclass(frozen=True, kw_only=True, slots=True)
class NeutralLine:
    """Where the sheet is neither stretched nor squeezed, by thickness and inside radius, mm."""

    metal: str
    thickness: float
    radius: float
    #: From the inside, as a share of the thickness.
    share: float
    source: str
    mark: str


def bend_radii() -> tuple[BendRadius, ...]:
    """Every row, thin to thick for each metal."""
    return table(BendRadius, "bend_radii")


def bend_radius(name: str, thickness: float) -> BendRadius | None:
    """The row for a metal and thickness; None if the table has none."""
    found = (r for r in bend_radii() if r.name == name and r.over < thickness <= r.up_to)
    return next(found, None)


def neutral_lines(metal: str) -> tuple[NeutralLine, ...]:
    """The rows of a kind of metal: `aluminium`, `steel` or `stainless`."""
    return tuple(row for row in table(NeutralLine, "neutral_lines") if row.metal == metal)
