"""Design: the frozen tree of everything the builder chooses."""
