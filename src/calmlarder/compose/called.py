"""What a food is called in a dinner: where one row stands for many sorts, the cook's own word for it."""

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from rapidfuzz import fuzz

from calmlarder.compose.solve import Use
from calmlarder.larder.with_bones import is_whole_fish
from calmlarder.matching.names.words import singular
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

# Kinds of which one row stands for several sorts: a hake is no haddock to whoever bought it.
_SORTS = frozenset(
    {"fish", "oil", "leaf", "pod", "brassica", "pepper", "squash", "fruit-vegetable", "root", "stem", "cheese"}
)
_SLIP = 85  # of 100 alike
# Polenta, grits; broad noodles, vermicelli; legs, thighs; jeera; a bacon joint, gammon
_SORTED_FOODS = frozenset({"chicken-drumsticks", "cumin", "polenta-dry", "pork-shoulder", "rice-noodles-dry"})
_VESSEL = re.compile(
    r"\b(?:tin|can|jar|pack|bag|box)(?:e?s)?$|^(?:tin|can|jar|pack|bag|box) |\bsoaking\b"
)  # `tuna tin` is what it came in, and soaking what is done with it
_FILLET = " fillet"  # no word for a fish that is whole
_OIL = "oil"
_FISH = "fish"
_THIN = "vermicelli"  # of rice noodles told apart, since they are soaked and not boiled


def as_called(uses: Iterable[Use], tables: Tables) -> Mapping[str, Food]:
    """The foods of a dinner by id, under the name that their lines give them, where all lots of one have the same."""
    lines: dict[str, list[str]] = {}
    foods: dict[str, Food] = {}
    for use in uses:
        food = use.option.offered.food
        foods[food.id] = food
        lines.setdefault(food.id, []).append(use.option.offered.lot.line.lower())
    called = {key: _called(food, lines[key], tables) for key, food in foods.items()}
    shared = Counter(food.name for food in called.values())  # `2 peppers, red and yellow` is no name for either
    return {key: foods[key] if shared[food.name] > 1 else food for key, food in called.items()}


def name_said(food: Food, line: str, tables: Tables) -> str:
    """What one line calls its food."""
    return _called(food, [line.lower()], tables).name


def _called(food: Food, lines: Iterable[str], tables: Tables) -> Food:
    if food.kind not in _SORTS and food.id not in _SORTED_FOODS and not _is_group(food):
        return food
    names = {_name_in(food, line, tables) for line in lines}
    if len(names) > 1 and food.kind == _FISH and _is_group(food):
        return food.model_copy(update={"name": _FISH})  # a rohu and a hilsa are no haddock
    name = names.pop()
    if food.id == "rice-noodles-dry" and _THIN not in (name or ""):
        return food
    return food if names or name is None else food.model_copy(update={"name": name})


def _name_in(food: Food, line: str, tables: Tables) -> str | None:
    """The longest other name of the food in the line; None where its own is there or no other.

    Part of its own name is no other, but for a group.
    """
    if _says(line, food.name):
        return None
    fish = food.name.removesuffix(_FILLET)
    if is_whole_fish(food, line) and fish in tables.names_of(food.id) and _says(line, fish):
        return fish
    own = _words(food.name)
    names = [name for name in tables.names_of(food.id) if _says(line, name) and not _VESSEL.search(name)]
    if food.kind == "oil":  # `extra virgin` is no word for it
        names = [name for name in names if _OIL in _words(name)]
    if not _is_group(food):
        # `spin` is no other name than spinach, and fillet is part of the fish that is there.
        names = [name for name in names if any(not _like(word, own) for word in _words(name))]
        names = [
            name
            for name in names
            if _joined(name) == _joined(food.name) or not any(_short_for(word, own) for word in _words(name))
        ]
        # A slip that the tables know (`brocolli`) is read, and not told.
        others = tables.names_of(food.id)
        names = [name for name in names if food.id in _SORTED_FOODS or not _slip_of_another(name, others)]
    longest = max(names, key=lambda name: (len(name), name), default=None)
    if longest is None:
        return None
    # `sardines fresh` is said as the tables say it first: fresh sardines; a word is never told in another number.
    same = (name for name in tables.names_of(food.id) if _words(name) == _words(longest))
    return next((name for name in same if all(word in line for word in name.lower().split())), None)


def _slip_of_another(name: str, names: Sequence[str]) -> bool:
    """Whether it is spelt nearly as a name that the tables say before it."""
    return any(fuzz.ratio(name, other) >= _SLIP for other in names[: names.index(name)])


def _like(word: str, own: set[str]) -> bool:
    """Whether a word is short for one of the food's own name, or the same with a slip: `broc`, `mackrel`."""
    return any(one.startswith(word) or fuzz.ratio(one, word) >= _SLIP for one in own)


def _joined(name: str) -> str:
    return name.replace(" ", "")


def _short_for(word: str, own: set[str]) -> bool:
    """Whether a word is one of the food's own name cut short."""
    return any(one.startswith(word) and one != word for one in own)


def _is_group(food: Food) -> bool:
    """Whether its own name is that of several sorts: `squid and octopus`."""
    return " and " in food.name


def _words(name: str) -> set[str]:
    return {singular(word) for word in name.lower().split()}


def _says(line: str, name: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(name.lower())}s?(?!\w)", line) is not None  # of one, or of several
