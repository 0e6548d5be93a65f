"""Headlines of the structure: what gives under a stated push."""

from collections.abc import Iterator

from pedalwright.assess.headlines.headline import Headline
from pedalwright.structure import Strength


def giving(strength: Strength) -> Iterator[Headline]:
    """What the brake pad gives, and its cylinder's flange."""
    yield Headline(
        "structure.give_500N",
        strength.give.total,
        "mm",
        "Movement of the brake pad at 500 N because arm, rod and mounts give.",
    )
    yield Headline(
        "structure.flange_give_500N",
        strength.flange_give,
        "mm",
        "Movement of the brake cylinder's flange at 500 N on the pad.",
    )
