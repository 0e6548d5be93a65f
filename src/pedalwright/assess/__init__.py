"""Assess: the wiring diagram; every question is a design, every answer comes from here."""
