"""What a push on the pad asks of hip, knee and ankle."""

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import N, Nmm, rad
from pedalwright.driver.formulas.leg import joint_moment
from pedalwright.driver.parts import JointMoments, Posture


def joint_moments(posture: Posture, push: N, direction: rad) -> JointMoments:
    """Moments of the pad's force on the ball of the foot, about each joint.

    `direction` is that of the force on the foot: 0 straight rearward, positive upwards.
    """
    along, up = push * np.cos(direction), push * np.sin(direction)

    def about(joint: Point) -> Nmm:
        arm = posture.ball - joint
        return joint_moment(arm.x, arm.z, along, up)

    hip, knee, ankle = about(posture.hip), about(posture.knee), about(posture.ankle)
    return JointMoments(
        hip=hip,
        knee=knee,
        ankle=ankle,
        hip_arm=np.abs(hip) / push,
        knee_arm=np.abs(knee) / push,
        ankle_arm=np.abs(ankle) / push,
    )
