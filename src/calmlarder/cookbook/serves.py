"""How many people a recipe is for, as its words say."""

import re
from collections.abc import Iterable

from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS

_COUNT = r"(\d{1,3}|" + "|".join(word for word in WHOLE_WORDS if word not in {"few", "several", "couple"}) + r")"
_RANGE = rf"(?:\s?(?:-|–|to|or)\s?{_COUNT.replace('(', '(?:', 1)}\b)?"
_ABOUT_SO_MANY = r"(?:about |around |up to |a (?:hungry )?(?:family|crowd|group|table|party) of )?"
_PEOPLE = (
    r"(?:people|ppl|pers(?:ons?)?\b|servings?|portions?|helpings?|serves|eaters|guests|adults|lunches|dinners|suppers"
    r"|(?:main[ -](?:course|meal)[ -])(?:servings|portions)|mains\b)"
)
_APPETITE = (
    r"(?:hungry|greedy|generous|polite|hearty|starving|ravenous|modest|dainty|light|normal|big|small|large|good)"
)
_OF_IT_FOR = (
    r"(?:make (?:it|this) for|(?<=[.!?] )(?:it|this|that|which)(?:'s| is| does| feeds| will do| makes enough)"
    r"(?: \w+ly)? for|(?:she|he|mum|nan|gran|i) (?:say|reckon)s? it (?:does|feeds|serves|is for))"
)
_DISHES = r"(?:bowls?|plates?|platefuls?|bowlfuls?|glasses|mugs)"  # one a person, which is taken for granted and said
_END = r"\s{0,3}[.!)\]*_]{0,3}\s{0,3}$"
SERVES = re.compile(
    # A form's field: `People: 4`, `Covers 6`.
    rf"(?:^|[.!?|] )(?:people|persons|pax|covers|diners|eaters|guests|heads|mouths|number(?: of \w+)?)\b"
    rf"[\s:*_=]{{1,6}}{_COUNT}(?!\s?[a-z%:])"
    # `For: 6   Time: 1 hour`: a field of its own, before others.
    rf"|(?:^|[.!?|] )for:\s?{_COUNT}(?=\s*$|\s*[|·,;]|\s+(?:time|prep\w*|cook\w*|difficulty|level|ready|total|takes)\b)"
    rf"|\b(?:serves|servings?|feeds|to feed|portions?)\b[\s:*_]{{0,6}}{_ABOUT_SO_MANY}"
    rf"{_COUNT}\b(?!\s?(?:g|ml|kcal)\b)"
    rf"|\b(?:makes|yields?|for)\b[\s:*_]{{0,6}}(?:about )?{_COUNT}{_RANGE}\s{_PEOPLE}\b"
    rf"|\b{_COUNT}{_RANGE}\s(?:{_APPETITE} )?{_PEOPLE}\b"
    # `For 4 hungry or 6 polite`: the larger plates are those of the hungry.
    rf"|\b(?:for|feeds|serves|does)\s{_COUNT} (?:{_APPETITE}|generously|amply|comfortably)\b"
    rf"(?=\s?(?:$|[.,;!]|or \w+ {_APPETITE}))"
    rf"|\b{_COUNT} of (?:us|you|them)\b|\b(?:we are|we're|there are) {_COUNT}\b(?= ?[),.;!]|$)"
    rf"|\b(?:enough for|enough to (?:feed|serve)|sized for)\b\s{_ABOUT_SO_MANY}{_COUNT}\b"
    rf"(?!\s?(?:min|hour|day|more))"
    rf"|\b{_OF_IT_FOR} {_COUNT}\b(?!{_RANGE}\s?(?:min|hour|hr|day|week|g\b|ml))"
    rf"|\bdo (?:it|this) for {_COUNT} (?:like this|of us|people|at home|here)\b"
    # `Makes 4 for supper with salad`: of what is a meal nobody counts pieces.
    rf"|(?:^|\b(?:makes|yields?)\b[\s:*_]{{0,6}})(?:about )?{_COUNT}{_RANGE} (?:for|as) (?:an? |the )?(?:\w+ )?"
    rf"(?:meal|supper|dinner|lunch|tea|main|starter|brunch|breakfast)\b"
    rf"|(?:^|[!?] )(?:(?:it|this|that) ?)?(?:does|['’]ll do|will do) (?:for )?{_COUNT}(?: of (?:us|them))?{_END}"
    # `Yields 12` and no word of what: of biscuits it is biscuits, and one of them is the least serving there is.
    rf"|\b(?:makes|yields?)\b[\s:*_]{{0,6}}(?:about )?{_COUNT}{_RANGE}{_END}",
    re.IGNORECASE | re.MULTILINE,
)
# `for the two of us and a guest (so: 3, with 2 eggs each)`: the sum is what counts.
_IN_ALL = re.compile(rf"\b(?:so|in all|altogether):? {_COUNT}(?= of us\b|[,)][^.]{{0,40}}\beach\b|\))", re.IGNORECASE)
# `Soup for 2`, in a title or a line under it: the number ends what is said, so that it counts no minutes.
_FOR = re.compile(
    rf"(?!.*\b(?:min|mins|minutes?|hours?|hrs?|days?|prep|cook|bake|simmer|boil|chill|rest|soak|leave|oven)\b)"
    rf"[^.!?]{{0,80}}?\bfor:? (?:about |a family of )?{_COUNT}{_RANGE}"
    rf"(?:\s?(?:$|[.,!:;)\]*_#]|[-–—(]\s?[^\d\s])|\s(?:with|over|on|as an?|alongside)\s[^\d]{{3,30}}$)",
    re.IGNORECASE,
)
_IN_BRACKETS = re.compile(r"[^\d().!?:]{3,60} \((\d{1,2})\)\s*")  # `Vegetable lasagne (6)`: a title, and for whom
# A number without a word of what: people up to so many, beyond it rather biscuits. Common practice, no source.
_MOST_WITHOUT_A_WORD = 12
_LONGEST_YIELD = 30  # letters of a line that says no more: ours
_MAKES_ALONE = re.compile(rf"(?:makes|yields?)\b[\s:*_]*(?:about )?{_COUNT}{_RANGE}{_END}", re.IGNORECASE)
_PIECES = re.compile(
    rf"(?m)(?:^|[.!?] |[·•|⋅] ?|\s{{2,9}})\W*(?:(?:it|this|that) )?"
    rf"(?:makes|yields?|gives|cuts? into|slices into|divides into"
    rf"|for(?=[\s:*_]{{1,6}}(?:about )?\w{{1,6}}{_RANGE}\s(?:generous |large |small |big )?{_DISHES}))"
    rf"\b[\s:*_]{{0,6}}((?:about |approximately )?{_COUNT}\b[^\n]{{0,40}})",
    re.IGNORECASE,
)
# `It cuts into 10 if people are polite`: slices, by whatever name.
_CUT_ALONE = re.compile(
    rf"(?:cuts?|slices|divides) into\W+((?:about )?{_COUNT}{_RANGE})(?=\s?(?:$|[.,;:!?(]|if\b|or\b))"
)
_COUNTED = re.compile(rf"\s*((?:about )?{_COUNT}\b[^\n]{{0,40}})", re.IGNORECASE)
# `4 (2 tacos each)`: what each of them gets stands in brackets.
_ALONE = re.compile(
    r"\s*(\d{1,3})(?:\s?(?:-|–|to)\s?\d{1,3})?\s*(?:\([^()]{1,40}\b(?:each|apiece|a head)\)\s*)?"
    r"(?:(?:very )?(?:generously|comfortably|amply|easily|greedily|well|as an? (?:main|starter|side)(?: \w+)?)\s*)?"
)
# `1 loaf (10 slices)`, `1 x 20cm cake, cuts into 12 slices`: what is eaten of it is its slices.
_CUT_INTO = re.compile(
    r"(?:1|one|an?)\b[^\n\d(,:;]{0,30}(?:x ?)?(?:\d{1,4}[^\n(,:;]{0,30})?[(,:;] ?(?:about |cuts? into |makes |serves )?"
    rf"({_COUNT}{_RANGE} (?:\w+ )?(?:slices|pieces|squares|wedges|bars))\b",
    re.IGNORECASE,
)
# What one eats one of, so that a yield of it says what a serving may be; of meatballs nobody does.
EATEN_ONE_EACH = re.compile(
    r"(?:about )?(\d{1,2})(?: ?(?:-|–|to|or) ?\d{1,2})? (?:(?:large|big|generous|thick|good|medium|regular) )?"
    r"(?:slices?|muffins?|cupcakes?|scones?|buns?|bars?|squares?|brownies|blondies|flapjacks?|wraps?|burgers?|tartlets"
    r"|fingers|pieces|wedges|doughnuts?|tarts|cakes|pasties|traybake squares)\b",
    re.IGNORECASE,
)
_FILLED = re.compile(rf"\s*(?:about )?{_COUNT}{_RANGE}\s(?:generous |large |small |big )?{_DISHES}\b", re.IGNORECASE)
# `That feeds four or five of us.`: said of the dish as it is, not of another batch of it or of somebody's evening.
_FEEDS = re.compile(
    rf"\b(?:feeds|serves|(?:is|are|makes) (?:plenty |just |about )?enough for|will feed"
    r"|(?:it|this|that|which) (?:does|will do)(?: for)?|does for"
    r"|(?:below|this|the recipe|what follows|as written,? it) is for)\s"
    rf"{_ABOUT_SO_MANY}(?:roughly )?{_COUNT}(?:\s?(?:-|–|to|or)\s?[\"“'‘]?{_COUNT})?"
    rf"(?=\s(?:of us|of you|people|hungry|greedy|as|at|for|with)\b|\s[a-z-]+[\"”'’]|\s?[.,;:!?)]|\s?$)",
    re.IGNORECASE,
)
_NOT_OF_IT = re.compile(r"\b(?:if|doubled?|halve[ds]?|half|twice|batch(?:es)?|each|one|per)\b", re.IGNORECASE)
_OR_MORE = re.compile(
    r",? (?:or )?(?:\d+|more|fewer) if\b.*"
)  # `for 4, or 6 if there are other dishes` is for four by itself
_MOST_FOR = 50  # beyond it a title counts something else


def serves_in(text: str) -> int | None:
    """The number of people, of which a range's lower end, so that nobody's share is taken for smaller than it is."""
    alone = _ALONE.fullmatch(text)
    found = _IN_ALL.search(text) or SERVES.search(text)
    count = _count(next((group for group in found.groups() if group), "") if found else alone[1] if alone else "")
    said = bool(found and not _MAKES_ALONE.fullmatch(found[0].strip()))
    return count if 1 <= count <= (1000 if said else _MOST_WITHOUT_A_WORD) else None


def pieces_in(text: str, alone: bool = False) -> str:
    """What a text says it makes in pieces, jars or cups (`24 cookies`), or nothing.

    `alone` says that the text is a yield and no other words stand round it.
    """
    found = _PIECES.search(text) or (_COUNTED.match(text) if alone else None)
    told = re.split(r"[.!?](?=\s)", found[1])[0].strip(" .:*_") if found else ""
    if found and (bare := _CUT_ALONE.search(found[0].casefold())):
        return f"{bare[1]} slices"
    cut = _CUT_INTO.match(told)
    return cut[1] if cut else told


def pieces_among_facts(line: str) -> str:
    """What a row of facts says it makes, without a word before it: `30 min | 6 burgers`; or nothing."""
    facts = [re.sub(r"^[\W_]+", "", one) for one in re.split(r"[|·•⋅]|\s/\s", line)]
    return next((one.strip() for one in facts if len(facts) > 1 and EATEN_ONE_EACH.fullmatch(one.strip())), "")


_BY_TITLE = re.compile(
    r"\b(muffins?|cupcakes?|scones?|buns?|bars?|squares?|brownies|blondies|flapjacks?|wraps?|burgers?|tartlets|pasties)\b",
    re.IGNORECASE,
)


def pieces_named(pieces: str, title: str) -> str:
    """A bare number of pieces with what its title says they are: `Makes 16`, of oat bars, are 16 bars."""
    names = _BY_TITLE.findall(title)
    return f"{pieces} {names[-1].lower()}" if names and re.fullmatch(r"(?:about )?\d{1,2}", pieces) else pieces


def is_yield(line: str) -> bool:
    """Whether a line of a list, without its bullet, says for how many it is, and nothing else."""
    return len(line) <= _LONGEST_YIELD and SERVES.match(line) is not None


def serves_up_to(text: str) -> int | None:
    """The upper end of a range of people (`serves 4-6`), of which the lower one counts; None where there is none."""
    span = number_span(text, above=True)
    told = text[span[0] : span[1]] if span else text if re.fullmatch(r"[\s\d–-]+|\s*\d+ to \d+\s*", text) else ""
    counts = [count for one in re.findall(r"\w+", told) if (count := _count(one))]
    return counts[1] if len(counts) == 2 and counts[0] < counts[1] <= _MOST_FOR else None


def served_in_dishes(pieces: str) -> int | None:
    """How many people a yield in bowls or plates is taken to be for, one each; the lower end of a range."""
    found = _FILLED.match(pieces)
    count = _count(found[1]) if found else 0
    return count if 1 <= count <= _MOST_WITHOUT_A_WORD else None


def serves_above(head: str) -> int | None:
    """The number of people that a title, or the lines between it and the ingredients, are for."""
    counts = (_count(found[1]) for line in head.split("\n") if (found := _for(line)))
    return serves_in(head) or next(counts, None)


def serves_in_prose(texts: Iterable[str]) -> tuple[int, int] | None:
    """The lower and upper number of people that sentences about a dish tell; None unless all of them tell the same."""
    told: set[tuple[int, int]] = set()
    for text in texts:
        for sentence in re.split(r"(?<=[.!?])\s+", text):
            if (found := _FEEDS.search(sentence)) and not _NOT_OF_IT.search(_OR_MORE.sub("", sentence)):
                counts = [_count(one) for one in found.groups() if one]
                told.add((min(counts), max(counts)))
    low, high = told.pop() if len(told) == 1 else (0, 0)
    return (low, high) if 1 <= low <= high <= _MOST_WITHOUT_A_WORD else None


def number_span(text: str, above: bool = False) -> tuple[int, int] | None:
    """Where the number of people stands, with the end of its range, so that another can be put there.

    `above` says that the text is a title, or stands between it and the ingredients.
    """
    found = _IN_ALL.search(text) or SERVES.search(text) or (_for(text) if above else None)
    if found is None:
        return None
    group = next(index for index, word in enumerate(found.groups(), start=1) if word)
    end = found.end(group)
    rest = re.match(rf"{_RANGE}(?!\w)", text[end:], re.IGNORECASE)
    return found.start(group), end + (rest.end() if rest else 0)


def _for(line: str) -> re.Match[str] | None:
    found = _FOR.match(line) or _IN_BRACKETS.fullmatch(line) if len(line) <= 200 else None
    most = _MOST_WITHOUT_A_WORD if found and found.re is _IN_BRACKETS else _MOST_FOR
    return found if found and 1 <= _count(found[1]) <= most else None


def _count(word: str) -> int:
    return WHOLE_WORDS.get(word.lower()) or (int(word) if word.isdigit() else 0)
