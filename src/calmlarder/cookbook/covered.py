"""Whether a reading covers every food that its line names."""

import re
from collections.abc import Iterable

from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.matching.names.words import plain, words_of
from calmlarder.tables.book import Tables

# Examples and where it is used name foods that are not added: `such as …`, `for frying in butter` stays a question.
_EXAMPLES = re.compile(r"\b(?:such as|e\.?g\.?|for example|for instance|like|preferably|ideally)\b[^()]*")
# `salt-cured`, `garlic-free`: a word before the hyphen says how it is made or what it lacks.
_HYPHENED = re.compile(
    r"\b[a-z]+-(?:cured|free|fed|packed|grown|roasted|smoked|dried|style|sized?)\b|\b(?:low|lower|reduced|no)-(?:salt|fat)(?:-added)?\b"
)
# What is denied, or to be left out, is not in it: `no added sugar`, `omit if your flour has it`.
_DENIED = re.compile(
    r"\b(?:at least |min(?:imum)? )?\d{2} ?%(?: or (?:more|higher))? cocoa(?: solids)?"
    r"|\((?:omit|skip|leave out|not|no|without|check)\b[^)]*\)"
    r"|\bnot (?:in|from|with) (?:\w+ )?\w+"
    r"|\b(?:no|without|free (?:of|from)) (?:added |any )?\w+(?: (?:or|and) \w+)?|\b\w+(?: (?:and|or|&) \w+)? free\b"
)
# How much of it, and what that hangs on, names no food of the line: `or more if your apples are sharp`.
HANGS_ON = re.compile(
    r",?\s*\(?\b(?:(?:or|and|plus) )?(?:(?:a (?:little|bit|touch|splash)|even|some) )?(?:more|less|extra)"
    r"(?: or less)? (?:if|when|unless|depending|according|as)\b[^;()]*"
    r"|\b(?:if|unless|when|depending (?:up)?on(?: how \w+)?|according to) (?:your|the|they|it|you(?:'re| are| have)?)\b"
    r"[^,;()]*"
)
# Words that are the name of a food and, in ingredient lines, far oftener something else.
_ELSE = frozenset({
    "leftover", "sprinkle", "sprinkles", "water", "ice", "stock cube", "mix", "topping", "rib", "ear", "crisp",
    "skimmed", "semi", "wholemeal",
})  # fmt: skip
_OF_CITRUS = frozenset({"zest", "rind", "peel", "juice"})  # of a whole fruit, what is used of it
_TRIFLE_G = 0.02  # far below what any limit can tell: ours
_A_PINCH_G = 1.0  # where no amount is said, of salt or spice: ours
_SCRAPS = re.compile(
    r"\b(?:covered |packed )?(?:in|with) (?:a little |its |their |own |spring |salted |olive |sunflower |vegetable )*"
    r"(?:juice|oil|brine|water)\b"
)


class Coverage:
    """The food-words of all names, to be held against a reading."""

    def __init__(self, tables: Tables) -> None:
        self._tables = tables
        self._foods = tables.food_by_id
        self._words: dict[str, set[str]] = {food.id: set(words_of(food.id.replace("-", " "))) for food in tables.foods}
        self._alone: set[str] = set()
        alone: dict[str, set[str]] = {}
        rows = [(food.name, food.id) for food in tables.foods] + [(row.name, row.food) for row in tables.names]
        for name, food in rows:
            words = words_of(name)
            self._words[food].update(words)
            if len(words) == 1:
                self._alone.add(words[0])
                alone.setdefault(words[0], set()).add(food)
        self._alone -= _ELSE
        for cooked in self._foods:  # what is cooked goes by the names of its packet, too: `cooked rotini`
            twin = cooked.removesuffix("-cooked") + "-dry"
            if cooked.endswith("-cooked") and twin in self._words:
                self._words[cooked] |= self._words[twin]
        self._any = frozenset().union(*self._words.values())
        self._harmless = {word: self._harmless_kinds(meant, tables) for word, meant in alone.items()}

    def knows(self, word: str) -> bool:
        """Whether a word stands in the name of any food."""
        return word in self._any

    def _harmless_kinds(self, foods: Iterable[str], tables: Tables) -> set[str]:
        """The kind of foods that bring nothing: another cut of the same meat, another rice, makes no difference."""
        kinds: set[str] = {self._foods[food].kind for food in foods}
        known = all(not tables.unknown_of(food) for food in foods)
        brings = (row for food in foods for row in tables.fermentables_of(food).values())
        return kinds if known and len(kinds) == 1 and not any(row.g_per_100g for row in brings) else set()

    def without_trifles(self, read: IngredientRead) -> IngredientRead:
        """A reading without what is but worked in and brings next to nothing (`garlic, crushed with a little salt`)."""
        kept = tuple(other for other in read.also if self._most(other) >= _TRIFLE_G)
        return read.model_copy(update={"also": kept})

    def _most(self, read: IngredientRead) -> float:
        """Grams of one component that a food of a line may bring at most.

        Without an amount it is a pinch, or a usual portion of a liquid.
        """
        rows = self._tables.fermentables_of(read.food or "").values()
        unknown = 100.0 if self._tables.unknown_of(read.food or "") else 0.0
        share = max([unknown, *(float(max(row.g_per_100g or 0, row.high or 0)) for row in rows)])
        if read.grams is not None:
            return share / 100 * read.grams
        food = self._foods.get(read.food or "")
        usual = float(food.portion_g) if food is not None and food.roles[0] == "liquid" else _A_PINCH_G
        return share / 100 * usual  # nobody cooks rice in a pinch of stock

    def left_out(self, line: str, foods: Iterable[str]) -> tuple[str, ...]:
        """The words of a line that name a food, and none of these foods, in order."""
        told = _SCRAPS.sub(
            " ", HANGS_ON.sub(" ", _HYPHENED.sub(" ", _DENIED.sub(" ", _EXAMPLES.sub(" ", plain(line)))))
        )
        covered: set[str] = set()
        for food in foods:
            covered |= self._words[food] | set(words_of(self._foods[food].kind.replace("-", " ")))
        kinds = {self._foods[food].kind for food in foods}
        if "garlic" in covered:
            covered.add("clove")  # `1 tbsp minced garlic (about 3 cloves)`
        if "citrus" in kinds:
            covered |= _OF_CITRUS
        return tuple(
            dict.fromkeys(
                word
                for word in words_of(told)
                if word in self._alone and word not in covered and not self._harmless[word] & kinds
            )
        )
