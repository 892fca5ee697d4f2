"""What a name in a step stands for now: one food, several by one word, a mixture called after it."""

import re
from collections.abc import Sequence

from calmlarder.adapt.collective import ALL_OF_THEM, SAID_BY_THE_LIST
from calmlarder.adapt.in_words import A_MIXTURE, A_PASTE, A_SAUCE, short_name
from calmlarder.adapt.step_names import late_among
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.things_now import LEFT_OUT, Told, all_replaced, is_oil, of_one, of_several, own_of, things_now
from calmlarder.and_list import and_list
from calmlarder.matching.names.words import words_of

_FRUIT, _STOCKS = words_of("fruit"), (words_of("stock"), words_of("broth"))
_WHOSE_STOCK = re.compile(r"^(?:vegetable|chicken|beef|lamb|veal|turkey|fish|bone|meat) ")
_FROM_TINS = re.compile(r"\b(?:tinned|canned|drained|rinsed)(?:,? (?:and )?(?:drained|rinsed))* $", re.IGNORECASE)
_ALL_OF = re.compile(r"\b(?:all|both|two|three|tins|cans)\b(?: (?:of|the|tins|cans))* $", re.IGNORECASE)
_SHORTER = re.compile(r"^leek greens$")
ELSE = re.compile(r" else\b")


def several_now(name: str, meant: frozenset[str], told: Told) -> tuple[str, list[str]]:
    """What a word for several foods (`the nuts`, `everything else`) stands for now, and which of them changed."""
    for which in (meant, meant - told.direct):
        if (pulses := _all_the_pulses(which, told, which < meant)) is not None:
            return pulses
    now, foods = of_several(meant - told.direct, meant, told)
    last = words_of(ELSE.sub("", name))[-1]
    if last in ALL_OF_THEM or (last in SAID_BY_THE_LIST and is_swapped(foods, told)):
        now = late_among(foods, told)
    elif _are_of_one_line(foods, told) and all(_is_called_so(food, last, told) for food in foods):
        now = late_among(foods, told)  # `all of the mushrooms` are those of the list, whatever their sort
    return now, foods


def _all_the_pulses(meant: frozenset[str], told: Told, some: bool = False) -> tuple[str, list[str]] | None:
    """All that `the beans` of several lines are now, those that stay and what takes the others' place; or None.

    `some` says that others of them are named elsewhere: of these all may be something else.
    """
    rows = told.tables.food_by_id
    if len(meant) < 2 or any(rows[food].kind != "pulse" or rows[food].state == "dry" for food in meant):
        return None
    swapped = [food for food in sorted(meant) if food in told.changed and told.changed[food].change == "swap"]
    several_lines = any(len(told.each.get(food, ())) > 1 for food in meant)
    if not swapped or (len(swapped) == len(meant) and not some) or several_lines:
        return None
    whole = {one.food for food in swapped for one in told.changed[food].to}
    names = [_own_name(food, told) for food in sorted(meant - set(swapped))]
    names += [short_name(now) for food in swapped for now in things_now(told.changed[food], "", told, whole)]
    return and_list([*dict.fromkeys(names)]), swapped


def _own_name(food: str, told: Told) -> str:
    """What the list calls a pulse that stays: `borlotti beans`."""
    change = told.changed.get(food)
    line = bare(change.lines[0]) if change is not None and change.lines else told.tables.food_by_id[food].name
    return short_name(line)


def _are_of_one_line(foods: Sequence[str], told: Told) -> bool:
    return len(foods) > 1 and len({told.changed[food].ingredient for food in foods}) == 1


def _is_called_so(food: str, word: str, told: Told) -> bool:
    """Whether all that takes a food's place is called by a word that several foods share, as it was."""
    change = told.changed[food]
    names = [told.tables.food_by_id[one.food].name for one in change.to]
    return change.change == "swap" and bool(names) and all(words_of(name)[-1:] == (word,) for name in names)


def one_now(step: str, span: tuple[int, int], meant: frozenset[str], before: str, told: Told) -> tuple[str, list[str]]:
    """What the name of one food stands for now, and which changed; `before` is the step since the last change.

    A plural is no spice: `peppers` beside black pepper are the vegetable.
    """
    start, end = span
    if step[:end].endswith("s") and len(words_of(step[start:end])) == 1:
        meant = frozenset(one for one in meant if told.tables.food_by_id[one].kind != "spice")
    if len(meant) > 1 and _FROM_TINS.search(step[max(0, start - 20) : start]):  # `the tinned beans` are no green ones
        meant = frozenset(one for one in meant if "canned" in told.tables.food_by_id[one].state) or meant
    others = meant - told.by_itself
    kinds = {told.tables.food_by_id[one].kind for one in meant - others}
    unlike = kinds.isdisjoint(told.tables.food_by_id[one].kind for one in others)
    one_left = len(others) == 1 < len(meant)
    if one_left and (unlike or (not step[:end].endswith("s") and all_replaced(meant, told))):
        meant = others  # `the onion`, where the red one is named so; `the apples` beside their sauce
    foods = [food for food in sorted(meant) if food in told.changed][:1]
    if all_replaced(meant, told):  # `the mushrooms`, of which two kinds stood in one line
        now, foods = of_several(meant, meant, told)
    else:
        now = of_one(foods[0], meant, before, told) if foods else own_of(meant, told)
    which = meant if _ALL_OF.search(step[max(0, start - 30) : start]) else meant - told.by_itself
    if not now and foods and (pulses := _all_the_pulses(which, told)) is not None:
        return pulses
    if words_of(step[start:end]) == _FRUIT and foods and is_swapped(foods, told):
        now = ""  # rhubarb and sugar are the fruit
    if words_of(step[start:end]) in _STOCKS:
        now = _WHOSE_STOCK.sub("", now)  # the step's own word holds
        if foods and foods[0] in told.marked and short_name(now) in {"stock", "broth"}:
            now = step[start:end]  # `the hot broth`, once it is in the pot
    return now, foods


def made_with_it(step: str, end: int, now: str, foods: Sequence[str], told: Told) -> tuple[str, int] | None:
    """What a mixture, a sauce or a paste is called after now, and where the step goes on; None where it is none."""
    if not foods:
        return None
    if now == LEFT_OUT and A_MIXTURE.match(step, end):
        return "", end + 1  # `the mixture`
    if now and A_MIXTURE.match(step, end) and now.endswith(" and sugar"):
        return now.removesuffix(" and sugar"), end  # `the rhubarb filling`
    if now and A_MIXTURE.match(step, end) and " and " not in now and not now[:1].isdigit():
        return _SHORTER.sub("leek", short_name(now)).removesuffix("s"), end  # `the leek mixture`
    if (sauce := A_SAUCE.match(step, end)) and not is_oil(foods[0], told) and told.changed[foods[0]].change == "swap":
        single = re.sub(r"^leek greens$", "leek", short_name(now)).removesuffix("s")
        return "" if " and " in now or now[:1].isdigit() else f"{single} ", sauce.end()  # `the honey sauce`
    if now and A_PASTE.match(step, end) and " and " not in now and not is_oil(foods[0], told):
        return short_name(now).removesuffix("s"), end  # `the leek green paste`
    return None


def is_swapped(foods: Sequence[str], told: Told) -> bool:
    """Whether each of them has something in its place, so that the word still means what the list has."""
    return all(told.changed[food].change == "swap" for food in foods)
