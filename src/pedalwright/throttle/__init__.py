"""Throttle: from the pad to the opening of the butterflies, and back to closed."""
