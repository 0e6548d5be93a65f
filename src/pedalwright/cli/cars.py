"""`demo` and `new`: the invented cars that ship with the package."""

from pathlib import Path

import click

from pedalwright.cli.faults import explained


@click.command()
@click.argument("car", default="larkfield")
@click.option(
    "-o",
    "--output",
    type=click.Path(file_okay=False, path_type=Path),
    default=Path("out"),
    show_default=True,
    help="The folder to write into.",
)
@explained
def demo(car: str, output: Path) -> None:
    """Run the whole job on an invented car."""
    from pedalwright.cli.open import worked
    from pedalwright.documents.bundle import write_everything
    from pedalwright.documents.index_page import Attempt, index_page
    from pedalwright.documents.pictures import full_size, pictures
    from pedalwright.documents.story import story_text
    from pedalwright.documents.text import findings_text
    from pedalwright.project import attempts, new_file

    output.mkdir(parents=True, exist_ok=True)
    shown: list[Attempt] = []
    for name in attempts(car):
        file = output / f"{name}.toml"
        file.unlink(missing_ok=True)
        new_file(file, name)
        about, design, assessment, steps = worked(file)
        click.echo(findings_text(about, assessment.findings))
        drawn = pictures(design, assessment, about.units)
        levers = full_size(design, assessment, about.units)
        for made in write_everything(output / name, about, assessment, steps, drawn, levers):
            click.echo(f"  wrote {made}")
        click.echo()
        shown.append(Attempt(about, assessment.findings, drawn, name))
    story = [(attempt.folder, attempt.findings) for attempt in shown]
    click.echo(story_text(story, shown[-1].about.units))
    page = output / "index.html"
    page.write_bytes(index_page(shown))
    click.echo(f"Everything on one page: open {page} in a browser (`make open` does it).")


@click.command()
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.option("--like", default="larkfield-improved", show_default=True, help="The car to copy.")
@explained
def new(file: Path, like: str) -> None:
    """Write a new project file, like one of the invented cars.

    An existing file is never overwritten.
    """
    from pedalwright.project import new_file

    new_file(file, like)
    click.echo(f"Wrote {file}: change the numbers to yours, then `pedalwright assess {file}`.")
