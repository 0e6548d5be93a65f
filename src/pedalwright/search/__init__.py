"""Search: candidates for a builder's question, each a design, assessed together and compared."""

from pedalwright.search.bores import which_bore

__all__ = ["which_bore"]
