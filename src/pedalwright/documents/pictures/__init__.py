"""Drawings of an assessed design: the side elevation and the charts of the dossier."""

from pedalwright.documents.pictures.gallery import Picture, full_size, pictures
from pedalwright.documents.pictures.side import side_elevation

__all__ = ["Picture", "full_size", "pictures", "side_elevation"]
