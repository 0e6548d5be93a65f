"""What is built into a box by one press: a channel that carries a pedal's cylinder and pivot."""

from collections.abc import Iterator

from pedalwright.assess.stroke import PedalName
from pedalwright.design import Design
from pedalwright.panels.parts import Cheeks, Doubler, Hanger
from pedalwright.project import Project
from pedalwright.project.built_in import built_in, tables_of
from pedalwright.search.box.additions import channel_for
from pedalwright.search.box.built import carrier, part

PEDALS: tuple[PedalName, ...] = ("brake", "clutch")


def offers(design: Design) -> Iterator[PedalName]:
    """Pedals whose push goes through the wall, and for which a channel fits."""
    for pedal in PEDALS:
        carried = [part(design.box, name) for name in hung_on(design, pedal)]
        hangs = all(one is not None for one in carried)
        closed = any(isinstance(one, Cheeks) for one in carried)
        if hangs and not closed and channel_for(design, pedal) is not None:
            yield pedal


def channel(project: Project, pedal: str) -> Project:
    """Cylinder and pivot of a pedal in one channel; plate and bracket it replaces are taken out."""
    design = project.design
    which: PedalName | None = next((one for one in PEDALS if one == pedal), None)
    made = None if which is None else channel_for(design, which)
    if which is None or made is None:
        return project
    needed = {name for other in PEDALS if other != which for name in hung_on(design, other)}
    old = [
        name
        for name in hung_on(design, which)
        if name not in needed and isinstance(part(design.box, name), (Doubler, Hanger))
    ]
    mount = f"{which}.carrier.mount"
    return built_in(
        project,
        "cheeks",
        made,
        instead_of=tables_of(design.box, old),
        changes={f"{mount}.cylinder_on": made.name, f"{mount}.pivot_on": made.name},
    )


def hung_on(design: Design, pedal: PedalName) -> tuple[str, str]:
    """Parts that carry a pedal's cylinder and its pivot."""
    mount = carrier(design, pedal).mount
    return mount.cylinder_on, mount.pivot_on
