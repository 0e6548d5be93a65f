"""`ask`: a builder's question, answered for his car."""

import json
from pathlib import Path
from typing import Literal

import click

from pedalwright.cli.faults import explained


@click.command()
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.argument("question", required=False)
@click.option(
    "--pedal",
    type=click.Choice(["brake", "clutch"]),
    default="brake",
    show_default=True,
    help="The pedal that cut, hole and ratio ask about.",
)
@click.option("--by", help="cut: length to cut off; hole: how far too far out it is.")
@click.option("--json", "as_data", is_flag=True, help="Print as JSON.")
@explained
def ask(
    file: Path,
    question: str | None,
    pedal: Literal["brake", "clutch"],
    by: str | None,
    as_data: bool,
) -> None:
    """Answer a question about a car: which bore, why is it spongy, and so on.

    Without a question the questions are listed.
    """
    from pedalwright.cli.open import about
    from pedalwright.documents.answers import answer_data, answer_text
    from pedalwright.documents.questions import asked, length, listed, listed_text
    from pedalwright.project import doubts, read

    if question is None:
        click.echo(json.dumps(listed(), indent=1) if as_data else listed_text(), nl=as_data)
        return
    found = asked(question)
    project = read(file)
    known = () if found.of_doubts is None else doubts(project)
    answer = found.answered(project.design, pedal, length(by), known)
    if as_data:
        report = answer_data(about(project), answer)
        click.echo(json.dumps(report, indent=1, ensure_ascii=False, allow_nan=False))
    else:
        click.echo(answer_text(about(project), answer), nl=False)
