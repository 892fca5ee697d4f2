"""Foods of a line that are one dish together, and a food that a line names twice."""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.part import Part, asked, name_part
from calmlarder.matching.several_foods.headings import bare_words
from calmlarder.matching.several_foods.pieces import ENDS

_TWO_FLAVOURS = LatePattern(
    r"(?:&|\+|\band\b|(?<!\w)n(?!\w)) ([a-z]+) (pies?|pasty|pasties|quiches?|soup|tarts?|slices?|bakes?|crisps|ravioli"
    r"|tortellini|sandwich(?:es)?|pate|turnovers?|sausages?|burgers?|kievs?|pizzas?|stuffing|stew|casserole|dips?)\b"
)
# `ginger and lemon tea`: what tastes of two things of one sort; it is no ginger and a tea.
_AND = r"(?:&|\+|\band\b|(?<!\w)n(?!\w))"
_TASTES_OF_BOTH = LatePattern(
    rf"([^,;]+?) ?{_AND} ([a-z]+(?: [a-z]+)??) (chutney|relish|jam|jelly|marmalade|curd|tea|cordial|squash|juice"
    r"|smoothie|yogh?urt|yog|(?:pasta )?sauce|ice ?cream|sorbet|crumble|cake|muffins?|mash|curry|soup|stew|casserole"
    r"|tagine|bake|gratin|risotto|chill?i|pie|dip)\b([^,;]*)"
)
# The same the other way round: `yoghurt peach and passionfruit`.
_BOTH_BEHIND = LatePattern(
    r"((?:[a-z ]+ )?(?:sauce|jam|yogh?urt|yog|soup|crisps|juice|smoothie|chutney|relish|cordial|squash|sorbet|risotto"
    rf"|pie|quiche|pizza|stock)) ([a-z]+(?: [a-z]+)?) ?{_AND} ([a-z]+(?: [a-z]+)?)"
)
_OF_ONE_SORT = (
    frozenset({"fruit", "citrus", "berry", "spice", "herb", "root", "stem"}),
    frozenset({
        "root", "leaf", "squash", "allium", "brassica", "tomato", "pepper", "sweetcorn", "potato", "pulse", "mushroom",
        "fruit-vegetable", "pod", "stem",
    }),
)  # fmt: skip
# `sausage and bean stew` is one pot, whatever else its name is; `rice and bean stew` may be two things.
_ONE_POT = LatePattern(
    r"(?:&|\+|\band\b|(?<!\w)n(?!\w)) [a-z]+(?: [a-z]+)? (?:stew|casserole|curry|chill?i|tagine|hot ?pot|soup)\b"
)
_COOKED_IN_IT = frozenset(
    {
        "meat",
        "poultry",
        "pulse",
        "mushroom",
        "root",
        "leaf",
        "squash",
        "allium",
        "brassica",
        "tomato",
        "pepper",
        "sweetcorn",
    }
)


def by_two_flavours(parts: list[Part], text: str, lexicon: Lexicon) -> Part | None:
    """The dish alone that two foods before it only tell the filling of: `mince & onion pie`; else None.

    The second is none by itself then: `peas and fish pie` are two things.
    """
    found = _TWO_FLAVOURS.search(text)
    if len(parts) != 2 or not found or " ".join(bare_words(f"{found[1]} {found[2]}")) in lexicon.spelt:
        return None
    if parts[0].amount.how not in {"none", "guessed"} and parts[1].amount.how != "none":
        return None
    amount = parts[1].amount if parts[1].amount.how != "none" else parts[0].amount
    return parts[1]._replace(amount=amount, words=f"{parts[0].words} {parts[1].words}")


def tastes_of_both(text: str, hints: frozenset[str], lexicon: Lexicon) -> Part | None:
    """The thing that tastes of two foods of one sort which stand before it, or a question what it is; else None.

    The first stands in the singular and is not counted: `carrots and chickpea curry` are two things.
    """
    if behind := _BOTH_BEHIND.fullmatch(text.strip(ENDS)):
        thing, one, other = behind.groups()
        named = name_part(f"{one} {thing}", hints, lexicon).named
        return tastes_of_both(f"{one} and {other} {thing}", hints, lexicon) if named.outcome == "matched" else None
    found = _TASTES_OF_BOTH.fullmatch(text.strip(ENDS))
    if not found:
        return None
    first, second = (name_part(words, frozenset(), lexicon) for words in found.groups()[:2])
    if first.amount.how == "counted" or first.amount.plural or " ".join(bare_words(found[1])) not in lexicon.spelt:
        return None
    foods = lexicon.tables.food_by_id
    kinds = {foods[food].kind for part in (first, second) for food in part.named.foods}
    if not second.named.foods or not any(kinds <= sort for sort in _OF_ONE_SORT):
        return None
    whole = name_part(text, hints, lexicon)
    if whole.named.outcome == "matched" and not whole.named.partly:
        return whole
    dishes = [
        part
        for flavour in (bare_words(found[1]), found[2].split())
        if (part := name_part(f"{' '.join(flavour)} {found[3]}{found[4]}", hints, lexicon)).named.outcome == "matched"
        and len(part.named.foods) == 1
        and foods[part.named.foods[0]].kind not in kinds
    ]
    if not dishes:
        return asked(whole)
    dish = max(dishes, key=lambda part: lexicon.load(part.named.foods[0]))  # the richest of what it may be
    return dish._replace(amount=first.amount) if dish.amount.how == "none" else dish


def in_one_pot(parts: list[Part], text: str, lexicon: Lexicon) -> bool:
    """Whether two foods without an amount between them make one dish, which no food of the tables is."""
    if len(parts) != 2 or parts[0].amount.how not in {"none", "guessed"} or not _ONE_POT.search(text):
        return False
    foods = lexicon.tables.food_by_id
    return all(foods[one].kind in _COOKED_IN_IT and foods[one].state != "cooked" for one in parts[0].named.foods)


def told_twice(parts: list[Part]) -> list[Part]:
    """The parts without one that only says of another how it is: `curry leaves, coriander (coriander drooping)`."""
    once: list[Part] = []
    for part in parts:
        at = next((n for n, one in enumerate(once) if one.named.foods == part.named.foods), None)
        if at is None or part.amount.how != "none":
            once.append(part)
        else:
            once[at] = once[at]._replace(words=f"{once[at].words} {part.words}")
    return once
