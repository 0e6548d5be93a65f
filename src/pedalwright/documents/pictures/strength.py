"""What is drawn of the strength of the box and of what carries the pedals."""

from pedalwright.assess import Assessment
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.gallery import Picture, pictures

#: Beginnings of the names of those pictures of the dossier.
ABOUT = ("box", "give", "load")


def strength(design: Design, assessment: Assessment, units: Units) -> list[Picture]:
    """Every picture of the dossier that is about strength."""
    return [one for one in pictures(design, assessment, units) if one.key.startswith(ABOUT)]
