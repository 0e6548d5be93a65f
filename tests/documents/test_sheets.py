"""The folder for the bench as a whole: a page that lists it, and papers that say what matters."""

import re
from dataclasses import replace
from functools import cache
from io import BytesIO

import pypdf
import pytest

from pedalwright.app.seen import about
from pedalwright.documents.making_table import Table, key_of
from pedalwright.documents.sheets import Work, Written, sheets
from pedalwright.project import car_text, changed, read

CARS = ["larkfield-improved", "brackwater-fix2", "saltmarsh-improved"]


@cache
def work(car: str) -> Work:
    project = read(car_text(car))
    return Work.of(about(project), project.design)


@cache
def folder(car: str) -> dict[str, Written]:
    return {one.file: one for one in sheets(work(car))}


def table(car: str, key: str) -> Table:
    return next(one for one in work(car).made.tables if one.key == key)


def words(pdf: bytes) -> str:
    pages = pypdf.PdfReader(BytesIO(pdf)).pages
    return re.sub(r"\s+", " ", " ".join(page.extract_text() for page in pages))


@pytest.mark.parametrize("car", CARS)
def test_the_page_lists_every_other_file_once_and_fetches_nothing(car: str) -> None:
    there = folder(car)
    page = there["index.html"].content.decode()
    links = re.findall(r'href="([^"]+)"', page)
    assert sorted(links) == sorted(set(there) - {"index.html"})
    assert not re.search(r"https?://(?!www\.w3\.org)", page)
    assert "<script" not in page
    assert all(
        one.use in page.replace("&amp;", "&")
        for one in there.values()
        if one.use != "Open it first."
    )
    ids = re.findall(r'\bid="([^"]+)"', page)
    assert len(ids) == len(set(ids))


def test_papers_stand_in_the_order_in_which_they_are_used() -> None:
    papers = [file for file in folder("larkfield-improved") if file.endswith(".pdf")]
    trial = papers.index("trial-fit.pdf")
    assert trial < papers.index("buying.pdf") < papers.index("cards.pdf")
    assert papers.index("card-leg.pdf") < trial


@pytest.mark.parametrize("car", CARS)
def test_the_same_work_gives_the_same_bytes(car: str) -> None:
    again = {one.file: one.content for one in sheets(work(car))}
    assert again == {file: one.content for file, one in folder(car).items()}


def test_a_donors_arm_is_told_what_its_old_hole_does() -> None:
    brake = table("larkfield-improved", "donor-brake-arm")
    assert "Saw 38.0 mm off" in brake.says
    assert "They run into each other" in brake.says
    assert brake.rows[0][0] == "fill the old hole, weld it flush, drill the new one"
    assert [row[-1] for row in brake.rows if "beside it" in str(row[0])] == [
        "no: the two holes run together"
    ]
    first = table("larkfield-first", "donor-brake-arm")
    assert first.rows == ()
    assert "The old hole is where the new one is wanted." in first.says


def test_what_the_file_is_silent_about_is_named_in_the_fastener_box() -> None:
    box = table("larkfield-improved", "fasteners")
    assert "NOT COUNTED" in box.says
    assert "brake cylinder's flange" in box.says


def test_a_cast_arm_is_forbidden_on_paper_too() -> None:
    project = changed(read(car_text("larkfield-improved")), {"stock.arms.brake.metal": "cast"})
    made = Work.of(about(project), project.design)
    said = words(next(one.content for one in sheets(made) if one.file == "cards.pdf"))
    assert "FORBIDDEN: cast metal" in said


@pytest.mark.parametrize("car", CARS)
def test_templates_say_which_face_one_looks_at_and_what_is_up(car: str) -> None:
    said = words(folder(car)["templates.pdf"].content)
    seen = "left" if car.startswith("brackwater") else "right"
    assert f"seen from the car's {seen}: scribe {seen.upper()} on this face" in said
    assert "way the pad moves when pressed" in said
    if car.startswith("larkfield"):
        assert "pad 15 mm to the car's left of the arm" in said


@pytest.mark.parametrize("car", CARS)
def test_levers_and_pads_for_the_trial_are_there_at_full_size(car: str) -> None:
    said = words(folder(car)["trial-fit.pdf"].content)
    for part in ("Brake lever at rest", "Clutch lever at rest", "Pads of brake, clutch"):
        assert part in said
    assert "seen from the car's left, front to the left" in said


def test_buying_comes_before_the_first_cut_and_the_trial_before_buying() -> None:
    jobs = [row[1] for row in table("larkfield-improved", "order-of-work").rows]
    assert jobs.index("trial-in-card") < jobs.index("buy") < jobs.index("brake-arm")
    assert jobs.index("buy") < jobs.index("strip") < jobs.index("cut-brake_box")


def test_a_car_typed_in_inches_is_drilled_and_sawn_by_an_inch_rule() -> None:
    said = words(folder("saltmarsh-improved")["cards.pdf"].content)
    for inches in ("P Ø1″ pivot tube", "R Ø7/16″ rod pin", "-1 3/4″", "2.23″"):
        assert inches in said
    assert "a length without a mark is in mm" in said
    assert "a length without a mark" not in words(folder("larkfield-improved")["cards.pdf"].content)
    rows = table("saltmarsh-improved", "holes-clutch-arm").rows
    assert rows[1][6] == pytest.approx(11.1125)  # data stay in mm


def test_what_cannot_be_made_stands_before_the_order_of_work() -> None:
    project = read(car_text("brackwater-fix2"))
    (before,) = work("brackwater-fix2").made.faults
    assert "brake pivot tube" not in [row[0] for row in before.rows]
    design = project.design
    pivot = replace(design.brake.carrier.pivot, span=1200.0)
    carrier = replace(design.brake.carrier, pivot=pivot)
    made = Work.of(about(project), replace(design, brake=replace(design.brake, carrier=carrier)))
    (faults,) = made.made.faults
    tube = next(row for row in faults.rows if row[0] == "brake pivot tube")
    assert str(tube[-1]).startswith("join it from two pieces")
    pdf = next(one.content for one in sheets(made) if one.file == "order-of-work.pdf")
    first, second, *_ = pypdf.PdfReader(BytesIO(pdf)).pages
    assert "Before you cut" in first.extract_text()
    assert "trial-in-card" in second.extract_text()


@pytest.mark.parametrize("car", ["larkfield-improved", "brackwater-fix2"])
def test_every_part_that_is_made_has_template_card_dxf_and_svg(car: str) -> None:
    made, there = work(car).made, folder(car)
    templates = words(there["templates.pdf"].content)
    for piece in made.box.pieces:
        key, said = key_of(piece.name), piece.name.replace("_", " ").capitalize()
        assert said in templates
        assert f"holes-{key}.csv" in there
        assert (f"{key}.dxf" in there) is (f"{key}.svg" in there) is not piece.there
        assert (f"bends-{key}.csv" in there) is bool(piece.steps)


def test_larkfields_first_attempt_is_short_of_rivets_in_words() -> None:
    (row,) = table("larkfield-first", "rivets-in-all").rows
    assert row[-1] == "need 98 + 10 spare, have 62: buy 50"
    box = {row[0]: row[-1] for row in table("larkfield-first", "fasteners").rows}
    assert box["blind rivet 4.8 × 10, alloy"] == "need 16 + 5 spare, have 62: enough"
    assert box["blind rivet 4.8 × 8, alloy"] == "need 82 + 9 spare, have 0: buy 100"
