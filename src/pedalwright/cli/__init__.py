"""The commands: thin, no arithmetic; heavy imports wait inside the command that needs them."""

import click

from pedalwright import __version__

__all__ = ["main"]


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="pedalwright")
def main() -> None:
    """Plan, check and document the brake, clutch and throttle pedals of a one-off car."""
