"""A car whose mounts are as stiff as is said, instead of standing on the bench."""

from dataclasses import replace
from typing import Any

from pedalwright.design import Design


def unboxed(design: Design) -> Design:
    """Mounts as stiff as is said, instead of a box on the bench."""
    return replace(
        design,
        brake=stiff(design.brake),
        clutch=stiff(design.clutch),
    )


def stiff(part: Any) -> Any:
    mount = replace(
        part.carrier.mount,
        cylinder_on="",
        pivot_on="",
        cylinder_stiffness=5000.0,
        pivot_stiffness=8000.0,
    )
    return replace(part, carrier=replace(part.carrier, mount=mount))
