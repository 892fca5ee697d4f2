"""Fresh fruit in the place of dried: it does not stand overnight, where it would turn brown and weep.

`Stir the oats, milk, raisins and cinnamon together and chill overnight.` loses the raisins where a banana takes their
place, and a sentence at the end says when that goes in. What a cook does: common practice, no source.
"""

import re
from collections.abc import Iterator, Sequence

from calmlarder.adapt.in_words import short_name
from calmlarder.adapt.sentences import SENTENCE_ENDS
from calmlarder.adapt.step_named_once import without_one
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.things_now import Told

_STANDS = re.compile(r"\b(?:overnight|night before|until (?:the )?morning)\b|\b[4-9] hours\b|\b\d\d hours\b", re.I)
_HEATED = re.compile(r"\b(?:bak(?:e|ed|ing)|boil\w*|simmer\w*|cook\w*|oven|slow cooker|stew\w*)\b", re.IGNORECASE)


def fresh_fruit_last(steps: Sequence[str], told: Told) -> list[str]:
    """The changed steps with fresh fruit put in last, where the step that names it lets the dish stand for hours."""
    done = list(steps)
    for name in _fresh(told):
        for place, step in enumerate(done):
            found = re.search(rf"(?:, (?:and )?| and )(?:the )?(?P<name>{re.escape(name)})\b(?=,| and )", step)
            if found is None or not _STANDS.search(_sentences_from(step, found.start())) or _HEATED.search(step):
                continue
            begin = found.start("name") - (4 if step.endswith("the ", 0, found.start("name")) else 0)
            done[place] = without_one(step, (begin, found.end()))
            done[-1] = f"{done[-1].rstrip()} Stir in the {name} just before you eat it."
            break
    return done


def _sentences_from(step: str, start: int) -> str:
    """The sentence around a place and the one behind it."""
    ends = [one.end() for one in SENTENCE_ENDS.finditer(step)]
    begin = max((end for end in ends if end <= start), default=0)
    behind = [end for end in ends if end > start][:2]
    return step[begin : behind[-1] if behind else len(step)]


def _fresh(told: Told) -> Iterator[str]:
    for food, change in told.changed.items():
        for one, line in zip(change.to, change.lines, strict=False):
            row = told.tables.food_by_id[one.food]
            if told.tables.food_by_id[food].kind == "dried-fruit" and row.kind == "fruit" and row.state == "raw":
                yield short_name(bare(line))
