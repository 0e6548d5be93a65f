"""Sheet-metal parts of a pedal box: each described once, for strength, making and drawing."""
