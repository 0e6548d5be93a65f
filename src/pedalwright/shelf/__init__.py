"""Tables of what can be bought, each row with its source: metals, bolts, rivets, bores."""
