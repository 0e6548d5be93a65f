"""One stop on the road: its length, its mean deceleration, its heat."""
