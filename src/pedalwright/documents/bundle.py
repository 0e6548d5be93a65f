"""Everything about one assessed design, written into a folder."""

import json
from collections.abc import Sequence
from pathlib import Path

from pedalwright.assess import Assessment, headlines
from pedalwright.core.working import Step
from pedalwright.design import Design
from pedalwright.documents.about import About
from pedalwright.documents.as_json import as_json
from pedalwright.documents.dossier import dossier_pdf
from pedalwright.documents.pictures import full_size, pictures
from pedalwright.documents.text import findings_text
from pedalwright.documents.working_text import working_text


def write_everything(
    folder: Path, about: About, design: Design, assessment: Assessment, steps: Sequence[Step]
) -> list[Path]:
    """Findings, working, results, drawings and the dossier; returns what was written."""
    folder.mkdir(parents=True, exist_ok=True)
    report = as_json(about, headlines(assessment), assessment.findings)
    contents: dict[str, bytes] = {
        "dossier.pdf": dossier_pdf(about, design, assessment, steps),
        "findings.txt": findings_text(about, assessment.findings).encode(),
        "working.txt": working_text(steps).encode(),
        "results.json": json.dumps(report, indent=1, ensure_ascii=False).encode(),
        **{f"{picture.key}.svg": picture.svg for picture in pictures(design, assessment)},
        **{f"{lever.key}-full-size.svg": lever.svg for lever in full_size(design, assessment)},
    }
    written = [folder / name for name in contents]
    for path, content in zip(written, contents.values(), strict=True):
        path.write_bytes(content)
    return written
