"""What a dish holds, told beside it: `risotto - mushroom and pea` is one dish, and neither mushrooms nor peas."""

from collections.abc import Sequence

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.words import singular
from calmlarder.matching.part import WORD, Part, asked, name_part
from calmlarder.matching.several_foods.headings import bare_words
from calmlarder.matching.several_foods.in_brackets import before_bracket
from calmlarder.matching.several_foods.pieces import ENDS, SPLIT, says_amount
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import DIETS

# Dishes that are no food of the tables by this word alone.
_POTS = frozenset({
    "soup", "stew", "curry", "casserole", "chilli", "chili", "tart", "frittata", "omelette", "omelet", "bake",
    "risotto", "tagine", "gratin", "crumble", "broth", "chowder", "goulash", "hotpot", "pilaf", "pilau",
})  # fmt: skip
_TOSSED = frozenset({"salad", "fry", "stirfry", "stir-fry"})  # before a list these may be a heading of what is raw
_HEADS = frozenset({"stuff", "veg", "veggie", "vegetable", "mix", "bit", "thing", "ingredient", "making", "fixing"})
_KINDS = frozenset({"sauce", "tomato", "paste", "potato", "juice"})  # of the mixtures of the tables
_VESSEL = (
    r"(?:(?:an?|one|half|small|big|large|little|full|\d{1,2}|1/2) )*"
    r"(?:roaster|pan|pot|dish|tray|tub|box|bowl|jar|container|casserole|plate|portion|bag|potful)s?"
)
_BESIDE = LatePattern(
    r"(?P<dish>[a-z][a-z' -]*?|[^,;:&+]*?)(?: -+ |: ?|,? (?:with|w) |, (?=[^,]*(?:,[^,]*)* (?:in it|inside)$)"
    r"|(?:(?<=stew)|(?<=soup)|(?<=curry)|(?<=casserole)|(?<=broth)|(?<=risotto)|(?<=tagine)|(?<=chowder)), "
    r"(?=[a-z ]+ ?(?:\+|&|and|n) ?[a-z ]+(?:,|$)))"
    r"(?P<held>[a-z][a-z ,&+'-]*?)(?P<box>(?: (?:jar|tin|can|tub|pot|box|pack|packet|carton)s?)?(?: x ?\d+)?"
    rf"|, {_VESSEL})"
)
# How many, or what it stands in, behind the bracket: `cabbage rolls (rice), small roaster`.
_HOW_MANY = r"(?:\d{1,2}(?: ?(?:pcs?|pieces?|left))?|(?:(?:an?|one|half a|1/2|\d) )?doz(?:en)?)"
_VESSEL_BEHIND = LatePattern(
    rf"(?P<dish>[^,;]*[a-z]{{3}}[^,;]*?) ?[,;] ?(?P<box>(?:{_VESSEL}|{_HOW_MANY})(?:,? (?:frozen|freezer))?|frozen)"
)
_WITH = LatePattern(r"\b(?:with|w)\b")
_IN_IT = LatePattern(r"\b(?:in it|inside|through it)$")
_MORE = LatePattern(r"\b(?:also|plus|half|another|separate\w*|some|bit|not|no|non|without|from|for|mine|both|either)\b")


def dish_alone(found: list[Part], text: str, brackets: Sequence[str], lexicon: Lexicon) -> list[Part]:
    """The foods of a line, without those that are told to be in the dish before them.

    Where the dish of the tables is eaten by some who cannot eat what is told, or may hold less than that, the line is
    a question: a pizza with ham on it is not the usual one. What has an amount of its own is a food beside the dish.
    """
    if len(found) > 1 and len(brackets) == 1 and (mix := _mix_by_name(text, brackets[0], lexicon)):
        return [mix]
    if not (told := _told(text, brackets)) or (len(found) < 2 and not _is_asked(found)):
        return found
    dish, held, box = told
    pieces = [piece.strip(ENDS) for piece in SPLIT.split(held) if piece.strip(ENDS)]
    parts = [name_part(piece, frozenset(), lexicon) for piece in pieces]
    foods = [lexicon.tables.food_by_id[food] for part in parts for food in part.named.foods]
    if not foods or any(part.named.outcome == "unknown" or part.amount.how not in {"none"} for part in parts):
        return found
    named = [name_part(words, frozenset(), lexicon) for words in (f"{held} {dish} {box}", f"{dish} {box}")]
    for part in (*named, found[0]):
        one = [lexicon.tables.food_by_id[food] for food in part.named.foods]
        if (
            part.named.outcome == "matched"
            and len(one) == 1
            and _is_dish(one[0], bool(brackets), lexicon)
            and not part.named.partly
        ):
            named_by_more = len(part.named.takes) > 1  # a pie with cabbage may be any pie
            if len(found) < 2 and not (
                named_by_more and _WITH.search(text) and lexicon.is_made_with(one[0].id, "onion")
            ):
                return found
            return [part if _covers(one[0], foods, lexicon) else asked(part)]
    words = {singular(word) for word in WORD.findall(dish)}
    is_pot = words & _POTS or (words & _TOSSED and _WITH.search(text)) or _IN_IT.search(held)
    if not is_pot:
        return found
    pot = name_part(dish, frozenset(), lexicon)
    return [_with_the_allium(pot, foods, lexicon) or asked(name_part(text, frozenset(), lexicon))]


def _with_the_allium(pot: Part, held: Sequence[Food], lexicon: Lexicon) -> Part | None:
    """The one pot of the tables that is made with the onion or the garlic told of it; None where it is not one."""
    alliums, sort = _alliums(held), pot.said.rpartition(" ")[2]
    with_it = [
        one.food for one in pot.named.candidates
        if sort in one.name.split() and lexicon.is_mixture(one.food)
        and all(lexicon.is_made_with(one.food, word) for word in alliums)
    ]  # fmt: skip
    if not alliums or len(with_it) != 1 or not _covers(lexicon.tables.food_by_id[with_it[0]], held, lexicon):
        return None
    return pot._replace(named=pot.named._replace(outcome="matched", foods=(with_it[0],), assumed=()))


def _is_asked(found: Sequence[Part]) -> bool:
    """Whether one thing stands in a line, and it is not clear which: `couscous salad with apricots`."""
    return len(found) == 1 and found[0].named.outcome == "ask"


def _mix_by_name(text: str, bracket: str, lexicon: Lexicon) -> Part | None:
    """The mix of the tables whose bracket tells what is in it: `coleslaw mix (just cabbage + carrot)` is one bag.

    A question where it may hold less than that: onion.
    """
    before = before_bracket(text, bracket)
    words = bare_words(before) if before and not SPLIT.search(before) else ()
    if words[-1:] != ("mix",) or " ".join(words) not in lexicon.spelt:
        return None
    part = name_part(before, frozenset(), lexicon)
    if part.named.outcome != "matched" or len(part.named.foods) != 1:
        return None
    inside = [name_part(piece, frozenset(), lexicon) for piece in SPLIT.split(bracket) if piece.strip(ENDS)]
    held = [lexicon.tables.food_by_id[food] for one in inside for food in one.named.foods]
    return part if _covers(lexicon.tables.food_by_id[part.named.foods[0]], held, lexicon) else asked(part)


def _told(text: str, brackets: Sequence[str]) -> tuple[str, str, str] | None:
    """The dish, what is told to be in it, and its box; None where the line tells no such thing."""
    if len(brackets) > 1:
        return None
    inside = brackets[0].strip(ENDS) if brackets else ""
    said = text.rstrip(ENDS)
    if inside and said.endswith(inside):
        dish, held, box = said.removesuffix(inside).strip(ENDS), inside, ""
        if vessel := _VESSEL_BEHIND.fullmatch(dish):
            dish, box = vessel["dish"].strip(ENDS), vessel["box"]
        held = held.removeprefix("with ").removeprefix("w ")
    elif not brackets and (found := _BESIDE.fullmatch(said)):
        dish, held, box = found["dish"].strip(ENDS), found["held"], found["box"].strip()
    else:
        return None
    more = any(says_amount(word) for word in WORD.findall(held)) or _MORE.search(held)
    heads = not _HEADS.isdisjoint(singular(word) for word in WORD.findall(dish)[-1:])  # a veg curry is one dish
    return None if more or heads or not dish or SPLIT.search(dish) else (dish, held, box)


def _is_dish(food: Food, in_bracket: bool, lexicon: Lexicon) -> bool:
    return (food.kind in _KINDS or (in_bracket and food.state == "cooked")) and lexicon.is_mixture(food.id)


def _covers(dish: Food, held: Sequence[Food], lexicon: Lexicon) -> bool:
    """Whether a dish of the tables is counted as what may be in it: nobody eats it who cannot eat that."""
    if any(DIETS.index(food.diet) > DIETS.index(dish.diet) for food in held):
        return False
    return all(lexicon.is_made_with(dish.id, word) for word in _alliums(held))


def _alliums(held: Sequence[Food]) -> set[str]:
    return {word for food in held if food.kind == "allium" for word in ("onion", "garlic") if word in food.id}
