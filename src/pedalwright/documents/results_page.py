"""docs/results.md, made from the headlines, so that each is defined once."""

import re
from collections.abc import Sequence

from pedalwright.assess import Headline
from pedalwright.documents.outside import outside

HEAD = """# Results

`pedalwright assess FILE --json` prints these under `results`, room by room: the name here is
`room.name`, and each has a `value` and a `unit`. A number that could not be worked out is null.
This page is made from `assess/headlines/`; `make fix` writes it anew.

Definitions all of them share: a push is square to the arm, along the pad's path. The hard stop is
where dead stroke, lift and hoses are taken up, with the structure rigid. Decelerations have no
limit of grip. Low, usual and high friction put the linings of both axles at the same end; a drum
given with two factors has the lower one as its usual. A lost circuit's piston runs to the end of
its stroke; a balance bar still shares the push. Full travel is the hard stop for the brake, and for
the clutch the smaller of what its release needs and what the room allows. Legs are seen from the
side, the heel stays on its rest and slides with the pad, or, where the pad is higher than the sole
is long, it lifts with the ankle held at 90 degrees; under the accelerator it stays where it is.

The rest of the report: `findings` (code, about, asks, value, bound, unit, sense, margin, ok,
judged, weight, source, room), `missing`, `assumed` and `default` (paths in the project file),
`worth_measuring` (the three numbers most worth measuring again). Exit
code 0: all that must be met is met; 1: some is not; 2: the file could not be read, and the report
is `{"errors": [{"where", "read", "accepts", "offers"}]}`.

| result | unit | what it is |
|---|---|---|
"""


def results_page(headlines: Sequence[Headline]) -> str:
    """The page for a car's headlines; drivers are written `<id>`, pedals and positions likewise."""
    rows: dict[str, None] = {}
    for line in headlines:
        name = re.sub(
            r"^driver\.[^.]+(\.(clutch|brake|throttle))?(\.(rest|full))?",
            lambda m: f"driver.<id>{'.<pedal>' if m[1] else ''}{'.<rest or full>' if m[3] else ''}",
            line.name,
        )
        _, unit = outside(0.0, line.unit)
        rows[f"| `{name}` | {unit} | {line.says} |\n"] = None
    return HEAD + "".join(rows)
