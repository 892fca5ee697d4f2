"""Foods that stand side by side on a line without a sign between them."""

import re

from calmlarder.matching.conditions.condition_words import without_marks
from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import COLOURS, DISHES, HARMLESS, NOTES, PRODUCTS
from calmlarder.matching.names.words import SMALL, singular
from calmlarder.matching.part import SOFT, WORD, Part, name_part
from calmlarder.matching.several_foods.pieces import ENDS, says_amount

_SEASONINGS = frozenset({"spice", "herb"})
# Kinds of food that stand side by side in a list; `lemon chicken` is a dish, `lettuce tomato` are two things.
_SIDE_BY_SIDE = (
    frozenset({
        "leaf", "salad-leaf", "brassica", "root", "mushroom", "tomato", "pepper", "pod", "shoot", "stem", "allium",
        "fruit-vegetable", "sweetcorn", "herb", "potato", "squash",
    }),
    frozenset({"fruit", "citrus"}),
    _SEASONINGS,
)  # fmt: skip
_FILLED = frozenset(
    {"dumplings", "dumplings-vegetable", "spring-rolls", "tortellini", "wrap-falafel", "sandwich", "pizza"}
)
# What every kitchen has, and what makes no dish or flavour of the word behind it: `butter eggs milk`.
_BASICS = frozenset({
    "salt", "pepper", "black pepper", "oil", "olive oil", "vinegar", "butter", "egg", "milk", "bread", "cheese",
    "sugar", "flour", "tea", "coffee", "ham", "yoghurt",
})  # fmt: skip
_EGGS = frozenset({"egg", "eggs"})
_MOST_WORDS, LONGEST_NAME = 14, 5  # of a run of foods without a sign between them, and of one of them: ours


def side_by_side(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """Foods one behind the other without a sign between them: `1 carrot 2 onions`, `rosemary thyme`, or nothing.

    Every stretch of words must be the whole name of a food; the fewest stretches win. Amounts stand all before their
    foods, or all behind them.
    """
    words = text.split()
    if not 2 <= len(words) <= _MOST_WORDS or re.search(r"[a-z] or [a-z]|:", text):
        return []
    starts, leads = _starts(words, lexicon)
    best: list[list[Part] | None] = [[], *([None] * len(words))]
    # Words of some name that no stretch takes (`sumac pul, biber cumin`), stretches, and those that are no whole name
    # in its own order: `carrots, red pepper` before `carrots red, pepper`.
    cost = [(0, 0, 0)] * (len(words) + 1)
    for end in range(1, len(words) + 1):
        if end < len(words) and end not in starts:
            continue
        for start in range(end - 1, -1, -1):
            before = best[start]
            stretch = words[start:end]
            if before is None or (start and start not in starts):
                continue
            if sum(not says_amount(word) for word in stretch) > LONGEST_NAME:
                break
            if leads and _holds_amount(stretch, lexicon):
                continue
            least = (cost[start][0], cost[start][1] + 1, cost[start][2])
            if best[end] is not None and cost[end] <= least:
                continue
            part = name_part(" ".join(stretch), hints, lexicon, whole_name=True)
            if part.named.outcome == "matched" and not _guessed(part, stretch, lexicon):
                odd = _as_named(stretch) not in lexicon.spelt or stretch[-1] in COLOURS
                each = (least[0] + _passed_over(part, stretch, lexicon), least[1], least[2] + odd)
                if best[end] is None or each < cost[end]:
                    best[end], cost[end] = [*before, part], each
    found = best[len(words)] or []
    return found if len(found) > 1 and _are_a_list(found, bool(leads), lexicon) else []


def _starts(words: list[str], lexicon: Lexicon) -> tuple[set[int], int]:
    """Where a food may begin in a run of words, and how many amounts it holds."""
    amounts = [says_amount(word) and not names_food(word, lexicon) for word in words]
    count = sum(amounts[at] and not (at and amounts[at - 1]) for at in range(len(words)))
    if not count:
        return set(range(1, len(words))), 0
    if amounts[0]:  # amounts stand before their foods
        return {at for at in range(1, len(words)) if not amounts[at - 1]}, count
    return {at for at in range(1, len(words)) if not amounts[at]}, count


def _holds_amount(stretch: list[str], lexicon: Lexicon) -> bool:
    """Whether an amount stands between the words of a stretch, so that it would be of another food."""
    amounts = [says_amount(word) and not names_food(word, lexicon) for word in stretch]
    named = [at for at, is_amount in enumerate(amounts) if not is_amount]
    return bool(named) and any(amounts[named[0] : named[-1]])


def names_food(word: str, lexicon: Lexicon) -> bool:
    """Whether a word by itself is a food's whole name."""
    return singular(word) in lexicon.alone and not word[0].isdigit()


def says_food(piece: str, lexicon: Lexicon) -> bool:
    """Whether a word of a piece stands in the name of a food."""
    return any(singular(word) in lexicon.words for word in WORD.findall(piece) if singular(word) not in SOFT)


def _guessed(part: Part, stretch: list[str], lexicon: Lexicon) -> bool:
    """Whether a stretch holds strange words, which a list without signs gives no reason to take for notes."""
    known = (singular(word.strip(ENDS)) for word in without_marks(" ".join(stretch)).split())
    return (
        any(
            not (word in lexicon.words or word in ABBREVIATIONS or word in SOFT | SMALL | NOTES or word in FITS)
            and not says_amount(word)
            and lexicon.slip(word) is None
            for word in known
            if word
        )
        or not part.named.takes
    )


def _as_named(stretch: list[str]) -> str:
    """The words of a stretch without its amount, as names have them."""
    return " ".join(singular(word.strip(ENDS)) for word in stretch if not says_amount(word))


def _passed_over(part: Part, stretch: list[str], lexicon: Lexicon) -> int:
    """How many words of names a stretch has that its food does not take."""
    words = (singular(word.strip(ENDS)) for word in stretch)
    soft = SOFT | SMALL | NOTES | HARMLESS | part.named.takes
    return sum(word in lexicon.words and word not in soft and word not in ABBREVIATIONS for word in words)


def _is_several_of_a_kind(part: Part, lexicon: Lexicon) -> bool:
    """Whether a part is a food's whole name in the plural, which tells no kind of the next: `carrots mince`."""
    return part.amount.plural and part.said in lexicon.spelt


def _are_a_list(parts: list[Part], counted: bool, lexicon: Lexicon) -> bool:
    """Whether foods side by side are a list, and no dish of them (`lemon chicken`, `apple oat biscuits`)."""
    foods = [lexicon.tables.food_by_id[food] for part in parts for food in part.named.foods[:1]]
    if len({food.id for food in foods}) < len(foods):
        return False
    told = sum(part.amount.how != "none" for part in parts)
    if counted and told >= max(2, len(parts) - 1):
        return True
    if foods[0].id in _FILLED:
        return False  # what stands behind them is in them: `pierogi potato onion`
    heads = [part.said.split()[-1] if part.said else "" for part in parts]
    if len(parts) == 2 and parts[0].said in _EGGS and parts[1].said in _BASICS:
        return True
    if len(parts) == 2 and parts[1].said in PRODUCTS:
        return False
    if len(parts) == 2 and _is_several_of_a_kind(parts[0], lexicon) and heads[1] not in PRODUCTS | DISHES:
        return True
    if all(food.is_staple for food in foods):
        return True
    if all(food.kind in _SEASONINGS for food in foods):
        return True
    if len(parts) > 2 and all(part.said in _BASICS for part in parts):
        return True
    if any(head in PRODUCTS | DISHES for head in heads):
        return len(set(heads)) == 1
    return len(parts) > 2 or any(all(food.kind in kinds for food in foods) for kinds in _SIDE_BY_SIDE)
