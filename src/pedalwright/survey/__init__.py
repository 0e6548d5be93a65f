"""The footwell as measured: named points, lines, faces and obstacles."""

from pedalwright.survey.parts import Face, Line, Mark, Obstacle, Survey

__all__ = ["Face", "Line", "Mark", "Obstacle", "Survey"]
