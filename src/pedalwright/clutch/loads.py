"""The load on the bearing over its lift: from points that were measured, or from the spring."""

from itertools import pairwise

import numpy as np

from pedalwright.clutch.formulas import (
    finger_load,
    ring_pressed,
    spring_load,
    spring_shape_k1,
)
from pedalwright.clutch.parts import Diaphragm, LoadPoint, Release
from pedalwright.core.units import N, Num, Ratio, Truth, mm


def has_curve(release: Release) -> bool:
    """Whether the load is given over the bearing's lift, not at full release alone."""
    return bool(release.load_points) or release.diaphragm is not None


def bearing_load(release: Release, lift: mm) -> N:
    """Load on the bearing at a lift, (stations,) or (stations, variants) like `lift`."""
    if release.load_points:
        return between_points(release.load_points, lift)
    if release.diaphragm is not None:
        return diaphragm_load(release.diaphragm, lift)
    return release.release_load + 0.0 * lift


def between_points(points: tuple[LoadPoint, ...], lift: mm) -> N:
    """Load straight between the points; nan outside of them and where they are out of order."""
    first, last = points[0], points[-1]
    load: Num = first.load + 0.0 * lift
    known: Truth = np.logical_and(lift >= first.travel, lift <= last.travel)
    for near, far in pairwise(points):
        slope = (far.load - near.load) / (far.travel - near.travel)
        load = load + slope * (np.clip(lift, near.travel, far.travel) - near.travel)
        known = np.logical_and(known, near.travel < far.travel)
    return np.where(known, load, np.nan)


def diaphragm_load(spring: Diaphragm, lift: mm) -> N:
    """Load of a diaphragm spring on the bearing, through its fingers."""
    delta: Ratio = spring.outside / spring.inside
    ring = spring_load(
        spring.elastic,
        spring.poisson,
        spring_shape_k1(delta),
        spring.outside,
        spring.cone,
        spring.thickness,
        ring_pressed(spring.pressed, lift, spring.finger_ratio),
    )
    return finger_load(ring, spring.finger_ratio)
