"""What a tape may be out by its class and length.

Strength: second-hand. Directive 2014/32/EU, annex X (material measures of length), as three
public tables give it for 2, 3, 5, 8 and 10 m: I 0.1 + 0.1 L, II 0.3 + 0.2 L, III 0.6 + 0.4 L mm
with L in whole metres, rounded up.
"""

import pytest

from pedalwright.survey.readings import tape_error


@pytest.mark.parametrize(
    ("tape", "length", "most"),
    [
        ("I", 3000.0, 0.4),
        ("II", 2000.0, 0.7),
        ("II", 8000.0, 1.9),
        ("III", 5000.0, 2.6),
        ("I", 10_000.0, 1.1),
        ("II", 5000.0, 1.3),
        ("III", 2000.0, 1.4),
        ("II", 500.0, 0.5),
        ("II", 1001.0, 0.7),
    ],
)
def test_permitted_error(tape: str, length: float, most: float) -> None:
    assert tape_error(tape, length) == pytest.approx(most, abs=1e-9)
