"""Driver: body, shoe, reach and the push a leg can give."""
