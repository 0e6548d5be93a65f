"""The pedal arm as a straight beam on two supports, pivot and rod pin, overhung to the pad.

Torsion of a joggled arm runs from pad to pivot, which takes it; the rod's fork does not. Not
counted: the eye at the pivot, the joggle's own bends, a rod that pulls out of the arm's plane.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import MPa, N, Nmm, Ratio, mm, rad
from pedalwright.core.working import unrecorded
from pedalwright.structure.formulas.arm import (
    bending_moment,
    bending_stress,
    collapse_stress,
    depth_at,
    equivalent_stress,
    offset_torque,
    overhang,
    shear_stress,
    support_shear,
    torsion_stress,
)
from pedalwright.structure.formulas.sections import (
    bar_area,
    edge_torsion_factor,
    face_torsion_factor,
    flat_modulus,
    net_modulus,
    plastic_modulus,
    plastic_torsion_modulus,
)
from pedalwright.structure.formulas.stiffness import (
    bending_give,
    even_area,
    even_inertia,
    even_torsion_constant,
    shear_give,
    shear_modulus,
    twist,
    twist_give,
)
from pedalwright.structure.parts import Arm

#: Stations along the arm, as shares of the way from the pad to where it is held.
SHARES = np.linspace(0.0, 1.0, 13)


@dataclass(frozen=True, kw_only=True, slots=True)
class Place:
    """One place of the arm, or many."""

    from_pad: mm
    hole: mm
    #: Whether this is where the arm is held: 1 or 0.
    support: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class Yielding:
    """Stress at a place: on the narrow edge, and in the middle of the broad face."""

    edge: MPa
    face: MPa

    @property
    def worse(self) -> MPa:
        """The harder stressed of the two."""
        return np.maximum(self.edge, self.face)


@dataclass(frozen=True, kw_only=True, slots=True)
class HeldArm:
    """An arm, where it is held, and how far its pad stands to one side."""

    arm: Arm
    pad_radius: mm
    #: Pivot to pin.
    span: mm
    pad_offset: mm
    #: Pad to the nearer of pivot and pin.
    overhang: mm
    #: The pin's hole where the arm is first held; 0 where that is the pivot.
    hole: mm

    @classmethod
    def between(
        cls, arm: Arm, pad_radius: mm, pin_radius: mm, pin_angle: rad, pad_offset: mm
    ) -> "HeldArm":
        """`pin_angle` is 0 for a pin between pivot and pad, pi for one beyond the pivot."""
        return cls(
            arm=arm,
            pad_radius=pad_radius,
            span=pin_radius,
            pad_offset=pad_offset,
            overhang=overhang(pad_radius, pin_radius, pin_angle),
            hole=np.where(np.cos(pin_angle) > 0.0, arm.pin_hole, 0.0),
        )

    def moment(self, push: N) -> Nmm:
        """Bending where the arm is first held, which is the largest."""
        return bending_moment(push, self.overhang)

    def torque(self, push: N) -> Nmm:
        """Torque from pad to pivot."""
        return offset_torque(push, self.pad_offset)

    def worst_places(self) -> tuple[Place, Place]:
        """Where the arm first yields, and where it would fold; a harder push moves neither."""
        arm = self.arm
        numbers = (self.pad_radius, self.span, self.pad_offset, self.overhang, self.hole)
        bar = (arm.thickness, arm.depth_at_pad, arm.depth_at_pivot)
        batched = max(np.ndim(number) for number in (*numbers, *bar))
        along = self._at(SHARES.reshape(-1, *(1,) * batched))
        with unrecorded():
            yielding, folding = self.yielding(1.0, along), self.folding(1.0, along)
        return (
            self._at(SHARES[np.argmax(yielding.worse, axis=0)]),
            self._at(SHARES[np.argmax(folding, axis=0)]),
        )

    def yielding(self, push: N, place: Place) -> Yielding:
        """Stress at a place under a push; what is drilled away neither bends, twists nor shears."""
        t = self.arm.thickness
        depth = self._depth(place.from_pad)
        net = depth - place.hole
        torque = self.torque(push)
        bent = bending_stress(
            bending_moment(push, place.from_pad), net_modulus(t, depth, place.hole)
        )
        edge = torsion_stress(torque, edge_torsion_factor(net / t), net, t)
        face = torsion_stress(torque, face_torsion_factor(net / t), net, t)
        at_support = support_shear(push, self.overhang, self.span)
        shear = shear_stress(np.where(place.support > 0.0, at_support, push), bar_area(t, net))
        return Yielding(
            edge=equivalent_stress(bent, edge), face=equivalent_stress(0.0, face + shear)
        )

    def folding(self, push: N, place: Place) -> MPa:
        """Yield strength at which the whole section at a place would just hold the push."""
        t = self.arm.thickness
        depth = self._depth(place.from_pad)
        return collapse_stress(
            bending_moment(push, place.from_pad),
            plastic_modulus(t, depth, place.hole),
            self.torque(push),
            plastic_torsion_modulus(t, depth - place.hole),
        )

    def sideways(self, push: N) -> MPa:
        """Stress of a push across the car, over the thickness: at the pin, or at the pivot.

        The pivot alone holds the arm sideways.
        """
        t = self.arm.thickness
        net = self._depth(self.overhang) - self.hole
        return np.maximum(
            bending_stress(bending_moment(push, self.overhang), flat_modulus(t, net)),
            bending_stress(
                bending_moment(push, self.pad_radius), flat_modulus(t, self.arm.depth_at_pivot)
            ),
        )

    def give(self, push: N) -> tuple[mm, mm, mm]:
        """How far the pad moves because the arm bends, slides in shear, twists."""
        arm = self.arm
        at_support = self._depth(self.overhang)
        outer = (arm.thickness, arm.depth_at_pad, at_support)
        inner = (arm.thickness, arm.depth_at_pivot, at_support)
        whole = (arm.thickness, arm.depth_at_pad, arm.depth_at_pivot)
        reach = (push, self.overhang, self.span)
        shear = shear_modulus(arm.elastic, arm.poisson)
        angle = twist(self.torque(push), self.pad_radius, shear, even_torsion_constant(*whole))
        return (
            bending_give(*reach, arm.elastic, even_inertia(*outer), even_inertia(*inner)),
            shear_give(*reach, shear, even_area(*outer), even_area(*inner)),
            twist_give(angle, self.pad_offset),
        )

    def _at(self, share: Ratio) -> Place:
        """A place by its share of the way from the pad to where the arm is held."""
        support = np.where(share == 1.0, 1.0, 0.0)
        return Place(from_pad=share * self.overhang, hole=support * self.hole, support=support)

    def _depth(self, from_pad: mm) -> mm:
        arm = self.arm
        return depth_at(arm.depth_at_pad, arm.depth_at_pivot, from_pad, self.pad_radius)
