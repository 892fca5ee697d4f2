"""What the names in a step of a recipe mean, and what stands beside them."""

import re
from collections.abc import Iterable, Iterator, Mapping

from calmlarder.adapt.model import Change
from calmlarder.adapt.names import names_of_all, spans_in
from calmlarder.adapt.sentences import sentence_at
from calmlarder.adapt.things_now import Told
from calmlarder.matching.names.words import plain, words_of
from calmlarder.swaps.candidates import same_thing
from calmlarder.tables.book import Tables

_NEVER_GOLDEN = frozenset(
    {"allium", "herb", "spice", "oil", "butter", "stem", "acid", "stock", "paste", "sauce", "root", "pepper"}
)
_LIQUIDS = frozenset({"stock", "water"})
_IN_BRACKETS = re.compile(r" ?\[[^\[\]]*\]")
_A_LITTLE = re.compile(
    r"\b(?:(?:the )?(?:juice|(?:grated )?zest) of (?:(?:an?|one|two|half an?|half the|\d|the) )?"
    r"|(?:an?|some|½|half an?|\d[\d/]*) (?:(?:good|big|large|small|generous|tiny|little) )?"
    r"(?:(?:pinch|knob|drizzle|splash|squeeze|handful|teaspoon|tsp|tablespoon|tbsp|spoonful|dash|grating) (?:of )?)?)$",
    re.IGNORECASE,
)  # `a pinch of salt`, which no line of the list may tell
_RUNS_OUT = re.compile(r"\bjuices? (?:that|which) \w+(?: out)? (?:from|of|off) the $", re.IGNORECASE)
_SOAKED_IN = frozenset({"stock", "oil", "butter", "spice", "herb", "acid", "citrus"})
_IN_THE_STOCK = "in the stock and as much water as it wants, and drain"
_SPOON_OF = re.compile(r"\b(tablespoon|tbsp|teaspoon|tsp)s? of (?:the )?$", re.IGNORECASE)
_SPOONS = {"ta": "tbsp", "tb": "tbsp", "te": "tsp", "ts": "tsp"}
_WORD_BEFORE = re.compile(r"[^\W\d_]+[ -]$")
_WORD_BEHIND = re.compile(r"[ -][a-z]{4,20}\b", re.IGNORECASE)
_MADE_SO = re.compile(r"pickled|fried|roasted|charred|caramelised|caramelized|marinated|crispy|softened|cooked", re.I)
_FOR_A_PART = re.compile(r"(?:\d{1,2}[.)] )?(?:for|to make) the ([a-z ]{3,30}?)[,:]", re.IGNORECASE)
_AN_AMOUNT = re.compile(
    r"(?<![\w/])[\d½¼¾⅓⅔⅛][\d½¼¾⅓⅔⅛./]*(?: \d/\d)? ?(?:g|kg|ml|cups?|tbsp|tsp|tablespoons?|teaspoons?|oz|ounces?)\b"
    r"(?= (?:of )?(?:the )?(?:[a-z-]+ )?$)",
    re.IGNORECASE,
)
_TELLING = 5  # letters of a word that tells one line from another
_LONGEST_WORD = 60  # letters of a word before a name; no food has one as long
# `the white parts of the spring onions` is one thing.
_WHITES = re.compile(r"whites?", re.IGNORECASE)
_ITS_WHITES = re.compile(r" whites?\b", re.IGNORECASE)
_PARTS_OF = re.compile(r" parts? of (?:the )?")


def turns_golden(text: str, told: Told) -> bool:
    """Whether a text names something that is fried until golden, besides green tops."""
    foods = {food for _, _, meant in spans_in(text, told.names) for food in meant}
    foods |= {one.food for food in foods & set(told.changed) for one in told.changed[food].to}
    kinds = {told.tables.food_by_id[food].kind for food in foods if food not in told.changed}
    return bool(kinds - _NEVER_GOLDEN)


def late_among(foods: Iterable[str], told: Told) -> str:
    """Which of the things that all go in at once has a time of its own."""
    late = {food: told.changed[food] for food in foods if told.changed[food].heat}
    return "; ".join(_with_its_name(change, told) for change in late.values())


def _with_its_name(change: Change, told: Told) -> str:
    names = [told.tables.food_by_id[one.food].name for one in change.to]
    heat = change.heat.removeprefix("add ")
    return heat if heat.startswith(tuple(names)) else f"{' and '.join(names)} {heat}"


def of_the_other_line(before: str, meant: frozenset[str], told: Told) -> bool:
    """Whether `the tablespoon of flour` is that of a line that stays, where another line of the food changes."""
    word = words_of(before[-_LONGEST_WORD:])[-1:]
    staying = {one for food in meant for text in told.staying.get(food, ()) for one in words_of(text)}
    changing = {one for food in meant for change in told.each.get(food, ()) for one in words_of(change.ingredient)}
    if word and word[0] in staying - changing and len(word[0]) >= _TELLING:
        return True  # `the seasoned flour`, as its line has it
    part = _FOR_A_PART.match(before)
    if part is not None and any(_is_only_there(set(words_of(part[1])), food, told) for food in meant):
        return True
    if part is None and told.introduced:
        words = set(words_of(before))
        if any(_is_of_a_later_part(words, food, told) for food in meant):
            return True
    if any(_is_the_amount_of_one(before, food, told) for food in meant):
        return True
    spoon = _SPOON_OF.search(before)
    return spoon is not None and any(
        _SPOONS[spoon[1].casefold()[:2]] in text.casefold() for food in meant for text in told.staying.get(food, ())
    )


def _is_the_amount_of_one(before: str, food: str, told: Told) -> bool:
    """Whether a step names the very amount of a line that stays (`1/2 cup flour`), and none that changes has it."""
    found = _AN_AMOUNT.search(before)
    amount = plain(found[0]).split() if found else []
    stay = [plain(text).split()[: len(amount)] for text in told.staying.get(food, ())]
    change = [plain(one.ingredient).split()[: len(amount)] for one in told.each.get(food, ())]
    return bool(amount) and amount in stay and amount not in change


def _is_only_there(words: set[str], food: str, told: Told) -> bool:
    """Whether of a food's lines one that stays stands under the heading of these words, and none that changes."""
    stay = [told.headings.get(text, "") for text in told.staying.get(food, ())]
    change = [told.headings.get(one.ingredient, "") for one in told.each.get(food, ())]
    there, elsewhere = (any(words & set(words_of(one)) for one in those) for those in (stay, change))
    return there and not elsewhere


def _is_of_a_later_part(words: set[str], food: str, told: Told) -> bool:
    """Whether a food's changed lines are all of parts that a step of their own begins with, which these are not of."""
    change = [set(words_of(told.headings.get(one.ingredient, ""))) for one in told.each.get(food, ())]
    stay = [set(words_of(told.headings.get(text, ""))) for text in told.staying.get(food, ())]
    apart = all(there & told.introduced and not there & words & told.introduced for there in change)
    return bool(change and stay) and apart and not any(there & told.introduced for there in stay)


def introduced_parts(steps: Iterable[str]) -> frozenset[str]:
    """The words of the parts that steps begin with: `For the dumplings, mix the flour and suet.`"""
    found = (_FOR_A_PART.match(step) for step in steps)
    return frozenset(word for part in found if part is not None for word in words_of(part[1]))


def is_longer_name(step: str, span: tuple[int, int], meant: frozenset[str], tables: Tables) -> bool:
    """Whether a name ends another thing's, of which no line was read: `spring onions` are no onions."""
    near = max(0, span[0] - _LONGEST_WORD)
    first = _WORD_BEFORE.search(step[near : span[0]])
    if first is None:
        return False
    longer = words_of(step[near + first.start() : span[1]])
    other = names_of_all(tables).get(longer, frozenset())
    if _MADE_SO.fullmatch(first[0].strip()):
        return False  # `pickled onions`: of the recipe's own
    more = len(longer) > len(words_of(step[span[0] : span[1]]))  # `the` counts for nothing
    return more and bool(other) and not any(same_thing(one, food) for one in other for food in meant)


def is_a_part(step: str, span: tuple[int, int], headings: Mapping[str, str]) -> bool:
    """Whether a name is what a heading calls a part of the dish, and no line of the list its food: the `crema`.

    `headings` are the headings (`For the avocado crema`) by the lines under them.
    """
    own = words_of(step[span[0] : span[1]])
    names = {words_of(heading.strip(" :")) for heading in headings.values()}
    lines = [words_of(line) for line, heading in headings.items() if line != heading]
    is_one = any(len(name) > len(own) and name[-len(own) :] == own for name in names)
    return bool(own) and is_one and not any(set(own) <= set(line) for line in lines)


def begins_a_bread(step: str, span: tuple[int, int], meant: frozenset[str], tables: Tables) -> bool:
    """Whether a name begins that of a bread which the list has not: the `garlic` of `serve with garlic bread`."""
    behind = _WORD_BEHIND.match(step, span[1])
    if behind is None:
        return False
    longer = names_of_all(tables).get(words_of(step[span[0] : behind.end()]), frozenset())
    breads = [tables.food_by_id[food].kind == "bread" for food in longer - meant]
    return bool(breads) and all(breads) and not any(tables.food_by_id[food].kind == "bread" for food in meant)


def whole_names(
    step: str, spans: Iterable[tuple[int, int, frozenset[str]]]
) -> Iterator[tuple[int, int, frozenset[str]]]:
    """The names of a step; `the white parts of the spring onions` and `spring onion whites` are one, of the whites."""
    waiting: tuple[int, int, frozenset[str]] | None = None
    for start, end, meant in spans:
        if waiting is not None:
            first, last, whites = waiting
            waiting = None
            if _PARTS_OF.fullmatch(step, last, start):
                yield first, end, whites
                continue
            if _WHITES.fullmatch(step, start, end) and step[last:start] == " ":
                yield first, end, meant  # `the green onion whites`
                continue
            yield first, last, whites
        if _WHITES.fullmatch(step, start, end) or _ITS_WHITES.match(step, end):
            waiting = start, end, meant
        else:
            yield start, end, meant
    if waiting is not None:
        yield waiting


def alone_in(step: str, end: int, food: str, told: Told) -> bool:
    """Whether no other food but what it soaks in stands in the sentence that soaks one."""
    sentence = sentence_at(step, end)
    others = (meant for _, _, meant in spans_in(sentence, told.names) if food not in meant)
    # The first other food answers it: a sentence without end names many, and is asked about each of them.
    return all(told.tables.food_by_id[one].kind in _SOAKED_IN for meant in others for one in meant)


def beside_what_soaks(sentence: str, instead: str, told: Told) -> list[str]:
    """What else a sentence puts to what soaks there, as it calls it, without the liquid; `instead` names the grain."""
    bare = _IN_BRACKETS.sub("", sentence)
    found: dict[str, None] = {}
    for start, end, meant in spans_in(bare, names_of_all(told.tables)):
        if _RUNS_OUT.search(bare[:start]):
            continue  # `the juice that runs from the tomatoes`
        little = _A_LITTLE.search(bare[:start])
        kinds = {told.tables.food_by_id[food].kind for food in meant}
        name = bare[start:end].casefold()
        if not kinds & _LIQUIDS and name not in instead and not name.endswith("water"):
            found[f"{little[0] if little else ''}{name.removeprefix('the ')}"] = None
    return list(found)


def boiled_in(step: str, instead: str, told: Told) -> str:
    """What is boiled in the place of soaking, in the stock of that step where it has one."""
    named = {one for _, _, meant in spans_in(step, told.names) for one in meant}
    stock = any(told.tables.food_by_id[one].kind == "stock" for one in named)
    return instead.replace("in plenty of water, and drain", _IN_THE_STOCK) if stock else instead
