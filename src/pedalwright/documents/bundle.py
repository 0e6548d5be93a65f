"""Everything about one assessed design, written into a folder."""

import json
from collections.abc import Sequence
from pathlib import Path

from pedalwright.assess import Assessment, headlines
from pedalwright.core.working import Step
from pedalwright.documents.about import About
from pedalwright.documents.as_json import as_json
from pedalwright.documents.dossier import dossier_pdf
from pedalwright.documents.pictures import Picture
from pedalwright.documents.text import findings_text
from pedalwright.documents.working_text import working_text


def write_everything(
    folder: Path,
    about: About,
    assessment: Assessment,
    steps: Sequence[Step],
    drawn: Sequence[Picture],
    full_size: Sequence[Picture],
) -> list[Path]:
    """Findings, working, results, drawings and the dossier; returns what was written."""
    folder.mkdir(parents=True, exist_ok=True)
    report = as_json(about, headlines(assessment), assessment.findings)
    contents: dict[str, bytes] = {
        "dossier.pdf": dossier_pdf(about, assessment, steps, drawn),
        "findings.txt": findings_text(about, assessment.findings).encode(),
        "working.txt": working_text(steps, about.units).encode(),
        "results.json": json.dumps(report, indent=1, ensure_ascii=False).encode(),
        **{f"{picture.key}.svg": picture.svg for picture in (*drawn, *full_size)},
    }
    written = [folder / name for name in contents]
    for path, content in zip(written, contents.values(), strict=True):
        path.write_bytes(content)
    return written
