"""How the grammar says that it will not guess."""


class DoubtError(Exception):
    """A text cannot be read in one way only; `offers` are texts that may have been meant.

    Offers are candidates: those that cannot be read themselves are dropped before anybody
    sees them.
    """

    def __init__(self, reason: str, *offers: str) -> None:
        super().__init__(reason)
        self.reason = reason
        self.offers = offers
