"""What a change did to the findings: which are met now, which no longer, which moved nearer."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, isnan

from pedalwright.core.checks import Finding
from pedalwright.documents.verdict import Row

#: Share of its bound by which a margin has to move to be told (ours): half a per cent.
MOVED = 0.005


@dataclass(frozen=True, slots=True)
class Turned:
    """One demand before and after."""

    old: Finding
    new: Finding
    #: True where it was met and is not, or the other way round.
    crossed: bool
    #: How much of the bound was gained; nan where one of the two has no value.
    moved: float


@dataclass(frozen=True, slots=True)
class Since:
    """What got better and what got worse, what crossed its bound first, then by how far."""

    better: tuple[Turned, ...]
    worse: tuple[Turned, ...]

    def __bool__(self) -> bool:
        """True where anything moved."""
        return bool(self.better or self.worse)


def since(before: Sequence[Finding], after: Sequence[Finding]) -> Since:
    """Compare demand by demand; what is asked only once is left out."""
    was = {(finding.limit.code, finding.about): finding for finding in before}
    better: list[Turned] = []
    worse: list[Turned] = []
    for new in after:
        old = was.get((new.limit.code, new.about))
        if old is None:
            continue
        then, now = float(old.margin), float(new.margin)
        turned = Turned(old, new, (then >= 0.0) != (now >= 0.0), now - then)
        if (turned.crossed and now >= 0.0) or turned.moved > MOVED:
            better.append(turned)
        elif turned.crossed or turned.moved < -MOVED:
            worse.append(turned)
    return Since(_told(better), _told(worse))


def failing(findings: Sequence[Finding]) -> list[Row]:
    """What is not met, across the rooms: musts first, the unjudged before the worst margin."""
    missed = [(float(f.margin), f) for f in findings]
    missed = [(margin, f) for margin, f in missed if not margin >= 0.0]
    missed.sort(key=lambda one: (one[1].limit.weight != "must", not isnan(one[0]), one[0]))
    return [Row(finding) for _, finding in missed]


def _told(turned: list[Turned]) -> tuple[Turned, ...]:
    """Of many drivers' or pedals' answers to one demand the one that says most."""
    ordered = sorted(turned, key=_pressing)
    first: dict[tuple[str, bool], Turned] = {}
    for one in ordered:
        first.setdefault((one.new.limit.code, one.crossed), one)
    return tuple(first.values())


def _pressing(turned: Turned) -> tuple[bool, bool, float]:
    """What crossed its bound goes first, then what must be met, then what moved far."""
    size = inf if isnan(turned.moved) else abs(turned.moved)
    return not turned.crossed, turned.new.limit.weight != "must", -size
