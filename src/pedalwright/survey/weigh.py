"""From an adjustment to the numbers an assessment judges."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array, mm, rad
from pedalwright.survey.adjustment import Adjustment, Checked, Placed, Suspicion
from pedalwright.survey.formulas import error_bound, error_size
from pedalwright.survey.limits import BENT, CROSSING, SHOWN, TILTED, WELL_KNOWN
from pedalwright.survey.outcome import Outcome, Weighed
from pedalwright.survey.stations import Slope
from pedalwright.survey.suspects import CRITICAL, UNCHECKED

#: Standard deviations within which a mark is said to lie, nineteen times of twenty.
TWO_SIGMA = 2.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Repeats:
    """Readings of one length."""

    about: str
    #: Longest less shortest.
    apart: mm
    #: Standard deviation of one of them.
    sigma: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Fitted:
    """A face or a tube through marks."""

    about: str
    #: How far each mark stands off; empty where there are just enough of them.
    off: tuple[mm, ...]
    #: Standard deviation of the mark that is known worst.
    sigma: mm
    #: Of a face, standard deviation of its tilt.
    tilt: rad | None = None


def weighed(
    found: Adjustment, repeats: Sequence[Repeats] = (), fits: Sequence[Fitted] = ()
) -> Outcome:
    """Every demand's numbers, the demands that many meet as they come."""
    free = [mark for mark in found.marks if not mark.held]
    return Outcome(
        agreement=tuple(_agreement(found)),
        repeats=tuple(_repeats(repeats)),
        marks=tuple(
            Weighed(about=mark.name, value=TWO_SIGMA * worst_sigma(mark), bound=WELL_KNOWN)
            for mark in free
        ),
        crossings=tuple(
            Weighed(about=mark.name, value=mark.dilution, bound=CROSSING) for mark in free
        ),
        checks=tuple(
            Weighed(about=mark.name, value=least_checked(found, mark), bound=SHOWN) for mark in free
        ),
        straightness=tuple(
            Weighed(
                about=fit.about,
                value=max(abs(float(off)) for off in fit.off),
                bound=max(BENT, CRITICAL * float(fit.sigma)),
            )
            for fit in fits
            if fit.off
        ),
        tilts=tuple(
            Weighed(about=fit.about, value=TWO_SIGMA * fit.tilt, bound=TILTED)
            for fit in fits
            if fit.tilt is not None
        ),
    )


def worst_sigma(mark: Placed) -> float:
    """Standard deviation of a mark in the direction in which it is known worst."""
    largest: Array = np.asarray(np.linalg.eigvalsh(mark.covariance), dtype=np.float64)
    return float(np.sqrt(max(float(largest[-1]), 0.0)))


def said(suspicion: Suspicion) -> str:
    """A suspicion in a few words: `A–P4 reads long: 10 mm too many`."""
    if suspicion.certain:
        long = suspicion.read > suspicion.expected
        what = f"{suspicion.likely[0]} reads {'long' if long else 'short'}"
        if suspicion.unit == "rad" or " of " in suspicion.likely[0]:
            what = f"{suspicion.likely[0]} is too {'large' if long else 'small'}"
        return f"{what}: {suspicion.cause}" if suspicion.cause else what
    likely = " or ".join(suspicion.likely[:4]) + (" or another" if suspicion.likely[4:] else "")
    more = f"; measure {suspicion.mark} from one more mark" if suspicion.mark else ""
    return f"{likely}{more}"


def _agreement(found: Adjustment) -> Iterator[Weighed]:
    for suspicion in found.suspicions:
        yield Weighed(about=said(suspicion), value=suspicion.size, bound=suspicion.bound)
    checked = [one for one in found.sights if np.isfinite(one.normalised) and not one.set_aside]
    if checked and not found.suspicions:
        worst = max(checked, key=lambda one: float(one.normalised))
        arm = _arm(found, worst)
        yield Weighed(
            about=f"farthest out: {worst.sight.about}",
            value=arm * float(error_size.rule(worst.residual, worst.redundancy)),
            bound=arm * float(error_bound.rule(CRITICAL, worst.sight.sigma, worst.redundancy)),
        )


def _arm(found: Adjustment, checked: Checked) -> float:
    """The length of a line whose rise was measured, so that an angle's error is a length."""
    sight = checked.sight
    if not isinstance(sight, Slope):
        return 1.0
    foot, head = found.mark(sight.foot), found.mark(sight.head)
    return float((head.at - foot.at).length()) if foot and head else 1.0


def _repeats(repeats: Sequence[Repeats]) -> Iterator[Weighed]:
    """Those too far apart, else the one that comes nearest to it."""
    rows = [
        Weighed(about=one.about, value=one.apart, bound=CRITICAL * 2.0**0.5 * float(one.sigma))
        for one in repeats
    ]
    far = [row for row in rows if row.value > row.bound]
    yield from far or sorted(rows, key=lambda row: -float(row.value / row.bound))[:1]


def least_checked(found: Adjustment, mark: Placed) -> float:
    """Of a mark's sights, the one of whose errors least would show.

    A mark that hangs on this one by sights nothing checks says nothing of this one.
    """
    if float(mark.checked) < SHOWN:
        return max(float(mark.checked), 0.0)
    hanging = {other.name for other in found.marks if float(other.checked) < SHOWN}
    shares = [
        float(one.redundancy)
        for one in found.sights
        if mark.name in one.sight.ends and not one.set_aside and not hanging & set(one.sight.ends)
    ]
    least = min(shares, default=0.0)
    return least if least > UNCHECKED else 0.0
