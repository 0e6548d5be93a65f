"""`assess` and `dossier`: what a project file comes to."""

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from pedalwright.cli.faults import explained

if TYPE_CHECKING:
    from collections.abc import Iterator

    from pedalwright.assess import Assessment
    from pedalwright.assess.full import FullTier
    from pedalwright.design import Design
    from pedalwright.documents.outside import Units

PROJECT_FILE = click.Path(dir_okay=False, path_type=Path)
FOLDER = click.Path(file_okay=False, path_type=Path)


@click.command()
@click.argument("file", type=PROJECT_FILE)
@click.option("--json", "as_data", is_flag=True, help="Print results and findings as JSON.")
@click.option("--full", is_flag=True, help="The box on the bench in full: stress, fasteners, webs.")
@click.option(
    "-o", "--output", type=FOLDER, help="With --full: where to write drawings of how the box moves."
)
@click.pass_context
@explained
def assess(
    context: click.Context, file: Path, as_data: bool, full: bool, output: Path | None
) -> None:
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
    tier = _in_full(project.design, assessment) if full else None
    findings = (*assessment.findings, *(tier.findings if tier else ()))
    if output is not None:
        for path in _drawn(output, project.design, tier, of.units):
            click.echo(f"Wrote {path}", err=True)
    worth = worth_measuring(project.design, doubts(project))
    if as_data:
        from pedalwright.assess import headlines

        report = as_json(of, headlines(assessment), findings, worth)
        click.echo(json.dumps(report, indent=1, ensure_ascii=False, allow_nan=False))
    else:
        click.echo(findings_text(of, findings, worth_lines(worth)), nl=False)
    context.exit(0 if verdict(findings).ok else 1)


def _drawn(
    folder: Path, design: "Design", tier: "FullTier | None", units: "Units"
) -> "Iterator[Path]":
    """How the box moves and works, a drawing for each pedal and load that is shown."""
    from pedalwright.documents.pictures.deformed import deformed_pictures
    from pedalwright.drawing import svg

    folder.mkdir(parents=True, exist_ok=True)
    for drawing in deformed_pictures(design, tier, units):
        path = folder / f"{drawing.name}.svg"
        path.write_bytes(svg(drawing, physical=True))
        yield path


def _in_full(design: "Design", assessment: "Assessment") -> "FullTier | None":
    """What the full tier finds, told as it goes; Ctrl-C leaves it and changes nothing."""
    from pedalwright.assess.full import assess_full

    def told(what: str, share: float) -> None:
        click.echo(f"  {share:4.0%}  {what}", err=True)

    try:
        found = assess_full(design, assessment, told)
    except KeyboardInterrupt:
        click.echo("Stopped. The file is as it was; what follows is without --full.", err=True)
        return None
    if found is None:
        click.echo("No box is described that carries a pedal: see [box] in the file.", err=True)
        return None
    for fault in found.faults:
        click.echo(f"The box: {fault}", err=True)
    return found


@click.command()
@click.argument("file", type=PROJECT_FILE)
@click.option("-o", "--output", type=PROJECT_FILE, required=True, help="The PDF to write.")
@click.option("--full", is_flag=True, help="With the box on the bench in full.")
@explained
def dossier(file: Path, output: Path, full: bool) -> None:
    """Write the dossier an inspector can check."""
    from dataclasses import replace

    from pedalwright.cli.open import worked
    from pedalwright.documents.dossier import dossier_pdf
    from pedalwright.documents.pictures import pictures

    about, design, assessment, steps = worked(file)
    output.parent.mkdir(parents=True, exist_ok=True)
    tier = _in_full(design, assessment) if full else None
    if tier is not None:
        assessment = replace(assessment, findings=(*assessment.findings, *tier.findings))
    drawn = pictures(design, assessment, about.units, tier)
    output.write_bytes(dossier_pdf(about, assessment, steps, drawn))
    click.echo(f"Wrote {output}")
