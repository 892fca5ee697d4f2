"""What a food holds of the fourteen allergens, of meat, onion and garlic: from its parts, and from its name."""

import re
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import Annotated, Literal, NamedTuple

from pydantic import Field

from calmlarder.problems import Problem
from calmlarder.tables.cells import Row
from calmlarder.tables.csvfile import Line, header_of, read_csv
from calmlarder.tables.mixture import depths, parts_by_food
from calmlarder.tables.rows import Food, MixtureRow
from calmlarder.tables.vocabulary import ALLERGENS, DIETS, Allergen, Diet

Held = Literal[Allergen, "meat", "onion", "garlic"]
FILE = "words_that_mislead.csv"

# Words that tell what a food holds: the substances of Regulation (EU) No 1169/2011, Annex II, and common foods made
# of them. Singular; a word of a name counts without its plural `s` or `es` too.
_WORDS_OF: Mapping[Held, str] = {
    "gluten": (
        "gluten, wheat, wholewheat, wholemeal, rye, barley, oat, oatmeal, spelt, dinkel, farro, kamut, "
        "khorasan, einkorn, emmer, durum, triticale, bulgur, burghul, couscous, semolina, freekeh, "
        "seitan, malt, beer, ale, lager, bread, toast, baguette, pumpernickel, pitta, pita, naan, "
        "chapati, pasta, spaghetti, penne, macaroni, fusilli, farfalle, linguine, tagliatelle, rigatoni, "
        "fettuccine, pappardelle, bucatini, udon, soba, biscuit, cookie, cake, croissant, porridge, "
        "breadcrumb, panko, soy sauce, shoyu"
    ),
    "crustaceans": "crustacean, prawn, shrimp, crab, lobster, crayfish, langoustine, scampi, krill",
    "eggs": "egg, mayonnaise, mayo, meringue, omelette, frittata",
    "fish": (
        "fish, anchovy, cod, haddock, hake, halibut, herring, kipper, mackerel, plaice, pollock, salmon, "
        "sardine, tilapia, trout, tuna, roe, caviar, worcestershire, nam pla, nuoc mam"
    ),
    "peanuts": "peanut, groundnut, monkey nut, arachis, satay",
    "soya": ("soya, soy, soybean, soyabean, tofu, bean curd, tempeh, tempe, edamame, miso, natto, tamari, shoyu, tvp"),
    "milk": (
        "milk, milky, white coffee, dairy, butter, buttermilk, ghee, cream, cheese, curd, yoghurt, "
        "yogurt, dahi, kefir, whey, casein, quark, lassi, custard, latte, cappuccino, flat white, "
        "fromage, cheddar, mozzarella, parmesan, parmigiano, grana padano, feta, brie, camembert, gouda, "
        "edam, gruyere, halloumi, paneer, ricotta, mascarpone, stilton, roquefort, gorgonzola, emmental, "
        "doodh"
    ),
    "nuts": (
        "nut, almond, hazelnut, walnut, cashew, pecan, brazil, pistachio, macadamia, filbert, cobnut, "
        "marzipan, praline, frangipane"
    ),
    "celery": "celery, celeriac",
    "mustard": "mustard, dijon, sarson, piccalilli",
    "sesame": "sesame, tahini, tahina, gomasio, halva, til",
    "sulphites": "sulphite, sulfite, sulphur dioxide, wine, prosecco, champagne, sherry, vermouth, cider",
    "lupin": "lupin, lupini, tremoco",
    "molluscs": "mollusc, mussel, oyster, clam, squid, calamari, octopus, scallop, cockle, whelk, snail, abalone",
    "meat": (
        "meat, chicken, turkey, duck, beef, pork, lamb, mutton, veal, ham, bacon, lardon, sausage, "
        "gelatine, lard, mince"
    ),
    "onion": "onion, shallot, scallion, echalion, pyaz",
    "garlic": "garlic, lahsun, aioli",
}
WORDS: Mapping[Held, frozenset[str]] = MappingProxyType(
    {held: frozenset(words.split(", ")) for held, words in _WORDS_OF.items()}
)
_OF_ANIMALS: frozenset[Held] = frozenset({"crustaceans", "eggs", "fish", "milk", "molluscs", "meat"})
# Words that deny what the rest of a name tells of: `plant feta`, `vegetarian sausages`, `gf bread`.
_DENYING: Mapping[str, frozenset[Held]] = MappingProxyType(
    {
        "vegan": _OF_ANIMALS,
        "plant": _OF_ANIMALS,
        "vegetarian": frozenset({"crustaceans", "fish", "molluscs", "meat"}),
        "veg": frozenset({"crustaceans", "fish", "molluscs", "meat"}),
        "vege": frozenset({"crustaceans", "fish", "molluscs", "meat"}),
        "veggie": frozenset({"crustaceans", "fish", "molluscs", "meat"}),
        "meatless": frozenset({"meat"}),
        "eggless": frozenset({"eggs"}),
        "gf": frozenset({"gluten"}),
    }
)
_FREE = re.compile(r"((?:\S+ and )?\S+)[ -]free\b(?! range)")
_WITHOUT = re.compile(r"\b(?:without|no|non)[ -](.*)")


class Misleading(Row):
    """Words in which a word of an allergen does not mean it (`coconut milk`), and the reason."""

    words: Annotated[str, Field(min_length=2)]
    holds_no: Held
    reason: Annotated[str, Field(min_length=5)]


class Told(NamedTuple):
    """What the columns of a food tell, of its parts too."""

    allergens: frozenset[Allergen]
    gluten: Literal["yes", "no", "may"]
    diet: Diet


def told_with_parts(foods: Iterable[Food], rows: Iterable[MixtureRow]) -> dict[str, Told]:
    """Allergens, gluten and diet of each food: its own and those of all that is in it, the strictest diet."""
    found = {food.id: Told(frozenset(food.allergens), food.gluten, food.diet) for food in foods}
    mixtures = parts_by_food(rows)
    for mixture in depths(mixtures):
        if mixture in found:
            here = [found[mixture], *(found[part] for part, _ in mixtures[mixture] if part in found)]
            gluten = {one.gluten for one in here}
            found[mixture] = Told(
                frozenset().union(*(one.allergens for one in here)),
                "yes" if "yes" in gluten else "may" if "may" in gluten else "no",
                max((one.diet for one in here), key=DIETS.index),
            )
    return found


def with_what_is_in_them(foods: Sequence[Food], rows: Sequence[MixtureRow]) -> tuple[Food, ...]:
    """The foods, mixtures with the allergens, gluten and diet of all that is in them."""
    mixed = {row.food for row in rows}
    told = told_with_parts(foods, rows)
    return tuple(_with(food, told[food.id]) if food.id in mixed else food for food in foods)


def _with(food: Food, told: Told) -> Food:
    if told == Told(frozenset(food.allergens), food.gluten, food.diet):
        return food  # as of every shipped one: `tables check` asks for it
    allergens = tuple(dict.fromkeys((*food.allergens, *(one for one in ALLERGENS if one in told.allergens))))
    return food.model_copy(update={"allergens": allergens, "gluten": told.gluten, "diet": told.diet})


def allergen_faults(lines: Mapping[str, Sequence[Line]], folders: Sequence[Path]) -> Iterator[Problem]:  # type: ignore[type-arg]
    """Mixtures whose row leaves out what their parts hold, and names that hold what their food does not."""
    misleading, faults = read_misleading(folders)
    yield from faults
    foods: dict[str, Food] = {line.row.id: line.row for line in lines["foods"]}
    parts = [line.row for line in lines["mixtures"]]
    told = told_with_parts(foods.values(), parts)
    holds = _held(foods, parts, told)
    for line in lines["foods"]:
        yield from _left_out(line, told[line.row.id])
        yield from _name_holds_more(f"{line.where}:2", line.row.name, line.row.id, holds, misleading)
    for line in lines["names"]:
        if line.row.food in foods:
            yield from _name_holds_more(f"{line.where}:1", line.row.name, line.row.food, holds, misleading)


def read_misleading(folders: Sequence[Path]) -> tuple[dict[str, set[Held]], list[Problem]]:
    """What misleading words do not hold, and what is wrong in the table of them."""
    found: dict[str, set[Held]] = {}
    problems: list[Problem] = []
    for folder in folders:
        if (folder / FILE).exists():
            lines, faults = read_csv(folder / FILE, Misleading)
            problems += faults
            for line in lines:
                found.setdefault(" ".join(_words(line.row.words)), set()).add(line.row.holds_no)
    return found, problems


def _left_out(line: Line[Food], told: Told) -> Iterator[Problem]:
    columns = header_of(Food)
    food = line.row
    for column, wanted, right in (
        ("allergens", ";".join(one for one in ALLERGENS if one in told.allergens), told.allergens <= {*food.allergens}),
        ("gluten", told.gluten, told.gluten == food.gluten),
        ("diet", told.diet, told.diet == food.diet),
    ):
        if not right:
            what = f"{food.id} is less by {column} than its parts in mixtures.csv"
            yield Problem(where=f"{line.where}:{columns.index(column) + 1}", what=what, remedy=f"write {wanted}")


def _held(foods: Mapping[str, Food], rows: Iterable[MixtureRow], told: Mapping[str, Told]) -> dict[str, set[str]]:
    """All that each food holds; onion and garlic by the words of its own name and of those of its parts."""
    mixtures = parts_by_food(rows)
    found: dict[str, set[str]] = {}
    for food in (*(one for one in foods if one not in mixtures), *(one for one in depths(mixtures) if one in foods)):
        name = {held for held in said(foods[food].name, {}) if held in ("onion", "garlic")}
        inside = [found[part] & {"onion", "garlic"} for part, _ in mixtures.get(food, ()) if part in found]
        one = told[food]
        gluten = {"gluten"} if one.gluten != "no" else set()
        meat = {"meat"} if one.diet == "omnivore" else set()
        found[food] = set[str]().union(name, one.allergens, gluten, meat, *inside)
    return found


def _name_holds_more(
    where: str, name: str, food: str, holds: Mapping[str, set[str]], misleading: Mapping[str, set[Held]]
) -> Iterator[Problem]:
    lost = sorted(said(name, misleading) - holds.get(food, set(ALLERGENS)))
    if lost and food in holds:
        what = f"the name `{name}` tells of {', '.join(lost)} and {food} holds none"
        remedy = (
            f"point it to a food that does, mend the row of {food}, or say in {FILE} why the words mean no such thing"
        )
        yield Problem(where=where, what=what, remedy=remedy)


def said(name: str, misleading: Mapping[str, set[Held]]) -> set[str]:
    """What a name says that a food holds, less what it denies (`without garlic`, `gluten-free`, `vegan`)."""
    plain = name.casefold()
    words = _words(plain)
    if _ALL.isdisjoint(words):
        return set()  # as of most names
    denied = _tells([word for match in _FREE.findall(plain) for word in _words(match)])
    denied |= _tells([word for match in _WITHOUT.findall(plain) for word in _words(match)])
    for word in words:
        denied |= _DENYING.get(word, frozenset())
    excepted: set[tuple[int, Held]] = set()
    for length in (1, 2, 3, 4):
        for at in range(len(words) - length + 1):
            for held in misleading.get(" ".join(words[at : at + length]), ()):
                excepted |= {(place, held) for place in range(at, at + length)}
    found: set[str] = {*_tells(words, excepted)}
    return found - denied


def told_by(word: str) -> set[Held]:
    """What one word tells of: `dairy` of milk, `prawns` of crustaceans; nothing where it tells of none."""
    return _TOLD_BY.get(_singular(word.casefold()), set())


# What each word, or two in a row, tell of.
_TOLD_BY: dict[str, set[Held]] = {}
for _held_by_it, _phrases in WORDS.items():
    for _phrase in _phrases:
        _TOLD_BY.setdefault(_phrase, set()).add(_held_by_it)


def _tells(words: Sequence[str], excepted: Collection[tuple[int, Held]] = ()) -> set[Held]:
    """What one word, or two in a row, tell of, not all of them misleading."""
    return {
        held
        for length in (1, 2)
        for at in range(len(words) - length + 1)
        for held in _TOLD_BY.get(" ".join(words[at : at + length]), ())
        if any((place, held) not in excepted for place in range(at, at + length))
    }


@lru_cache(maxsize=50_000)
def _words(text: str) -> tuple[str, ...]:
    """The words of a text, in the singular where that is one of the words above."""
    return tuple(_singular(word) for word in re.findall(r"[^\W_]+", text.casefold()))


_ALL = frozenset(part for words in WORDS.values() for phrase in words for part in phrase.split())


def _singular(word: str) -> str:
    for one in (word, word.removesuffix("s"), word.removesuffix("es"), f"{word.removesuffix('ies')}y"):
        if one in _ALL:
            return one
    return word
