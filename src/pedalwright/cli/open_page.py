"""`open`: the page on which the builder works."""

from pathlib import Path

import click

from pedalwright.cli.faults import explained


@click.command("open")
@click.argument("file", required=False, type=click.Path(path_type=Path))
@click.option("--lan", is_flag=True, help="Let phones on your network in, by a link with a token.")
@click.option("--port", type=click.IntRange(1, 65535), help="Listen on this port.")
@click.option("--no-browser", is_flag=True, help="Only print the link.")
@explained
def open_page(file: Path | None, lan: bool, port: int | None, no_browser: bool) -> None:
    """Open a car on a page: drag, type, and see at once what it does.

    FILE is a project file, or a folder of them; left out, it is the folder you are in. Nothing
    outside its folder is read or written, and nothing is fetched from anywhere.
    """
    from pedalwright.app import serve
    from pedalwright.project import read

    place = file or Path()
    name = "" if place.is_dir() else place.name
    if name:
        read(place)
    serve(
        place if not name else place.resolve().parent,
        name,
        say=click.echo,
        lan=lan,
        port=port,
        browser=not no_browser,
    )
