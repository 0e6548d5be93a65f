"""The commands: thin, no arithmetic; heavy imports wait inside the command that needs them."""

import os

import click

from pedalwright import __version__
from pedalwright.cli.ask import ask
from pedalwright.cli.cars import demo, new
from pedalwright.cli.compare import compare
from pedalwright.cli.formulas import formula
from pedalwright.cli.judge import assess, dossier
from pedalwright.cli.open_page import open_page
from pedalwright.cli.sheets import sheets
from pedalwright.cli.spread import spread
from pedalwright.cli.survey import survey

__all__ = ["main"]

# A car's matrices are small: more threads cost more than they bring. Read once, by numpy.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="pedalwright")
def main() -> None:
    """Plan, check and document the brake, clutch and throttle pedals of a one-off car.

    \b
    pedalwright demo                       everything for an invented car, into ./out
    pedalwright new my-car.toml            a project file to fill in
    pedalwright open my-car.toml           the page: drag, type, see what it does
    pedalwright survey my-car.toml         marks from tapes: their ±, what is wrong, a sheet
    pedalwright assess my-car.toml         what passes, what fails, and by how much
    pedalwright ask my-car.toml bore       a builder's question, answered for this car
    pedalwright spread my-car.toml         what the ± of hand work does to it
    pedalwright compare old.toml new.toml  what was changed, mended and broken
    pedalwright sheets my-car.toml -o DIR  templates, drill cards, cut lists, order of work
    pedalwright dossier my-car.toml -o my-car.pdf
    """  # noqa: D301 (click reads \b as "keep these lines")


for command in (demo, new, open_page, survey, assess, ask):
    main.add_command(command)
for command in (spread, compare, sheets, dossier, formula):
    main.add_command(command)
