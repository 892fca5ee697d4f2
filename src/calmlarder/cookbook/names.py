"""Which food the name in an ingredient line means, from the whole of it to its head."""

import re
from typing import NamedTuple

from calmlarder.cookbook.quantity import measure_word
from calmlarder.cookbook.states import in_recipe, toasted
from calmlarder.cookbook.wording import names_nothing, without_prep
from calmlarder.matching.foods import UNKNOWN, FoodMatcher, Match
from calmlarder.tables.book import Tables

_MOST_KNOWN = 5_000
# Words that say which state of a food is meant; what is done to it afterwards is no such word.
_HINTS = frozenset({
    "canned", "tinned", "tin", "can", "dry", "dried", "uncooked", "cooked", "boiled", "leftover", "frozen", "fresh",
})  # fmt: skip

# By its American spelling a mixture that may hold garlic and onion; ground chillies alone go by the same.
_CHILI_POWDER = re.compile(r"(?!.*\b(?:pure|red|kashmiri|ancho|chipotle|guajillo|pasilla)\b).*\bchili powder\b")
_FLAVOURED = re.compile(r"\b(?:infused|flavou?red)\b")
_DONE = re.compile(
    r"(?!(?:infused|flavou?red|canned|tinned|dried|smoked|salted|skimmed|pickled)$)[\w-]+ed|ground|cut|shaved"
)


class Part(NamedTuple):
    """What a name means, and the measure that its last word may be."""

    match: Match
    unit_in_name: str | None


class IngredientNames:
    """Names of ingredients against the tables; built once, it may read any number."""

    def __init__(self, tables: Tables) -> None:
        self._tables = tables
        self._matcher = FoodMatcher(tables)
        self._known: dict[tuple[str, frozenset[str]], Match] = {}

    def part(self, text: str, told: frozenset[str]) -> Part:
        """The food of a name, with the measure its last word may be (`garlic cloves`)."""
        match = self.match(text, told)
        words = without_prep(text.split(",")[0]).split()
        unit = next((measure_word(word) for word in reversed(words[1:]) if measure_word(word)), None)
        if match.food is None and unit is not None:
            fewer = self.match(" ".join(word for word in words if measure_word(word) != unit), told)
            if fewer.food is not None:
                match = fewer
        return Part(match, unit)

    def match(self, text: str, told: frozenset[str]) -> Match:
        """The food of a name; `told` are words of its whole line."""
        hints = told & _HINTS
        return self._search(text, told, hints)

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
        if _CHILI_POWDER.match(text):
            meant = (self._named(name, frozenset()) for name in ("chilli powder", "chili powder blend"))
            both = tuple(one for match in meant if match.score >= 100 for one in match.candidates)
            return Match("ask", None, None, 100.0, both)
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
            match = UNKNOWN if names_nothing(tried) else toasted(self._named(tried, hints), told, self._tables)
            if match.outcome == "matched" and match.score < 100 and tried != tries[-1]:
                continue
            if match.outcome == "matched" or match.score >= 100:
                return in_recipe(match, tried, told, self._tables)
            if match.outcome == "ask":
                best = match
        return best
