"""Project: the project file, read into a survey and a design with the origin of each number."""
