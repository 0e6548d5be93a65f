"""Every entry of every invented car is explained for a form."""

import pytest

from pedalwright.project import car_text, cars, read
from pedalwright.project.explain import explained


@pytest.mark.parametrize("car", cars())
def test_every_entry_has_a_name_a_table_and_what_it_takes(car: str) -> None:
    project = read(car_text(car))
    for path in (*project.provenance, *project.words):
        told = explained(path)
        assert told.label, path
        assert told.table, path
        assert told.accepts, path
        words = f"{told.table} {told.label}".replace("as a whole ", "")
        assert words == path.replace(".", " ").replace("_", " ").replace('"', ""), path


@pytest.mark.parametrize(
    ("path", "table", "label", "says"),
    [
        ("brake.pedal.pin_radius", "brake pedal", "pin radius", "Pivot to rod pin."),
        ("brake.pedal.pivot.x", "brake pedal", "pivot x", "Along the car, rearward"),
        ("car.grip", "car", "grip", "Friction of tyres on a dry road."),
        ("slide", "as a whole", "slide", "How far the pedal box stands"),
        ('drivers."D 1".hip.z', "drivers D 1", "hip z", "Middle of the two hip joints."),
    ],
)
def test_it_says_what_the_code_says_of_it(path: str, table: str, label: str, says: str) -> None:
    told = explained(path)
    assert (told.table, told.label) == (table, label)
    assert says in told.says


def test_a_choice_has_its_words_and_a_default_its_reason() -> None:
    assert explained("brake.pedal.hinge").words == ("hanging", "floor")
    assert set(explained("brake.front.kind").words) >= {"disc", "drum"}
    assert explained("car.grip").default.startswith("0.8: road tyres")
    assert explained("car.mass").default == ""
