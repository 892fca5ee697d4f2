"""A condition that is spelt a letter wrong: `mouldey strawberries` are mouldy, and never fresh.

A strange word that may be a condition is read as one, for what is taken as fresh may harm and what is taken as bad is
told. Where it may be a food just as well it is the food, unless another food stands beside it.
"""

import re
from functools import lru_cache

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from calmlarder.matching.amounts.measures import MEASURE_WORDS
from calmlarder.matching.conditions.condition_words import BIN, USE_SOON, condition_words
from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.dates.day_names import weekday_slip
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import COLOURS, DECIDING, DISHES, HARMLESS, NO_SLIPS, NOTES
from calmlarder.matching.names.plain_words import NEAR_COMMON_FOODS, PLAIN_WORDS
from calmlarder.matching.names.words import SMALL, singular
from calmlarder.matching.owners.given_names import GIVEN_NAMES

_OF_PHRASES = frozenset({
    "black", "brown", "yellow", "green", "going", "gone", "turned", "freezer", "burnt", "smell", "stink", "liquid",
})  # fmt: skip
# What a slip is looked for among: words that say too little by themselves or are too common are no part of it.
_KNOWN = (condition_words() | _OF_PHRASES) - {"off", "sad", "asap", "priority", "split", "battered", "tired", "dead"}
_TO_BIN = frozenset(BIN)
_SPELT_RIGHT = frozenset(word for phrase in (*BIN, *USE_SOON) for word in phrase.split())
# Common English words a letter off from a condition.
_ENGLISH = frozenset({
    "airy", "baggy", "benny", "browsing", "brunt", "bugging", "burst", "burt", "busted", "clown", "could",
    "crowning", "curled", "ding", "dodge", "doggy", "doing", "dotted", "drown", "drowning", "dusty", "explode",
    "explodes", "explored", "fatty", "fellow", "ferry", "flown", "flurry", "foggy", "frown", "fury", "gong",
    "gotten", "gould", "greed", "greene", "greer", "greet", "lack", "leading", "leaning", "leaping", "leasing",
    "leaving", "lying", "many", "mellow", "minding", "mining", "mound", "ousted", "override", "peaking", "potty",
    "rested", "ringing", "robbery", "rooting", "rotated", "rotating", "routed", "routing", "rushed", "scotty",
    "selling", "shabby", "shaggy", "shale", "singing", "sinking", "slack", "slide", "spelling", "spoiler", "spoils",
    "sporty", "stable", "stake", "stall", "stare", "sticking", "sting", "stings", "stint", "swell", "swelling",
    "swells", "tale", "tilted", "tilting", "tracked", "trusted", "tying", "wiley", "willed", "willy", "witty",
    "ying",
})  # fmt: skip
_SHORT = 4  # letters of a condition of which few slips are read: ours
_WORD = LatePattern(r"(?<![\w'’-])[a-z]{4,}(?![\w'’-])")
_PIECES = LatePattern(r"[,;+&()]|\band\b")
# `milk gone of`: nothing stands behind that it may be of.
_OFF = LatePattern(
    r"\b(gone|going|went|smells?|smelling|turned) (?:of|offf|ofg|ogf|fof)(?=\s*(?:$|[,;.!)]))",
    needs=("of",),
)


def conditions_mended(text: str, lexicon: Lexicon) -> str:
    """A plain line with its misspelt conditions written right."""
    done, pieces = 0, []
    for found in _WORD.finditer(text):
        meant = _condition(found[0])
        if meant and _is_strange(found[0], lexicon) and _is_no_food(text, found, meant, lexicon):
            pieces += [text[done : found.start()], meant]
            done = found.end()
    return _OFF.sub(r"\1 off", "".join((*pieces, text[done:])))


@lru_cache(maxsize=20_000)
def _condition(word: str) -> str | None:
    """The condition that a word is a letter off from: of several one that means the bin, and ends alike."""
    if word in _KNOWN or word in _SPELT_RIGHT or word in _ENGLISH:
        return None
    near = [known for known in sorted(_KNOWN) if abs(len(known) - len(word)) <= 1]
    found = process.extract(word, near, scorer=DamerauLevenshtein.distance, score_cutoff=1, limit=None)
    likely = [known for known, _, _ in found if len(known) > _SHORT or _is_plain_slip(word, known)]
    return min(likely, key=lambda known: (known not in _TO_BIN, known[-1] != word[-1], known), default=None)


def _is_plain_slip(word: str, known: str) -> bool:
    """Whether two letters of a short word changed places, or one is doubled."""
    return sorted(word) == sorted(known) or (len(word) > len(known) and re.sub(r"(.)\1", r"\1", word) == known)


def _is_strange(word: str, lexicon: Lexicon) -> bool:
    """Whether nobody knows a word: neither as a food's nor as any other."""
    one = singular(word)
    known = (
        lexicon.words, FITS, HARMLESS, NOTES, PLAIN_WORDS, DECIDING, DISHES, MEASURE_WORDS, COLOURS, NO_SLIPS, SMALL,
        NEAR_COMMON_FOODS, ABBREVIATIONS, GIVEN_NAMES,
    )  # fmt: skip
    day = weekday_slip(word)
    is_day = day is not None and DamerauLevenshtein.distance(word, day) <= 1
    return not is_day and not any(word in words or one in words for words in known)


def _is_no_food(text: str, found: re.Match[str], meant: str, lexicon: Lexicon) -> bool:
    """Whether no food is lost if a word is a condition: one is named beside it, or anywhere where it is none itself."""
    others = [*_words_named(text[: found.start()], lexicon), *_words_named(text[found.end() :], lexicon)]
    slip = lexicon.slip(singular(found[0]), found[0])
    if slip is None or not slip.sure or slip.word == meant:
        return bool(others)
    before, behind = _PIECES.split(text[: found.start()])[-1], _PIECES.split(text[found.end() :])[0]
    return bool(_words_named(before, lexicon) or _words_named(behind, lexicon))


def _words_named(text: str, lexicon: Lexicon) -> list[str]:
    """The words of a text that are a food's, or a sure slip of one."""
    ones = [singular(word) for word in re.findall(r"[^\W\d_]{3,}", text)]
    return [
        one
        for one in ones
        if one not in _KNOWN
        and (one in lexicon.alone or ((slip := lexicon.slip(one, "")) and slip.sure and one not in lexicon.words))
    ]
