"""What an earlier step only blanches and a later one boils first is boiled once, where it was blanched."""

import re
from collections.abc import Sequence

_FIRST = re.compile(r"First boil the (?P<name>[a-z -]{3,30}) for (?P<minutes>\d+) minutes and drain them\. ")


def boiled_once(steps: Sequence[str]) -> list[str]:
    """The changed steps without a second boil."""
    told = list(steps)
    for place, step in enumerate(steps):
        found = _FIRST.search(step)
        if found is None:
            continue
        blanched = re.compile(
            rf"\b(?P<verb>blanch|boil|cook|steam|dip)(?P<how> the {re.escape(found['name'])}[^.;]*?) for "
            r"(?:(?:about |just )?(?:\d+|a few)(?: ?[-–] ?\d+)? seconds|(?:a|one|1|2|two|3|three) minutes?)\b",
            re.IGNORECASE,
        )
        earlier = next((at for at in range(place) if blanched.search(told[at])), None)
        one = blanched.search(told[earlier]) if earlier is not None else None
        if earlier is not None and one is not None:
            told[place] = f"{step[: found.start()]}{step[found.end() :]}"
            boil = "Boil" if one["verb"][0].isupper() else "boil"
            head, behind = told[earlier][: one.start()], told[earlier][one.end() :]
            told[earlier] = f"{head}{boil}{one['how']} for {found['minutes']} minutes{behind}"
    return told
