"""Structure: strength and give of pedals, pins, brackets and the panels that hold them."""
