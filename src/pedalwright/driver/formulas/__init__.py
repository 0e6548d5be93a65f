"""The sums of the driver room: body lengths, the leg's triangle, the foot on its pad."""
