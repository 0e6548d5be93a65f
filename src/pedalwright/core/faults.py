"""Bad input, told so that it can be mended: where, what was read, what is accepted."""

from dataclasses import asdict, dataclass


@dataclass(frozen=True, kw_only=True, slots=True)
class Fault:
    """One thing that cannot be read as it stands."""

    #: File, line and key, as far as known: `car.toml, line 12, car.wheelbase`.
    where: str
    #: What was read, as it was written.
    read: str
    #: What is accepted instead, as a sentence.
    accepts: str
    #: Readings that may have been meant, each written so that it is accepted.
    offers: tuple[str, ...] = ()

    def __str__(self) -> str:
        """One line for people."""
        offers = f" Did you mean {' or '.join(self.offers)}?" if self.offers else ""
        return f"{self.where}: read {self.read!r}. {self.accepts}{offers}"


class InputError(ValueError):
    """Input that a person gave and can mend; carries every fault found, not only the first."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("\n".join(str(fault) for fault in faults))
        self.faults = faults

    def as_data(self) -> list[dict[str, object]]:
        """The faults as plain data, for JSON."""
        return [asdict(fault) for fault in self.faults]
