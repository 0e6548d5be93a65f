"""The assessment as data for other tools; the contract is docs/results.md."""

from collections.abc import Sequence
from typing import Any

import numpy as np

from pedalwright.assess import Headline
from pedalwright.core.checks import Finding
from pedalwright.core.units import Num
from pedalwright.documents.about import About
from pedalwright.documents.outside import outside
from pedalwright.search import Worth, Worths


def as_json(
    about: About,
    headlines: Sequence[Headline],
    findings: Sequence[Finding],
    worth: Worths | None = None,
) -> dict[str, Any]:
    """Everything as numbers, texts and null; angles in degrees.

    Any, because JSON has no closer type.
    """
    results: dict[str, dict[str, Any]] = {}
    for line in headlines:
        value, unit = outside(line.value, line.unit)
        room, name = line.name.split(".", 1)
        results.setdefault(room, {})[name] = {"value": _number(value), "unit": unit}
    return {
        "pedalwright": about.version,
        "car": about.car,
        "results": results,
        "findings": [_finding(f) for f in findings],
        "missing": [path for path, _ in about.tagged("missing")],
        "assumed": [path for path, _ in about.tagged("assumed")],
        "default": [path for path, _ in about.tagged("default")],
        "worth_measuring": [] if worth is None else [_worth(each) for each in worth.numbers[:3]],
    }


def _worth(each: Worth) -> dict[str, Any]:
    """A number that is worth measuring again."""
    return {
        "path": each.doubt.path,
        "name": each.doubt.name,
        "share": float(each.share),
        "decides": each.decides.limit.code,
        "about": each.decides.about,
    }


def _number(value: Num) -> float | None:
    number = float(value)
    return number if np.isfinite(number) else None


def _finding(finding: Finding) -> dict[str, Any]:
    limit = finding.limit
    value, unit = outside(finding.value, limit.unit)
    bound, _ = outside(finding.bound, limit.unit)
    return {
        "code": limit.code,
        "about": finding.about,
        "asks": limit.asks,
        "value": _number(value),
        "bound": _number(bound),
        "unit": unit,
        "sense": limit.sense,
        "margin": _number(finding.margin),
        "ok": bool(finding.ok),
        "judged": bool(finding.judged),
        "weight": limit.weight,
        "source": {
            "document": limit.source.document,
            "clause": limit.source.clause,
            "kind": limit.source.kind,
        },
        "room": finding.room,
    }
