"""What comes out of an adjustment: marks with their ±, sights with their residuals, suspicions."""

from dataclasses import dataclass

from pedalwright.core.points import Point
from pedalwright.core.units import Array, Ratio, mm
from pedalwright.survey.stations import Sight


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Placed:
    """A mark where the sights put it."""

    name: str
    at: Point
    #: Standard deviations, as expected from the readings' own; larger if they contradict.
    sigma: Point
    #: Variances and covariances, (3, 3).
    covariance: Array
    #: How many millimetres it is out for each that its sights are out.
    dilution: Ratio
    #: Of its sights, the least share of an error that its others would show.
    checked: Ratio
    #: Sights that end here.
    sights: int
    #: True where all three coordinates were given and none was to be found.
    held: bool


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Checked:
    """A sight beside all others."""

    sight: Sight
    #: Predicted less measured, in the unit of the sight.
    residual: float
    #: Share of an error in it that the others would show.
    redundancy: Ratio
    #: Residual beside its scatter by chance; nan where nothing checks it.
    normalised: Ratio
    #: True where the marks were placed without it, because it cannot be right.
    set_aside: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Suspicion:
    """Sights that cannot all be right."""

    #: The mark they have in common; empty for none.
    mark: str
    #: Everything that contradicts itself, in words such as `A–P4`.
    among: tuple[str, ...]
    #: The likeliest to be wrong; one if it can be told, else all that it may be.
    likely: tuple[str, ...]
    #: How far out the first of them would be, and what may still be chance; of an angle, at the
    #: end of its line.
    size: mm
    bound: mm
    #: What was read, and what the others say it should be, in the unit of the sight.
    read: float
    expected: float
    unit: str
    #: What may have happened; empty where nothing comes to mind.
    cause: str

    @property
    def certain(self) -> bool:
        """True where one sight is to blame and no other would explain it."""
        return len(self.likely) == 1


@dataclass(frozen=True, kw_only=True, slots=True)
class TwoPlaces:
    """A mark that fits its sights in two places, and nobody said which."""

    name: str
    here: Point
    there: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Loose:
    """A mark that its sights do not place."""

    name: str
    #: What it has, by name.
    sights: tuple[str, ...]
    #: How many it needs.
    needs: int


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Adjustment:
    """A net of marks after least squares."""

    marks: tuple[Placed, ...]
    sights: tuple[Checked, ...]
    suspicions: tuple[Suspicion, ...]
    two_places: tuple[TwoPlaces, ...]
    loose: tuple[Loose, ...]
    #: Sights more than needed.
    freedom: int
    #: Scatter found over scatter expected; nan without a sight more than needed.
    unit_weight: Ratio
    #: What chance makes of it at most, once in a thousand times.
    unit_weight_bound: Ratio
    #: Of all coordinates, (3 marks, 3 marks).
    covariance: Array
    #: How each coordinate moves with each reading, (3 marks, sights).
    gain: Array

    def mark(self, name: str) -> Placed | None:
        """A mark that was placed."""
        return next((mark for mark in self.marks if mark.name == name), None)
