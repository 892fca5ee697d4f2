"""What a bracket, or one side of a stroke, tells of the words beside it: their English name, or what is in them."""

import re
from collections.abc import Iterator

from calmlarder.matching.amounts.measures import CONTAINERS, MEASURE_WORDS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import DISHES, GENERIC, HARMLESS, PRODUCTS, WITH, is_note
from calmlarder.matching.names.words import singular
from calmlarder.matching.part import WORD, Part, name_part
from calmlarder.matching.several_foods.headings import bare_words
from calmlarder.matching.several_foods.pieces import ENDS, says_amount
from calmlarder.matching.several_foods.side_by_side import LONGEST_NAME, says_food

# What other things lie in or taste of.
_FLAVOURS = frozenset({"tomato", "spice", "herb", "citrus", "allium", "oil", "acid", "sauce", "condiment", "soy-sauce"})
_MADE = frozenset({
    "topping", "mix", "spread", "dip", "filling", "stuffing", "butter", "cracker", "twist", "omelette", "omelet",
    "frittata", "kebab", "meatball", "risotto", "paella", "fritter", "pakora", "bhaji", "tart", "tartlet", "knot",
})  # fmt: skip


def before_bracket(text: str, bracket: str) -> str:
    """What stands before the one bracket of a line, or nothing where more stands behind it."""
    inside, said = bracket.strip(ENDS), text.rstrip(ENDS)
    return said.removesuffix(inside).rstrip(ENDS) if inside and said.endswith(inside) else ""


def names_but_the_bracket(whole: Part, before: str, bracket: str, lexicon: Lexicon) -> bool:
    """Whether a line is named by its bracket alone, where the words before it tell another thing or some product of it.

    As in `omelette (onion)`, `bruschetta topping (garlic)`; not in `lasun (garlic)` and `bulb (garlic)`.
    """
    inside = {singular(word) for word in WORD.findall(bracket)}
    if not whole.named.takes <= inside:
        return False
    outside = [singular(word) for word in WORD.findall(before) if not says_amount(word)]
    return any(
        word in PRODUCTS | DISHES | _MADE
        or (
            whole.named.outcome == "matched"
            and word in lexicon.words
            and not is_note(word)
            and word not in HARMLESS | inside
            and lexicon.called(word).isdisjoint(whole.named.foods)
        )
        for word in outside
    )


def in_english(whole: Part, text: str, brackets: tuple[str, ...], how: tuple[frozenset[str], Lexicon]) -> Part | None:
    """The food whose whole name in a bracket tells what one word of another tongue before it means."""
    hints, lexicon = how
    inside = brackets[0].strip(ENDS) if brackets else ""
    if not inside or inside.split()[0] in WITH:
        return None
    words = WORD.findall(text.rstrip(ENDS).removesuffix(inside))
    outside = [word for word in words if not says_amount(word) and singular(word) not in HARMLESS]
    if len(outside) != 1 or singular(outside[0]) not in lexicon.elsewhere or len(brackets) != 1:
        return None
    if " ".join(bare_words(brackets[0])) not in lexicon.spelt:
        return None
    part = name_part(brackets[0], hints, lexicon, whole_name=True)
    return part._replace(words=whole.words, amount=whole.amount) if part.named.outcome == "matched" else None


def named_in_bracket(whole: Part, text: str, brackets: tuple[str, ...], how: tuple[frozenset[str], Lexicon]) -> Part:
    """The food a bracket names where strange words stand before it: `labu siam (chayote)` is no pumpkin."""
    hints, lexicon = how
    outside = [word for word in WORD.findall(text.partition(",")[0]) if not says_amount(word)]
    others = [word for word in outside if singular(word) not in whole.named.takes]
    strange = 0 < len(others) < LONGEST_NAME and all(
        singular(word) not in lexicon.words and not is_note(word) and not lexicon.slip(word) for word in others
    )
    if any(inside.split()[:1] and inside.split()[0] in WITH for inside in brackets):
        bare = name_part(text.partition(",")[0], hints, lexicon)
        return whole if bare.named.outcome == "matched" else bare  # what is in it is not what it is
    for inside in brackets if strange else ():
        if inside.split() and inside.split()[0] not in WITH:
            part = name_part(inside, hints, lexicon, whole_name=True)
            if part.named.outcome == "matched" and part.named.foods != whole.named.foods:
                return part._replace(words=whole.words, amount=whole.amount)
    return whole


def explained(text: str, brackets: tuple[str, ...], hints: frozenset[str], lexicon: Lexicon) -> Part | None:
    """The food that a bracket, or one side of a stroke, tells of words that name none: `labu siam (chayote)`."""
    sides = [side for side in re.split(r"(?<!\d)\s*/\s*(?!\d)|\bie\b|\baka\b|=", text) if side.strip(ENDS)]
    outside = text.partition(",")[0] if brackets else ""
    for said, other in [*((inside, outside) for inside in brackets if outside), *_pairs(sides)]:
        if not said.split() or said.split()[0] in WITH or says_food(other, lexicon):
            continue
        part = name_part(said, hints, lexicon)
        if part.named.outcome == "matched" and not part.named.partly:
            if _is_packed_in(part, text, lexicon):
                continue
            amounts = name_part(text, hints, lexicon)
            return part._replace(words=amounts.words, amount=amounts.amount)
    return None


def without_bracket(parts: list[Part], before: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The parts without one that a bracket says of a food that is clear without it: `salsa (onion in it)` is one."""
    food = lexicon.tables.food_by_id
    kinds = {food[one].kind for part in parts for one in part.named.foods}
    says_less = parts[1].named.takes & GENERIC and not parts[0].named.takes & GENERIC  # `feta (the salad cheese)`
    if len(kinds) == 1 and parts[0].named.foods != parts[1].named.foods and not says_less:
        telling = parts[1]  # which of its kind it is: `pasta (gf penne)`
        return [telling if telling.amount.how != "none" else telling._replace(amount=parts[0].amount)]
    outside = name_part(before, hints, lexicon)
    if outside.named.outcome == "matched" and outside.named.foods == parts[0].named.foods:
        return [parts[0]]
    return parts


def _is_packed_in(part: Part, text: str, lexicon: Lexicon) -> bool:
    """Whether a bracket rather says what a strange thing in a tin or a jar lies in: `1 tin pilchards (tomato)`."""
    kinds = {lexicon.tables.food_by_id[food].kind for food in part.named.foods}
    return bool(kinds & _FLAVOURS) and any(MEASURE_WORDS.get(word) in CONTAINERS for word in WORD.findall(text))


def _pairs(sides: list[str]) -> Iterator[tuple[str, str]]:
    if len(sides) == 2:
        yield sides[0], sides[1]
        yield sides[1], sides[0]
