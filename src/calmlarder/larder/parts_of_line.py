"""What the parts of a line are taken for where they are bad, or may be one of several kinds."""

from calmlarder.matching.lacks import NotThere
from calmlarder.matching.part import Part, tells_of_a_food


def names_some_kind(part: Part) -> bool:
    """Whether a part names a food that comes in several kinds, or one beside a strange word, and no mere thing."""
    return bool(part.named.candidates) and tells_of_a_food(part.named.takes)


def state_of(part: Part) -> str:
    """What a line says of a thing that is gone or bad."""
    return ", ".join(part.conditions)


def not_added(bad: tuple[Part, ...]) -> NotThere:
    """What is told of a line that says of all it names that it is gone or bad."""
    states = dict.fromkeys(state_of(part) for part in bad)
    return NotThere(
        f"it says: {'; '.join(states)}", "not added, as it is gone or off; write it without those words if it is good"
    )


def of_any_kind(part: Part, why: str) -> Part:
    """The part as the likeliest of what it may be, which is said to be so."""
    if part.named.outcome == "matched":
        return part
    likeliest = part.named.candidates[0].food
    return part._replace(named=part.named._replace(outcome="matched", foods=(likeliest,), assumed=(why,)))
