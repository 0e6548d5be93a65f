"""`survey`: what tapes, plumb line and phone make of the footwell."""

import json
from pathlib import Path

import click

from pedalwright.cli.faults import explained


@click.command()
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.option(
    "-o",
    "--output",
    type=click.Path(file_okay=False, path_type=Path),
    help="A folder for the drawings and the sheet to fill in.",
)
@click.option(
    "--paper",
    type=click.Choice(["A4", "Letter"]),
    default="A4",
    show_default=True,
    help="Of the sheet.",
)
@click.option("--json", "as_data", is_flag=True, help="Print as JSON.")
@click.pass_context
@explained
def survey(
    context: click.Context, file: Path, output: Path | None, paper: str, as_data: bool
) -> None:
    """Place the marks of a survey by tapes: their ±, what does not agree, a sheet to fill in.

    Ends with 0 when the readings agree, 1 when they do not, and 2 when the file could not be read.
    """
    from pedalwright.cli.open import about
    from pedalwright.cli.surveyed import readings, told
    from pedalwright.documents.survey_papers import survey_papers
    from pedalwright.documents.survey_text import no_survey_text, survey_data, survey_text
    from pedalwright.project import read

    project = read(file)
    of, said = about(project), told(project)
    if as_data:
        data = {} if said is None else survey_data(of, said)
        click.echo(json.dumps(data, indent=1, ensure_ascii=False, allow_nan=False))
    else:
        click.echo(no_survey_text(of) if said is None else survey_text(of, said), nl=False)
    if output is not None:
        output.mkdir(parents=True, exist_ok=True)
        for name, content in survey_papers(of, said, readings(project), paper=paper).items():
            (output / name).write_bytes(content)
            click.echo(f"  wrote {output / name}", err=as_data)
    context.exit(1 if said is not None and said.found.suspicions else 0)
