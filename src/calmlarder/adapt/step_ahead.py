"""What takes longer than what it stands in for is boiled ahead, in a sentence of its own before the step."""

import re

_AHEAD = re.compile(
    r" \[(?P<name>[a-z][a-z -]{2,40}?) about \d+ minutes, so (?P<minutes>\d+) minutes ahead of the rest\]",
    re.IGNORECASE,
)
_HEAD = re.compile(r"\s*(?:\d{1,2}[.)] |[-*•] )?")
AHEAD_OF_THE_REST = "ahead of the rest"


def boiled_ahead(step: str) -> str:
    """`First boil the potatoes for 8 minutes and drain them.`, and then the step, which has its own minutes."""
    first: list[str] = []

    def taken(found: re.Match[str]) -> str:
        minutes = int(found["minutes"])
        unit = "minute" if minutes == 1 else "minutes"
        them = "them" if found["name"].endswith("s") else "it"
        first.append(f"First boil the {found['name']} for {minutes} {unit} and drain {them}.")
        return ""

    told = _AHEAD.sub(taken, step)
    head = _HEAD.match(told)
    at = head.end() if head else 0
    return f"{told[:at]}{' '.join(first)} {told[at:]}" if first else step
