"""What words that were not read for sure can mean at the worst, and whether they are harmless whatever they mean."""

from collections.abc import Iterable
from decimal import Decimal

from calmlarder.adapt.loads import LineLoad, under_each
from calmlarder.adapt.model import Amount, Eaters
from calmlarder.adapt.names import names_of_all, spans_in, with_last_words
from calmlarder.adapt.triggers import passes_alone
from calmlarder.cookbook.wording import is_prep
from calmlarder.intake.load import load_profile_of
from calmlarder.matching.names.notes import HARMLESS
from calmlarder.matching.names.words import words_of
from calmlarder.matching.part import SOFT
from calmlarder.tables.book import Tables

TIMES_USUAL = 10  # of what is named in passing ten usual amounts bring nothing that counts: ours
POWDERS = frozenset({"garlic-powder", "onion-powder"})  # onion and garlic as a spice
_GRAMS = Decimal(100)  # to hold foods against each other
# Words of remarks, which name no food. Ours.
_REMARK = frozenset(
    words_of(
        "i you he she we they it your his her our their my me us them this that these those there here who which what "
        "whatever whichever if when whenever unless until while because since as than then so but not no only just "
        "even also too very quite rather really maybe perhaps please is are was were be been am do does did have has "
        "had can could will would shall should may might must need want like love prefer use get got take make go "
        "goes going come put keep give add any some all every each both either neither none more most less least much "
        "many few enough plenty extra other another same such at by on off up down out over under for from in into of "
        "to with without about around after before between through during near and or plus first second third last "
        "next again ever never always often sometimes usually wants needs needed wanted wish fancy posh flush "
        "favourite favorite choice option hand way side day night week time thing stuff kind sort type size amount "
        "handful pinch bit lot couple pair shot glug dash knob fistful mugful packet sachet tub "
        "water bottom pan pot fridge freezer cupboard garden bone"
    )
)


def matters(food: str, eaters: Eaters, tables: Tables) -> bool:
    """Whether a food may bring something: its figures are not known, or several times what is usual pass a limit."""
    return bool(tables.unknown_of(food)) or passes_alone(food, eaters, tables, TIMES_USUAL)


def worst_of(foods: Iterable[str], eaters: Eaters, tables: Tables) -> str | None:
    """Of foods that may be meant the one that brings most; None where another brings more of something else.

    What brings nothing that counts in ten usual amounts is left aside.
    """
    found = [food for food in dict.fromkeys(foods) if food in tables.food_by_id]
    if not found or any(tables.unknown_of(food) for food in found):
        return None
    shares = {food: _shares(food, eaters, tables) for food in found}
    worst = max(found, key=lambda food: max(shares[food].values(), default=Decimal(0)))
    for food in found:
        more = any(share > shares[worst].get(key, Decimal(0)) for key, share in shares[food].items())
        if more and matters(food, eaters, tables):
            return None
    return worst


def passing_of(foods: Iterable[str], eaters: Eaters, tables: Tables) -> str | None:
    """Of foods that may be meant the one that fills a limit most, where what is usual of it passes that; else None."""
    found = [food for food in dict.fromkeys(foods) if food in tables.food_by_id and not tables.unknown_of(food)]
    most = max(found, key=lambda food: max(_shares(food, eaters, tables).values(), default=Decimal(0)), default=None)
    return most if most is not None and passes_alone(most, eaters, tables) else None


def _shares(food: str, eaters: Eaters, tables: Tables) -> dict[str, Decimal]:
    """How much of each limit a hundred grams of a food may fill."""
    row = tables.food_by_id[food]
    amount = Amount(food=food, grams=_GRAMS, high=_GRAMS, weighed=True)
    shares: dict[str, Decimal] = {}
    for _, cap, under in under_each(LineLoad(row, amount, load_profile_of(row, tables)), eaters.limits):
        share = Decimal(under.likely + under.off) / cap.typical_g
        shares[cap.key] = max(share, shares.get(cap.key, Decimal(0)))
    return shares


def named_in(text: str, tables: Tables) -> list[tuple[int, int, frozenset[str]]]:
    """Where a text names foods, and all that each name may mean; the last word of a food's name names it, too."""
    words = set(words_of(text))
    ending = {food.id for food in tables.foods if words & set(words_of(food.name)[-1:])}
    return list(spans_in(text, {**with_last_words(ending, tables), **names_of_all(tables)}))


def is_harmless(text: str, choices: Iterable[str], eaters: Eaters, tables: Tables) -> bool:
    """Whether a line brings nothing that counts, whatever it means: ten usual amounts of all that it may name.

    `choices` are names of what its reader took it for. A word that is in no name and is no plain word of a kitchen may
    be anything, so that nothing is said of its line.
    """
    told = f"{text} . {' . '.join(choices)}"
    spans = named_in(told, tables)
    if not spans or any(matters(food, eaters, tables) for _, _, meant in spans for food in meant):
        return False
    rest = told
    for start, end, _ in reversed(spans):
        rest = f"{rest[:start]} {rest[end:]}"
    return all(is_plain_word(word) for word in words_of(rest))


def is_plain_word(word: str) -> bool:
    """Whether a word is of measures, of what is done to food, or of remarks, so that it names none."""
    return not word.isalpha() or word in SOFT or word in HARMLESS or word in _REMARK or is_prep(word)
