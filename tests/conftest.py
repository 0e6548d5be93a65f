"""What all tests have in common: the checkout, and how far hypothesis looks."""

import os
from pathlib import Path

import pytest
from hypothesis import settings

# The gate draws the same numbers every time; `HYPOTHESIS_PROFILE=explore` looks further.
settings.register_profile("gate", deadline=None, derandomize=True)
settings.register_profile("explore", deadline=None, max_examples=2000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "gate"))


@pytest.fixture(scope="session")
def checkout() -> Path:
    """Top folder of the checkout."""
    return Path(__file__).parents[1]
