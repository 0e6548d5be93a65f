"""Print what the main job costs, each figure beside its budget, and the ratio to a library.

    make bench

Times are wall clock on this machine; the ratio to the general linkage library is measured on
the same mechanism in the same run, so it means something on any machine; so is that to PyNiteFEA,
on the same nodes.
"""

import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from statistics import median

import click
import numpy as np

from benchmarks.networks import adjusted
from pedalwright.assess import assess
from pedalwright.assess.cabin import around, placed, shoes
from pedalwright.assess.pedals import brake_pedal, clutch_pedal, throttle_pedal
from pedalwright.core.batch import spread
from pedalwright.design import Design
from pedalwright.linkage import shoe_clearances
from pedalwright.project import car_text, new_file, plus_minus_tree, read


def main() -> None:
    """Run every benchmark and print one line each."""
    project = read(car_text("larkfield-improved"))
    timed(lambda: assess(project.design), 50)  # warm up
    say("assess, one design", timed(lambda: assess(project.design), 100), 10e-3)
    for room, seconds in rooms(project.design):
        click.echo(f"    of it {room:<38} {seconds * 1e3:8.2f} ms")
    half_widths = plus_minus_tree(project)
    for n, budget in ((10_000, 1.5), (100_000, 15.0)):
        population = spread(project.design, half_widths, n, np.random.default_rng(1))
        times = 3 if n < 50_000 else 1
        say(f"assess, {n} variants", timed(partial(assess, population), times), budget)
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024**2
    click.echo(f"{'peak memory of the above':<44} {peak:8.2f} GB   budget 2 GB")
    say("survey, 60 marks by 300 tapes", timed(adjusted, 20), 50e-3)
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "car.toml"
        new_file(file, "larkfield-improved")
        command = [sys.executable, "-m", "pedalwright"]
        say("cold `assess FILE`", timed(lambda: run([*command, "assess", str(file)]), 9), 0.8)
        pdf = str(Path(folder) / "car.pdf")
        say(
            "cold `dossier FILE`",
            timed(lambda: run([*command, "dossier", str(file), "-o", pdf]), 5),
            2.0,
        )
        for car in ("larkfield-improved", "brackwater-fix2", "saltmarsh-improved"):
            file, bench = Path(folder) / f"{car}.toml", str(Path(folder) / car)
            new_file(file, car)
            made = partial(run, [*command, "sheets", str(file), "-o", bench])
            say(f"all sheets of {car}", timed(made, 5), 3.0)
        say("`--help`", timed(lambda: run([*command, "--help"]), 9), 0.15)
    from benchmarks.linkages import ours, theirs  # last: it brings half of the scientific stack

    mine, library = timed(ours, 20), timed(theirs, 5)
    say("lever sweep, 25 stations", mine, None)
    say("the same by pylinkage", library, None)
    click.echo(f"{'pylinkage / pedalwright':<44} {library / mine:8.1f} times")
    sheets()


def sheets() -> None:
    """The shell bench: a box meshed, solved and read; condensed; against the general library."""
    from benchmarks import shell

    shell.box()  # warm up
    cost = min((shell.box() for _ in range(3)), key=lambda each: each.whole)
    say(f"sheet box, {cost.freedoms} freedoms", cost.whole, 3.0)
    for step, seconds in (("mesh", cost.mesh), ("solve", cost.solve), ("read", cost.read)):
        click.echo(f"    of it {step:<38} {seconds * 1e3:8.2f} ms")
    say("box condensed to 48 freedoms", min(shell.condensed() for _ in range(3)), 0.6)
    say("one design on the condensed box", shell.designs(), 50e-6)
    mine, library = min(shell.ours() for _ in range(3)), shell.theirs()
    say("folded box, 20 202 freedoms", mine, None)
    say("the same by PyNiteFEA", library, None)
    click.echo(f"{'PyNiteFEA / pedalwright':<44} {library / mine:8.1f} times   wanted 15")


def rooms(design: Design) -> Iterator[tuple[str, float]]:
    """What each part of one assessment costs, measured by itself."""
    wall, done = design.survey.face("front_wall"), assess(design)
    pedals = (done.brake, done.clutch, done.throttle)
    whole = {
        "brake: lever, hydraulics, brakes, structure": lambda: brake_pedal(design, wall),
        "clutch: lever, clutch, structure": lambda: clutch_pedal(design, wall),
        "throttle": lambda: throttle_pedal(design),
        "drivers": lambda: [placed(design, d, 0.0, *pedals) for d in design.drivers],
        "clearances of arms and pads": lambda: around(design, *pedals),
        "clearances of shoes": lambda: shoe_clearances(shoes(done.drivers), design.survey.lines),
    }
    for room, job in whole.items():
        yield room, timed(job, 50)


def run(command: list[str]) -> None:
    """Run a command to its end; exit code 1 only says that a demand fails."""
    usual = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    done = subprocess.run(command, capture_output=True, check=False, env=usual)
    assert done.returncode in (0, 1), done.stderr.decode()


def timed(job: Callable[[], object], times: int) -> float:
    """Median seconds of a job."""
    seconds: list[float] = []
    for _ in range(times):
        start = time.perf_counter()
        job()
        seconds.append(time.perf_counter() - start)
    return median(seconds)


def say(what: str, seconds: float, budget: float | None) -> None:
    """One line."""
    limit = "" if budget is None else f"   budget {budget * 1e3:g} ms"
    click.echo(f"{what:<44} {seconds * 1e3:8.2f} ms{limit}")


if __name__ == "__main__":
    main()
