"""From a tube and a trim to the section before, the section left, and what goes back."""

from dataclasses import replace

import numpy as np

from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Num, mm, mm3
from pedalwright.structure.formulas.sections import (
    channel_area,
    channel_centroid,
    channel_weak_inertia,
    round_area,
    round_inertia,
)
from pedalwright.structure.formulas.welds import weld_shear_strength
from pedalwright.structure.trims.formulas import (
    about_other_axis,
    arc_area,
    arc_height,
    arc_inertia,
    arc_left,
    box_area,
    box_inertia,
    common_height,
    edge_modulus,
    lap_needed,
    usual_throat,
)
from pedalwright.structure.trims.parts import (
    CoverPlates,
    Gussets,
    PutBack,
    Section,
    Triangle,
    Trim,
    Trimmed,
)
from pedalwright.survey.parts import Line

#: Partial factor of welds, and their correlation factor for the strongest usual steel: for a
#: softer one it makes them a tenth longer (EN 1993-1-8).
GAMMA_M2, BETA_W = 1.25, 0.9
#: Thicknesses a sheet is sold in, mm.
SHEETS = np.array([1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0])
#: Steps in which a gusset grows and a bar moves out, mm; the bar of a triangle.
STEP, FAR, BAR = 5.0, 40, (20.0, 4.0)


@no_answer_is_nan
def trimmed(member: Line, trim: Trim) -> Trimmed:
    """What a trim takes of a member, and what is put back gives."""
    before, bare = whole(member), left(member, trim)
    pieces = back(member, trim)
    after = bare
    for piece in pieces:
        after = _together(after, piece)
    if trim.way == "cut" and not isinstance(trim.put_back, Gussets):
        after = _apart(pieces, bare)
    runs, thickness = _welded(trim.put_back)
    throat = usual_throat(np.fmin(thickness, _wall(member)))
    strength = weld_shear_strength(trim.tensile_strength, BETA_W, GAMMA_M2)
    heaviest: Num = 0.0
    for piece in pieces:
        heaviest = np.maximum(heaviest, piece.area)
    lap = lap_needed(heaviest, trim.yield_strength, runs, throat, strength) if pieces else np.nan
    return Trimmed(
        before=before,
        bare=bare,
        after=after,
        modulus_before=modulus(before),
        modulus_bare=modulus(bare),
        modulus_after=modulus(after),
        lap=lap,
        weld=2.0 * len(pieces) * runs * lap,
    )


@no_answer_is_nan
def sized(member: Line, trim: Trim) -> tuple[PutBack, ...]:
    """Of each kind the least that makes the member as strong as it was; nan where none does."""
    thin = np.fmax(_wall(member), 2.0)
    height, out = _own_height(member), STEP * np.arange(1.0, FAR)
    tries: tuple[PutBack, ...] = (
        CoverPlates(thickness=SHEETS, lap=np.nan),
        Gussets(thickness=thin, height=height - trim.depth + out - STEP, lap=np.nan),
        Triangle(width=BAR[0], thickness=BAR[1], distance=out, lap=np.nan),
    )
    return tuple(_least(member, trim, kind) for kind in tries)


def _least(member: Line, trim: Trim, tries: PutBack) -> PutBack:
    """The first of a row that is enough, with its lap."""
    found = trimmed(member, replace(trim, put_back=tries))
    enough = np.atleast_1d(found.modulus_after >= found.modulus_before)
    first = int(np.argmax(enough)) if enough.any() else -1

    def at(row: Num) -> float:
        values = np.atleast_1d(np.asarray(row, dtype=np.float64))
        return float(values[min(first, values.size - 1)]) if first >= 0 else np.nan

    lap = at(found.lap)
    match tries:
        case CoverPlates():
            return CoverPlates(thickness=at(tries.thickness), lap=lap)
        case Gussets():
            return Gussets(thickness=float(tries.thickness), height=at(tries.height), lap=lap)
        case Triangle():
            return replace(tries, distance=at(tries.distance), lap=lap)


def modulus(section: Section) -> mm3:
    """Section modulus; 0 where nothing is left."""
    reach = np.maximum(section.near - section.height, section.height - section.far)
    some = np.logical_not(section.area <= 0.0)  # an unknown one stays unknown
    return np.where(some, edge_modulus(section.inertia, np.where(some, reach, 1.0)), 0.0)


def whole(member: Line) -> Section:
    """A member as it is: a rectangular tube, or a round one where it has no height."""
    wide, wall = member.diameter, _wall(member)
    if member.height is None:
        inside = wide - 2.0 * wall
        area, inertia = round_area(wide, inside), round_inertia(wide, inside)
        return Section(area=area, height=wide / 2.0, inertia=inertia, far=0.0 * wide, near=wide)
    high = member.height
    return Section(
        area=box_area(wide, high, wall),
        height=high / 2.0,
        inertia=box_inertia(wide, high, wall),
        far=0.0 * high,
        near=high,
    )


def left(member: Line, trim: Trim) -> Section:
    """What a trim leaves of it."""
    if trim.way == "cut":
        none = 0.0 * (_own_height(member) + _wall(member))
        return Section(area=none, height=none, inertia=none, far=none, near=none)
    if member.height is None:
        return _of_ring(member, trim)
    wide, wall, high = member.diameter, _wall(member), member.height - trim.depth
    if trim.way == "notch":
        return Section(
            area=channel_area(wide, high, wall),
            height=channel_centroid(wide, high, wall),
            inertia=channel_weak_inertia(wide, high, wall),
            far=0.0 * high,
            near=high,
        )
    box = Section(
        area=box_area(wide, high, wall),
        height=high / 2.0,
        inertia=box_inertia(wide, high, wall),
        far=0.0 * high,
        near=high,
    )
    flat = np.minimum(trim.depth, wide / 2.0 - wall)
    return _together(box, _slab(2.0 * flat, wall, high - 1.5 * wall))


def back(member: Line, trim: Trim) -> tuple[Section, ...]:
    """The pieces that are put back, where they lie."""
    wide, near = member.diameter, _own_height(member) - trim.depth
    match trim.put_back:
        case CoverPlates(thickness=t):
            far = _slab(wide, t, -t / 2.0) if member.height is not None else _sleeve(wide, t)
            return far, _slab(_cut_width(member, trim), t, near + t / 2.0)
        case Gussets(thickness=t, height=h):
            return (_slab(2.0 * t, h, near - h / 2.0),)
        case Triangle(width=w, thickness=t, distance=d):
            return (_slab(w, t, -d),)
        case None:
            return ()


def _welded(put_back: PutBack | None) -> tuple[float, mm]:
    """Runs of weld at each end of the heaviest piece, and the thickness they are laid on."""
    match put_back:
        case Gussets(thickness=t):
            return 4.0, t
        case CoverPlates(thickness=t) | Triangle(thickness=t):
            return 2.0, t
        case None:
            return 2.0, np.nan


def _of_ring(member: Line, trim: Trim) -> Section:
    """A round tube with a part of its ring gone, or pressed flat into a chord."""
    wide, wall = member.diameter, _wall(member)
    radius, over = (wide - wall) / 2.0, wide / 2.0
    phi = arc_left(radius, -over + trim.depth)
    area, up = arc_area(radius, wall, phi), arc_height(radius, phi)
    inertia = about_other_axis(arc_inertia(radius, wall, phi), area, 0.0 * up) - area * up**2
    near = wide - trim.depth
    arc = Section(area=area, height=over - up, inertia=inertia, far=0.0 * wide, near=near)
    if trim.way == "notch":
        return arc
    return _together(arc, _slab(2.0 * radius * np.sin(phi), wall, near - wall / 2.0))


def _sleeve(wide: mm, thickness: mm) -> Section:
    """Half a sleeve around the far side of a round tube."""
    radius, half = (wide + thickness) / 2.0, np.pi / 2.0
    area, up = arc_area(radius, thickness, half), arc_height(radius, half)
    return Section(
        area=area,
        height=wide / 2.0 - up,
        inertia=arc_inertia(radius, thickness, half) - area * up**2,
        far=-thickness,
        near=wide / 2.0,
    )


def _cut_width(member: Line, trim: Trim) -> mm:
    """How wide the opening is, or the flat that was pressed in."""
    if member.height is not None or trim.way == "cut":
        return member.diameter
    radius = (member.diameter - _wall(member)) / 2.0
    return 2.0 * radius * np.sin(arc_left(radius, -member.diameter / 2.0 + trim.depth))


def _slab(wide: mm, thick: mm, height: mm) -> Section:
    """A rectangle, `thick` in the height, with its middle at a height."""
    return Section(
        area=wide * thick,
        height=height,
        inertia=wide * thick**3 / 12.0,
        far=height - thick / 2.0,
        near=height + thick / 2.0,
    )


def _together(one: Section, other: Section) -> Section:
    """Two sections that bend as one."""
    height = common_height(one.area, one.height, other.area, other.height)
    inertia = about_other_axis(one.inertia, one.area, one.height - height) + about_other_axis(
        other.inertia, other.area, other.height - height
    )
    some = np.logical_not(one.area <= 0.0)
    return Section(
        area=one.area + other.area,
        height=height,
        inertia=inertia,
        far=np.where(some, np.minimum(one.far, other.far), other.far),
        near=np.where(some, np.maximum(one.near, other.near), other.near),
    )


def _apart(pieces: tuple[Section, ...], bare: Section) -> Section:
    """Pieces with no web between them: each bends by itself."""
    area, inertia, half = bare.area, bare.inertia, 0.0 * bare.area
    for piece in pieces:
        area, inertia = area + piece.area, inertia + piece.inertia
        half = np.maximum(half, (piece.near - piece.far) / 2.0)
    return Section(area=area, height=0.0 * half, inertia=inertia, far=-half, near=half)


def _wall(member: Line) -> mm:
    return np.nan if member.wall is None else member.wall


def _own_height(member: Line) -> mm:
    return member.diameter if member.height is None else member.height
