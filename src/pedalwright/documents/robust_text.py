"""What hand work does to a design, as text and as data."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

import numpy as np

from pedalwright.core.units import Num
from pedalwright.documents.about import About
from pedalwright.documents.cautions import FIRST_CAUTION
from pedalwright.documents.outside import Units
from pedalwright.documents.verdict import asked_by
from pedalwright.search import Held, Rest, Robustness

WIDTH = 100
#: Numbers that are named below the findings.
SHOWN = 10


def robust_text(about: About, found: Robustness) -> str:
    """How many cars meet each demand, and which numbers decide."""
    return "\n".join(_lines(about, found)) + "\n"


def robust_data(about: About, found: Robustness) -> dict[str, Any]:
    """The same as numbers, texts and null.

    Any, because JSON has no closer type.
    """
    return {
        "pedalwright": about.version,
        "car": about.car,
        "cars": found.cars,
        "all_musts": float(found.all_musts),
        "findings": [
            {
                "code": held.nominal.limit.code,
                "about": held.nominal.about,
                "met": float(held.met),
                "low": _number(held.low),
                "high": _number(held.high),
                "unit": held.nominal.limit.unit,
                "rests_on": _rests(held.rests_on),
            }
            for held in found.held
        ],
        "matters": _rests(found.matters),
    }


def _lines(about: About, found: Robustness) -> Iterator[str]:
    yield f"{about.car}   ({about.file}, {about.date}; pedalwright {about.version})"
    yield from textwrap.wrap(
        f"{found.cars} cars, each number drawn within its ±: {_of_100(float(found.all_musts))} "
        "meet all that must be met.",
        WIDTH,
    )
    turning = [held for held in found.held if 0.0 < float(held.met) < 1.0]
    never = [held for held in found.held if float(held.met) == 0.0]
    yield ""
    yield f"MAY TURN EITHER WAY: {len(turning)}"
    for held in turning:
        yield from _told(held, about.units)
    yield ""
    yield f"MET BY NONE OF THEM: {len(never)}"
    for held in never:
        yield from _told(held, about.units)
    yield ""
    yield f"MET BY ALL OF THEM: {len(found.held) - len(turning) - len(never)}"
    if found.matters:
        yield ""
        yield "THESE NUMBERS DECIDE: measure and drill them best"
        for rest in found.matters[:SHOWN]:
            yield f"  {float(rest.share):4.0%}  {rest.path}".replace("%", " %")
    yield ""
    yield from textwrap.wrap(FIRST_CAUTION, WIDTH)


def _told(held: Held, units: Units) -> Iterator[str]:
    finding = held.nominal
    unit = finding.limit.unit
    about = f" [{finding.about}]" if finding.about else ""
    asks = units.prose(finding.limit.asks + about)
    value, low, high, bound = (
        units.said(figure, unit) for figure in (finding.value, held.low, held.high, finding.bound)
    )
    yield from textwrap.wrap(
        f"{_of_100(float(held.met))}: {asks} {value}, in nine cars of ten {low} to {high}; "
        f"{finding.limit.sense} {bound}. Asked by {asked_by(finding)}",
        WIDTH,
        initial_indent="  ",
        subsequent_indent="      ",
    )
    if held.rests_on:
        names = ", ".join(f"{r.path} {float(r.share):.0%}" for r in held.rests_on[:3])
        yield from textwrap.wrap(
            f"rests on {names.replace('%', ' %')}",
            WIDTH,
            initial_indent="      ",
            subsequent_indent="      ",
        )


def _of_100(share: float) -> str:
    """A share of the cars in words that never round to all or none."""
    if share in {0.0, 1.0}:
        return "none" if share == 0.0 else "all"
    return f"{min(99.0, max(1.0, 100.0 * share)):.0f} of 100"


def _rests(rests: Sequence[Rest]) -> list[dict[str, Any]]:
    return [{"path": rest.path, "share": float(rest.share)} for rest in rests]


def _number(value: Num) -> float | None:
    number = float(value)
    return number if np.isfinite(number) else None
