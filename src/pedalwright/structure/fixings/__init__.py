"""How a flange or a bracket is fixed to what carries it: bolts, blind rivets, welds."""
