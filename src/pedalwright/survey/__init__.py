"""Survey: from tape measurements to points and planes with their uncertainty."""
