"""Shelf: tables of bores, materials, fasteners and stock, each row with its source."""
