"""The pedal box on the shell bench: how far it gives, who gives, and what it bears."""
