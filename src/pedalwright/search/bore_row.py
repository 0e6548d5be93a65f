"""The bores that are sold, with the fitted one among them."""

from pedalwright.shelf.bores import bores

#: Bores closer than this are one bore, mm.
SAME = 0.05


def bore_row(fitted: float) -> list[tuple[str, float]]:
    """Names and sizes, small to large; a fitted bore off the shelf stands where it belongs."""
    sizes = [(f"{bore.name} ({bore.diameter:.2f})", bore.diameter) for bore in bores()]
    for i, (name, size) in enumerate(sizes):
        if abs(size - fitted) < SAME:
            sizes[i] = (name, fitted)
            return sizes
    return sorted([*sizes, (f"{fitted:.2f} mm", fitted)], key=lambda entry: entry[1])
