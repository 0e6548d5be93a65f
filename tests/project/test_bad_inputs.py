"""What builders get wrong in a file, and the sentence each of them reads.

A slip is typed into a car that reads well; the fault must name its line and its entry, and offer
what was meant where that can be known.
"""

from pathlib import Path
from typing import NamedTuple

import pytest

from pedalwright.project import FileFault, ProjectError, changed, read

CAR = Path(__file__).with_name("car.toml").read_text(encoding="utf-8")


def with_slip(old: str, new: str) -> str:
    assert old in CAR, f"{old} is not in the car"
    return CAR.replace(old, new, 1)


def faults(text: str) -> tuple[FileFault, ...]:
    with pytest.raises(ProjectError) as caught:
        read(text)
    return caught.value.in_file


class Slip(NamedTuple):
    old: str
    new: str
    key: str
    #: Part of the sentence.
    says: str
    offers: tuple[str, ...] = ()


PIN = 'pin_radius = "54.5 ±0.5 mm"'
BORE = 'bore = "13/16 in"'
HIP = 'hip = ["1000 mm", "352 mm", "120 mm"]'
FLOOR = 'plane = { normal = "up", through = ["300 mm", "352 mm", "5 mm"] }'

SLIPS = {
    "ratio in a box for mm": Slip(
        PIN, 'pin_radius = "5:1"', "brake.pedal.pin_radius", "ratio of 5", ("54.4 mm",)
    ),
    "one thousand, or one point": Slip(BORE, 'bore = "1,905"', "brake.masters.bore", "in two ways"),
    "inches without the word": Slip(
        BORE, "bore = 0.75", "brake.masters.bore", "0.75 in = 19.05 mm would fit", ("0.75 in",)
    ),
    "metres without the word": Slip(
        'wheelbase = "2320 mm"',
        'wheelbase = "2.32"',
        "car.wheelbase",
        "2.32 m = 2320 mm would fit",
        ("2.32 m",),
    ),
    "which gauge": Slip(
        'thickness = "8 mm"',
        'thickness = "16 ga"',
        "brake.carrier.arm.thickness",
        "which gauge is meant",
        ("16 SWG", "16 MSG", "16 AWG"),
    ),
    "driver ahead of the pedals": Slip(
        HIP,
        'hip = ["-1000 mm", "352 mm", "120 mm"]',
        "drivers.D1.hip.x",
        "x grows rearward",
        ("1000 mm",),
    ),
    "driver on the other side": Slip(
        HIP,
        'hip = ["1000 mm", "-352 mm", "120 mm"]',
        "drivers.D1.hip.y",
        "other side of the car",
        ("352 mm",),
    ),
    "pin beyond the pad": Slip(
        PIN, 'pin_radius = "300 mm"', "brake.pedal.pin_radius", "nearer to the pivot than the pad"
    ),
    "far too large": Slip(BORE, "bore = 1e9", "brake.masters.bore", "from 8 mm to 60 mm"),
    "negative": Slip(BORE, 'bore = "-20 mm"', "brake.masters.bore", "20 mm would", ("20 mm",)),
    "zero bore": Slip(BORE, 'bore = "0 mm"', "brake.masters.bore", "from 8 mm to 60 mm"),
    "kilograms for newtons": Slip(
        'release_load = "1450 N"',
        'release_load = "145 kg"',
        "clutch.release.release_load",
        "a force is wanted",
        ("145 kgf",),
    ),
    "a bare number that is far too weak": Slip(
        'release_load = "1450 N"',
        'release_load = "145"',
        "clutch.release.release_load",
        "145 kgf = 1422 N",
        ("145 kgf", "145 lbf"),
    ),
    "psi as bar": Slip(
        "[brake.carrier.pivot]",
        '[brake.carrier.pivot]\nbush_pressure = "900 bar"',
        "brake.carrier.pivot.bush_pressure",
        "900 psi = 6.205 MPa would fit",
        ("900 psi",),
    ),
    "more than the whole car on one axle": Slip(
        'front_share = "50 %"', 'front_share = "120 %"', "car.front_share", "from 0.2 to 0.8"
    ),
    "per cent without the sign": Slip(
        'front_share = "50 %"', "front_share = 50", "car.front_share", "50 % = 0.5", ("50 %",)
    ),
    "wrong kind of quantity": Slip(
        PIN, 'pin_radius = "54.5 N"', "brake.pedal.pin_radius", "a length is wanted"
    ),
    "yes": Slip(BORE, "bore = true", "brake.masters.bore", "A number with its unit"),
    "a date": Slip(BORE, "bore = 2024-05-18", "brake.masters.bore", "A number with its unit"),
    "a list": Slip(BORE, 'bore = ["1", "2"]', "brake.masters.bore", "A number with its unit"),
    "misspelt key": Slip(
        BORE, 'boer = "13/16 in"', "brake.masters.boer", "bore, stroke", ("bore",)
    ),
    "key of another kind": Slip(
        'kind = "tandem"', 'kind = "tandem"\nbar.spacing = "64 mm"', "brake.masters.bar", "stroke"
    ),
    "misspelt kind": Slip(
        'kind = "tandem"',
        'kind = "tandm"',
        "brake.masters.kind",
        'kind = "tandem" or "twin"',
        ("tandem",),
    ),
    "no kind": Slip(
        'kind = "tandem"', "", "brake.masters.kind", "This table needs kind", ("tandem",)
    ),
    "misspelt word": Slip(
        'hinge = "hanging"',
        'hinge = "haging"',
        "brake.pedal.hinge",
        "“hanging” or “floor”",
        ("hanging",),
    ),
    "misspelt direction": Slip(
        'direction = "forward"',
        'direction = "foreward"',
        "brake.rod.direction",
        "forward, rearward, left, right, up, down",
        ("forward",),
    ),
    "direction turned to itself": Slip(
        'direction = "forward"',
        'direction = "forward 5 deg rearward"',
        "brake.rod.direction",
        "cannot be turned",
    ),
    "direction of noughts": Slip(
        'direction = "forward"', "direction = [0, 0, 0]", "brake.rod.direction", "point nowhere"
    ),
    "point with two coordinates": Slip(
        HIP, 'hip = ["1000 mm", "352 mm"]', "drivers.D1.hip", "three lengths"
    ),
    "one number for a point": Slip(HIP, 'hip = "1000 mm"', "drivers.D1.hip", "three lengths"),
    "bad coordinate": Slip(
        HIP,
        'hip = ["1000 mm", "35 2 mm", "120 mm"]',
        "drivers.D1.hip.y",
        "more than one number",
        ("35.2 mm", "352 mm"),
    ),
    "point and offset": Slip(
        FLOOR,
        'plane = { normal = "up", offset = "5 mm", through = ["0", "0", "5 mm"] }',
        "survey.faces.floor.plane.offset",
        "not both",
    ),
    "unknown tag": Slip(
        'cg_height = { value = "470 mm", tag = "assumed"',
        'cg_height = { value = "470 mm", tag = "asumed"',
        "car.cg_height",
        "measured, assumed, default",
        ("assumed",),
    ),
    "unknown key in an entry": Slip(
        'cg_height = { value = "470 mm", tag',
        'cg_height = { val = "470 mm", tag',
        "car.cg_height",
        "value, tag, note, plus_minus",
        ("value",),
    ),
    "± twice": Slip(
        PIN,
        'pin_radius = { value = "54.5 ±0.5 mm", plus_minus = "1 mm" }',
        "brake.pedal.pin_radius",
        "in the value already",
    ),
    "± of another kind": Slip(
        PIN,
        'pin_radius = { value = "54.5 mm", plus_minus = "1 N" }',
        "brake.pedal.pin_radius",
        "is a force; a length is wanted",
    ),
    "low friction above the usual": Slip(
        'friction_low = { value = "0.30"',
        'friction_low = { value = "0.40"',
        "brake.front.friction_low",
        "do not fall",
    ),
    "tube wider inside": Slip(
        'tube_inside = "16 mm"', 'tube_inside = "24 mm"', "brake.carrier.pivot.tube_inside", "22 mm"
    ),
    "leg longer than its person": Slip(
        'person.inside_leg = "760 mm"',
        'person.inside_leg = "1201 mm"',
        "drivers.D1.person.inside_leg",
        "from 400 mm to 1200 mm",
    ),
    "table where a number is": Slip(
        'plate = "0 mm"', 'plate.under = "0 mm"', "heel_rest.plate", "value, tag, note"
    ),
    "number where a table is": Slip(
        "[clutch.master]", "[[clutch.master]]", "clutch.master", "This is a table"
    ),
}


@pytest.mark.parametrize("slip", SLIPS.values(), ids=SLIPS.keys())
def test_a_slip_is_told_on_its_line(slip: Slip) -> None:
    (fault,) = faults(with_slip(slip.old, slip.new))
    assert fault.key == slip.key
    assert slip.says in fault.accepts
    assert fault.offers == slip.offers
    first = CAR[: CAR.index(slip.old)].count("\n") + 1
    assert fault.line in {first, first + slip.new.count("\n"), first - (not slip.new)}
    assert f"line {fault.line}" in fault.where


@pytest.mark.parametrize("slip", SLIPS.values(), ids=SLIPS.keys())
def test_what_is_offered_for_a_value_is_accepted(slip: Slip) -> None:
    car = read(CAR)
    values = slip.offers if slip.key in {*car.provenance, *car.words} else ()
    for offer in values:
        if slip.says not in {"measured, assumed, default", "value, tag, note, plus_minus"}:
            changed(car, {slip.key: offer})


def test_every_fault_is_told_at_once_in_the_order_of_the_lines() -> None:
    text = CAR
    for slip in (SLIPS["misspelt key"], SLIPS["metres without the word"], SLIPS["misspelt word"]):
        text = text.replace(slip.old, slip.new, 1)
    text = text.replace('mass = "980 kg"', "mass = 980 kg", 1)
    found = faults(text)
    assert [fault.key for fault in found] == [
        "",
        "car.wheelbase",
        "brake.pedal.hinge",
        "brake.masters.boer",
    ]
    assert [fault.line for fault in found] == sorted(fault.line or 0 for fault in found)
    with pytest.raises(ProjectError, match=r"(?s)mass = 980 kg.*wheelbase.*hinge.*boer"):
        read(text)


def test_a_pedal_or_a_column_on_the_other_side_is_offered_mirrored() -> None:
    text = with_slip('pivot = ["120 mm", "475 mm"', 'pivot = ["120 mm", "-475 mm"')
    text = text.replace('start = ["0 mm", "352 mm"', 'start = ["0 mm", "-352 mm"', 1)
    assert {f.key: f.offers for f in faults(text)} == {
        "throttle.pedal.pivot.y": ("475 mm",),
        "survey.lines.column.start.y": ("352 mm",),
    }


def test_pedals_in_reverse_order_are_swapped() -> None:
    text = with_slip('pivot = ["120 mm", "475 mm"', 'pivot = ["120 mm", "262 mm"')
    at = text.index("[clutch.pedal]")
    text = text[:at] + text[at:].replace('"262 mm"', '"475 mm"', 1)
    (fault,) = faults(text)
    assert (fault.key, fault.offers) == ("clutch.pedal.pivot.y", ("262 mm",))
    assert "swap" in fault.accepts


def test_a_car_with_the_driver_on_the_left_has_its_pedals_in_the_same_order() -> None:
    text = CAR.replace('"352 mm"', '"-352 mm"').replace('pad_offset = "-15 mm"', 'pad_offset = "0"')
    for y, mirrored in (("385", "-334"), ("262", "-442"), ("475", "-229")):
        text = text.replace(f'"{y} mm", "350 mm"', f'"{mirrored} mm", "350 mm"', 1)
    for wall, other in (
        ('"left", through = ["300 mm", "545 mm"', '"right", through = ["300 mm", "-545 mm"'),
        ('"right 2.86 deg forward", through = ["0 mm", "165', '"left", through = ["0 mm", "-165'),
    ):
        text = text.replace(wall, other, 1)
    assert read(text).design.drivers[0].hip.y == -352.0


def test_faults_as_data_keep_line_and_key() -> None:
    with pytest.raises(ProjectError) as caught:
        read(with_slip(BORE, "bore = 0.75"))
    (data,) = caught.value.as_data()
    assert set(data) == {"where", "read", "accepts", "offers", "line", "key"}
    assert data["read"] == "0.75"
    assert data["key"] == "brake.masters.bore"


def test_a_long_text_with_hidden_signs_is_told_on_one_short_line() -> None:
    (fault,) = faults(with_slip(BORE, f'bore = "13\\u0007 mm{" x" * 500}"'))
    assert fault.read.isprintable()
    assert len(fault.read) == 80


def test_a_slip_in_a_row_is_told_on_the_line_of_that_row() -> None:
    at = CAR.rindex('driven_radius = "38 mm"')
    text = CAR[:at] + CAR[at:].replace("38 mm", "38 N", 1)
    (fault,) = faults(text)
    assert fault.key == "throttle.opening.stages.2.driven_radius"
    assert fault.line == CAR[:at].count("\n") + 1
