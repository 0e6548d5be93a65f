"""From what is put on the bench to its mesh: numbered, welded, bound, fastened and held."""

from pedalwright.shell.build.mesh import Built, Rough, build

__all__ = ["Built", "Rough", "build"]
