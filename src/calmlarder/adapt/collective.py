"""Words of steps that stand for several foods at once: the nuts, the dried fruit, the salsa ingredients.

Of such a word only those foods are told that no step names otherwise. Ours, as recipes are commonly written.
"""

from collections.abc import Mapping, Sequence

from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.names import Names
from calmlarder.matching.names.words import plain, words_of
from calmlarder.tables.book import Tables

_VEGETABLES = frozenset({
    "allium", "brassica", "fruit-vegetable", "leaf", "mushroom", "pepper", "pod", "potato", "root", "shoot", "squash",
    "stem", "sweetcorn", "tomato",
})  # fmt: skip
_NUTS = frozenset({
    "almonds", "brazil-nuts", "cashews", "hazelnuts", "macadamias", "peanuts", "pecans", "pine-nuts", "pistachios",
    "walnuts", "chestnuts",
})  # fmt: skip
_FRUIT = frozenset({"fruit", "citrus", "dried-fruit"})
# No word that is a verb in steps too: `roll`, `toast`, `wrap`, `shell`.
_KINDS: Mapping[str, frozenset[str]] = {
    "vegetable": _VEGETABLES, "veg": _VEGETABLES, "veggy": _VEGETABLES, "fruit": _FRUIT, "berry": _FRUIT,
    "dried fruit": frozenset({"dried-fruit"}), "nut": _NUTS, "bean": frozenset({"pulse"}),
    "pulse": frozenset({"pulse"}), "legume": frozenset({"pulse"}), "lentil": frozenset({"pulse"}),
    "cheese": frozenset({"cheese"}), "pasta": frozenset({"pasta"}), "noodle": frozenset({"noodle", "pasta"}),
    "mushroom": frozenset({"mushroom"}), "bread": frozenset({"bread", "wrap"}), "bun": frozenset({"bread"}),
    "flatbread": frozenset({"bread", "wrap"}), "grain": frozenset({"grain"}), "crumb": frozenset({"breadcrumbs"}),
    "sausagemeat": frozenset({"meat"}), "milk": frozenset({"milk"}), "mash": frozenset({"potato-mashed"}),
    "squash": frozenset({"squash"}), "spice": frozenset({"spice"}), "yolk": frozenset({"egg"}),
}  # fmt: skip
_FLESH = frozenset({"meat", "poultry", "fish", "shellfish"})
_ANIMALS = words_of("beef pork lamb veal mutton chicken turkey duck venison fish")
ALL_OF_THEM = ("ingredient", "everything")
# Of these, too, the list says what they are: only what goes in at another time is told beside them.
SAID_BY_THE_LIST = frozenset({*ALL_OF_THEM, *words_of("vegetables veg veggies spices fruit")})
_NO_GROUP = frozenset(words_of("the for to of a and serve with ingredient"))


def words_for_several(foods: set[str], tables: Tables) -> set[str]:
    """The words that may mean some of these foods: `cheese` where there is parmesan."""
    kinds = foods | {tables.food_by_id[food].kind for food in foods if food in tables.food_by_id}
    return {word for words, meant in _KINDS.items() if meant & kinds for word in words.split()}


def animals_in(parts: Sequence[Part], tables: Tables) -> Names:
    """`the beef` of steps, where a line has beef mince: the flesh of one animal, whatever its cut."""
    foods = [tables.food_by_id[one.read.food] for one in parts if one.read.food in tables.food_by_id and one.read.food]
    flesh = [food for food in foods if food.kind in _FLESH]
    return {
        (word,): frozenset(food.id for food in flesh if word in words_of(food.name))
        for word in _ANIMALS
        if any(word in words_of(food.name) for food in flesh)
    }


def collective_names(parts: Sequence[Part], names: Names, tables: Tables) -> Names:
    """Which foods of the recipe each such word may mean: by their kind, or all of them under a heading.

    A word that is a name of one food too (`nuts`, where it is of cashew nuts) stands here where it may mean more.
    """
    foods = {part.read.food for part in parts if part.read.food in tables.food_by_id}
    found: dict[tuple[str, ...], frozenset[str]] = {}
    for word, kinds in _KINDS.items():
        meant = frozenset(food for food in foods if food and {food, tables.food_by_id[food].kind} & kinds)
        if word == "berry":
            meant = frozenset(food for food in meant if "berr" in tables.food_by_id[food].name)
        words = tuple(word.split())
        own = {one.read.food for one in parts if set(words) <= set(words_of(one.read.text)) and one.read.food}
        if len(own) == 1 and own <= meant:
            meant = frozenset(one for one in own if one)  # `the buns`, where one line says buns
        alone = names.get(words, frozenset())
        if meant and (not alone or meant - alone):
            found[words] = meant | alone
    return {**found, **_under_headings(parts, tables)}


def _under_headings(parts: Sequence[Part], tables: Tables) -> Names:
    """`salsa ingredients` and `ingredients for the salsa`, where a heading says `For the salsa`; else all foods."""
    groups: dict[tuple[str, ...], set[str]] = {}
    every: set[str] = set()
    last: tuple[str, ...] = ()
    for part in parts:
        if part.read.outcome == "heading":
            last = tuple(word for word in words_of(plain(part.read.text)) if word not in _NO_GROUP)[-2:]
        elif part.read.food in tables.food_by_id and part.read.food:
            every.add(part.read.food)
            if last:
                groups.setdefault(last, set()).add(part.read.food)
    found: dict[tuple[str, ...], frozenset[str]] = {}
    for name, foods in groups.items():
        found |= {(*name[-1:], "ingredient"): frozenset(foods), (*name, "ingredient"): frozenset(foods)}
        found[("ingredient", "for", *name)] = frozenset(foods)
    if not groups:
        found |= {(word,): frozenset(every) for word in ALL_OF_THEM}
    return found
