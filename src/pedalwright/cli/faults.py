"""Bad input becomes clear sentences and exit code 2, with or without --json."""

import json
import sys
from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

import click

P = ParamSpec("P")
T = TypeVar("T")


def explained(command: Callable[P, T]) -> Callable[P, T]:
    """Let a command report every fault of its input at once instead of failing with a trace."""

    @wraps(command)
    def run(*args: P.args, **kwargs: P.kwargs) -> T:
        from pedalwright.core.faults import InputError

        try:
            return command(*args, **kwargs)
        except InputError as error:
            if kwargs.get("as_data"):
                click.echo(json.dumps({"errors": error.as_data()}, indent=1, ensure_ascii=False))
            else:
                click.echo(str(error), err=True)
            sys.exit(2)

    return run
