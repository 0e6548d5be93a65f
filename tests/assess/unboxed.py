"""A car whose mounts are as stiff as is said, instead of standing on the bench."""

from dataclasses import replace
from typing import Any

from pedalwright.design import Design


def unboxed(design: Design, cylinder: float = 5000.0, pivot: float = 8000.0) -> Design:
    """Mounts as stiff as is said, instead of a box on the bench."""
    return replace(
        design,
        brake=stiff(design.brake, cylinder, pivot),
        clutch=stiff(design.clutch, cylinder, pivot),
    )


def stiff(part: Any, cylinder: float, pivot: float) -> Any:
    mount = replace(
        part.carrier.mount,
        cylinder_on="",
        pivot_on="",
        cylinder_stiffness=cylinder,
        pivot_stiffness=pivot,
    )
    return replace(part, carrier=replace(part.carrier, mount=mount))
