"""The title of a recipe after its changes: it names nothing that is no longer in the dish."""

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal

from calmlarder.adapt.dish import is_made_anew
from calmlarder.adapt.model import Adapted, Change
from calmlarder.adapt.names import spans_in, with_last_words
from calmlarder.adapt.told import Told
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.matching.names.words import singular, words_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

# Of these another of the kind is called alike: nobody writes which pasta it is into a title.
_ALIKE = frozenset({"pasta", "noodle", "bread", "milk", "cream", "yoghurt", "flour", "pepper", "mushroom", "wrap"})
_BY_SORT = frozenset({"mushroom", "bread", "wrap", "noodle"})  # of these a title that names a sort names the new one
# How a food is sold, and which part of it is meant: a title leaves it out.
_STATES = frozenset({
    "dry", "dried", "canned", "boiled", "cooked", "fresh", "raw", "frozen", "firm", "greens", "whites", "common",
    "tinned", "drained", "syrup",
})  # fmt: skip

_SORTS = frozenset({"rye", "spelt", "wholemeal", "wholewheat", "barley", "semolina"})
_SO_MANY_BEANS = re.compile(r"\b(?:two|three|four|five|six|seven|[2-7])[- ](?=beans?\b)", re.IGNORECASE)
_DAL = re.compile(r"\b(?:da+h?ls?|dhals?)\b", re.IGNORECASE)
_IN_BRACKETS = re.compile(r"\s*\([^()]*\)")
_AND_BEFORE = re.compile(r"\s+(?:and|&)\s+(?:[a-z]+ )?$")
_SORT_BEFORE = re.compile(r"\b([a-z]+) $", re.IGNORECASE)
_AND_BEHIND = re.compile(r"\s*(?:,|&|\band)\s*$")


def retitled(title: str, reads: Sequence[IngredientRead], adapted: Adapted, told: Told, tables: Tables) -> str:
    """The title with what took the place of a food that it names; as it was where that is still there."""
    stays = {one.food for change in adapted.changes for one in change.to}
    stays |= {
        read.food
        for place, read in enumerate(reads)
        if read.food and all(change.place != place for change in adapted.changes)
    }
    several = _SO_MANY_BEANS.search(title)
    if several and any(tables.food_by_id[food].kind == "pulse" for food in stays):
        title = f"{title[: several.start()]}{title[several.end() :]}"  # of three kinds there may be two now
        title = f"{title[:1].upper()}{title[1:]}"
    title = _without_brackets(title, {food for food, _ in _gone(reads, adapted, told)} - stays, tables)
    for food, change in _gone(reads, adapted, told):
        kind = tables.food_by_id[food].kind
        if kind == "stock" or (several and kind == "pulse"):
            continue  # a broth is one still
        if food in stays:
            title = _with_the_larger(title, food, change, tables)
        else:
            title = _without(title, tables.food_by_id[food], change, tables)
        title = _in_one_name(title, change, tables)
    return _without_a_sort(title, reads, adapted)


def _in_one_name(title: str, change: Change, tables: Tables) -> str:
    """The title without a comma through a name that came in: no `oyster, mushroom risotto` is of oyster mushrooms."""
    for one in change.to:
        words = tables.food_by_id[one.food].name.split()
        if len(words) == 2:
            first, last = re.escape(words[0]), re.escape(_singular(words[1]))
            title = re.sub(rf"\b({first})(?:,| and| &) (?={last})", r"\1 ", title, flags=re.IGNORECASE)
    return title


def _without_brackets(title: str, gone: set[str], tables: Tables) -> str:
    """The title without a bracket that names what is gone: `Tarka dal (toor & masoor)`."""
    names = with_last_words(gone, tables)
    return _IN_BRACKETS.sub(lambda one: "" if any(spans_in(one[0], names)) else one[0], title).strip() or title


def _without_a_sort(title: str, reads: Sequence[IngredientRead], adapted: Adapted) -> str:
    """The title without the sort of a flour or bread that is gone (`Rye pancakes`), where no line says it any more."""
    gone = {change.place: change for change in adapted.changes if change.change in {"swap", "out"}}
    stay = " ".join(read.text for place, read in enumerate(reads) if place not in gone)
    now = f"{stay} {' '.join(line for change in gone.values() for line in change.lines)}".casefold()
    for change in gone.values():
        for sort in _SORTS & set(words_of(change.ingredient)) - set(words_of(now)):
            title = re.sub(
                rf"\b{sort}(?:[ -](?:flour\b|and\b|&))?[ -]+(?=[a-z])", "", title, count=1, flags=re.IGNORECASE
            )
    return f"{title[:1].upper()}{title[1:]}"


def heading_after(heading: str, gone: Sequence[tuple[str, Change]], tables: Tables) -> str:
    """The heading of a part of the list with what took the place of a food that it names: `Pineapple slaw`.

    `gone` are the foods of the lines below it that are not there any more. What was garlic and is oil tastes of it.
    """
    for food, change in gone:
        row = tables.food_by_id[food]
        oils = bool(change.to) and all(tables.food_by_id[one.food].kind == "oil" for one in change.to)
        if change.change == "swap" and not oils:
            heading = _without(heading, row, change, tables)
    return heading


def _with_the_larger(title: str, food: str, change: Change, tables: Tables) -> str:
    """The title with what there is more of now than of the food that it names and that stays in part."""
    own = sum((one.grams for one in change.to if one.food == food), Decimal(0))
    more = [tables.food_by_id[one.food] for one in change.to if one.grams > own > 0 and one.food != food]
    spans = list(spans_in(title, with_last_words({food}, tables)))
    if not more or not spans or more[0].is_staple or more[0].kind == tables.food_by_id[food].kind in _ALIKE:
        return title
    start, end, _ = spans[0]
    if _DAL.fullmatch(title[start:end]) and more[0].kind == "pulse":
        return title  # any pulse makes one
    said = set(words_of(title))
    name = _short(more[0], set())
    if set(words_of(name)) & said:
        return title
    name = _singular(name) if title[end:].strip() else name
    name = name if _is_a_sentence(title, start) else _as_written(name, title[start:end], title)
    if start == 0 and not _has_capitals(title):
        title, end = f"{title[:1].lower()}{title[1:]}", end
    joined = _AND_BEHIND.search(title[:start])
    behind = re.match(r"\s*(?:&|and\b)", title[end:])
    head = f"{title[: joined.start()]}, " if joined and joined[0].strip() else title[:start]
    return f"{head}{name}{', ' if behind else ' and '}{title[start:end]}{title[end:]}"


def _gone(reads: Sequence[IngredientRead], adapted: Adapted, told: Told) -> Iterator[tuple[str, Change]]:
    for change in adapted.changes:
        food = reads[change.place].food if change.place is not None else None
        if food is not None and change.change in {"swap", "out"} and told.is_titled(food):
            yield food, change


def _without(title: str, food: Food, change: Change, tables: Tables) -> str:
    foods = [tables.food_by_id[one.food] for one in change.to]
    # The sugar that goes with the rhubarb is in no title.
    instead = foods[:1] + [one for one in foods[1:] if not one.is_staple]
    if is_made_anew(food, foods):
        return title
    if _DAL.search(title) and any(one.kind == "pulse" == food.kind for one in instead):
        return title  # any pulse makes one
    # A recipe's own word for it may be a shorter one than the tables have (`barley`).
    spans = list(spans_in(title, with_last_words({food.id}, tables)))
    if not spans or any("-free" in one.name for one in instead):
        return title  # lactose-free curd does ricotta's work and is called so
    start, end, _ = spans[0]
    called_so = _SORT_BEFORE.search(title[:start]) if food.kind == "mushroom" else None
    if called_so and any(name.startswith(f"{called_so[1].casefold()} ") for name in tables.names_of(food.id)):
        start = called_so.start()
    if any(one.kind == food.kind and food.kind in _ALIKE for one in instead):
        called = set(words_of(f"{food.kind} {' '.join(one.name for one in instead)} {' '.join(change.lines)}"))
        said = set(words_of(title[start:end]))
        sort = said - {food.kind} if food.kind == "mushroom" else said  # chestnut mushrooms are no oyster mushrooms
        if food.kind not in _BY_SORT or (sort or said) & called:
            return title
    word = title[start:end]
    if not instead:
        return f"{title} without {word.lower()}"
    rest = set(words_of(f"{title[:start]} {title[end:]}"))
    short = [_short(one, rest) for one in instead]
    before = _AND_BEHIND.sub("", title[:start])
    if before != title[:start] and all(set(words_of(one)) <= rest for one in short):
        head, comma, last = before.rpartition(", ")  # `lentil, quinoa and quinoa tray`
        return f"{head}{' and ' if comma else ''}{last}{title[end:]}"
    more = re.match(r"\s*(?:&|and\b)", title[end:])
    listed = re.match(r"\s*(?:,|&|and\b)", title[end:]) and title.rstrip(" .!").endswith("s")
    listed = listed or (
        title[end : end + 1] == "," and instead[0].kind == "pulse"
    )  # `with chickpeas, cabbage and pasta`
    if title[end:].strip() and not listed:
        short = [_singular(one) for one in short]  # `carrot curry`
    new = ", ".join(short) if more else " and ".join(short)
    if food.kind != "mushroom" and set(words_of(word)) & set(words_of(new)):
        own, now = words_of(word), words_of(new)
        another_sort = len(own) > 1 and len(instead) == 1 and own[-1] == now[-1] and not set(own) <= set(now)
        if not another_sort:
            return title  # `silken tofu`, of which the sort is gone, is tofu still
    joined = _AND_BEFORE.search(title[:start])
    if joined and len(short) > 1:  # `sausage, chickpea and potato casserole`
        first = title[: joined.start()]
        return f"{first}, {_as_written(new, word, title)}{title[end:]}"
    new = new.upper() if word.isupper() else _as_written(new, word, title)
    before, behind = title[:start], title[end:]
    if (before.casefold().split() or [""])[-1] == new.casefold():
        return f"{before.rstrip()}{behind}"  # no `banana banana loaf`
    return f"{before}{new}{behind}"


def _is_a_sentence(title: str, start: int) -> bool:
    """Whether a title has small letters but for its first word, and a name at `start` is not that word."""
    return start > 0 and title[start : start + 1].islower()


def _singular(words: str) -> str:
    *first, last = words.split()
    return " ".join([*first, singular(last)]) if last[-1:] == "s" else words


def _has_capitals(title: str) -> bool:
    """Whether the words of a title are written with capitals, and not its first one alone."""
    rest = re.findall(r"[^\W\d_]{4,}", title)[1:]
    return bool(rest) and 2 * sum(word[:1].isupper() for word in rest) >= len(rest)


def _as_written(new: str, word: str, title: str) -> str:
    """A new name with capitals where the title has them in that place."""
    if not word[:1].isupper():
        return new
    return _capital(new) if _has_capitals(title) else f"{new[:1].upper()}{new[1:]}"


def _capital(words: str) -> str:
    return " ".join(word if word == "and" else word[:1].upper() + word[1:] for word in words.split())


def _short(food: Food, said: set[str]) -> str:
    """What a title calls a food, without what it says already (`risotto rice` in a risotto)."""
    words = [word for word in food.name.split() if word.casefold() not in _STATES and not said & set(words_of(word))]
    stateless = [word for word in food.name.split() if word.casefold() not in _STATES]
    return re.sub(r"\s*\(.*\)", "", " ".join(words or stateless)) or food.name
