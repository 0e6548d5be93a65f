"""The page: a local server, a car to each page, every figure from `assess`, none made here."""

from pedalwright.app.serve import serve

__all__ = ["serve"]
