"""Buckling of thin webs: by what the loads may grow before a flat panel jumps aside.

Linear, from perfect flatness: a real sheet, never quite flat, gives before that, and a web may
carry more after it. The sheet's own pull and press at the loads given make it stiffer or softer
against leaning (the initial stress matrix; O. C. Zienkiewicz, The Finite Element Method); the
growth at which some panel has no stiffness left is the least eigenvalue. Bars are judged by their
own formulas.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.assembly import Block, energy_by_part, freedoms, sheet
from pedalwright.shell.elements.membrane import area, plane_stress
from pedalwright.shell.elements.plate import mid_side_turns
from pedalwright.shell.elements.triangle import OUT_OF_PLANE, frames, strains, turned
from pedalwright.shell.mesh import SIX, Mesh
from pedalwright.shell.solve import SetUp
from pedalwright.shell.sparse import largest, reduced


@dataclass(frozen=True, slots=True)
class Buckling:
    """How one load case may grow."""

    #: Load that buckles over load given; inf where it never does.
    factor: float
    #: The part that gives way.
    part: str
    #: Its shape, (nodes, 6), the largest move being one.
    moves: Array


def buckling(bench: SetUp, moves: Array) -> Buckling:
    """How far one load case may grow; `moves` are its answer, (nodes, 6). Contact is left out."""
    assert bench.factor is not None, "something is loose"
    mesh = bench.mesh
    softer = reduced(_leaning(mesh, moves), mesh.held.size, bench.whole, bench.free)
    share, inside = largest(softer, bench.whole.free, bench.factor)
    outside = np.zeros(len(bench.free))
    outside[bench.free] = inside
    shape = (bench.whole.carry @ outside).reshape(1, -1, SIX)
    shape = shape / np.abs(shape[..., :3]).max()
    part = int(np.argmax(energy_by_part(mesh, bench.made_of, shape)[0]))
    factor = 1 / share if share > 0.0 else np.inf
    return Buckling(factor, mesh.parts[part].name, shape[0])


def _leaning(mesh: Mesh, moves: Array) -> Block:
    """What the stress in the middle of the sheets takes off their stiffness against leaning."""
    own = sheet(mesh)
    at = freedoms(mesh.triangles.corners)
    stretch, _, axes = strains(own, moves.reshape(1, -1)[:, at])
    elastic = plane_stress(own.elastic, own.poisson)
    pull = np.einsum("tij,tj->ti", elastic, stretch[0].mean(axis=1)) * own.thickness[:, None]
    _, corners = frames(own.places)
    lean = mid_side_turns(corners)
    flow = np.stack([pull[:, [0, 2]], pull[:, [2, 1]]], axis=1)
    matrix = np.einsum("tsim,tij,tsjn->tmn", lean, flow, lean, optimize=True)
    matrix *= -area(corners)[:, None, None] / 3
    local = np.zeros((len(at), 18, 18))
    local[:, OUT_OF_PLANE[:, None], OUT_OF_PLANE] = matrix
    return Block(at, turned(local, axes), mesh.triangles.part)
