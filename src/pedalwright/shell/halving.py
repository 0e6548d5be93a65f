"""Half the size of the triangles, and the same question once more: how far the answer moves.

The only honest figure for what a mesh costs: with sides half as long, most of what is left of the
error of a bent sheet goes, so the change is a little more than the error of the finer answer.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from pedalwright.shell.build import Built, build
from pedalwright.shell.parts import Bench
from pedalwright.shell.solve import Answer, solve

#: What is asked of an answer: the give of a point, say.
Read = Callable[[Built, Answer], float]


@dataclass(frozen=True, slots=True)
class Halving:
    """One figure from a mesh and from one of half its size."""

    coarse: float
    fine: float

    @property
    def change(self) -> float:
        """Of the finer figure."""
        return abs(self.fine - self.coarse) / abs(self.fine)


def halved(bench: Bench, load: Mapping[str | int, tuple[float, ...]], read: Read) -> Halving:
    """The figure that `read` takes from one load case, at the bench's size and at half of it."""
    figures: list[float] = []
    for size in (bench.size, bench.size / 2):
        built = build(replace(bench, size=size))
        figures.append(read(built, solve(built.mesh, built.mesh.loads(load))))
    return Halving(figures[0], figures[1])
