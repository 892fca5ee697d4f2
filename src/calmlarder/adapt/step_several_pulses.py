"""Several dry pulses that are soaked and boiled together, where tins take the place of all of them.

`Wash the lentils and beans and soak them overnight. … Drain, put in a pot with the water and simmer for 1 hour until
both are soft.` soaks nothing, and simmers as long as what there is now wants. Common practice, no source.
"""

import re
from collections.abc import Sequence

from calmlarder.adapt.in_words import short_name
from calmlarder.adapt.names import spans_in
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.things_now import Told
from calmlarder.and_list import and_list
from calmlarder.tables.rows import Food

_SOAKS = re.compile(r"\bsoak\w*\b|\b(?:overnight|night before)\b", re.IGNORECASE)
_HEAD = re.compile(r"\s*(?:\d{1,2}[.)] )?")
_DRAIN = re.compile(
    r"(?:drain|rinse)(?:(?:,| and) (?:drain|rinse))*(?: (?:them|it|both|well|again))*(?:[.;] |,? (?:and |then )*)",
    re.IGNORECASE,
)
_PUT = re.compile(r"\b(?P<verb>put|place|tip|add)(?: (?:them|it|both|all))?(?= (?:in|into|to|all in)\b)", re.IGNORECASE)
_HARD = re.compile(
    r",?(?: and)? (?:bring to (?:a|the) (?:rolling )?boil,? (?:and )?)?(?:boil|cook) (?:hard|rapidly|fast|briskly"
    r"|vigorously|furiously) for \d+ minutes(?:[.;] |,? )(?:skim,? )?(?:(?:and|then) )*(?=\w)",
    re.IGNORECASE,
)
_LONG = re.compile(
    r"\b(?P<verb>simmer|cook|boil)(?P<how>(?: [a-z]+){0,3}?) (?:for )?(?:about )?"
    r"(?:(?:an?|one|two|1|2|3|1½|90|60|75)(?: ?(?:1/2|½))?(?:[-–]\d)? ?(?:hours?|hrs?|minutes?)"
    r"|[3-9]\d(?:[-–]\d\d)? ?minutes?)",
    re.IGNORECASE,
)
_SOFT = re.compile(
    r"\b(?:until|till) (?:both|all|they|it)(?: are| is)? (?:very |completely )?(?:soft|tender|cooked)[^.;]*",
    re.IGNORECASE,
)
_STIRRED_IN_WHOLE = re.compile(r" \[stir [a-z ]+ in whole, mash the rest\]")
_TINS, _DRY = 10, "dry"  # minutes: common practice, no source


def all_from_tins(steps: Sequence[str], told: Told) -> set[str]:
    """The dry pulses of a dish, where steps soak several of them and none of them is dry any more."""
    rows = told.tables.food_by_id
    pulses = {food for food in told.direct if rows[food].kind == "pulse" and rows[food].state == _DRY}
    swapped = {food for food in pulses if food in told.changed and told.changed[food].change == "swap"}
    to = [rows[one.food] for food in swapped for one in told.changed[food].to]
    left = pulses - swapped or any(row.kind == "pulse" and row.state == _DRY for row in to)
    return set() if len(swapped) < 2 or left or not any(map(_SOAKS.search, steps)) else swapped


def several_from_tins(steps: Sequence[str], marked: Sequence[str], told: Told) -> list[str]:
    """The changed steps; the old ones are `steps`."""
    pulses = all_from_tins(steps, told)
    if not pulses:
        return list(marked)
    now: dict[str, Food] = {}
    for food in sorted(pulses, key=lambda one: told.changed[one].place or 0):
        change = told.changed[food]
        rows = (told.tables.food_by_id[to.food] for to in change.to)
        now |= {short_name(bare(line)): row for row, line in zip(rows, change.lines, strict=False)}
    tins = [name for name, row in now.items() if row.kind == "pulse"]
    minutes = max([row.minutes.get("boil", 0) for row in now.values() if row.kind != "pulse"], default=0) or _TINS
    found, soaked, boiled = [], False, False
    for step, text in zip(steps, marked, strict=False):
        named = {food for _, _, meant in spans_in(step, told.names) for food in meant}
        head = (_HEAD.match(text) or [""])[0]
        if named and named <= pulses and _SOAKS.search(step) and tins:
            soaked = True
            text = f"{head}Drain and rinse the {and_list(tins)}: cooked already, so nothing is soaked."
        elif soaked and not named & set(told.changed) - pulses and _LONG.search(text):
            text = _boiled_shortly(text, head, and_list([*now]), minutes)
            soaked, boiled = False, True
        elif boiled:
            text = _STIRRED_IN_WHOLE.sub("", text)  # it is soft by then
        found.append(text)
    return found


def _boiled_shortly(text: str, head: str, now: str, minutes: int) -> str:
    rest = _DRAIN.sub("", text[len(head) :], count=1) if _DRAIN.match(text, len(head)) else text[len(head) :]
    if f"the {now}" not in rest:
        rest = _PUT.sub(lambda one: f"{one['verb']} the {now}", rest, count=1)
    rest = _HARD.sub(" and ", rest, count=1)
    rest = _LONG.sub(lambda one: f"{one['verb']}{one['how']} for {minutes} minutes", rest, count=1)
    rest = _SOFT.sub("until soft", rest, count=1)
    return f"{head}{rest[:1].upper()}{rest[1:]}"
