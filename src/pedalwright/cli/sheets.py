"""`sheets`: paper for the bench."""

from pathlib import Path

import click

from pedalwright.cli.faults import explained


@click.command()
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.option(
    "-o",
    "--output",
    type=click.Path(file_okay=False, path_type=Path),
    required=True,
    help="The folder to write into.",
)
@click.option(
    "--paper", type=click.Choice(["A4", "Letter"]), default="A4", show_default=True, help="Of it."
)
@click.option(
    "--scale-x",
    type=click.FloatRange(80.0, 120.0),
    default=100.0,
    show_default=True,
    help="Length in mm of check bar X as your printer draws it.",
)
@click.option(
    "--scale-y",
    type=click.FloatRange(80.0, 120.0),
    default=100.0,
    show_default=True,
    help="Length in mm of check bar Y.",
)
@explained
def sheets(file: Path, output: Path, paper: str, scale_x: float, scale_y: float) -> None:
    """Write the folder for the bench.

    Templates at true size, card legs, the survey's sheet, drill cards, cut lists, order of work
    and DXF.
    """
    from pedalwright.cli.open import about
    from pedalwright.cli.surveyed import readings
    from pedalwright.documents.sheets import Work
    from pedalwright.documents.sheets import sheets as written
    from pedalwright.making.tiling import PAPERS, Printer
    from pedalwright.project import read

    project = read(file)
    work = Work.of(
        about(project),
        project.design,
        paper=PAPERS[paper.lower()],
        printer=Printer(bar_x=scale_x, bar_y=scale_y),
        readings=readings(project),
    )
    output.mkdir(parents=True, exist_ok=True)
    for sheet in written(work):
        (output / sheet.file).write_bytes(sheet.content)
        click.echo(f"Wrote {output / sheet.file}: {sheet.title}")
