"""Which bore? The tandem sizes of Larkfield's improved brake in one batch.

Many designs are one design whose numbers are arrays: `stack` the candidates, `assess` once.

    python examples/which_bore.py
"""

from dataclasses import replace

import click
import numpy as np

from pedalwright.assess import assess
from pedalwright.core.batch import stack
from pedalwright.hydraulics import Tandem
from pedalwright.project import car_text, read

#: Standard bores from 5/8 to 1 inch, mm.
BORES = (15.88, 17.78, 19.05, 20.64, 22.22, 23.81, 25.40)


def main() -> dict[float, tuple[float, float]]:
    """Effort for 6.43 m/s2 and pad travel at the hard stop, by bore."""
    design = read(car_text("larkfield-improved")).design
    candidates = [
        replace(design, brake=replace(design.brake, masters=Tandem(bore=bore, stroke=36.0)))
        for bore in BORES
    ]
    result = assess(stack(candidates)).brake.result
    effort, travel = np.asarray(result.effort_6_43), np.asarray(result.pad_travel_hard_stop)
    return {bore: (float(effort[i]), float(travel[i])) for i, bore in enumerate(BORES)}


if __name__ == "__main__":
    for bore, (effort, travel) in main().items():
        click.echo(
            f"{bore:6.2f} mm   {effort:4.0f} N for 6.43 m/s2   {travel:4.0f} mm of pad travel"
        )
