"""Nothing is silently misread: a text is refused, or it means what a second reader says.

The second reader is made of whole-text patterns and of its own table of sizes; it shares no
line with ours. Where it knows no single meaning, our reader must refuse.
"""

import re
from math import isclose, isfinite, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.core.quantity import QuantityError, parse

PLAIN = str.maketrans("″“”′‘’−–⁄×·\u00a0\u2009\t", "\"\"\"'''--/**   ")
VULGAR_TEXTS = ("1/2", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8", "1/3", "2/3")
VULGAR = dict(zip("½¼¾⅛⅜⅝⅞⅓⅔", VULGAR_TEXTS, strict=True))

DEC = r"(?:\d+[.,]?\d*|[.,]\d+)(?:e[-+]?\d+)?"
GROUPED = r"[1-9]\d{0,2}(?: \d{3})+(?:[.,]\d+)?"
FRAC = r"(?:(?:\d+(?: +|-))?\d+ */ *\d+)"
NUM = rf"(?:{FRAC}|{GROUPED}|{DEC})"
MARK = r"(?:\"|''|ins?\b\.?|inch(?:es)?\b\.?)"
FOOT = r"(?:'(?!')|(?:ft|foot|feet)\b\.?)"

LENGTHS = {"mm": 1.0, "cm": 10.0, "m": 1e3, "km": 1e6, "in": 25.4, "ft": 304.8, "thou": 0.0254}
LENGTHS |= {"um": 1e-3, "µm": 1e-3, "ins": 25.4, "inch": 25.4, "inches": 25.4, '"': 25.4}
LENGTHS |= {"''": 25.4, "'": 304.8, "feet": 304.8, "foot": 304.8}
FRACTIONAL = {"in", "ins", "inch", "inches", '"', "''", "ft", "'", "feet", "foot", "thou"}
LBF, KGF = 4.4482216152605, 9.80665
FORCES = {"n": 1.0, "kn": 1e3, "dan": 10.0, "lbf": LBF, "kgf": KGF, "kp": KGF}
WEIGHTS = {**FORCES, "lb": LBF, "lbs": LBF, "kg": KGF, "kgs": KGF}
ANGLES = {"rad": 1.0, "mrad": 1e-3, "deg": pi / 180, "°": pi / 180, "degs": pi / 180}
SHARES = {"%": 0.01, "pct": 0.01, "percent": 0.01}
STEPS = [24] * 3 + [20] * 3 + [16] * 4 + [12] * 4 + [8] * 5 + [4] * 4 + [2] * 3 + [1.6] * 2
SWG = {n: (324 - sum([*STEPS, 1.2, 1.2][:n])) / 1000 for n in range(31)}


def number(text: str) -> float | None:
    """A plain number, group or fraction; None where it is doubtful."""
    text = text.strip()
    if "/" in text:
        parts = re.fullmatch(r"(?:(\d+)(?: +|-))?(\d+) */ *(\d+)", text)
        assert parts is not None
        whole, above, below = int(parts[1] or 0), int(parts[2]), int(parts[3])
        return whole + above / below if 0 < above < below else None
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}(e.*)?", text) or "," in text.rstrip()[-1:]:
        return None
    return float(text.replace(" ", "").replace(",", "."))


def unit_size(text: str, kind: str) -> float | None:
    """Size of a unit in the unit wanted, by pattern."""
    text = text.strip().rstrip(".").strip() if text.strip().endswith(".") else text.strip()
    if kind == "mm":
        return LENGTHS.get(text)
    if kind == "N":
        return FORCES.get(text)
    if kind == "rad":
        return ANGLES.get(text)
    if kind == "1":
        return SHARES.get(text)
    assert kind == "N*mm"
    for force, size in sorted(WEIGHTS.items(), key=lambda item: -len(item[0])):
        for length, long in LENGTHS.items():
            join = r"(?: *\* *|\.? +|\.|-)"
            if re.fullmatch(rf"{force}{join}{length}|{length}{join}{force}", text):
                return size * long
            if text in {force + length, length + force}:
                return size * long
    return None


def one(text: str, kind: str, other_unit: str | None) -> tuple[float, str] | None:
    """One amount in the unit wanted, and the unit it was written with."""
    text = text.strip()
    if found := re.fullmatch(rf"(\d+) *{FOOT} *-? *({NUM}) *({MARK})?", text):
        inches = number(found[2])
        bare_fraction = "/" in found[2] and not found[3] and not re.search(r"\d[ -]", found[2])
        apart = re.fullmatch(r"\d+ *(?:ft|foot|feet)\d.*", text)
        if kind == "mm" and inches is not None and inches < 12 and not bare_fraction and not apart:
            return (12 * int(found[1]) + inches) * 25.4, "in"
        return None
    if found := re.fullmatch(
        rf"(\d+) *(?:°|d|degs?|degrees?) *({DEC})(?:'|mins?|minutes|arcmin)"
        rf"(?: *({DEC})(?:\"|''|secs?|seconds|arcsec))?",
        re.sub(r" +(?=['\"ma s])", "", text),
    ):
        minutes, seconds = number(found[2]), number(found[3] or "0")
        if kind == "rad" and None not in {minutes, seconds} and minutes < 60 and seconds < 60:
            return (int(found[1]) + minutes / 60 + seconds / 3600) * pi / 180, "deg min"
        return None
    if found := re.fullmatch(rf"({NUM}) *(?::|to) *1(?:[.,]0*)?", text):
        value = number(found[1])
        return (value, "1") if kind == "1" and value is not None else None
    if found := re.fullmatch(r"(\d+)\.? *(swg|s\.w\.g|awg|b&s)\.?", text):
        british = found[2][0] == "s"
        awg = 0.46 / 92 ** ((int(found[1]) + 3) / 39) if int(found[1]) <= 30 else None
        thick = SWG.get(int(found[1])) if british else awg
        return (thick * 25.4, "swg") if kind == "mm" and thick else None
    found = re.fullmatch(rf"({NUM})(.*)", text)
    if found is None or (value := number(found[1])) is None:
        return None
    fraction, written = "/" in found[1], found[2].strip()
    unit = written or other_unit or ""
    if not unit:
        inch = kind == "mm" and fraction
        if fraction and kind in {"N", "N*mm"}:
            return None
        return (value * 25.4, "in") if inch else (value, "")
    plain_unit = unit.rstrip(". ")
    size = 1.0 if unit == "1" else unit_size(unit, kind)
    if size is None or (fraction and kind == "mm" and plain_unit not in FRACTIONAL):
        return None
    return value * size, plain_unit


def second_reader(text: str, kind: str) -> tuple[float, float | None] | None:
    """The meaning of a text, or None where it has no single one."""
    text = text.strip().translate(PLAIN).lower()
    for sign, fraction in VULGAR.items():
        text = re.sub(rf"(?<=\d)(-| *){sign}", rf" {fraction}", text).replace(sign, fraction)
    negative = re.match(r"-(?=[\d.,])", text)
    text = re.sub(r"^[-+](?=[\d.,])", "", text)
    sides = re.split(r"±|\+/-|\+-", text)
    if len(sides) > 2 or any(not side.strip() for side in sides):
        return None
    if len(sides) == 1:
        single = one(text, kind, None)
        return None if single is None else (-single[0] if negative else single[0], None)
    left, right = (side.strip() for side in sides)
    share = re.fullmatch(rf"({NUM}) *(?:%|pct|percent)\.?", right)
    nominal = one(left, kind, None)
    if share and kind != "1":
        by, bare = number(share[1]), re.fullmatch(NUM, left)
        if nominal is None or by is None or bare:
            return None
        value = -nominal[0] if negative else nominal[0]
        return value, abs(value) * by / 100
    right_unit = re.fullmatch(rf"{NUM}(?![\d.,]|e\d) *([^\d/ ].*)", right)
    if re.fullmatch(NUM, left) and right_unit:
        if (
            share
            or right_unit[1].strip() in {"swg", ": 1", ":1"}
            or re.search(r"\d", right_unit[1])
        ):
            return None
        nominal = one(left, kind, right_unit[1])
    within = one(right, kind, nominal[1] or None) if nominal else None
    if nominal is None or within is None:
        return None
    return (-nominal[0] if negative else nominal[0]), within[0]


# ------------------------------------------------------------------ texts to try

KINDS = ["mm", "N", "rad", "1", "N*mm"]
GOOD = [
    *("54.5 mm", "1 5/8", '1-5/8"', "1⅝ in", "5' 2 1/2\"", "5 ft 2 in", "5'2\"", "12 ft", "19,05"),
    *("16 SWG", "54.5 ±0.5 mm", "3 in ± 1/16", "1 950 mm", "40 thou", "-4 mm", "1e3 mm", "2.32 m"),
    *("90 lbf", "50 kgf", "500 N ± 10 %", "12 daN", "18 lb ft", "25 N·m", "25 Nm", "3 kgf m"),
    *("15d30'", "15°30'20\"", "15.5 deg", "15.5° ±0.5°", "0.27 rad", "5:1", "5 to 1", "6 %"),
    *("0.06", "6 % ±1 %", "18 ft-lb", "2 N*m ± 0.1", "1 950,5", "5' - 2\"", "⅝", ".75 in ±.01"),
]
LETTERS = "0123456789 0123456789 .,/-+±'\"°:%⅝½eEdxinftmNkgbrlaswSWGto*·²23 "

edits = st.lists(
    st.tuples(st.floats(0, 1), st.integers(0, 2), st.sampled_from(LETTERS)), min_size=1, max_size=3
)


def edited(text: str, changes: list[tuple[float, int, str]]) -> str:
    """A text with letters put in, taken out or changed."""
    for where, width, letter in changes:
        place = round(where * len(text))
        text = text[:place] + letter * (width != 2) + text[place + (width > 0) :]
    return text


def agrees(text: str, kind: str) -> bool:
    """True if the text is refused, or read as the second reader does."""
    try:
        reading = parse(text, kind)
    except QuantityError as refusal:
        return all(isfinite(parse(offer, kind).value) for offer in refusal.offers)
    second = second_reader(text, kind)
    if second is None or (second[1] is None) != (reading.plus_minus is None):
        return False
    same = isclose(reading.value, second[0], rel_tol=1e-9)
    return same and isclose(reading.plus_minus or 0.0, second[1] or 0.0, rel_tol=1e-9)


@pytest.mark.parametrize("text", GOOD)
def test_the_second_reader_reads_good_texts(text: str) -> None:
    read = [kind for kind in KINDS if second_reader(text, kind) is not None]
    assert read
    for kind in read:
        parse(text, kind)
    assert all(agrees(text, kind) for kind in KINDS)


@given(text=st.sampled_from(GOOD), changes=edits, kind=st.sampled_from(KINDS))
def test_a_slip_of_the_finger_is_refused_or_means_what_it_says(
    text: str, changes: list[tuple[float, int, str]], kind: str
) -> None:
    assert agrees(edited(text, changes), kind)


@given(first=st.sampled_from(GOOD), second=st.sampled_from(GOOD), kind=st.sampled_from(KINDS))
def test_two_quantities_in_one_box_are_refused_or_one(first: str, second: str, kind: str) -> None:
    assert agrees(f"{first} {second}", kind)


@given(text=st.text(LETTERS, max_size=9) | st.text(max_size=12), kind=st.sampled_from(KINDS))
def test_garbage_is_refused_or_means_what_it_says(text: str, kind: str) -> None:
    assert agrees(text, kind)


@given(
    one=st.integers(0, 999),
    between=st.sampled_from([" ", "  ", ";", "&", "|", " x ", " * ", "/ /", " mm ", ", ", ") ("]),
    two=st.integers(0, 99) | st.integers(1000, 9999),
    unit=st.sampled_from(["", " mm", " in", '"', " ft"]),
)
def test_two_numbers_are_never_read_as_one(one: int, between: str, two: int, unit: str) -> None:
    with pytest.raises(QuantityError):
        parse(f"{one}{between}{two}{unit}", "mm")
