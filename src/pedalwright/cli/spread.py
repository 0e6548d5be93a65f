"""`spread`: what the ± of hand work does to a design."""

import json
from pathlib import Path

import click

from pedalwright.cli.faults import explained


@click.command()
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.option(
    "--cars",
    type=click.IntRange(100, 100_000),
    default=4000,
    show_default=True,
    help="How many cars are built.",
)
@click.option("--json", "as_data", is_flag=True, help="Print as JSON.")
@explained
def spread(file: Path, cars: int, as_data: bool) -> None:
    """Build many cars within the ± of the file: what may turn, and which number decides."""
    from pedalwright.cli.open import about
    from pedalwright.documents.robust_text import robust_data, robust_text
    from pedalwright.project import plus_minus_tree, read
    from pedalwright.search import robustness

    project = read(file)
    found = robustness(project.design, plus_minus_tree(project), cars)
    if as_data:
        report = robust_data(about(project), found)
        click.echo(json.dumps(report, indent=1, ensure_ascii=False, allow_nan=False))
    else:
        click.echo(robust_text(about(project), found), nl=False)
