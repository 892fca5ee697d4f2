"""Lines that were not counted and yet name what passes a limit as a rule: beans, onion, milk."""

from collections.abc import Sequence
from decimal import Decimal
from functools import cache

from calmlarder.adapt.loads import LineLoad, passed
from calmlarder.adapt.model import Amount, Eaters, Unread
from calmlarder.adapt.names import ending_in, foods_in, names_of_all, with_last_words
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.load import load_profile_of
from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables

_PORTIONS_OF_ALLIUM = 4  # a clove is the usual portion, and a serving may get several: ours


def with_triggers(
    unread: Sequence[Unread], reads: Sequence[IngredientRead], eaters: Eaters, tables: Tables
) -> tuple[Unread, ...]:
    """The same lines, those that name such a food with its name; by the limits of who eats.

    A name counts where a usual portion of a food that may be meant passes a limit, of onion and garlic where four of
    them do, of which a dish often holds as much. The longest name decides
    (`coconut milk` is no milk); of what has no name in the tables the last word of one does (`great northern beans`).
    """
    if not unread:
        return ()

    @cache
    def is_over(food: str) -> bool:
        return passes_alone(food, eaters, tables)

    texts = {one.place: _texts(one, reads[one.place], tables) for one in unread}
    said = {word for those in texts.values() for text in those for word in words_of(text)}
    # Dishes and bought mixtures lend no words of theirs: `soup`, `pie`.
    plain = {food for food in ending_in(said, tables) if tables.composite_of(food) is None and is_over(food)}
    names = {**with_last_words(plain, tables), **names_of_all(tables)}
    found = []
    for one in unread:
        told = [
            " ".join(words)
            for text in texts[one.place]
            for words, meant in foods_in(text, names)
            if any(map(is_over, meant))
        ]
        found.append(one.model_copy(update={"trigger": told[0]}) if told and not one.harmless else one)
    return tuple(found)


def _texts(unread: Unread, read: IngredientRead, tables: Tables) -> tuple[str, ...]:
    """The words to look into: of a food that is known its name alone, for its line may name others too."""
    food = tables.food_by_id.get(read.food or "")
    return (unread.text, *read.choices) if food is None else (food.name,)


def passes_alone(name: str, eaters: Eaters, tables: Tables, times: int = 1) -> bool:
    """Whether so many times what a dish usually holds of a food passes a limit of who eats.

    Not where its figures are unknown.
    """
    food = tables.food_by_id[name]
    if tables.unknown_of(food.id):
        return False
    mixture = tables.composite_of(food.id)
    kinds = {tables.food_by_id[part.food].kind for part in mixture.parts} if mixture is not None else {food.kind}
    grams = times * Decimal(food.portion_g) * (_PORTIONS_OF_ALLIUM if "allium" in kinds else 1)
    amount = Amount(food=food.id, grams=grams, high=grams, weighed=True)
    return bool(passed([LineLoad(food, amount, load_profile_of(food, tables))], 1, eaters.limits))
