"""What a reader sees: findings as text and JSON, drawings, the working, the dossier."""

from pedalwright.documents.about import About
from pedalwright.documents.as_json import as_json
from pedalwright.documents.bundle import write_everything
from pedalwright.documents.dossier import dossier_pdf
from pedalwright.documents.results_page import results_page
from pedalwright.documents.text import findings_text
from pedalwright.documents.verdict import verdict

__all__ = [
    "About",
    "as_json",
    "dossier_pdf",
    "findings_text",
    "results_page",
    "verdict",
    "write_everything",
]
