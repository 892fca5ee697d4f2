"""Notes behind the steps: which of them name a changed food, what to use, and how it is treated there."""

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal

from calmlarder.adapt.in_words import short_name
from calmlarder.adapt.model import Adapted, Amount, Change
from calmlarder.adapt.step_numbers import numbered
from calmlarder.adapt.written import written
from calmlarder.and_list import and_list
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

IN_THE_OVEN = re.compile(
    r"\b(?:(?<!dutch )oven|bak(?:e|ed|ing)(?! (?:powder|soda))|roast\w*|tray|grill\w*)\b", re.IGNORECASE
)
_OVEN_SAID = re.compile(r"; in the oven it needs only \d+ minutes", re.IGNORECASE)
OVEN_TIME = re.compile(r"^in the oven it needs only (\d+) minutes$", re.IGNORECASE)
_FRIES = re.compile(
    r"\b(?:soft\w*|sweat\w*|fry|fried|frying|saut\w+|sizzl\w*|golden|brown\w*|pan|wok|cook\w*)\b", re.IGNORECASE
)
_SOFTENED = re.compile(r"^soften first\b", re.IGNORECASE)
_MEASURED = re.compile(
    r"^\d[\d\s./]*(?:kg|g|ml|litres?|liters?|l|tsp|tbsp|tablespoons?|teaspoons?|cups?|pinch(?:es)?)?\s+"
    r"(?:\((?:about )?\d+ ?(?:ml|g)\)\s+)?(?=[^\W\d])"
)
_TAIL = re.compile(r",(?! \w+ or \w)")  # not within `without wheat, onion or garlic`
_METHODS = re.compile(r"^(?:(?:roast|steam|stir-fry|grill|bake|boil|braise|mash)(?:, | or )?)+(?=\W|$)", re.IGNORECASE)
_LATE_IN_THE_POT = re.compile(r"^it needs no soaking and no long boiling: leave those steps out and add it.*")
_SIMMERS = re.compile(r"\b(?:simmer|boil|cook|stew)\w*", re.IGNORECASE)
_STARTS_THE_PAN = re.compile(r"^(?:fry it first|start the pan with it|fry in it)\b", re.IGNORECASE)
_A_FEW_MORE = re.compile(r"give it a few minutes more$", re.IGNORECASE)
_AN_EGG_MORE = "want an egg more"
_BINDS = re.compile(r"\b(?:batter|dough|knead\w*)\b", re.IGNORECASE)
_AT_THE_END = re.compile(r"^stir it in at the end", re.IGNORECASE)
_USES = re.compile(r"\b(?:soak|blend|mash|batter|scramble|toast)", re.IGNORECASE)
_EATEN_WHOLE = frozenset({"nut", "fruit", "dried-fruit", "tofu"})
_OF_A_STAND_IN = re.compile(r"(?P<now>[^:.]+?) for (?P<old>[^:.]+?)(?P<where> \(steps? [\d, ]+\)): (?P<how>.+)")
_FOR_A_FOOD = re.compile(r"For (?P<old>[^:.]+?) use (?P<now>[^:.]+?)(?P<where>)\. (?P<how>.+)")
# Of a part whose other parts say how, and what a list or a step says as well.
_SAID = frozenset({
    "with it", "sliced", "in thin slices", "in small pieces", "in the wok", "grated into it", "in a wok",
    "for batters, bakes and marinades", "raw", "raw or grilled",
})  # fmt: skip
_DISHES = r"(?:stews?|soups?|curries|salads?|sauces?|mash|florets)"
_ONLY_USES = re.compile(
    r"(?:(?:diced|grated|sliced),? )?(?:(?:roast|steam|stir-fry|grill|bake|boil|braise|mash|simmer)(?:,| or)? ?)*"
    rf"(?:(?:or )?in {_DISHES}(?:(?:,| and| or) (?:in )?{_DISHES})*)?"
)
_RINSES = re.compile(r"drain(?:,| and) rinse\b(?:, simmer shortly| well)?", re.IGNORECASE)
_RINSED = re.compile(r"drained(?:,| and) rinsed|\bcanned\b")  # so its line says


def bare(line: str) -> str:
    """A line without its amount and how it is cut."""
    halves = ", in halves" if ", in halves" in line else ""
    return _MEASURED.sub("", _TAIL.split(line)[0]) + halves


def amount_of(line: str) -> str:
    """The amount at the head of a line as the program writes it; empty where it has none."""
    found = _MEASURED.match(line)
    return found[0].strip() if found else ""


def parts_of_how(how: str) -> Iterator[str]:
    """What is said of a stand-in, one thing at a time."""
    told = (part.strip().rstrip(".") for part in how.split(";"))
    yield from (part for part in told if part and part not in _SAID)


def told_where_used(change: Change, steps: str, everywhere: str, food: Food) -> Change:
    """The change without what is said of an oven, a pan, a blender that no step which names the food speaks of.

    `steps` are those that name it, `everywhere` all of them. Nothing is said twice.
    """
    kept: list[str] = []
    for part in parts_of_how(change.how):
        one = _in_use(part, steps or everywhere) if food.kind in _EATEN_WHOLE else part
        if _LATE_IN_THE_POT.match(one) and not _SIMMERS.search(steps):
            one = "it needs no soaking"  # it is blended, or baked
        if _AN_EGG_MORE in one and not _BINDS.search(everywhere):
            continue
        if not one or _ONLY_USES.fullmatch(one) or _is_elsewhere(one, steps, everywhere):
            continue
        if not any(one.casefold() in other.casefold() for other in kept):
            kept = [other for other in kept if other.casefold() not in one.casefold()]
            kept.append(one)
    return change.model_copy(update={"how": "; ".join(kept)})


def without_oven_times(adapted: Adapted, steps: Sequence[str]) -> Adapted:
    """The changes without how long a thing is in the oven, where no step has the dish there."""
    if not steps or any(map(IN_THE_OVEN.search, steps)):
        return adapted
    changes = tuple(
        one.model_copy(update={"why": _OVEN_SAID.sub("", one.why), "how": _OVEN_SAID.sub("", one.how)})
        for one in adapted.changes
    )
    return adapted.model_copy(update={"changes": changes})


def _is_elsewhere(how: str, steps: str, everywhere: str) -> bool:
    """Whether it is said of a way to cook that the food does not meet here."""
    if _AT_THE_END.match(how) and steps and not _SIMMERS.search(steps):
        return True
    where = steps or everywhere
    baked, fried = bool(IN_THE_OVEN.search(where)), bool(_FRIES.search(where))
    if OVEN_TIME.search(how):
        return not baked or fried
    if _STARTS_THE_PAN.match(how) and steps and not fried:
        return not how.casefold().startswith("fry in it, or")  # a marinade, where nothing is fried
    if _A_FEW_MORE.search(how) and steps and fried:
        return True  # the step's own minutes are those of the greens
    if _SOFTENED.search(how):
        return bool(steps) or (baked and not fried)  # where it is fried the step says so, in its own minutes
    methods = _METHODS.match(how)
    if methods and steps:
        return not any(
            one[:4] in steps.casefold() for one in re.findall(r"[a-z-]+", methods[0].casefold()) if one != "or"
        )
    return bool(IN_THE_OVEN.search(how)) and not IN_THE_OVEN.search(everywhere)


def _in_use(how: str, steps: str) -> str:
    """What is said of blending, mashing or a batter only where the steps speak of it too."""
    uses = {found.casefold() for found in _USES.findall(steps)}
    kept = [one for one in how.split(", ") if {found.casefold() for found in _USES.findall(one)} <= uses]
    return ", ".join(kept)


def note(name: str, steps: Sequence[int], change: Change, listed: set[str]) -> str | None:
    """The note of one changed food, None where there is nothing to say; `listed` stand in other lines too."""
    if change.change in {"less", "weigh", "more"}:
        return None
    # Of what another line lists too the list gives all of it: an amount here would be another one.
    lines = [bare(line) if one.food in listed else line for one, line in zip(change.to, change.lines, strict=False)]
    lines += change.lines[len(change.to) :]
    rinsed = any(map(_RINSED.search, change.lines))
    cut = " ".join(change.lines).casefold()
    how = [
        part
        for part in parts_of_how(change.how)
        if not (rinsed and _RINSES.fullmatch(part)) and part.casefold() not in cut
    ]
    told = ". ".join(f"{part[:1].upper()}{part[1:]}" for part in how)
    if not steps:
        if not lines:
            return f"No {name}: it is left out."
        return f"For {name} use {' and '.join(lines)}. {told}." if told else None  # the list says it
    where = f"step{'s' if len(steps) > 1 else ''} {', '.join(map(str, steps))}"
    if not lines:
        return f"No {name} ({where}): it is left out."
    others = [line for line in lines if short_name(bare(line)) != name]
    if others and len(others) < len(lines):  # some of it stays
        name, lines = f"some of the {name}", others
    instead = " and ".join(short_name(bare(line)) for line in lines)
    return f"{instead[:1].upper()}{instead[1:]} for {name} ({where}): {told}." if told else None


def notes_once(notes: Sequence[str]) -> list[str]:
    """The notes, of which several that say the same of one stand-in are one."""
    found: dict[tuple[str, str], list[re.Match[str]]] = {}
    for text in notes:
        one = _OF_A_STAND_IN.fullmatch(text) or _FOR_A_FOOD.fullmatch(text)
        key = (one["now"].casefold(), one["how"]) if one else (text, "")
        found.setdefault(key, []).extend([one] if one else [])
    told = []
    for key, same in found.items():
        if len(same) < 2:
            told.append(same[0][0] if same else key[0])
            continue
        where = next((one["where"] for one in same if one["where"]), "")
        now, old = same[0]["now"], and_list([one["old"] for one in same])
        told.append(f"{now[:1].upper()}{now[1:]} for {old}{where}: {key[1]}")
    return told


def notes_where_used(notes: Sequence[str], steps: Sequence[str]) -> list[str]:
    """The notes with the numbers of the steps that name what they tell of; none of what a step says itself."""
    told = []
    for text in notes:
        found = _OF_A_STAND_IN.fullmatch(text)
        names = [re.escape(one.casefold()) for one in re.split(r", | and ", found["now"])] if found else []
        named = re.compile(rf"\b(?:{'|'.join(names)})\b") if names else None
        at = [number for number, step in numbered(steps) if named and named.search(step.casefold())]
        told_of = {int(one) for one in re.findall(r"\d+", found["where"])} if found else set()
        at = [number for number in at if number in told_of] or at
        if found is None or not at:
            told.append(text)
            continue
        where = f" (step{'s' if len(at) > 1 else ''} {', '.join(map(str, at))})"
        how = ". ".join(one for one in found["how"].rstrip(".").split(". ") if not _is_said(one, names, steps))
        told += [f"{found['now']} for {found['old']}{where}: {how}."] if how else []
    return told


def _is_said(how: str, names: Sequence[str], steps: Sequence[str]) -> bool:
    """Whether a step puts it into the oven late, so that no note need say how long it bears."""
    late = rf"scatter the (?:{'|'.join(names)}) over|put in the (?:{'|'.join(names)}) for the last"
    return OVEN_TIME.match(how) is not None and any(re.search(late, step, re.IGNORECASE) for step in steps)


def oil_left(change: Change, own: Sequence[Amount], tables: Tables) -> str:
    """How much of a dish's one own oil is left where an infused one goes in too; else ""."""
    infused = sum((one.grams for one in change.to if tables.food_by_id[one.food].kind == "oil"), Decimal(0))
    if len(own) != 1 or not 0 < infused < own[0].grams:
        return ""
    oil = tables.food_by_id[own[0].food]
    return amount_of(written(oil, own[0].grams - infused, tables).line)
