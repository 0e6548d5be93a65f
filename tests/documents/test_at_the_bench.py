"""What the bench says beside the drawing: key figures, better and worse, where, the working."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.assess import Assessment, assess, headlines
from pedalwright.assess.stroke import PEDAL_NAMES, PedalName
from pedalwright.core.checks import Finding
from pedalwright.core.working import Step, working
from pedalwright.documents.finding_working import leading_to
from pedalwright.documents.key_figures import LEG, OF_PEDAL, key_figures
from pedalwright.documents.outside import METRIC
from pedalwright.documents.since import since
from pedalwright.documents.where import PARTS, where
from pedalwright.project import car_text, cars, changed, read


@pytest.fixture(scope="module")
def worked() -> tuple[Assessment, list[Step]]:
    with working() as steps:
        found = assess(read(car_text("larkfield-first")).design)
    return found, steps


class TestKeyFigures:
    @pytest.mark.parametrize("pedal", PEDAL_NAMES)
    def test_every_pedal_has_its_own_and_a_leg(
        self, pedal: PedalName, worked: tuple[Assessment, list[Step]]
    ) -> None:
        found, _ = worked
        lines = headlines(found)
        told = list(key_figures(pedal, "D1", (lines, found.findings), lines, METRIC))
        assert len(told) == len(OF_PEDAL[pedal]) + len(LEG)
        assert all(figure.value != "no value" for figure in told)
        assert [figure.was for figure in told] == [""] * len(told)

    def test_a_figure_is_judged_by_a_finding_with_that_very_figure(
        self, worked: tuple[Assessment, list[Step]]
    ) -> None:
        found, _ = worked
        lines = {line.name: float(line.value) for line in headlines(found)}
        for pedal in PEDAL_NAMES:
            for row in (*OF_PEDAL[pedal], *LEG):
                name, _, judge = (text.format(who="D1", pedal=pedal) for text in row)
                code, _, about = (part.rstrip("*") for part in judge.partition("|"))
                if not judge:
                    continue
                values = {
                    float(f.value)
                    for f in found.findings
                    if f.limit.code.startswith(code) and f.about.startswith(about)
                }
                assert any(value == pytest.approx(lines[name]) for value in values), name

    def test_what_changed_says_what_it_was(self) -> None:
        project = read(car_text("larkfield-first"))
        before = headlines(assess(project.design))
        after = assess(changed(project, {"brake.pedal.pin_radius": "54.5 mm"}).design)
        told = {
            figure.label: figure
            for figure in key_figures(
                "brake", "D1", (headlines(after), after.findings), before, METRIC
            )
        }
        assert told["pedal ratio, to 1"].was == "4.01"
        assert told["push for a hard stop"].was == "517 N"
        assert told["push for a hard stop"].state == "passes"
        assert told["D1: knee, foot up"].was == ""


class TestSince:
    def test_nothing_changed_nothing_told(self, worked: tuple[Assessment, list[Step]]) -> None:
        findings = worked[0].findings
        assert not since(findings, findings)

    def test_better_one_way_is_worse_the_other(self) -> None:
        project = read(car_text("larkfield-first"))
        old = assess(project.design).findings
        new = assess(changed(project, {"brake.pedal.pin_radius": "54.5 mm"}).design).findings
        there, back = since(old, new), since(new, old)
        keys = [(t.new.limit.code, t.new.about) for t in there.better]
        assert keys == [(t.new.limit.code, t.new.about) for t in back.worse]
        assert ("brakes.effort", "") in keys
        assert ("structure.give", "brake, 500 N") in [
            (t.new.limit.code, t.new.about) for t in there.worse
        ]

    def test_what_crosses_its_bound_is_told_first(self) -> None:
        project = read(car_text("larkfield-first"))
        old = assess(project.design).findings
        new = assess(changed(project, {"brake.pedal.pad_radius": "272 mm"}).design).findings
        crossed = [turned.crossed for turned in since(old, new).better]
        assert crossed == sorted(crossed, reverse=True)
        assert crossed[0]

    def test_what_can_no_longer_be_judged_got_worse(
        self, worked: tuple[Assessment, list[Step]]
    ) -> None:
        (finding,) = [f for f in worked[0].findings if f.limit.code == "brakes.travel"]
        lost = replace(finding, value=np.nan, margin=np.nan)
        assert [t.new for t in since([finding], [lost]).worse] == [lost]
        assert [t.new for t in since([lost], [finding]).better] == [finding]

    def test_a_hair_is_not_told(self, worked: tuple[Assessment, list[Step]]) -> None:
        (finding,) = [f for f in worked[0].findings if f.limit.code == "brakes.travel"]
        assert not since([finding], [replace(finding, margin=finding.margin + 0.004)])


class TestWhere:
    @pytest.mark.parametrize("car", cars())
    def test_every_finding_is_to_be_seen_somewhere(self, car: str) -> None:
        design = read(car_text(car)).design
        names = {person.name for person in design.drivers}
        for finding in assess(design).findings:
            spot = where(finding)
            assert spot.parts, finding.limit.code
            assert not any("*" in part for part in spot.parts)
            about = finding.about.split(",")[0]
            if about in names and finding.room == "driver":
                assert any(part.endswith(f"-{about}") for part in spot.parts), finding.limit.code

    def test_it_is_on_the_pedal_it_speaks_of(self) -> None:
        for finding in assess(read(car_text("larkfield-first")).design).findings:
            spot = where(finding)
            if finding.room in {"clutch", "throttle"}:
                assert spot.pedal == finding.room
            if finding.about in {"brake", "clutch", "throttle"}:
                assert spot.pedal == finding.about

    def test_no_row_stands_in_anothers_shadow(self) -> None:
        codes = [code for code, _ in PARTS]
        assert len(codes) == len(set(codes))


class TestWorking:
    def test_it_ends_in_the_figure_and_each_step_feeds_a_later_one(
        self, worked: tuple[Assessment, list[Step]]
    ) -> None:
        found, steps = worked
        told = 0
        for finding in found.findings:
            chain = leading_to(finding, steps)
            if not chain:
                continue
            told += 1
            assert any(float(step.value) == float(finding.value) for step in chain)
            fed = {float(v) for s in chain for v in s.arguments.values() if np.ndim(v) == 0}
            for step in chain:
                value = float(step.value)
                assert value in fed or value == float(finding.value)
        assert told > len(found.findings) / 3

    def test_it_stays_with_the_part_the_finding_is_about(
        self, worked: tuple[Assessment, list[Step]]
    ) -> None:
        found, steps = worked
        finding = self.of(found, "linkage.rod_angle", "brake")
        assert all("clutch" not in step.subject for step in leading_to(finding, steps))

    def test_a_figure_that_nobody_has_leads_nowhere(
        self, worked: tuple[Assessment, list[Step]]
    ) -> None:
        found, steps = worked
        finding = self.of(found, "brakes.effort", "")
        assert leading_to(finding, steps)
        assert leading_to(replace(finding, value=np.nan), steps) == []

    @staticmethod
    def of(found: Assessment, code: str, about: str) -> Finding:
        return next(f for f in found.findings if (f.limit.code, f.about) == (code, about))
