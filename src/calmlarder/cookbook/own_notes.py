"""What a page says under `Notes` or `Tips`, besides its list and its steps."""

import re
from collections.abc import Sequence

from calmlarder.cookbook.behind import is_between, is_over
from calmlarder.cookbook.blocks import Block
from calmlarder.matching.names.words import plain

_HEADS = re.compile(
    r"(?:(?:cook|chef|baker|author|recipe|kitchen|make[- ]ahead)(?:'?s'?)? )?(?:notes?|tips?)"
    r"(?: (?:&|and) (?:tricks|tips|notes))?"
)
# What a page says of readers and of its figures, where no heading stands between.
_NO_NOTE = re.compile(
    r"\bkcal\b|\bper serving\b|\b(?:rated|rating|out of 5|stars?(?! anise)|votes?|reviews?)\b|©|\ball rights\b"
    r"|^(?:fat|saturates|carbs|carbohydrates?|sugars?|fibre|fiber|protein|salt|sodium|calories)\b.{0,25}\d",
    re.IGNORECASE,
)
# `Ola: Mine went watery? — Ferris: squeeze harder!`
_TALK = re.compile(r"[A-Z]\w+: .*[—–-] [A-Z]\w+: ")
_SHORTEST, _LONGEST, _MOST = 12, 300, 8  # signs of a note, and notes of a page: ours


def notes_of(blocks: Sequence[Block]) -> tuple[str, ...]:
    """The lines under such headings, up to the next heading each."""
    found: list[str] = []
    under = False
    for block in blocks:
        heads = _HEADS.fullmatch(plain(block.text).strip(" :")) is not None
        if block.level or heads:
            under = heads
        elif under and (is_over(block.text) or is_between(block.text) or _NO_NOTE.search(block.text)):
            under = False
        elif under and _TALK.match(block.text):
            continue
        elif under and _SHORTEST <= len(block.text) <= _LONGEST:
            found.append(block.text)
    return tuple(dict.fromkeys(found))[:_MOST]
