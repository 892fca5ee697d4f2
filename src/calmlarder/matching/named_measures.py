"""What the words of a food's name tell of how it is measured: meatballs, mini cucumbers, a baguette."""

from calmlarder.matching.amounts.amount_of_line import MINIATURES, Amount
from calmlarder.matching.amounts.measures import MEASURE_WORDS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.which_food import Named
from calmlarder.matching.names.words import words_of

# Kinds of aubergine and cucumber that are slender or small beside the usual one: common practice, no source.
SLENDER = frozenset({"japanese", "chinese", "lebanese", "persian", "thai", "talong", "nasu", "brinjal", "baingan"})


def by_named_pieces(amount: Amount, named: Named, takes: frozenset[str], lexicon: Lexicon) -> Amount:
    """An amount that is counted by what the name of the food tells of its pieces."""
    if not named.foods or amount.how not in {"counted", "guessed"}:
        return amount
    measure = amount.measure
    if amount.how == "counted" and measure in {None, "piece"}:
        measure = _piece_named(takes, named.foods[0], lexicon) or measure
    if (measure is not None or amount.how == "counted") and _are_miniatures(takes, named, lexicon):
        measure = _of_miniatures(measure, named.foods[0], lexicon)
    return amount._replace(measure=measure)


def _are_miniatures(takes: frozenset[str], named: Named, lexicon: Lexicon) -> bool:
    """Whether a name tells small ones of a food that has no entry for them: `mini cucumbers`."""
    small = takes & MINIATURES
    if takes & SLENDER and any(lexicon.tables.food_by_id[food].kind == "fruit-vegetable" for food in named.foods):
        return True
    return bool(small) and not any(small & set(words_of(lexicon.tables.food_by_id[food].name)) for food in named.foods)


def _of_miniatures(measure: str | None, food: str, lexicon: Lexicon) -> str | None:
    """How miniatures are measured: one is small, and a bag of them is no net of the large ones."""
    if measure is None:
        return "small"
    own = {row.measure for row in lexicon.tables.own_measures(lexicon.tables.food_by_id[food])}
    return "punnet" if measure in {"bag", "packet", "box"} and not own & {"bag", "packet", "box"} else measure


def _piece_named(takes: frozenset[str], food: str, lexicon: Lexicon) -> str | None:
    """The word of a name whose pieces the tables weigh by themselves: a meatball is no burger, a tamale no meal."""
    own = {row.measure for row in lexicon.tables.own_measures(lexicon.tables.food_by_id[food])}
    return next((word for word in sorted(takes & own) if word not in MEASURE_WORDS), None)


def measure_named(takes: frozenset[str], food: str, lexicon: Lexicon) -> str | None:
    """The measure that the name itself tells, where the food has one of its own (`baguette`)."""
    own = {row.measure for row in lexicon.tables.own_measures(lexicon.tables.food_by_id[food])}
    told = sorted(MEASURE_WORDS[word] for word in takes if word in MEASURE_WORDS)
    return next((measure for measure in told if measure in own), None)
