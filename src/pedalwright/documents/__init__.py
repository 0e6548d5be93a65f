"""What a reader sees: findings as text and JSON, drawings, the working, the dossier.

Nothing is imported here: a command that prints a table should not wait for the drawings.
"""
