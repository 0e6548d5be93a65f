"""What kind of quantity a number is, so that a wrong one can be called by its name."""

from typing import NamedTuple


class Dimension(NamedTuple):
    """Powers of length, mass, time and angle. An angle is not a mere ratio here."""

    length: int = 0
    mass: int = 0
    time: int = 0
    angle: int = 0

    def times(self, other: "Dimension", power: int = 1) -> "Dimension":
        """Dimension of this quantity times another one raised to a power."""
        return Dimension(
            self.length + power * other.length,
            self.mass + power * other.mass,
            self.time + power * other.time,
            self.angle + power * other.angle,
        )


RATIO = Dimension()
LENGTH = Dimension(length=1)
AREA = Dimension(length=2)
VOLUME = Dimension(length=3)
ANGLE = Dimension(angle=1)
MASS = Dimension(mass=1)
TIME = Dimension(time=1)
SPEED = Dimension(length=1, time=-1)
ACCELERATION = Dimension(length=1, time=-2)
FORCE = MASS.times(ACCELERATION)
PRESSURE = FORCE.times(AREA, -1)
TORQUE = FORCE.times(LENGTH)

#: What each kind is called, and texts that are read.
KINDS: dict[Dimension, tuple[str, tuple[str, ...]]] = {
    LENGTH: ("a length", ("54.5 mm", "1 5/8 in", "5 ft 2 in", "16 SWG")),
    AREA: ("an area", ("570 mm2", "1.35 in2")),
    VOLUME: ("a volume", ("900 mm3", "35 cc", "0.06 in3")),
    Dimension(length=4): ("a second moment of area", ("1200 mm4", "0.2 in4")),
    ANGLE: ("an angle", ("15.5 deg", "15°30'", "0.27 rad")),
    MASS: ("a mass", ("980 kg", "1950 lb")),
    TIME: ("a time", ("0.3 s", "250 ms")),
    SPEED: ("a speed", ("170 km/h", "60 mph")),
    ACCELERATION: ("an acceleration", ("6.43 m/s2", "0.6 g")),
    FORCE: ("a force", ("400 N", "90 lbf", "50 kgf")),
    PRESSURE: ("a pressure or stress", ("4.4 MPa", "62 bar", "900 psi")),
    TORQUE: ("a torque", ("25 N m", "18 lbf ft", "3 kgf m")),
    FORCE.times(LENGTH, -1): ("a spring rate", ("12 N/mm", "70 lbf/in")),
    LENGTH.times(FORCE, -1): ("a give per force", ("0.002 mm/N",)),
    TORQUE.times(ANGLE, -1): ("a turning stiffness", ("2e6 N mm/rad", "35 N m/deg")),
    LENGTH.times(PRESSURE, -1): ("a give per pressure", ("0.02 mm/MPa",)),
    VOLUME.times(PRESSURE, -1): ("a swelling per pressure", ("30 mm3/MPa", "0.03 cc/MPa")),
    MASS.times(VOLUME, -1): ("a density", ("7850 kg/m3", "2.7 g/cm3")),
    RATIO: ("a ratio or share", ("5:1", "0.06", "6 %")),
}
