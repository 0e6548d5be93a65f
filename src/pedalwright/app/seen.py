"""A project as it is shown: the file, what documents say of it, and its assessment."""

from dataclasses import dataclass, field

from pedalwright.assess import Assessment, Headline, assess, headlines
from pedalwright.assess.stroke import Pressed
from pedalwright.core.working import Step, working
from pedalwright.documents.about import About
from pedalwright.documents.about import about as about
from pedalwright.documents.comparison import Attempt
from pedalwright.documents.pictures.stroke import Look, looked_at
from pedalwright.documents.survey_sheet import Readings
from pedalwright.project import Project, car_text, read


@dataclass(frozen=True, slots=True)
class Seen:
    """One state of a car, assessed."""

    project: Project
    about: About
    assessment: Assessment
    headlines: tuple[Headline, ...]
    #: Pedals as they were looked at already.
    looks: dict[tuple[object, ...], Pressed] = field(default_factory=dict, compare=False)

    def looked_at(self, look: Look) -> Pressed:
        """A pedal anywhere on its stroke."""
        key = (look.pedal, look.down, look.drivers)
        if key not in self.looks:
            self.looks[key] = looked_at(self.project.design, self.assessment, look)
        return self.looks[key]

    @property
    def attempt(self) -> Attempt:
        """The same for a comparison."""
        return Attempt(self.about, self.assessment.findings, self.headlines)


def readings(project: Project) -> Readings:
    """What a survey's sheet asks for: this car's, or those of the packaged car that was taped."""
    if project.surveyed is None:
        return readings(read(car_text("larkfield-tapes")))
    return Readings(survey=project.design.survey, found=project.surveyed.adjustment)


def seen(project: Project) -> Seen:
    """Assess a project."""
    found = assess(project.design)
    return Seen(project, about(project), found, headlines(found))


def worked(project: Project) -> list[Step]:
    """Every formula that ran, in order."""
    with working() as steps:
        assess(project.design)
    return steps
