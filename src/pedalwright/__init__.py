"""Plan, check and document the pedals of a one-off car: brake, clutch and throttle."""

__all__ = ["__version__"]

__version__ = "0.1.0.dev0"
