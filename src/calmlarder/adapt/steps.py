"""Steps of a recipe that name a food which was swapped, left out or made less.

The words of a step stay as they were written, for they may mean another thing (`onion`, where a spring onion stays);
behind each name that means one changed food alone stands in brackets what it is now, with its time where the step
heats it and that is another one; notes say how to treat it.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from calmlarder.adapt.called import called_by_lines
from calmlarder.adapt.model import Adapted, Change
from calmlarder.adapt.names import Names, spans_in, with_last_words
from calmlarder.adapt.rewriting import Part
from calmlarder.tables.book import Tables

MOST_SIGNS = 100_000  # of all steps together; beyond any recipe
_AMOUNT = re.compile(r"\d[\d\s./½¼¾-]*\s?(?:g|kg|ml|l|cups?|tbsp|tsp|tins?|cans?|cloves?)?\b[\w\s]{0,20}$")
_MEASURED = re.compile(r"^\d[\d\s./]*(?:g|kg|ml|l|tsp|tbsp|pinch(?:es)?)?\s+(?=[^\W\d])")


_HOT = re.compile(
    r"\b(?:boil\w*|simmer\w*|cook\w*|soak\w*|bak(?:e|ed|ing)(?! (?:powder|soda|sheet|tray|dish|paper|parchment))"
    r"|roast\w*|stew\w*|steam\w*|pressure|oven|minutes?|mins?)\b",
    re.IGNORECASE,
)
_IN_THE_OVEN = re.compile(r"\b(?:oven|bak(?:e|ed|ing)|roast\w*|tray|grill\w*)\b", re.IGNORECASE)


_SOAKS = re.compile(
    r"\bsoak\w*|\b(?:pour|cover|over|add)\b[^.;]{0,60}\b(?:boiling|hot|just-boiled|boiled) (?:water|\w* ?stock)"
    r"|\b(?:leave|stand|swell)\b[^.;]{0,40}\b(?:minutes?|mins?|absorbed|tender|soft)\b",
    re.IGNORECASE,
)
_COOKS = re.compile(r"\b(?:simmer|cook|boil)(?:s|ed|ing)?\b(?! water)", re.IGNORECASE)
_BROWNS = re.compile(r"\b(?:golden|translucent|transparent|carameli[sz]\w*|brown(?:ed|ing)?|crisp)\b", re.IGNORECASE)
_SOFTENS = re.compile(r"\b(?:soft\w*|sweat\w*|fry|fried|saut\w+|cook\w*)\b", re.IGNORECASE)
_A_MINUTE = "only a minute"
_LATE = re.compile(r"about (\d+) minutes: begin earlier$")
_TIME = re.compile(r"(\d+)(?:\s*(?:[-–—]|to)\s*\d+)?[\s-]*(minute|min|hour|hr)", re.IGNORECASE)
_OWN_NUMBER = re.compile(r"\s*(?:step )?(\d{1,2})[.):]\s", re.IGNORECASE)
_HEADING = re.compile(
    r"\s*(?:the )?(?:method|instructions?|directions?|steps|preparation|how to make it)\s*:?\s*", re.IGNORECASE
)
_TAIL = re.compile(r",(?! \w+ or \w)")  # not within `without wheat, onion or garlic`
_USES = re.compile(r"\b(?:soak|blend|mash|batter)", re.IGNORECASE)
_EATEN_WHOLE = frozenset({"nut", "fruit", "dried-fruit"})
_SENTENCE_ENDS = re.compile(r"[.;!?](?=\s|$)")


class Steps(NamedTuple):
    """The steps with what changed in brackets, and the notes behind them."""

    steps: tuple[str, ...]
    notes: tuple[str, ...]


def steps_after(steps: Sequence[str], parts: Sequence[Part], adapted: Adapted, tables: Tables) -> Steps:
    """The steps as the changed recipe is cooked, with a note for each food that changed."""
    changed = {
        parts[change.place].read.food or "": change for change in adapted.changes if change.place is not None
    }  # fmt: skip
    if not changed:
        return Steps(tuple(steps), ())
    names = {**with_last_words({part.read.food for part in parts if part.read.food}, tables), **called_by_lines(parts)}
    changed = {food: _on_time(change, steps, food, names) for food, change in changed.items()}
    named: dict[str, list[int]] = {}
    marked: list[str] = []
    timed: set[str] = set()
    spices = {food.id for food in tables.foods if food.kind == "spice"}
    left = MOST_SIGNS
    for number, step in _numbered(steps):
        left -= len(step)
        if left < 0:
            break
        text, foods = _marked(step, names, changed, timed, spices)
        marked.append(text)
        for food in foods:
            named.setdefault(food, []).append(number)
    listed = {part.read.food or "" for part in parts} | _twice(adapted)
    heated = " ".join(steps)
    notes: list[str] = []
    for food in sorted(changed, key=lambda one: named.get(one, [len(steps) + 1])[0]):
        row = tables.food_by_id[food]
        change = _told_of(changed[food], heated, row.kind in _EATEN_WHOLE)
        note = _note(row.name, named.get(food, []), change, listed)
        notes += [note] if note is not None else []
    if left < 0:
        notes.append(f"Steps from {len(marked) + 1} on were not looked at.")
    return Steps((*marked, *steps[len(marked) :]), tuple(notes))


def _numbered(steps: Sequence[str]) -> Iterator[tuple[int, str]]:
    """Each step with the number that it bears, else its place; a heading is no step."""
    place = 0
    for step in steps:
        own = _OWN_NUMBER.match(step)
        place = int(own[1]) if own else place + (not _HEADING.fullmatch(step))
        yield place, step


def _marked(
    step: str, names: Names, changed: Mapping[str, Change], timed: set[str], spices: set[str]
) -> tuple[str, list[str]]:
    """A step with its brackets, and the changed foods that it names; `timed` have had their time told.

    A plural is no spice: `peppers` beside black pepper are the vegetable.
    """
    found: dict[str, None] = {}
    text, done, head = "", 0, ""
    hot = bool(_HOT.search(step))
    for _, end, told in spans_in(step, names):
        meant = told - spices if step[:end].endswith("s") else told
        foods = [food for food in sorted(meant) if food in changed]
        if not foods:
            continue
        found |= dict.fromkeys(foods)
        # `spring onions`, of which the whites become greens too: what stays is what takes its place.
        stays = meant - {foods[0]} - {one.food for one in changed[foods[0]].to}
        now = "" if stays else _now(changed[foods[0]], step[done:end])
        change = changed[foods[0]]
        soaked = bool(change.not_soaked and _SOAKS.search(step)) and not _COOKS.search(step)
        if now and soaked and foods[0] not in timed:
            timed.add(foods[0])
            head = f"[Instead of soaking: {change.not_soaked}.] "
        elif now and hot and change.heat and foods[0] not in timed:
            timed.add(foods[0])
            now = f"{now}: {change.heat}"
        elif (
            now and change.not_browned and change.not_browned not in text and _is_browned(step, end, change.not_browned)
        ):
            now = f"{now}: {change.not_browned}"
        if now:
            text += f"{step[done:end]} [{now}]"
            done = end
    return head + text + step[done:], list(found)


def _is_browned(step: str, end: int, how: str) -> bool:
    """Whether the sentence around a name fries it until golden, or longer than green tops bear."""
    start = max((one.end() for one in _SENTENCE_ENDS.finditer(step, 0, end)), default=0)
    stop = _SENTENCE_ENDS.search(step, end)
    sentence = step[start : stop.start() if stop else len(step)]
    return bool(_BROWNS.search(sentence) or (how.startswith(_A_MINUTE) and _SOFTENS.search(sentence)))


def _on_time(change: Change, steps: Sequence[str], food: str, names: Names) -> Change:
    """The change without its `begin earlier` where the steps heat it as long anyhow, from where it goes in."""
    late = next((found for part in _parts(change.how) if (found := _LATE.search(part))), None)
    if late is None:
        return change
    for number, step in enumerate(steps):
        ends = [end for _, end, meant in spans_in(step, names) if food in meant]
        if ends:
            rest = f"{step[ends[0] :]} . {' '.join(steps[number + 1 : number + 2])}"
            heated = [_minutes(one) for one in _SENTENCE_ENDS.split(rest) if _HOT.search(one)]
            if sum(heated) >= int(late[1]):
                how = "; ".join(part for part in _parts(change.how) if not _LATE.search(part))
                return change.model_copy(update={"how": how, "heat": ""})
            break
    return change


def _minutes(text: str) -> int:
    return sum(int(found[1]) * (60 if found[2].lower().startswith("h") else 1) for found in _TIME.finditer(text))


def _now(change: Change, before: str) -> str:
    """What a food is now, with its amount where the step says one; nothing where the step holds as it is."""
    told = _AMOUNT.search(before)
    if change.change in {"less", "weigh"}:
        return " + ".join(change.lines) if told else ""
    if change.change == "out":
        return "left out"
    return " and ".join(line if told else _bare(line) for line in change.lines)


def _bare(line: str) -> str:
    """A line without its amount and how it is cut."""
    halves = ", in halves" if ", in halves" in line else ""
    return _MEASURED.sub("", _TAIL.split(line)[0]) + halves


def _note(name: str, steps: Sequence[int], change: Change, listed: set[str]) -> str | None:
    numbers = ", ".join(map(str, steps))
    # Of what another line lists too the list gives all of it: an amount here would be another one.
    lines = [_bare(line) if one.food in listed else line for one, line in zip(change.to, change.lines, strict=False)]
    lines += change.lines[len(change.to) :]
    instead = f"use {' and '.join(lines)}" if lines else "it is left out"
    how = "".join(f" {part[:1].upper()}{part[1:]}." for part in _parts(change.how))
    if change.change in {"less", "weigh"}:
        return None
    if not steps:
        return f"For {name} {instead}.{how}" if how else None
    head = f"Step {numbers} names" if len(steps) == 1 else f"Steps {numbers} name"
    return f"{head} {name}: {instead}.{how}"


def _told_of(change: Change, steps: str, whole: bool) -> Change:
    """The change without what is said of an oven, of nuts and fruit of blending, that no step does; nothing twice."""
    kept: list[str] = []
    for part in [_in_use(one, steps) if whole else one for one in _parts(change.how)]:
        if not part or (_IN_THE_OVEN.search(part) and not _IN_THE_OVEN.search(steps)):
            continue
        if not any(part.casefold() in other.casefold() for other in kept):
            kept = [other for other in kept if other.casefold() not in part.casefold()]
            kept.append(part)
    return change.model_copy(update={"how": "; ".join(kept)})


def _in_use(how: str, steps: str) -> str:
    """What is said of blending, mashing or a batter only where the steps speak of it too."""
    uses = {found.casefold() for found in _USES.findall(steps)}
    kept = [one for one in how.split(", ") if {found.casefold() for found in _USES.findall(one)} <= uses]
    return ", ".join(kept)


def _twice(adapted: Adapted) -> set[str]:
    """Foods that take the place of more than one line."""
    to = [one.food for change in adapted.changes for one in change.to]
    return {food for food in to if to.count(food) > 1}


def _parts(how: str) -> Iterator[str]:
    yield from (part.strip().rstrip(".") for part in how.split(";") if part.strip())
