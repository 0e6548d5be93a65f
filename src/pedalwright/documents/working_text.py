"""The working as plain text: every formula that ran, with its numbers, room by room."""

from collections.abc import Callable, Iterator, Sequence

from pedalwright.core.figures import unit_text
from pedalwright.core.notation import Plain
from pedalwright.core.typeset import plain, substituted
from pedalwright.core.working import Formula, Step
from pedalwright.documents.outside import Units
from pedalwright.documents.verdict import ROOMS

#: How many uses of the same numbers are named.
MOST = 4


def working_text(steps: Sequence[Step], units: Units) -> str:
    """Each formula once, under it every run with its numbers and what it was for."""
    return "\n".join(_lines(steps, units)) + "\n"


def by_formula(steps: Sequence[Step]) -> dict[str, dict[str, list[Step]]]:
    """Steps by room, in the order of the job, and by formula, in the order of running."""
    rooms: dict[str, dict[str, list[Step]]] = {room: {} for room in ROOMS}
    for step in steps:
        rooms[step.formula.room].setdefault(step.formula.name, []).append(step)
    return {room: formulas for room, formulas in rooms.items() if formulas}


def units_text(formula: Formula[...]) -> str:
    """The unit of each symbol: `F_pedal in N, i a plain number, A in mm²`."""
    return ", ".join(
        f"{Plain().symbol(name)} {f'in {unit_text(unit)}' if unit != '1' else 'a plain number'}"
        for name, unit in formula.units.items()
        if name != "return"
    )


def merged(runs: Sequence[Step], write: Callable[[Step], str]) -> list[tuple[str, str]]:
    """Runs as (numbers, what for); runs with the same numbers are one, with all they were for."""
    subjects: dict[str, dict[str, None]] = {}
    for step in runs:
        subjects.setdefault(write(step), {})[step.subject] = None
    return [(numbers, _listed(list(names))) for numbers, names in subjects.items()]


def _listed(names: Sequence[str]) -> str:
    """What the same numbers were for, the first few by name."""
    rest = len(names) - MOST
    return "; ".join(names[:MOST]) + (f"; and {rest} more" if rest > 0 else "")


def _lines(steps: Sequence[Step], units: Units) -> Iterator[str]:
    def numbers(step: Step) -> str:
        beside = units.beside(step.value, step.formula.units["return"])
        return substituted(step) + (f" ({beside})" if beside else "")

    for room, formulas in by_formula(steps).items():
        yield from ("", room.upper())
        for runs in formulas.values():
            formula = runs[0].formula
            yield from ("", f"  {plain(formula)}")
            yield f"      {formula.meaning}"
            yield f"      {units_text(formula)}"
            yield f"      {formula.name}; source: {formula.source}"
            for written, subject in merged(runs, numbers):
                yield f"        {written}" + (f"    [{units.prose(subject)}]" if subject else "")
