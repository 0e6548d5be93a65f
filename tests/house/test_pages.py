"""Pages and pictures that the house makes itself are in step with the code."""

import importlib.util
from pathlib import Path

import pytest


def test_made_pages_are_in_step(checkout: Path) -> None:
    spec = importlib.util.spec_from_file_location("make_pages", checkout / "docs/make_pages.py")
    assert spec is not None
    assert spec.loader is not None
    made = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(made)
    for path, content in made.pages().items():
        assert path.read_bytes() == content, f"run `make fix`: {path.name} is out of step"


@pytest.mark.parametrize("example", ["which_bore"])
def test_examples_run(checkout: Path, example: str) -> None:
    spec = importlib.util.spec_from_file_location(example, checkout / f"examples/{example}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    answers = module.main()
    assert answers[20.64][0] == pytest.approx(274.2, abs=0.5)
    assert answers[25.40][0] == pytest.approx(274.2 * (25.40 / 20.64) ** 2, rel=0.02)
