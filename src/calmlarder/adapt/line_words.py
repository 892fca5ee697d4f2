"""What a line calls its food and says of it: how it is cut, what it is for; and the same of what takes its place."""

import re
from decimal import Decimal

from calmlarder.adapt.line_cuts import CUT, HOW_LARGE, cut_by_its_swap, cut_of, fit_cut, usual_cut
from calmlarder.adapt.line_of_a_tin import said_of_a_tin
from calmlarder.adapt.written import BY_THE_PIECE, CUBE, amount_told
from calmlarder.cookbook.covered import HANGS_ON
from calmlarder.cookbook.in_company import TAKEN
from calmlarder.cookbook.line_amount import measure_word
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.cookbook.wording import names_nothing
from calmlarder.matching.names.words import plain, words_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

BAKING_POWDER = "baking-powder"
_OWN_WORDS = re.compile(
    r"\s*(?P<amount>\d+(?:[.,/]\d+)?\s?(?:kg|g|grams?|ml|l|litres?|tbsp|tsp|tablespoons?|teaspoons?|oz|lbs?))\b\.?\s+"
    r"(?:of\s+)?(?P<words>[^\d()/+]+)"
)
_HELD_IN = re.compile(
    r"^(?:tin|can|jar|pack|packet|pouch|carton|pot|tub|bag|bottle|block)s? (?:of )?(?=[a-z])", re.IGNORECASE
)
_RAISES = re.compile(r"\bself[- ]?(?:raising|rising)\b", re.IGNORECASE)
_SIZED = re.compile(r"\b\d+(?:[.,/]\d+)?[ -]?(?:cm|mm|inch(?:es)?)\b")
_A_LONG_WORD = 6  # letters; a shorter word may be of any food: ours
_IN_PIECES = "in pieces"
_GRATED = "grated"  # of what is of no use in chunks
_PREPARED = re.compile(r",|\b(?:chopped|sliced|diced|cubed|grated|shredded|peeled|trimmed)\b", re.IGNORECASE)
_IS_CUT = frozenset({
    "allium", "root", "squash", "potato", "brassica", "fruit-vegetable", "mushroom", "pepper", "leaf", "stem",
    "pod", "fruit", "citrus", "tofu", "herb", "tomato",
})  # fmt: skip
_IN_CRUMBS = re.compile(r"\b(?:bread)?crumbs\b", re.IGNORECASE)
_PLAIN = re.compile(r"\b(?:plain|natural)\b", re.IGNORECASE)
_SOAKED = re.compile(r"\bsoaked\b[^,;()]*", re.IGNORECASE)
_CHOPPED_NUTS = re.compile(r"\b(?:(?:finely|roughly|coarsely) )?(?:chopped|crushed)\b", re.IGNORECASE)
_SEEDED = re.compile(r"\b(?:de)?seeded\b", re.IGNORECASE)
_OF_VEGETABLES = re.compile(r"\bvegetable (?:stock|broth)\b", re.IGNORECASE)
_OF_MEAT = re.compile(r"\b(?:chicken|beef|lamb|veal|turkey|fish|bone) (?:stock|broth)\b", re.IGNORECASE)
_COMMA_WITHIN = re.compile(r"\s*\([^()]*,[^()]*\)")
_TO_SERVE = re.compile(r"\bto serve$")
_USES = (
    r"(?:to|for) (?:serve|serving|garnish|garnishing|finish|finishing|top|topping|drizzling|drizzle|dipping"
    r"|decorate|sprinkling|sprinkle|dusting|glazing|glaze|frying|brushing|mopping|scooping|dip|mop)"
)
_FOR_WHAT = re.compile(rf",? \b({_USES})$", re.IGNORECASE)
# `plus more to drizzle`, `+ extra to serve`: the rest is beside the amount.
_AND_MORE = re.compile(
    rf",? ?((?:plus|\+|and) (?:(?:a (?:little|bit|touch) )?(?:more|extra)"
    rf"|(?:a|some) (?:(?:little|final) )?(?:drizzle|splash|knob|handful|dusting|spoonful|squeeze)(?= (?:to|for)\b))"
    rf"(?: {_USES}|,? (?:to|for) (?:the )?[a-z]+)?)$",
    re.IGNORECASE,
)
_LIQUID = r"(?:liquid|juices?|liquor|brine)"
_WITH_ITS_LIQUID = re.compile(
    rf"\b(?:undrained|not drained|with (?:their|its|the) {_LIQUID}|(?:keep|sav|reserv|retain)\w* [^,;()]*{_LIQUID}"
    rf"|{_LIQUID} (?:\w+ )?(?:kept|saved|reserved|retained))\b",
    re.IGNORECASE,
)
_SERVED = re.compile(r"\b(?:to|for) (?:serve|serving|mopping|dipping|scooping|mop|dip)$", re.IGNORECASE)
_DISSOLVED = re.compile(
    r"(?:,? )\b((?:(?:dissolved|made up|crumbled|mixed|diluted|stirred) (?:in(?:to)?|with)|in(?:to)?|with) "
    r"[^,;()]*(?:\([^()]*\)[^,;()]*)?\bwater)\b",
    re.IGNORECASE,
)
_A_TOAST = re.compile(r"\b(buttered )?toast\b", re.IGNORECASE)
_PATTED_DRY = re.compile(r"\bpat(?:ted)? (?:very |well |thoroughly )?dry\b", re.IGNORECASE)
_HEATED = re.compile(r"^[\d½¼¾/.,–-]*\s*[a-z]* (?:of )?(hot|boiling|warm|chilled|simmering) [a-z]", re.IGNORECASE)
_TOASTED = re.compile(r"(?:toasted|warmed|warm|grilled)\b", re.IGNORECASE)
_FREE = ("gluten-free", "lactose-free", "gluten free", "lactose free")
_OPTIONAL = re.compile(r"\boptional\b|\bif (?:you like|liked|desired|wanted)\b", re.IGNORECASE)
_SEVERAL = re.compile(r"\b(?:and|or|plus)\b", re.IGNORECASE)
_STILL_SO = re.compile(r"\b(?:ripe|full-fat)\b", re.IGNORECASE)  # holds of any amount of it
_SAME = Decimal("0.02")  # as a share of the grams that were read


def own_words(read: IngredientRead, food: Food, grams: Decimal, tables: Tables) -> str:
    """What a line calls its food and says of it (`self-raising flour, sifted`), to stand behind another amount.

    Only of a line with one amount that was read as it stands: of `2 tins chickpeas` or `1 pumpkin` with its skin the
    words mean another weight. There it is the food's name, and how it is cut.
    """
    return said_of_a_tin(_own_words(read, food, grams, tables), read.text, food)


def _own_words(read: IngredientRead, food: Food, grams: Decimal, tables: Tables) -> str:
    if read.assumed == TAKEN:
        return f"{food.name}, drained"
    if _is_one_of_several(read, food):
        return f"{food.name}{cut_of(read.text) if not read.also else ''}{for_what(read.text)}"
    if food.kind == "pulse" and food.name.startswith("canned") and _WITH_ITS_LIQUID.search(read.text):
        return f"{_named_so(read.text, food, tables)}, drained and rinsed"  # as they are counted
    found = _OWN_WORDS.fullmatch(read.text)
    several = _SEVERAL.search(read.text.partition(",")[0]) or read.also or read.alternatives
    words = _HELD_IN.sub("", found["words"].strip()) if found is not None else ""
    if found is not None and not several and words and measure_word(words.split()[0].casefold()) is None:
        told = amount_told(found["amount"].casefold(), food, tables)
        if told is not None and abs(told.grams - grams) <= _SAME * grams:
            return HANGS_ON.sub("", words)
    name = _named_so(read.text, food, tables)
    still = _STILL_SO.search(read.text.partition(",")[0]) if not several else None
    so = f"{still[0].lower()} " if still is not None and still[0].lower() not in name else ""
    return f"{so}{name}{tail_of(read.text)}"


def _is_one_of_several(read: IngredientRead, food: Food) -> bool:
    """Whether a line lists several foods with commas, of which this is one: the others are none of its words.

    Of `mixed mushrooms (oyster, shiitake)` the brackets tell which.
    """
    first, comma, rest = read.text.partition(",")
    name = set(words_of(food.name)[-1:])
    behind = name <= set(words_of(rest)) and not name & set(words_of(first))
    if first.rfind("(") > first.rfind(")"):
        behind |= set(words_of(food.name)) - set(words_of(first)) <= set(words_of(rest))
    return bool(comma) and (bool(read.also) or behind)


# What holds of whatever takes the food's place, too.
_HOLDS = re.compile(
    r"(?:,|\()\s*(divided|at room temp(?:erature)?|(?:lightly )?whipped|(?:skins?|casings?) removed"
    r"|split(?:(?: and|,) (?:lightly )?toasted)?|halved and (?:lightly )?toasted"
    r"|warm(?:ed)?(?: (?:up|through))?|(?:lightly )?toasted"
    r"|or (?:more |less )*to taste|chilled|melted|softened|at the table)(?=[,;)]|$)",
    re.IGNORECASE,
)
_HOLDS_OF = {
    "divided": None,
    "whipped": {"cream"},
    "removed": {"sausage", "meat"},
    "warm": {"milk", "bread", "wrap", "stock", "plant-drink"},
    "split": {"bread", "wrap"},
    "melted": {"butter", "oil"},
    "softened": {"butter", "cheese"},
    "toasted": {"bread", "wrap", "nut", "seed"},
}


def what_holds(text: str, stand_in: Food) -> str:
    """What a line says of its food that holds of a stand-in, too: `, divided`, `, at room temperature`."""
    told = [found[1].strip() for found in _HOLDS.finditer(text)]
    fit = []
    for one in told:
        kinds = next((kinds for word, kinds in _HOLDS_OF.items() if word in one.casefold()), None)
        fit += [one] if kinds is None or stand_in.kind in kinds else []
    return "".join(f", {one}" for one in dict.fromkeys(fit))


def _named_so(text: str, food: Food, tables: Tables) -> str:
    """The longest name of a food that its line uses and no other food has (`lasagne sheets`), else its own."""
    line = f" {plain(text)} "
    told = [name for name in tables.names_of(food.id) if f" {name} " in line or f" {name}," in line]
    told = [_HELD_IN.sub("", name) for name in told]
    other = {name for name in told if len(name) >= _A_LONG_WORD and name not in food.name}  # zucchini are courgettes
    alone = [name for name in told if (len(name.split()) > 1 or name in other) and _means_one(name, tables)]
    return max(alone, key=len, default=food.name)


def _means_one(name: str, tables: Tables) -> bool:
    return sum(row.name == name for row in tables.names) + sum(food.name == name for food in tables.foods) == 1


def stand_in_words(read: IngredientRead, stand_in: Food, tables: Tables, whole: bool = False) -> str:
    """What a stand-in is called: by the line's own word where that is a name of it (`gluten-free lasagne sheets`).

    Cut as the line says, unless it stays `whole`, to be filled.
    """
    called = _called(read, stand_in, tables) or stand_in.name
    if stand_in.kind == "stock" and called.startswith("stock ") and _OF_VEGETABLES.search(read.text):
        called = f"vegetable {called}"
    meat = _OF_MEAT.search(read.text) if stand_in.kind == "stock" and stand_in.diet == "omnivore" else None
    if meat is not None and called.startswith("meat stock "):
        called = f"{meat[0].lower()} {called.removeprefix('meat stock ')}"
    if stand_in.kind == "yoghurt" and _PLAIN.search(read.text) and not _PLAIN.search(called):
        called = f"plain {called}"
    if stand_in.kind in {"stock", "milk", "plant-drink"} and (hot := _HEATED.search(read.text)) is not None:
        return f"{called}, {hot[1].lower()}" if hot[1].lower() not in called else called
    if stand_in.id == CUBE and (water := _DISSOLVED.search(read.text)) is not None:
        return f"{called}, {water[1].lower()}"
    if stand_in.kind in BY_THE_PIECE and (warm := _TOASTED.match(read.text)) is not None:
        return f"{called}, {warm[0].lower()}"
    if stand_in.kind == "bread" and (toast := _A_TOAST.search(read.text)) is not None:
        return f"{called}, toasted and buttered" if toast[1] else f"{called}, toasted"
    if stand_in.kind == "bread" and _IN_CRUMBS.search(read.text):
        return f"{called}, in crumbs"
    if stand_in.kind == "nut" and (soaked := _SOAKED.search(read.text)) is not None:
        return f"{called}, {soaked[0].lower()}"
    if stand_in.kind == "nut" and (chopped := _CHOPPED_NUTS.search(read.text)) is not None:
        return f"{called}, {chopped[0].lower()}"
    if stand_in.kind == "meat" and (sliced := CUT.search(read.text)) is not None:
        return f"{called}, {sliced[1].lower()}"
    if stand_in.kind == "pulse" and stand_in.name.startswith("canned"):
        dry = _PATTED_DRY.search(read.text)  # so it does in a burger, whatever pulse it is
        return f"{called}, drained, rinsed and patted dry" if dry else f"{called}, drained and rinsed"
    if stand_in.kind not in _IS_CUT or whole:
        return called
    if (told := cut_by_its_swap(read, stand_in, tables)) is not None:
        first = usual_cut(stand_in).partition(",")[0]
        peeled = f"{first}, " if first in {"peeled", "trimmed"} and told.startswith("in ") else ""
        return f"{called}, {peeled}{told}"
    cut = CUT.search(HOW_LARGE.sub(r"\1 ", read.text.replace("&", "and")))
    done = fit_cut(cut[1].lower(), stand_in) if cut and stand_in.prep != _GRATED else ""
    if not done and stand_in.kind == "pepper" and _SEEDED.search(read.text):
        done = "seeded"
    own = tables.food_by_id.get(read.food or "")
    if not done and stand_in.kind == "citrus" and own is not None and own.kind != "citrus":
        done = usual_cut(stand_in)
    # what is bought whole and large is cut; berries are as they are
    wants_a_cut = _PREPARED.search(read.text) or (own is not None and own.kind == "pulse")
    if not done and wants_a_cut and (stand_in.kind != "fruit" or stand_in.prep == _IN_PIECES):
        done = usual_cut(stand_in)
    return f"{called}, {done}" if done else called


def _called(read: IngredientRead, stand_in: Food, tables: Tables) -> str:
    """The longest name of the line's food that stands in the line and is the stand-in's too with what it is free of."""
    line = f" {plain(read.text)} "
    known = set(tables.names_of(stand_in.id))
    row = tables.food_by_id.get(read.food or "")
    own = {row.name} if row is not None else set()
    for name in sorted({*tables.names_of(read.food or ""), *own}, key=lambda one: (-len(one), one)):
        if f" {name}" in line:
            for free in _FREE:
                if f"{free} {name}" in known:
                    return f"{free.replace(' ', '-')} {name}"
    return ""


def is_unraised(read: IngredientRead, stand_in: Food) -> bool:
    """Whether a flour takes the place of a self-raising one and is not self-raising itself."""
    flour = stand_in.kind in {"flour", "starch"}
    return flour and _RAISES.search(read.text) is not None and _RAISES.search(stand_in.name) is None


def tail_of(text: str) -> str:
    """How the line says it is cut: `, finely chopped`."""
    _, comma, rest = HOW_LARGE.sub(r"\1 ", _COMMA_WITHIN.sub("", text)).partition(",")
    if _TO_SERVE.search(rest) and _SEVERAL.search(rest) and not names_nothing(_TO_SERVE.sub("", rest)):
        rest = "to serve"  # the line names other foods too
    if any(sign.isdigit() for sign in _SIZED.sub("", rest)):
        soaked = _SOAKED.match(rest.strip())
        rest = soaked[0] if soaked else ""
    return f", {rest.strip()}" if comma and rest else ""


def for_what(text: str) -> str:
    """What a line has its food for, at its end: `, to serve`, `, for drizzling`."""
    more = _AND_MORE.search(text)
    if more is not None:
        return f", {more[1].lower()}"
    found = _FOR_WHAT.search(text)
    # Of what is served all foods of a line are; of oil and butter only one may be for frying.
    return f", {found[1].lower()}" if found and (_SERVED.search(text) or not _SEVERAL.search(text)) else ""


def if_optional(read: IngredientRead) -> str:
    """`, optional`, where a line says so of its food."""
    return ", optional" if read.optional and _OPTIONAL.search(read.text) else ""
