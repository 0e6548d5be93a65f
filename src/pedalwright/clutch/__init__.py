"""Clutch: from the push on the pad to the release of the plate."""
