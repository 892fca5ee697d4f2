"""What a dish is called, among the lines above its ingredients: no greeting, no class, no remark of who typed it."""

import re
from collections.abc import Sequence

from calmlarder.cookbook.serves import SERVES
from calmlarder.matching.names.notes import DISHES, GENERIC, PRODUCTS
from calmlarder.matching.names.words import plain, words_of

_LONGEST = 80  # signs of a title: ours
_FEW = 3  # words; more of them may be a sentence: ours
_MOST_LINES = 12  # above the ingredients that are looked at: ours
_RULED = re.compile(r"^\s*(?:#{1,6}\s+\S|([*=~_–—-])\1+\s*\S.*\1\1\s*$|<b>)")
_SIGNS = re.compile(r"^[\s*=~_#–—-]+|[\s*=~_#–—-]+$")
_BEHIND = re.compile(r"\s*\(([^()]{1,80})\)\W*$")
_GREETS = re.compile(
    r"(?:hi+|hiya|hello|hey|dear|yo|fwd? ?:|re ?:|ok(?:ay)?|sorry|thanks?|thank you|as promised|from ?:|from \w+[’']s"
    r"|for \w+\s*[,.!-]*$|posted|typed|retyped|instructor|teacher|lesson|week \d|course|handout|page \d|p\. ?\d)",
    re.IGNORECASE,
)
_PLACE = re.compile(
    r"\b(?:cent(?:er|re)|community|college|school|hall|club|handout|newsletter|week \d+|class|roster)\b", re.IGNORECASE
)
_SENTENCE = re.compile(r"[a-z][.!?](?:\s|$)|\b(?:i|i'm|you|we|it's|it|they|here's|there's)\b", re.IGNORECASE)
# `here's the lasagne you were after`, `that dal you made`: the dish that a greeting speaks of.
_SPOKEN_OF = re.compile(
    r"\b(?:the|your|my|our|that|this|some|a|an|for)\s+((?:[\w&'-]+\s+){0,4}?[\w'-]+)"
    r"(?=\s+(?:you|we|i|from|that|which|for|recipe|again|last|this|on)\b|\s*[,.!?]|$)",
    re.IGNORECASE,
)
# `It's shakshuka and it's the easiest thing`, below a subject that only asks.
_IT_IS = re.compile(
    r"\b(?:it['’]?s|it is|this is|that['’]?s|that was|it was)(?: called| just| only| my| our| the| a)* "
    r"((?:[\w'’-]+ ){0,3}?[\w'’-]{4,})(?= and | with | from |[,.!:;]|$)",
    re.IGNORECASE,
)
_DISH_WORDS = (
    DISHES
    | PRODUCTS
    | GENERIC
    | frozenset(
        words_of(
            "lasagne lasagna ramen quiche crumble paprikash goulash tagine dal dhal laksa moussaka pilaf paella tart "
            "chowder toast cake loaf tray traybake bake mash pot bircher porridge frittata salmon chicken beef lamb"
        )
    )
)
_SET_OFF = re.compile(r"^\s*([=~*_])\1+\s*(\S.*?)\s*\1\1+\s*$")  # `== Stroganoff ==`
_QUOTED = re.compile(r"^([\"“'‘])([^\"“”]+)[\"”'’]$")
_MENU = re.compile(r"[^|›»]{1,60}(?:[|›»][^|›»]{1,60}){2,}$")  # ways to other pages of a site
_COPIED_ALONG = re.compile(
    r"(?:(?:skip|jump|go|back|scroll) (?:to|down|up)\b.*|advert(?:isement)?s?|menu|search|log ?in|sign (?:in|up)"
    r"|subscribe|print|save|share|pin(?: it)?|cookies?\b.*|accept(?: all)?|close|home)\W*",
    re.IGNORECASE,
)
_UNDER_A_NAME = re.compile(
    r"(?:by [a-z]|author\b|(?:serves|feeds) (?:\d|\w+$)|servings?\b|prep(?: time)?\b"
    r"|(?:makes|yields?) (?:\d|about|an? |one))"
)
_WAY = re.compile(r"\s[>»›/]\s")  # the path that a page shows to itself
_WITH_ITS_SITE = re.compile(r"\s[|–—·-]\s")
_CALLED = re.compile(r"(?:title|recipe(?: name)?)\s*:\s*\S", re.IGNORECASE)
_PREFIX = re.compile(
    r"^(?:(?:re|fwd?|title|recipe(?: name)?|(?:this|last) (?:week|month)['’]s [a-z]+|[a-z]+ of the (?:week|month))"
    r"\s*:\s*)+",
    re.IGNORECASE,
)
_CARD = re.compile(r"[\s,(–-]*\b(?:card|page|p|no|nr|recipe|number)\b\.?\s?#?\d{1,4}\)?$", re.IGNORECASE)
_NAMED_FROM = re.compile(
    r"\s+(?:[-–—]+\s*(?:from|by|via)\b.*|\([^()]*\b(?:from|typed|retyped|card|book|via|courtesy)\b[^()]*\))$",
    re.IGNORECASE,
)


def dish_title(first: str, above: Sequence[str]) -> str:
    """The title: `first`, the line on top, where no line below it is better; `above` are all lines, as written.

    Of a dish and its site in one line (`Egg curry - The Small Stove`) the dish counts, where a line below has it alone.
    """
    title = _best_line(first, above)
    if title.endswith("?") and (found := _IT_IS.search(" . ".join(above))):
        title = found[1][:1].upper() + found[1][1:]  # a question is no title
    title = _CARD.sub("", title) or title
    title = _QUOTED.sub(r"\2", _SET_OFF.sub(r"\2", title))
    name = _WITH_ITS_SITE.split(title)[0]
    alone = any(plain(_SIGNS.sub("", line)) == plain(name) for line in above)
    return name if alone else title


def _best_line(first: str, above: Sequence[str]) -> str:
    if not first:
        return first
    lines = [line for line in above if line.strip() and not _is_a_way(line)][:_MOST_LINES]
    on_top = not _is_a_way(first)
    if lines and not on_top:
        first = lines[0]
    told = [plain(_SIGNS.sub("", line)) for line in above if line.strip()]
    bare = [
        (
            " ".join(_SIGNS.sub("", name).split()),
            _score(name, on_top and number == 0) + _set_as_a_name(line, told) + for_whom,
        )
        for number, line in enumerate(lines)
        for name, for_whom in [_without_for_whom(line)]
    ]
    named = [(text, score) for text, score in bare if text and len(text) <= _LONGEST and not SERVES.match(text)]
    best, score = max(named, key=lambda one: one[1], default=(first, 0))
    own = next((score for text, score in bare if text == _SIGNS.sub("", first)), 0)
    if score > max(own + 1, 1):
        return _NAMED_FROM.sub("", _PREFIX.sub("", best))
    a_sentence = _SENTENCE.search(first) is not None and len(first.split()) > _FEW
    return spoken_of(first) if own < 0 or a_sentence else _NAMED_FROM.sub("", _PREFIX.sub("", first))


def _is_a_way(line: str) -> bool:
    """Whether a line was copied along with the page, and leads elsewhere."""
    return _MENU.match(line) is not None or _COPIED_ALONG.fullmatch(line.strip()) is not None


def _without_for_whom(line: str) -> tuple[str, int]:
    """`MUSHROOM STEW (4 of us, with seconds)` without its bracket, and what it counts that it says for how many."""
    found = _BEHIND.search(line)
    told = found is not None and SERVES.search(found[1]) is not None and re.match(r"\W*[A-Za-z]", line)
    return (line[: found.start()], 3) if found is not None and told else (line, 0)


def _set_as_a_name(line: str, told: Sequence[str]) -> int:
    """What it counts that a line ends the way to its page, stands there twice, or right above who wrote it."""
    name = plain(_SIGNS.sub("", line))
    behind = {told[place + 1] for place, one in enumerate(told[:-1]) if one == name}
    ways = {_WAY.split(one)[-1].strip() for one in told if _WAY.search(one)}
    if name in ways:
        return 4
    return 2 * (told.count(name) > 1 or any(_UNDER_A_NAME.match(one) for one in behind))


def names_a_dish(line: str) -> bool:
    """Whether a line with a number in it is a title still (`LENTIL RAGU  Card 14`), and no food with its amount."""
    text = _SIGNS.sub("", line)
    named = set(words_of(text)) & _DISH_WORDS and not re.match(r"\W*\d", text)
    return bool(named and (_CARD.search(text) or SERVES.search(text)))


def is_round_a_title(line: str) -> bool:
    """Whether a line above a recipe greets, or says where it is from, and names no dish as a title does."""
    return bool(line.strip()) and _score(line, on_top=False) < 0


def _score(line: str, on_top: bool) -> int:
    """How much a line looks like the name of a dish; ours, by what titles of recipes look like."""
    text = _SIGNS.sub("", line)
    score = 2 if on_top else 0
    score += 3 if set(words_of(text)) & _DISH_WORDS else 0
    score += 2 if _RULED.match(line) else 0
    score += 1 if text.isupper() else 0
    score += 5 if _CALLED.match(text) else 0
    score -= 5 if _GREETS.match(text) else 0
    score -= 3 if _PLACE.search(text) else 0
    score -= 4 if text.startswith(("(", "[")) and text.endswith((")", "]")) else 0
    score -= 3 if _SENTENCE.search(text) and len(text.split()) > _FEW else 0
    return score - (3 if len(text) > _LONGEST else 0)


def spoken_of(line: str) -> str:
    """The dish that a greeting names; the line itself where it names none."""
    told = _PREFIX.sub("", line)
    for found in _SPOKEN_OF.finditer(told):
        name = found[1].strip()
        if set(words_of(name)[-2:]) & _DISH_WORDS or set(plain(name).split()) & _DISH_WORDS:
            return name[:1].upper() + name[1:]
    return told
