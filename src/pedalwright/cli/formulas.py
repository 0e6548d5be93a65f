"""`formula`: look up any formula of the house, or work it out with your own numbers."""

import json

import click

from pedalwright.cli.faults import explained


@click.command()
@click.argument("name", required=False)
@click.argument("values", nargs=-1)
@click.option("--json", "as_data", is_flag=True, help="Print as JSON.")
@explained
def formula(name: str | None, values: tuple[str, ...], as_data: bool) -> None:
    """List, show or work out any formula of the house.

    \b
    pedalwright formula
    pedalwright formula hydraulics.bore_area
    pedalwright formula hydraulics.bore_area d="13/16 in"
    """  # noqa: D301 (click reads \b as "keep these lines")
    from pedalwright.documents import register

    if name is None:
        listed = register.listed()
        click.echo(json.dumps(listed, indent=1) if as_data else register.listed_text())
        return
    if not values:
        card = register.card(name)
        click.echo(json.dumps(card, indent=1, ensure_ascii=False) if as_data else card["text"])
        return
    answer = register.work_out(name, dict(_pair(text) for text in values))
    click.echo(json.dumps(answer, indent=1, ensure_ascii=False) if as_data else answer["text"])


def _pair(text: str) -> tuple[str, str]:
    key, equals, value = text.partition("=")
    if not equals:
        raise click.UsageError(f'read "{text}": write KEY=VALUE, for example d="13/16 in"')
    return key.strip(), value.strip()
