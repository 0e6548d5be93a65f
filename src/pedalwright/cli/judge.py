"""`assess` and `dossier`: what a project file comes to."""

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from pedalwright.cli.faults import explained

if TYPE_CHECKING:
    from pedalwright.assess import Assessment
    from pedalwright.core.checks import Finding
    from pedalwright.design import Design

PROJECT_FILE = click.Path(dir_okay=False, path_type=Path)


@click.command()
@click.argument("file", type=PROJECT_FILE)
@click.option("--json", "as_data", is_flag=True, help="Print results and findings as JSON.")
@click.option("--full", is_flag=True, help="The box on the bench in full: stress, fasteners, webs.")
@click.pass_context
@explained
def assess(context: click.Context, file: Path, as_data: bool, full: bool) -> None:
    """Judge a project file: what passes, what fails, who asks.

    With --full the pedal box is meshed finely and every load case is worked with its sheets
    pressing on one another; that takes some seconds, is told as it goes, and may be stopped.

    Ends with 0 when everything that must be met is met, 1 when something is not, and 2 when the
    file could not be read.
    """
    from pedalwright.assess import assess as judge
    from pedalwright.cli.open import about
    from pedalwright.documents.as_json import as_json
    from pedalwright.documents.text import findings_text
    from pedalwright.documents.verdict import verdict
    from pedalwright.project import doubts, read
    from pedalwright.search import worth_lines, worth_measuring

    project = read(file)
    of, assessment = about(project), judge(project.design)
    findings = (*assessment.findings, *(_in_full(project.design, assessment) if full else ()))
    worth = worth_measuring(project.design, doubts(project))
    if as_data:
        from pedalwright.assess import headlines

        report = as_json(of, headlines(assessment), findings, worth)
        click.echo(json.dumps(report, indent=1, ensure_ascii=False, allow_nan=False))
    else:
        click.echo(findings_text(of, findings, worth_lines(worth)), nl=False)
    context.exit(0 if verdict(findings).ok else 1)


def _in_full(design: "Design", assessment: "Assessment") -> "tuple[Finding, ...]":
    """What the full tier finds, told as it goes; Ctrl-C leaves it and changes nothing."""
    from pedalwright.assess.full import assess_full

    def told(what: str, share: float) -> None:
        click.echo(f"  {share:4.0%}  {what}", err=True)

    try:
        found = assess_full(design, assessment, told)
    except KeyboardInterrupt:
        click.echo("Stopped. The file is as it was; what follows is without --full.", err=True)
        return ()
    if found is None:
        click.echo("No box is described that carries a pedal: see [box] in the file.", err=True)
        return ()
    for fault in found.faults:
        click.echo(f"The box: {fault}", err=True)
    return found.findings


@click.command()
@click.argument("file", type=PROJECT_FILE)
@click.option("-o", "--output", type=PROJECT_FILE, required=True, help="The PDF to write.")
@explained
def dossier(file: Path, output: Path) -> None:
    """Write the dossier an inspector can check."""
    from pedalwright.cli.open import worked
    from pedalwright.documents.dossier import dossier_pdf
    from pedalwright.documents.pictures import pictures

    about, design, assessment, steps = worked(file)
    output.parent.mkdir(parents=True, exist_ok=True)
    drawn = pictures(design, assessment, about.units)
    output.write_bytes(dossier_pdf(about, assessment, steps, drawn))
    click.echo(f"Wrote {output}")
