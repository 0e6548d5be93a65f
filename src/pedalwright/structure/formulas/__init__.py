"""The sums of the structure room, one formula each, a file for each noun.

sections, arm, pins, rods: the pedal itself. stiffness: how far it gives. bolts, rivets,
joints, welds, plates: what holds it. fatigue: how often it can be pushed.
"""
