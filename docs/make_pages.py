"""Write the pages and pictures of the documentation that the house makes itself.

python docs/make_pages.py        (`make fix` runs it; a test sees that they are in step)
"""

from pathlib import Path

from pedalwright.assess import assess, headlines
from pedalwright.documents.outside import METRIC
from pedalwright.documents.pictures import side_elevation
from pedalwright.documents.results_page import results_page
from pedalwright.drawing import svg
from pedalwright.project import car_text, read
from pedalwright.project.keys_page import keys_page

DOCS = Path(__file__).parent


def pages() -> dict[Path, bytes]:
    """Every made file with its content."""
    design = read(car_text("larkfield-improved")).design
    assessment = assess(design)
    elevation = side_elevation(design, assessment, "brake", METRIC).fitted(270.0, 160.0)
    return {
        DOCS / "project-keys.md": keys_page().encode(),
        DOCS / "results.md": results_page(headlines(assessment)).encode(),
        DOCS / "pictures" / "larkfield-brake-side.svg": svg(elevation, physical=False),
    }


def main() -> None:
    """Write them all."""
    for path, content in pages().items():
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(content)


if __name__ == "__main__":
    main()
