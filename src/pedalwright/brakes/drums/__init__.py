"""Drum brakes: how much their shoes help themselves."""
