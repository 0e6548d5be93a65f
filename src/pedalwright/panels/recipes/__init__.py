"""Recipes: from the few sizes of a part to its faces, folds, holes and fasteners."""
