"""The whole bench as one mesh."""

from collections.abc import Mapping
from dataclasses import dataclass

from pedalwright.core.faults import Fault, InputError
from pedalwright.core.units import Array
from pedalwright.shell.build.bars import place_bars
from pedalwright.shell.build.check import faults
from pedalwright.shell.build.contacts import place_contacts
from pedalwright.shell.build.fasteners import place_fasteners
from pedalwright.shell.build.patches import place_patches
from pedalwright.shell.build.sheets import place_sheets
from pedalwright.shell.build.site import Rough, Site
from pedalwright.shell.build.supports import place_supports
from pedalwright.shell.mesh import Indices, Mesh
from pedalwright.shell.meshing.sheets import meshed
from pedalwright.shell.parts import Bench

__all__ = ["Built", "Rough", "build"]


@dataclass(frozen=True, slots=True)
class Built:
    """A bench ready to be solved, and what else is known of its mesh."""

    mesh: Mesh
    #: Sharpest angle of each sheet's triangles, rad.
    sharpest: Mapping[str, float]
    #: Places next to which stress has no end.
    rough: tuple[Rough, ...]
    #: Nodes of each sheet that has its own, and those of its rim.
    nodes: Mapping[str, Indices]
    rim: Mapping[str, Indices]
    #: Springs of each fastener, from the first joint of its stack to the last.
    springs: Mapping[str, tuple[int, ...]]


def build(bench: Bench) -> Built:
    """Mesh everything and join it; `InputError` with all that cannot be as it is said."""
    if wrong := faults(bench):
        raise InputError(wrong)
    sheets, divider = meshed(bench)
    if lost := [fault for one in sheets.values() for fault in _lost(one.sheet.name, one.missing)]:
        raise InputError(tuple(lost))
    site = Site(bench)
    place_sheets(site, sheets, divider)
    place_patches(site)
    place_fasteners(site)
    place_bars(site)
    place_supports(site)
    place_contacts(site)
    if site.wrong:
        raise InputError(tuple(site.wrong))
    return Built(
        mesh=site.mesh(),
        sharpest={name: one.sharpest for name, one in sheets.items()},
        rough=tuple(site.rough),
        nodes=site.nodes_of,
        rim=site.rim_of,
        springs=site.springs_of,
    )


def _lost(sheet: str, missing: Array) -> list[Fault]:
    return [
        Fault(
            where=f"sheet {sheet}",
            read=f"a line through {middle[0]:.1f}, {middle[1]:.1f}, {middle[2]:.1f}",
            accepts="Lines, holes and fasteners need a little room between them.",
        )
        for middle in missing[:3]
    ]
