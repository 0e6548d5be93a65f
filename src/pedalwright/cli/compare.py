"""`compare`: what one attempt does that the other does not."""

from pathlib import Path

import click

from pedalwright.cli.faults import explained

PROJECT_FILE = click.Path(dir_okay=False, path_type=Path)


@click.command()
@click.argument("old", type=PROJECT_FILE)
@click.argument("new", type=PROJECT_FILE)
@explained
def compare(old: Path, new: Path) -> None:
    """Compare two attempts: what was changed, mended and broken."""
    from pedalwright.assess import assess, headlines
    from pedalwright.cli.open import about
    from pedalwright.documents.comparison import Attempt, comparison_text
    from pedalwright.project import diff, read

    projects = (read(old), read(new))
    before, after = (
        Attempt(about(project), assessment.findings, headlines(assessment))
        for project in projects
        for assessment in (assess(project.design),)
    )
    click.echo(comparison_text(before, after, diff(*projects)), nl=False)
