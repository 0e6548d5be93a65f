"""Saving while somebody works: every change to the file, one copy of what was there before."""

from pedalwright.project import files
from pedalwright.project.projects import Project


def save(before: Project, after: Project, *, backup: bool) -> None:
    """Write the changed text over the file, whole or not at all.

    With a backup the old file stays beside it, numbered; a page that saves every change asks for
    one when it begins, not for hundreds. A file that somebody else saved meanwhile is left alone:
    `ChangedMeanwhileError`.
    """
    assert before.path is not None, "a project read from a text has no file to save"
    if after.text != before.text:
        files.replace(before.path, before.text.encode(), after.text.encode(), backup=backup)
