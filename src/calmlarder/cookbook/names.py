"""Which food the name in an ingredient line means, from the whole of it to its head."""

import re
from typing import NamedTuple

from calmlarder.cookbook.line_amount import measure_word
from calmlarder.cookbook.states import cooked_twin, in_recipe, toasted
from calmlarder.cookbook.wording import names_nothing, without_prep
from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.named_measures import SLENDER
from calmlarder.matching.names.foods import UNKNOWN, Candidate, FoodMatcher, Match
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import DISHES, GENERIC, HARMLESS, PRODUCTS
from calmlarder.matching.names.tokens import tokens_of, words_of_food
from calmlarder.matching.names.which_food import Named, name
from calmlarder.matching.names.words import plain, raw_words, singular, words_of
from calmlarder.matching.part import SOFT
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_MOST_KNOWN = 5_000
_LONGEST_NAME = 120
_WHOLE = 100.0  # the score of a name in full
# Words that say which state of a food is meant; what is done to it afterwards is no such word.
_HINTS = frozenset({
    "canned", "tinned", "tin", "can", "dry", "dried", "uncooked", "cooked", "boiled", "leftover", "frozen", "fresh",
})  # fmt: skip

_TINNED = frozenset({"can", "tin", "canned", "tinned"})
# Ground chillies alone go by the same name.
_CHILI_POWDER = re.compile(r"(?!.*\b(?:pure|red|kashmiri|ancho|chipotle|guajillo|pasilla)\b).*\bchili powder\b")
# Words for a kind that stand behind names of it.
_KIND_WORDS = {
    "cheese": "cheese", "pasta": "pasta", "mushroom": "mushroom", "bread": "bread", "fish": "fish",
    "lettuce": "salad-leaf", "noodle": "noodle", "squash": "squash", "rice": "rice",
}  # fmt: skip
_COOKED = re.compile(r"\b(?:(?:pre-?)?(?:cooked|boiled)|leftover|steamed|microwave)\b ?")
_FLAVOURED = re.compile(r"\b(?:infused|flavou?red)\b")
_DONE = re.compile(
    r"(?!(?:infused|flavou?red|canned|tinned|dried|smoked|salted|skimmed|pickled)$)[\w-]+ed|ground|cut|shaved"
)


class Part(NamedTuple):
    """What a name means, and the measure that its last word may be.

    `also` are further parts of a whole (spring onions: whites and greens), `assumed` says what was taken for granted.
    """

    match: Match
    unit_in_name: str | None
    also: tuple[Food, ...] = ()
    assumed: tuple[str, ...] = ()


class IngredientNames:
    """Names of ingredients against the tables; built once, it may read any number."""

    def __init__(self, tables: Tables, lexicon: Lexicon | None = None) -> None:
        """`lexicon` is that of the same tables, where it was made before."""
        self._tables = tables
        self._matcher = FoodMatcher(tables)
        self._lexicon = Lexicon(tables) if lexicon is None else lexicon
        self._known: dict[tuple[str, frozenset[str]], Match] = {}

    def part(self, text: str, told: frozenset[str]) -> Part:
        """The food of a name, with the measure its last word may be (`garlic cloves`)."""
        if _CHILI_POWDER.match(text):
            return self._chili_powder()
        match = self.match(text, told)
        words = without_prep(text.split(",")[0]).split()
        unit = self._piece_named(words, match.food) or next(
            (measure_word(word) for word in reversed(words[1:]) if measure_word(word)), None
        )
        if match.food is None and unit is not None:
            fewer = self.match(" ".join(word for word in words if measure_word(word) != unit), told)
            if fewer.food is not None:
                match = fewer
        if match.outcome == "ask" and match.score >= _WHOLE:
            foods, assumed = self._by_default(text, told, match)
            if foods:
                first = Match("matched", foods[0], foods[0].name, match.score, match.candidates)
                return Part(first, unit, foods[1:], assumed)
        return Part(match, unit)

    def _piece_named(self, words: list[str], food: Food | None) -> str | None:
        """The word of a name whose pieces the tables weigh by themselves: a chipolata is no large sausage."""
        if food is None:
            return None
        own = {row.measure for row in self._tables.own_measures(food)}
        if food.kind == "fruit-vegetable" and "small" in own and (SLENDER | {"mini"}) & set(words):
            return "small"
        return next((one for word in words if (one := singular(word)) in own and measure_word(one) is None), None)

    def _chili_powder(self) -> Part:
        """By its American spelling a mixture, and garlic in most: the reading that holds more, which is said."""
        return Part(self._named("chili powder blend", frozenset()), None, (), ("a mix, with garlic",))

    def is_name(self, text: str) -> bool:
        """Whether a text is, in any order of its words, a name of a food in full."""
        return self._matcher.is_name(text)

    def match(self, text: str, told: frozenset[str]) -> Match:
        """The food of a name; `told` are words of its whole line."""
        hints = told & _HINTS
        match = self._search(text, told, hints)
        if match.food is None and told & _TINNED:
            match = self._in_a_tin(text, hints) or match
        if match.food is not None or match.score >= _WHOLE:
            return match
        cooked = self._cooked(text, told, hints)
        return cooked or self._of_its_kind(text, told, hints) or self._as_in_a_larder(text, told, hints, match) or match

    def _in_a_tin(self, text: str, hints: frozenset[str]) -> Match | None:
        """What a name is in a tin (`can corn kernels`), where the tables know it so in full; else nothing."""
        head = without_prep(text.partition(",")[0])
        if names_nothing(head) or set(words_of(head)) <= DISHES:
            return None
        for told in (f"canned {head}", f"tinned {head}", f"{head} tin"):
            match = self._named(told, hints - _TINNED)
            if match.food is None or match.score < _WHOLE:
                continue
            if match.food.state.startswith("canned") or told in self._tables.names_of(match.food.id):
                return match
        return None

    def _cooked(self, text: str, told: frozenset[str], hints: frozenset[str]) -> Match | None:
        """What a name in full is without its word that it is cooked, cooked; else nothing."""
        head = without_prep(text.partition(",")[0])
        bare = _COOKED.sub("", head).strip()
        if bare == head or names_nothing(bare):
            return None
        return cooked_twin(self._named(bare, hints - {"cooked", "boiled", "leftover"}), told, self._tables)

    def _of_its_kind(self, text: str, told: frozenset[str], hints: frozenset[str]) -> Match | None:
        """`halloumi cheese`, `penne pasta`: a name in full with the word for its kind behind it; else nothing."""
        head, _, last = without_prep(text.partition(",")[0]).rpartition(" ")
        kind = _KIND_WORDS.get(singular(last))
        if kind is None or not head or names_nothing(head):
            return None
        match = self._named(head, hints)
        known = match.food is not None and match.score >= _WHOLE and match.food.kind == kind
        return in_recipe(match, head, told, self._tables) if known else None

    def _as_in_a_larder(self, text: str, told: frozenset[str], hints: frozenset[str], asked: Match) -> Match | None:
        """What the reader of larders makes of a name that no reading covers: it knows which words are but notes.

        Only where it is sure, takes nothing for granted, and means one of the foods that would be asked about.
        """
        head = text.partition(",")[0]
        first = re.split(r"\b(?:with|made from|prepared)\b", head)[0]
        named = self._larder_name(head, hints)
        if named is not None and first != head and not set(words_of(without_prep(first))) & named.takes:
            return None  # `ceviche prepared with snapper`: a dish that is not known
        if named is None or len(named.foods) != 1 or named.assumed or named.partly:
            return None
        food = self._tables.food_by_id[named.foods[0]]
        if "dried" in words_of(food.name) and not (set(words_of(head)) | hints) & {"dried", "dry"}:
            return None  # `mixed mushrooms` are no dried ones
        if asked.outcome == "ask":
            if food.id not in {one.food for one in asked.candidates}:
                return None
        elif not set(words_of(head)[-1:]) & named.takes:
            return None  # what a thing is stands last
        candidate = Candidate(food.id, food.name, 100.0)
        return in_recipe(Match("matched", food, food.name, 100.0, (candidate,)), head, told, self._tables)

    def _by_default(self, text: str, told: frozenset[str], asked: Match) -> tuple[tuple[Food, ...], tuple[str, ...]]:
        """What names.csv takes a name for that stands for several foods, and in which words; else nothing.

        Of pulses the cook is asked, for dry and tinned ones differ too much; of a dish that is but called soup, too.
        """
        foods = [self._tables.food_by_id[one.food] for one in asked.candidates]
        head = text.partition(",")[0]
        if any(food.kind == "pulse" for food in foods) or set(words_of(without_prep(head))) <= DISHES:
            return (), ()
        named = self._larder_name(head, told & _HINTS)
        if named is None or not named.assumed or not set(named.foods) <= {food.id for food in foods}:
            return (), ()
        if {"white part", "green part"} & told and len({"white part", "green part"} & told) == 1:
            return (), ()  # the line says which part
        return tuple(self._tables.food_by_id[one] for one in named.foods), named.assumed

    def _larder_name(self, head: str, hints: frozenset[str]) -> Named | None:
        """A name as the reader of larders takes it, where it takes it for something; it mends no spelling here."""
        if names_nothing(head) or _FLAVOURED.search(head) or len(head) > _LONGEST_NAME:
            return None
        typed = [word for word in raw_words(plain(without_prep(head))) if not word[0].isdigit()]
        tokens = [
            token._replace(raw=word, words=() if token.slip else token.words, slip=False)
            for token, word in zip(tokens_of(map(singular, typed), self._lexicon, SOFT), typed, strict=True)
        ]
        named = name(words_of_food(tokens, hints, SOFT, self._lexicon)) if tokens else None
        if named is None or named.outcome != "matched":
            return None
        plain_words = SOFT | HARMLESS | frozenset(FITS)
        strange = any(token.typed not in plain_words and not set(token.words) & named.takes for token in tokens)
        # `padana cheese`: a strange word before a general one names a kind that the tables do not know.
        return None if strange and named.takes <= GENERIC | PRODUCTS | {"green"} else named

    def _named(self, name: str, hints: frozenset[str]) -> Match:
        """What the matcher makes of a name, kept, for a recipe and its changes ask for the same ones again."""
        key = (name, hints)
        if key not in self._known:
            if len(self._known) > _MOST_KNOWN:
                self._known.clear()
            self._known[key] = self._matcher.match(name, hints)
        return self._known[key]

    def _search(self, text: str, told: frozenset[str], hints: frozenset[str]) -> Match:
        """The readings of a name from the whole to its head; the first that is a name in full wins."""
        head, comma, tail = text.partition(",")
        # `tofu, firm` is one name; what was done to it behind a comma makes no other food of it (`tomato, chopped`).
        behind = [word for word in without_prep(tail).split() if not _DONE.fullmatch(word)]
        named = comma and not names_nothing(head)
        tries = [f"{head} {' '.join(behind)}"] if named and 0 < len(behind) <= 2 and "with" not in behind else []
        tries.append(head)
        tries.append(without_prep(head))
        if comma and names_nothing(head):
            tries.append(without_prep(next((one for one in tail.split(",") if not names_nothing(one)), "")))
        flavoured = bool(_FLAVOURED.search(text))
        if flavoured:
            tries = [text.replace(",", " ")]  # oil with the taste of garlic is no plain oil
        best = UNKNOWN
        for tried in dict.fromkeys(tries):
            nothing = names_nothing(tried) and tried not in self._matcher.plain_names  # `half and half` is a name
            match = UNKNOWN if nothing else toasted(self._named(tried, hints), told, self._tables)
            if match.outcome == "matched" and match.score < 100 and tried != tries[-1]:
                continue
            if match.outcome == "matched" or match.score >= 100:
                return in_recipe(match, tried, told, self._tables)
            if match.outcome == "ask":
                best = match
        return best
