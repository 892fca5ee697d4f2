"""What is remarked on an adapted recipe: labels to read, and where it cannot stay the dish that its title names."""

import re
from collections.abc import Sequence

from calmlarder.adapt import prices
from calmlarder.adapt.alliums import holds_allium
from calmlarder.adapt.dish import STRANDS, is_made_anew
from calmlarder.adapt.model import Adapted
from calmlarder.adapt.near import is_wheat_or_milk, near_share
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.told import Told
from calmlarder.and_list import and_list
from calmlarder.cookbook.in_company import TAKEN
from calmlarder.cookbook.recipe import IngredientRead, Recipe
from calmlarder.matching.names.words import words_of
from calmlarder.patterns.load import shipped_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.swaps.candidates import same_thing
from calmlarder.tables.book import Tables

_MANY_NAMES = frozenset({"bread", "wrap", "pasta", "noodle"})
_ASKS = "read the label"
_OF_MIXED_POWDERS = "mixed "  # such a note is of powders alone: cayenne and flakes are nothing but chilli
_POWDER = re.compile(r"\bpowders?\b", re.IGNORECASE)


def labels_to_read(reads: Sequence[IngredientRead], adapted: Adapted, tables: Tables) -> tuple[str, ...]:
    """One remark on what the dish holds in the end, with what its label may hide; nothing where no row says so."""
    changed = {change.place for change in adapted.changes}
    kept = [read.food for place, read in enumerate(reads) if place not in changed and read.outcome == "read"]
    new = [
        food for change in adapted.changes for food in (*(one.food for one in change.to), *change.unmeasured)
    ]  # fmt: skip
    # By the word that the recipe has for it now: a naan is in the list, not the pitta of the tables.
    names = {
        one.food: bare(line)
        for change in adapted.changes
        if change.change == "swap"
        for one, line in zip(change.to, change.lines, strict=False)
        if tables.food_by_id[one.food].kind in _MANY_NAMES
    }
    told = {}
    powders = {read.food for place, read in enumerate(reads) if place not in changed and _POWDER.search(read.text)}
    for food in dict.fromkeys([*kept, *new]):
        row = tables.food_by_id.get(food or "")
        note = next((part.strip() for part in row.note.split(";") if _ASKS in part), "") if row is not None else ""
        if row is not None and note and (food in powders or not note.startswith(_OF_MIXED_POWDERS)):
            told[names.get(row.id, row.name)] = note.replace(_ASKS, "").strip(" :,")
    for change in adapted.changes:
        if _ASKS in change.how.casefold() and change.change == "swap":
            held = {one.food: line for one, line in zip(change.to, change.lines, strict=False)}
            rows = (tables.food_by_id[food] for food in held if _ASKS in tables.food_by_id[food].note or len(held) == 1)
            for row in rows:
                told.setdefault(names.get(row.id, row.name), "")
    if not told:
        return ()
    named = "; ".join(f"{name} ({why})" if why else name for name, why in told.items())
    return (f"Read the label of: {named}.",)


_GREENS = "leek-green"
_MANY = 4  # leeks whose greens a dish takes before that is told: ours


def many_leeks(adapted: Adapted, tables: Tables) -> tuple[str, ...]:
    """One remark on how many leeks the greens of a dish come from, where they are many; else nothing."""
    grams = sum(one.grams for change in adapted.changes for one in change.to if one.food == _GREENS)
    of_one = next(
        (row.grams for row in tables.own_measures(tables.food_by_id[_GREENS]) if row.measure == "piece"), None
    )
    if of_one is None or grams < _MANY * of_one:
        return ()
    return (f"{float(grams):g} g of leek greens are those of about {round(grams / of_one)} leeks.",)


def taken_from_tins(reads: Sequence[IngredientRead]) -> tuple[str, ...]:
    """One remark on pulses of no state that were taken for tinned ones, since dry ones bring far more."""
    told = [read.text for read in reads if read.assumed == TAKEN]
    return (
        (f"Taken as canned and drained, since no step soaks it: {'; '.join(told)}. Dry, it brings far more.",)
        if told
        else ()
    )


def weigh_these(reads: Sequence[IngredientRead], adapted: Adapted, tables: Tables) -> tuple[str, ...]:
    """One remark on wheat and milk foods that stay and fill nearly all of a limit by themselves; else nothing."""
    changed = {change.place for change in adapted.changes}
    near = []
    for one in adapted.brought:
        food = tables.food_by_id.get(reads[one.place].food or "")
        amount = adapted.amounts.get(one.place)
        if food is None or amount is None or one.place in changed or not is_wheat_or_milk(food) or not one.limit_g:
            continue
        share = one.grams / one.limit_g
        if near_share(food) < share <= 1:
            near.append(f"{food.name}, no more than {float(amount.grams):g} g in all ({share:.0%} of its limit)")
    return (f"Weigh: {'; '.join(near)}.",) if near else ()


def out_all_the_same(adapted: Adapted, tables: Tables) -> tuple[str, ...]:
    """A remark where a dish that kept every limit changes for its onion and garlic alone; else nothing."""
    swapped = [change for change in adapted.changes if change.change == "swap"]
    foods = [
        adapted.amounts[one.place].food for one in swapped if one.place in adapted.amounts and one.place is not None
    ]
    if adapted.passed or adapted.status != "adapted" or not foods:
        return ()
    if not all(holds_allium(tables.food_by_id[food], tables) for food in foods):
        return ()
    return ("As written it keeps every limit; elimination does without onion and garlic all the same.",)


_WITH_ALLIUMS = re.compile(r" with (?:onions?|garlic)\b.*")  # no title says `kimchi with garlic`
_GRAINS = frozenset({"grain", "rice"})
_A_WORD = 4  # a word of the title in the pattern's counts as so many foods that it has a place for: ours


def another_dish(
    recipe: Recipe, reads: Sequence[IngredientRead], adapted: Adapted, told: Told, tables: Tables
) -> tuple[str, ...]:
    """A remark where nothing of what the title names stays, or no sane change was found; else nothing."""
    gone = []
    left = _left(reads, adapted, told, tables)
    for change in adapted.changes:
        food = reads[change.place].food if change.place is not None else None
        half = prices.LEAST_OF_A_MAIN * float(sum(one.grams for one in change.to))
        stays = {
            one.food
            for one in change.to
            if one.food == food or one.grams >= half or (food is not None and same_thing(one.food, food))
        }
        replaced = food is not None and change.change in {"swap", "out"} and told.is_titled(food)
        if food is not None and replaced and not _stays(food, stays | left, told, tables):
            gone.append(_WITH_ALLIUMS.sub("", tables.food_by_id[food].name))
    if not gone and adapted.status not in {"cannot", "open"}:
        return ()
    gone = list(dict.fromkeys(gone))
    head = f"It is named for {' and '.join(gone)}, which cannot stay: what comes out is another dish." if gone else ""
    if adapted.status == "cannot":
        head = " ".join(filter(None, (head, _carriers(reads, adapted, tables))))
    nearest = _nearest(recipe, reads, tables)
    # A word that names a food makes no dish: oat pancakes are not near an oat crumble.
    foods = {word for food in tables.foods for word in words_of(food.name)}
    if gone and not (set(words_of(recipe.title)) & set(words_of(nearest))) - foods:
        return (head,)
    return (f"{head} Nearest of the program's own dishes: {nearest}.".strip(),)


def _left(reads: Sequence[IngredientRead], adapted: Adapted, told: Told, tables: Tables) -> set[str]:
    """The pulses and mushrooms of the title that other lines keep: a chilli of three beans that keeps one is that."""
    gone = {change.place for change in adapted.changes if change.change in {"swap", "out"}}
    foods = {read.food for place, read in enumerate(reads) if place not in gone}
    foods |= {one.food for change in adapted.changes for one in change.to}  # some of it kept
    named = {tables.food_by_id[read.food].kind for read in reads if read.food and told.is_titled(read.food)}
    kinds = {food: tables.food_by_id[food].kind for food in foods if food}
    return {
        food
        for food, kind in kinds.items()
        if (kind == "pulse" and told.is_titled(food)) or (kind == "mushroom" and kind in named)
    }


_MOST_NAMED = 4  # foods that carry it: ours


def _carriers(reads: Sequence[IngredientRead], adapted: Adapted, tables: Tables) -> str:
    """What alone passes a limit, the furthest first, and that this need not stay so."""
    shares: dict[str, float] = {}
    for one in adapted.brought:
        food = tables.food_by_id.get(reads[one.place].food or "")
        if food is not None and one.limit_g and one.grams > one.limit_g:
            shares[food.name] = max(shares.get(food.name, 0.0), float(one.grams / one.limit_g))
    names = sorted(shares, key=lambda name: -shares[name])[:_MOST_NAMED]
    if not names:
        return ""
    carry = "carries" if len(names) == 1 else "carry"
    return f"Its {and_list(names)} {carry} more than one meal may bring; after your challenges some may fit again."


def _stays(food: str, stays: set[str], told: Told, tables: Tables) -> bool:
    kinds = {tables.food_by_id[one].kind for one in stays}
    if is_made_anew(tables.food_by_id[food], [tables.food_by_id[one] for one in stays]):
        return True
    kind = tables.food_by_id[food].kind
    if stays and (kind == "allium" or (kind == "spice" and holds_allium(tables.food_by_id[food], tables))):
        return True  # its taste stays: in oil, in the greens of leeks
    if kind in _GRAINS and kinds & _GRAINS:
        return True  # a salad of another grain
    strands = kind in STRANDS and bool(kinds & STRANDS)  # noodles that are pasta now are called noodles still
    return food in stays or any(map(told.is_titled, stays)) or kind in kinds or strands


def _nearest(recipe: Recipe, reads: Sequence[IngredientRead], tables: Tables) -> str:
    """The pattern with most places for the recipe's foods, and with words of its title."""
    words = set(words_of(recipe.title))
    foods = [tables.food_by_id[read.food] for read in reads if read.food is not None]

    def fit(pattern: Pattern) -> tuple[int, str]:
        named = len(words & set(words_of(pattern.id.replace("-", " "))))
        taken = sum(any(slot.takes(food) for slot in pattern.slots.values()) for food in foods)
        return taken + _A_WORD * named, pattern.id

    return max(shipped_patterns(), key=fit).id.replace("-", " ")
