"""Only what is dry is washed and soaked: tins and cut vegetables that came beside a dry pulse go into the pot later."""

import re
from collections.abc import Iterator, Sequence

from calmlarder.adapt.in_words import short_name
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.things_now import Told
from calmlarder.and_list import and_list

_DRY = "dry"
_BOTH = r"(?:both |all |the )*"


def only_dry_is_washed(steps: Sequence[str], told: Told) -> list[str]:
    """The changed steps, of which one that washes a pulse names what of it is still dry."""
    names = {name: told.tables.food_by_id[food].state == _DRY for name, food in _now(told)}
    if len(set(names.values())) < 2:
        return list(steps)  # all of it is dry, or nothing is: told of elsewhere
    one = rf"{_BOTH}(?:{'|'.join(re.escape(name) for name in sorted(names, key=len, reverse=True))})"
    washed = re.compile(
        rf"\b(?P<verb>wash|rinse|soak|pick over|sort(?: through)?) (?P<row>{one}(?:(?:,? and |, ){one})+)"
        r"(?: \[[^\[\]]*\])?(?: together)?",
        re.IGNORECASE,
    )

    def dry_alone(found: re.Match[str]) -> str:
        said = [re.sub(rf"^{_BOTH}", "", part, flags=re.I) for part in re.split(r",? and |, ", found["row"])]
        dry = [part for part in said if names.get(part.casefold())]
        return f"{found['verb']} the {and_list(dry)}" if dry else found[0]

    return [washed.sub(dry_alone, step) for step in steps]


def _now(told: Told) -> Iterator[tuple[str, str]]:
    """What takes the place of dry pulses, as steps call it, and which food it is."""
    for food, change in told.changed.items():
        row = told.tables.food_by_id[food]
        if change.change == "swap" and row.kind == "pulse" and row.state == _DRY:
            for one, line in zip(change.to, change.lines, strict=False):
                yield short_name(bare(line)).casefold(), one.food
