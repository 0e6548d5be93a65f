"""The order of work in words: all of it, or only the next step."""

from pedalwright.documents.making_table import Column, Table
from pedalwright.making.planning import Order


def order_table(plan: Order) -> Table:
    """Every step, for one pair of hands."""
    return Table(
        key="order-of-work",
        title="Order of work",
        says=f"{plan.alone:.1f} h with one pair of hands, {plan.hours:.1f} h at best with more. "
        "STOP: sit in it and measure before going on. ONE WAY: cannot be undone without loss.",
        columns=(
            Column(key="step", heading="no."),
            Column(key="job", heading="job"),
            Column(key="does", heading="what is done"),
            Column(key="kind", heading=""),
            Column(key="hours", heading="time", unit="h"),
            Column(key="slack", heading="can wait", unit="h"),
            Column(key="undo", heading="to undo it"),
        ),
        rows=tuple(
            (
                number,
                one.job.name,
                one.job.does,
                "STOP" if one.job.gate else "ONE WAY" if one.job.one_way else "",
                one.job.hours,
                one.slack,
                one.job.undo or "–",
            )
            for number, one in enumerate(plan.jobs, 1)
        ),
    )


def next_step_words(plan: Order, done: frozenset[str]) -> str:
    """Only the next step, for a phone at the bench."""
    one = plan.next_step(done)
    if one is None:
        return "All is done."
    stop = (
        "STOP and try: " if one.job.gate else "ONE WAY, measure twice: " if one.job.one_way else ""
    )
    undo = f" To undo it: {one.job.undo}." if one.job.undo else ""
    return f"{stop}{one.job.does}.{undo}"
