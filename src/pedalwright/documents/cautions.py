"""The cautions every sheet carries."""

from importlib.resources import files

#: One caution a paragraph, the one that goes on every page first.
CAUTIONS = tuple(
    " ".join(paragraph.split())
    for paragraph in files("pedalwright.documents")
    .joinpath("cautions.txt")
    .read_text("utf-8")
    .split("\n\n")
)
FIRST_CAUTION = CAUTIONS[0]
