"""An invented car as it is judged, and what a test wants to know of the judgement."""

import numpy as np

from pedalwright.assess import Assessment, assess, headlines
from pedalwright.core.checks import Finding
from pedalwright.project import car_text, read


def judged(car: str) -> Assessment:
    return assess(read(car_text(car)).design)


def figures(assessment: Assessment) -> dict[str, float]:
    """Every headline by its name; angles in degrees."""
    return {
        h.name: float(np.rad2deg(h.value) if h.unit == "rad" else h.value)
        for h in headlines(assessment)
    }


def failing(assessment: Assessment, weight: str = "must") -> set[tuple[str, str]]:
    """Code and subject of every demand of that weight that is not met."""
    found = (f for f in assessment.findings if not f.ok and f.limit.weight == weight)
    return {(f.limit.code, f.about) for f in found}


def finding(assessment: Assessment, code: str, about: str) -> Finding:
    """The one finding of that code and subject."""
    (one,) = (f for f in assessment.findings if (f.limit.code, f.about) == (code, about))
    return one
