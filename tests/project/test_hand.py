"""In whose units a file is shown."""

import pytest

from pedalwright.project import ProjectError, car_text, changed, read


@pytest.mark.parametrize(
    ("car", "hand"),
    [("larkfield-improved", "mm"), ("brackwater-fix2", "mm"), ("saltmarsh-improved", "inch")],
)
def test_most_of_its_lengths_decide(car: str, hand: str) -> None:
    """Larkfield's bores are typed in inches, too, as everywhere; its lengths are not."""
    assert read(car_text(car)).shown_in == hand


def test_the_head_of_the_file_decides_before_them() -> None:
    for car, hand in (("larkfield-improved", "inch"), ("saltmarsh-improved", "mm")):
        text = car_text(car).replace("format = 1\n", f'format = 1\nshown_in = "{hand}"\n')
        assert read(text).shown_in == hand


def test_it_can_be_changed_like_any_entry() -> None:
    project = changed(read(car_text("larkfield-improved")), {"shown_in": "inch"})
    assert project.shown_in == "inch"
    assert 'shown_in = "inch"' in project.text


def test_neither_a_gauge_nor_what_is_left_out_has_a_say() -> None:
    gauges = "".join(
        f'[{pedal}.carrier.arm]\nthickness = "4 SWG"\n' for pedal in ("brake", "clutch")
    )
    assert read(f'format = 1\n[car]\nwheelbase = "2320 mm"\n{gauges}').shown_in == "mm"
    assert read(f'format = 1\n[car]\nwheelbase = "92 in"\n{gauges}').shown_in == "inch"
    assert read("format = 1\n").shown_in == "mm"


def test_another_word_is_a_fault_that_says_which_are_read() -> None:
    text = car_text("larkfield-improved").replace(
        "format = 1\n", 'format = 1\nshown_in = "inches"\n'
    )
    with pytest.raises(ProjectError) as caught:
        read(text)
    (fault,) = caught.value.faults
    assert "“mm” or “inch”" in fault.accepts
    assert fault.offers == ("inch",)
    assert fault.line is not None
