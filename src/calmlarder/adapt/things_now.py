"""What takes the place of a food where a step names it: one food, several by one word, part of its own line."""

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field

from calmlarder.adapt.line_words import BAKING_POWDER
from calmlarder.adapt.model import Change
from calmlarder.adapt.names import Names
from calmlarder.adapt.near_lines import Near
from calmlarder.adapt.step_notes import amount_of, bare
from calmlarder.adapt.step_shares import shared_out
from calmlarder.and_list import and_list
from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables

_AMOUNT = re.compile(
    r"\d(?:(?!\. )[\d\s./½¼¾-])*(?!\. )\s?(?:g|kg|ml|l|cups?|tbsp|tsp|tins?|cans?|cloves?)?\b[\w\s]{0,20}$"
)
_SEVERAL_AMOUNTS = re.compile(
    r"\d ?(?:g|kg|ml|l|cups?)? ?(?:[–-]| to ) ?\d|(?:\bplus|\+) (?:an? |another )?[\d½¼¾]", re.IGNORECASE
)  # `800ml–1 litre stock`, `1 cup flour, plus 1/4 cup for dredging`
LEFT_OUT = "left out"
_STAY = frozenset({"less", "weigh", "more"})


@dataclass(frozen=True)
class Told:
    """What the steps may name: `own` is how much of a food its line had, where more was put to it.

    `timed`, `measured` and `marked` fill up on the way: whose time and amount were told, what was named at all.
    """

    names: Names
    several: Names  # these go before `names`
    changed: Mapping[str, Change]
    shared: set[str]
    own: Mapping[str, str]
    tables: Tables
    direct: set[str]
    each: Mapping[str, Sequence[Change]]  # of a food that stands in several lines
    staying: Mapping[str, Sequence[str]]  # the lines of a changed food that stay
    headings: Mapping[str, str] = field(default_factory=dict)  # under which of the list a line stands
    near: Mapping[str, Sequence[Near]] = field(default_factory=dict)  # of those their neighbours
    here: dict[str, Change] = field(default_factory=dict)  # the line that the sentence at hand means
    introduced: frozenset[str] = frozenset()  # words of the parts that steps begin with: `For the dumplings, …`
    by_itself: frozenset[str] = frozenset()  # foods that some step names by a name of theirs alone: `the red onion`
    timed: set[str] = field(default_factory=set)
    measured: set[str] = field(default_factory=set)
    marked: set[str] = field(default_factory=set)
    soaked: set[str] = field(default_factory=set)
    joined: set[str] = field(default_factory=set)  # what went into a pot with other things, which cook on


def is_oil(food: str, told: Told) -> bool:
    """Whether nothing but oil takes a food's place."""
    to = told.changed[food].to
    return bool(to) and all(told.tables.food_by_id[one.food].kind == "oil" for one in to)


def of_one(food: str, meant: frozenset[str], before: str, told: Told) -> str:
    """What a name that means one changed food stands for now; nothing where the step holds as it is."""
    out = {one for one in meant if one in told.changed and told.changed[one].change == "out"}
    left = [told.tables.food_by_id[one].name for one in sorted(meant - out)]
    if out and left and all(name.endswith("greens") for name in left):
        return and_list(left)  # `spring onions`, of which the whites are out
    # `spring onions`, of which the whites become greens too: what stays is what takes its place.
    stays = meant - {food} - {one.food for one in told.changed[food].to}
    if stays:
        return ""
    change = of_its_line(food, before, told)
    alone = told.shared.isdisjoint(one.food for one in change.to)
    shares = shared_out(before, change, told.tables, len(meant) > 1, alone)
    return and_list(shares or things_now(change, before, told, meant))


def of_its_line(food: str, before: str, told: Told) -> Change:
    """The change of the line that calls the food as the step does, where several lines hold it."""
    lines = told.each.get(food, ())
    for word in reversed(words_of(before)[-2:]):  # the name itself may be the last
        called = [one for one in lines if len(lines) > 1 and word in words_of(one.ingredient)]
        if len(called) == 1:
            return called[0]
    return told.here.get(food) or told.changed[food]


def all_replaced(meant: frozenset[str], told: Told) -> bool:
    """Whether a word means several foods of which none stays as it was."""
    return len(meant) > 1 and all(one in told.changed and told.changed[one].change not in _STAY for one in meant)


def of_several(which: frozenset[str], meant: frozenset[str], told: Told) -> tuple[str, list[str]]:
    """What takes the place of those foods behind a word like `nuts` that no step names otherwise."""
    foods = [one for one in sorted(which) if one in told.changed and told.changed[one].change not in _STAY]
    if not foods:
        return "", []
    once = {one.food for food in foods for one in told.changed[food].to}
    once = {one for one in once if all(food in foods for food in _turned_into(one, told))}
    nows = {food: things_now(told.changed[food], "", told, once) for food in foods}
    if set(foods) == meant:
        words = dict.fromkeys(one for now in nows.values() for one in now if one != LEFT_OUT)
        return and_list([*words]) or LEFT_OUT, foods
    if len(foods) == 1 and all(one in told.changed and _all_into(one, foods[0], told) for one in meant):
        return and_list(nows[foods[0]]), foods
    said = [
        f"{told.tables.food_by_id[food].name} {LEFT_OUT}"
        if told.changed[food].change == "out"
        else f"{and_list(now)} for {told.tables.food_by_id[food].name}"
        for food, now in nows.items()
    ]
    return ", ".join(said), foods


def _all_into(one: str, other: str, told: Told) -> bool:
    """Whether the same takes the place of both, and of all of them."""
    own, its = ({to.food for to in told.changed[food].to} for food in (one, other))
    return own == its and one not in own and other not in its


def _turned_into(stand_in: str, told: Told) -> list[str]:
    """The foods of whose place a stand-in takes some."""
    return [food for food, change in told.changed.items() if any(one.food == stand_in for one in change.to)]


def own_of(meant: frozenset[str], told: Told) -> str:
    """How much of a food that stays a step means, where what takes another's place was put to its line."""
    food = next(iter(meant), "")
    if len(meant) > 1 or food not in told.own or food in told.measured:
        return ""
    told.measured.add(food)
    return f"{told.own[food]} of it"


def things_now(change: Change, before: str, told: Told, whole: Collection[str]) -> list[str]:
    """The things a food is now, with its amount where the step says one, or where its line holds another's too.

    Nothing where the step holds as it is. Of the foods in `whole` the step means all that there is.
    """
    # Of `500 ml of the milk` the line's own amount, another one, would be wrong.
    found = _AMOUNT.search(before)
    said = found is not None and found[0].split()[0] in change.ingredient
    said = said and not _SEVERAL_AMOUNTS.search(change.ingredient)  # of which the step says one
    if change.change in _STAY:
        return [" + ".join(change.lines)] if found else []
    if change.change == "out":
        return [LEFT_OUT]
    words = []
    for line, food in zip(change.lines, [one.food for one in change.to] or list(change.lines), strict=False):
        if food == BAKING_POWDER and told.marked & {one for one in told.changed if told.changed[one] is change}:
            continue  # it went in where the flour was named first
        mine = f"{food} for {change.place}"
        if food in told.shared and food not in whole and amount_of(line) and mine not in told.measured:
            told.measured.add(mine)
            words.append(f"{amount_of(line)} of the {bare(line)}")
        else:
            words.append(line if said else bare(line))
    return words
