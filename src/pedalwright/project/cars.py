"""The invented cars that ship with the house, each in the attempts its builder went through."""

from importlib.resources import files
from pathlib import Path

from pedalwright.project.errors import ProjectError, fault, nearest
from pedalwright.project.files import create

_FOLDER = files("pedalwright.project").joinpath("cars")
#: In the order in which a builder meets them; a survey by tape comes before all attempts.
_ORDER = ("tapes", "first", "fix1", "fix2", "improved")


def cars() -> tuple[str, ...]:
    """Every packaged car, such as `larkfield-first`, attempts in order."""
    names = [file.name.removesuffix(".toml") for file in _FOLDER.iterdir()]
    return tuple(sorted((n for n in names if "-" in n), key=_place))


def attempts(car: str) -> tuple[str, ...]:
    """The attempts at one car: `larkfield` is `larkfield-first`, then `larkfield-improved`."""
    found = tuple(
        name for name in cars() if name == car or (_place(name)[0] == car and _place(name)[1] > 0)
    )
    if not found:
        families = tuple(dict.fromkeys(name.rpartition("-")[0] for name in cars()))
        raise _no_car(car, families)
    return found


def car_text(name: str) -> str:
    """A packaged project file."""
    if name not in cars():
        raise _no_car(name, cars())
    return _FOLDER.joinpath(f"{name}.toml").read_text(encoding="utf-8")


def new_file(path: Path, like: str) -> None:
    """Write a packaged car to a new file; a file that is there is never written over."""
    create(path, car_text(like).encode())


def _place(name: str) -> tuple[str, int]:
    car, _, attempt = name.rpartition("-")
    return car, _ORDER.index(attempt)


def _no_car(name: str, known: tuple[str, ...]) -> ProjectError:
    accepts = f"The cars here are {', '.join(known)}."
    return ProjectError((fault("", None, "", name, accepts, nearest(name, known)),))
