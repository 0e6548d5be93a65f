"""What is answered where no box is described."""

from pedalwright.assess.stroke import PedalName
from pedalwright.core.answers import Answer, sentence


def no_box(question: str, title: str, pedal: PedalName) -> Answer:
    """It cannot be said, and what would let it be said."""
    return Answer(
        question=question,
        title=title,
        says=sentence(
            f"That cannot be said: no box is described that carries the {pedal}'s cylinder and "
            f"pivot. Describe its parts under [box] and name them in {pedal}.carrier.mount as "
            "cylinder_on and pivot_on."
        ),
        outcome="open",
        columns=(),
        rows=(),
    )
