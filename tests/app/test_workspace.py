"""A file worked on by a page and an editor at once: nothing of anybody's is lost."""

from pathlib import Path

import pytest

from pedalwright.app.workspace import Workspace
from pedalwright.core.faults import InputError
from pedalwright.project import Change, read

PIN = "brake.pedal.pin_radius"


def in_file(work: Workspace) -> str:
    return read(work.path).provenance[PIN].text


def by_editor(work: Workspace, old: str, new: str) -> None:
    """Saved by somebody else; the length differs, so that no clock has to tick."""
    text = work.path.read_text()
    assert old in text
    work.path.write_text(text.replace(old, new))


def test_a_change_is_in_the_file_at_once_and_only_that_changes(work: Workspace) -> None:
    before = work.path.read_text().splitlines()
    work.change({PIN: "54.5 mm"})
    after = work.path.read_text().splitlines()
    differing = [(a, b) for a, b in zip(before, after, strict=True) if a != b]
    assert differing == [('pin_radius = "62 mm"', 'pin_radius = "54.5 mm"')]


def test_one_backup_is_kept_of_what_was_there_when_work_began(work: Workspace) -> None:
    first = work.path.read_text()
    for pin in ("54.5 mm", "55 mm", "56 mm"):
        work.change({PIN: pin})
    backups = sorted(work.path.parent.glob("*.bak"))
    assert [path.name for path in backups] == ["larkfield-first.toml.1.bak"]
    assert backups[0].read_text() == first


def test_undo_goes_back_to_the_first_byte_and_redo_forward_again(work: Workspace) -> None:
    texts = [work.path.read_text()]
    for pin in range(40, 60):
        work.change({PIN: f"{pin} mm"})
        texts.append(work.path.read_text())
    for text in reversed(texts[:-1]):
        work.undo()
        assert work.path.read_text() == text
    assert not work.can_undo
    work.undo()
    for text in texts[1:]:
        work.redo()
        assert work.path.read_text() == text
    assert not work.can_redo


def test_a_change_after_undoing_leaves_nothing_to_redo(work: Workspace) -> None:
    work.change({PIN: "54.5 mm"})
    work.undo()
    work.change({PIN: "58 mm"})
    assert not work.can_redo
    work.undo()
    assert in_file(work) == "62 mm"


def test_a_drag_is_shown_at_once_saved_once_and_undone_in_one_step(work: Workspace) -> None:
    for pin in (61.0, 60.0, 57.3):
        work.try_out({PIN: pin})
        assert work.shown.project.design.brake.pedal.pin_radius == pin
        assert in_file(work) == "62 mm"
    work.drop()
    assert in_file(work) == "57.3 mm"
    work.undo()
    assert in_file(work) == "62 mm"
    assert not work.can_undo


def test_a_drag_that_is_given_up_leaves_no_trace(work: Workspace) -> None:
    before = work.path.read_text()
    work.try_out({PIN: 57.0})
    work.cancel()
    assert work.shown is work.settled
    work.drop()
    assert work.path.read_text() == before
    assert not work.can_undo


def test_better_and_worse_are_told_from_where_the_drag_began(work: Workspace) -> None:
    assert work.before is None
    start = work.settled
    work.try_out({PIN: 60.0})
    work.try_out({PIN: 57.0})
    assert work.before is start
    work.drop()
    assert work.before is start


def test_what_cannot_be_is_refused_and_the_last_that_could_stays(work: Workspace) -> None:
    work.try_out({PIN: 60.0})
    with pytest.raises(InputError):
        work.try_out({PIN: 900.0})
    assert work.shown.project.design.brake.pedal.pin_radius == 60.0
    with pytest.raises(InputError):
        work.change({PIN: "900 mm"})
    assert in_file(work) == "62 mm"


def test_a_tag_and_a_note_are_written_beside_the_number(work: Workspace) -> None:
    work.change({PIN: Change(value="55 mm", tag="assumed", note="not drilled yet")})
    told = read(work.path).provenance[PIN]
    assert (told.text, told.tag, told.note) == ("55 mm", "assumed", "not drilled yet")


class TestBesideAnEditor:
    def test_what_an_editor_saves_is_taken_up_as_a_step(self, work: Workspace) -> None:
        by_editor(work, '"62 mm"', '"62.25 mm"')
        assert work.refresh()
        assert work.shown.project.provenance[PIN].text == "62.25 mm"
        work.undo()
        assert in_file(work) == "62 mm"

    def test_a_change_is_made_on_top_of_what_an_editor_saved(self, work: Workspace) -> None:
        by_editor(work, 'mass = "980 kg"', 'mass = "1001.5 kg"')
        work.change({PIN: "54.5 mm"})
        both = read(work.path)
        assert both.design.car.mass == 1001.5
        assert both.design.brake.pedal.pin_radius == 54.5

    def test_a_drag_over_a_save_keeps_both(self, work: Workspace) -> None:
        work.try_out({PIN: 57.0})
        by_editor(work, 'mass = "980 kg"', 'mass = "1001.5 kg"')
        work.drop()
        both = read(work.path)
        assert both.design.car.mass == 1001.5
        assert both.design.brake.pedal.pin_radius == 57.0

    def test_a_file_left_broken_is_shown_as_it_was_and_not_written_over(
        self, work: Workspace
    ) -> None:
        by_editor(work, 'mass = "980 kg"', 'mass = "980 kilos of"')
        broken = work.path.read_text()
        assert work.refresh()
        assert work.settled.project.design.car.mass == 980.0
        assert "car.mass" in str(work.faults[0])
        for act in (lambda: work.change({PIN: "54.5 mm"}), work.undo):
            with pytest.raises(InputError, match="Mend the file"):
                act()
        assert work.path.read_text() == broken

    def test_once_it_is_mended_work_goes_on(self, work: Workspace) -> None:
        by_editor(work, 'mass = "980 kg"', 'mass = "980 kilos of"')
        work.refresh()
        by_editor(work, "980 kilos of", "980 kg")
        assert work.refresh()
        assert work.faults == ()
        work.change({PIN: "54.5 mm"})
        assert in_file(work) == "54.5 mm"

    def test_it_can_be_put_back_and_theirs_is_kept(self, work: Workspace) -> None:
        mine = work.path.read_text()
        by_editor(work, 'mass = "980 kg"', 'mass = "980 kilos of"')
        theirs = work.path.read_text()
        work.refresh()
        work.overwrite()
        assert work.path.read_text() == mine
        assert [path.read_text() for path in work.path.parent.glob("*.bak")] == [theirs]

    def test_a_file_that_is_gone_is_said_to_be_and_can_be_put_back(self, work: Workspace) -> None:
        mine = work.path.read_text()
        work.path.unlink()
        work.refresh()
        assert work.faults
        work.overwrite()
        assert work.path.read_text() == mine


def test_whoever_listens_hears_of_every_revision_until_he_stops(work: Workspace) -> None:
    heard: list[int] = []
    stop = work.listen(lambda: heard.append(work.revision))
    work.try_out({PIN: 57.0})
    work.drop()
    work.undo()
    stop()
    work.redo()
    assert heard == sorted(set(heard))
    assert heard[-1] == work.revision - 1


def test_a_killed_server_loses_nothing(work: Workspace) -> None:
    work.change({PIN: "54.5 mm"})
    work.try_out({PIN: 57.0})
    again = Workspace(Path(work.path))  # what was only tried is gone, what was made is there
    assert again.shown.project.design.brake.pedal.pin_radius == 54.5
