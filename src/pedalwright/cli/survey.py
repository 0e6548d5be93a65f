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
    from pedalwright.documents.survey_papers import Usual, survey_papers
    from pedalwright.documents.survey_text import (
        SurveyTold,
        no_survey_text,
        survey_data,
        survey_text,
    )
    from pedalwright.project import car_text, read

    project = read(file)
    of, design, found = about(project), project.design, project.surveyed
    told = None
    if found is not None:
        places = {one.sight.about: one.path for one in found.sights}
        told = SurveyTold(survey=design.survey, found=found.adjustment, places=places)
    if as_data:
        data = {} if told is None else survey_data(of, told)
        click.echo(json.dumps(data, indent=1, ensure_ascii=False, allow_nan=False))
    else:
        click.echo(no_survey_text(of) if told is None else survey_text(of, told), nl=False)
    if output is not None:
        output.mkdir(parents=True, exist_ok=True)
        example = read(car_text("larkfield-tapes"))
        assert example.surveyed is not None, "the packaged survey is one by tape"
        usual = Usual(survey=example.design.survey, found=example.surveyed.adjustment)
        for name, content in survey_papers(of, told, usual, paper=paper).items():
            (output / name).write_bytes(content)
            click.echo(f"  wrote {output / name}", err=as_data)
    context.exit(1 if told is not None and told.found.suspicions else 0)
