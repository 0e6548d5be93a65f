"""Sections of bars: what they are as shapes, and how stiff that makes them.

Shapes are told by their sizes, so that a bar between two sections of one kind tapers as the metal
does. z is the section's depth, along the bar's `up`; y is its width.
"""

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from pedalwright.core.batch import over
from pedalwright.core.units import Array, Num
from pedalwright.shell.mesh import Material


@dataclass(frozen=True, kw_only=True, slots=True)
class Properties:
    """What a bar needs of its section."""

    area: Num
    shear_y: Num
    shear_z: Num
    torsion: Num
    #: Second moments about y and z.
    inertia_y: Num
    inertia_z: Num


@dataclass(frozen=True, kw_only=True, slots=True)
class Flat:
    """A rectangular bar."""

    width: Num
    depth: Num

    def properties(self) -> Properties:
        """Shear by Timoshenko's 5/6; twist by Saint-Venant's series, good to 0.01 %."""
        b, h = np.minimum(self.width, self.depth), np.maximum(self.width, self.depth)
        odd = (1, 3, 5, 7, 9)
        ends = sum(np.tanh(n * np.pi * h / (2 * b)) / n**5 for n in odd)
        area = self.width * self.depth
        return Properties(
            area=area,
            shear_y=5 / 6 * area,
            shear_z=5 / 6 * area,
            torsion=h * b**3 * (1 / 3 - 64 / np.pi**5 * b / h * ends),
            inertia_y=self.width * self.depth**3 / 12,
            inertia_z=self.depth * self.width**3 / 12,
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class Round:
    """A round bar, or a round tube with a bore."""

    diameter: Num
    bore: Num = 0.0

    def properties(self) -> Properties:
        """Shear by Cowper's factor of a hollow circle at a Poisson's ratio of 0.3."""
        outside, inside = self.diameter / 2, self.bore / 2
        area = np.pi * (outside**2 - inside**2)
        inertia = np.pi / 4 * (outside**4 - inside**4)
        m = (inside / outside) ** 2
        nu = 0.3
        bulge = (7 + 6 * nu) * (1 + m) ** 2 + (20 + 12 * nu) * m
        shear = 6 * (1 + nu) * (1 + m) ** 2 / bulge * area
        return Properties(
            area=area,
            shear_y=shear,
            shear_z=shear,
            torsion=2 * inertia,
            inertia_y=inertia,
            inertia_z=inertia,
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class Box:
    """A rectangular tube with sharp corners."""

    width: Num
    depth: Num
    wall: Num

    def properties(self) -> Properties:
        """Twist by Bredt; shear by the walls that lie along it."""
        b, h, t = self.width, self.depth, self.wall
        inside_b, inside_h = b - 2 * t, h - 2 * t
        middle_b, middle_h = b - t, h - t
        return Properties(
            area=b * h - inside_b * inside_h,
            shear_y=2 * t * middle_b,
            shear_z=2 * t * middle_h,
            torsion=2 * t * (middle_b * middle_h) ** 2 / (middle_b + middle_h),
            inertia_y=(b * h**3 - inside_b * inside_h**3) / 12,
            inertia_z=(h * b**3 - inside_h * inside_b**3) / 12,
        )


#: Any section; `Properties` are those of an odd one, worked elsewhere.
Section: TypeAlias = Flat | Round | Box | Properties


def stiffness(start: Section, end: Section | None, material: Material, share: Array) -> Array:
    """Force per strain at shares of a bar's length: stretch, shears, twist, bendings; (6, places).

    Between the ends the sizes of the shape change evenly.
    """
    end = end or start
    assert type(start) is type(end), "a bar tapers between sections of one kind"

    def between(first: Num, last: Num) -> Num:
        # In this form an area without end (a bar that does not slide in shear) stays one.
        return first * (1 - share) + last * share

    here: Section = over(between, start, end)
    own = here if isinstance(here, Properties) else here.properties()
    elastic, shear = material.elastic, material.shear
    return np.stack(
        [
            elastic * np.asarray(own.area),
            shear * np.asarray(own.shear_y),
            shear * np.asarray(own.shear_z),
            shear * np.asarray(own.torsion),
            elastic * np.asarray(own.inertia_y),
            elastic * np.asarray(own.inertia_z),
        ]
    )
