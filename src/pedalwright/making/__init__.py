"""Making: what to cut, bend, drill, fasten and buy, and in which order."""
