"""Core: units, points, batches, the working of formulas, limits and findings."""
