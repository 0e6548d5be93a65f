"""How braking is shared between the axles: lock order, limiter, grip."""
