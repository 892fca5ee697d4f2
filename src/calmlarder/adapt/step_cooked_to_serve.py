"""A dry grain that no step but the one that serves it names is boiled in a sentence before that step."""

import re
from collections.abc import Sequence

from calmlarder.adapt.sentences import sentence_at

_COOK = re.compile(
    r"^(?P<head>[^():]+ \(step (?P<number>\d+)\):)(?P<before>.*?) ?"
    r"Cook dry (?P<name>[a-z -]+) for about (?P<minutes>\d+) minutes, in as much liquid as its packet says\."
)
_RINSE = re.compile(r"(?:^| )Rinse first\.")
_SERVES = re.compile(
    r"\b(?:serve|served|serving|spoon|ladle|divide|pile|top|dish up|to the table|eat with)\b", re.IGNORECASE
)
_COOKS = re.compile(r"\b(?:cook|boil|simmer|steam|drain|soak|bake|prepare)\w*\b", re.IGNORECASE)
_HEAD = re.compile(r"\s*(?:\d{1,2}[.)] |[-*•] )?")


def cooked_to_be_served(steps: Sequence[str], notes: Sequence[str]) -> tuple[list[str], list[str]]:
    """The steps with how a grain is boiled where it is only served, and the notes without what that says."""
    told, kept = list(steps), []
    for said in notes:
        found = _COOK.match(said)
        place = int(found["number"]) - 1 if found is not None else -1
        at = told[place].find(found["name"]) if found is not None and 0 <= place < len(told) else -1
        if found is None or at < 0 or not _only_serves(sentence_at(told[place], at), found["name"]):
            kept.append(said)
            continue
        rinsed = _RINSE.search(found["before"]) is not None
        boil = f"{'rinse the ' + found['name'] + ' and boil it' if rinsed else 'boil the ' + found['name']}"
        head = _HEAD.match(told[place])
        begin = head.end() if head else 0
        first = f"First {boil} for about {found['minutes']} minutes in plenty of water, and drain it."
        told[place] = f"{told[place][:begin]}{first} {told[place][begin:]}"
        rest = f"{_RINSE.sub('', found['before'])}{said[found.end() :]}".strip()
        kept += [f"{found['head']} {rest}"] if rest else []
    return told, kept


def _only_serves(sentence: str, name: str) -> bool:
    return name in sentence and _SERVES.search(sentence) is not None and _COOKS.search(sentence) is None
