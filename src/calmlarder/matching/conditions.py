"""Words for the state a thing is in: what has to go within a day, and what has to go in the bin."""

import re

# What is still good to eat, and not for long.
USE_SOON = (
    "past its best", "past their best", "on its way out", "on their way out", "on its last legs", "on their last legs",
    "going off", "going soft", "going limp", "going over", "going brown", "going yellow", "going wrinkly",
    "going floppy", "going bendy", "going stale", "going mushy", "going a bit soft", "a bit soft", "bit soft",
    "getting soft", "getting old", "gone soft", "gone limp", "gone brown", "gone floppy", "gone bendy", "gone stale",
    "bit limp", "bit sad", "bit old", "bit wilted", "bit tired", "dried up", "dried out", "drying out", "very ripe",
    "needs using up", "need using up", "needs using", "need using", "needs eating", "need eating", "need to use",
    "use up", "use asap", "use soon", "eat soon", "use first", "use me", "starting to go", "about to go",
    "about to turn",
    "soft", "bendy", "wilting", "wilted", "wilty", "limp", "floppy", "tired", "tired looking", "wrinkly", "wrinkled",
    "bruised", "sad looking", "sad", "drooping", "droopy", "rubbery", "sprouting", "yellowing", "browning", "squishy",
    "squashy", "mushy", "shrivelled", "shriveled", "withered", "overripe", "spotty", "blemished", "stale", "battered",
    "freezer burnt", "freezer burned", "freezer burn", "freezerburnt", "split", "cracked", "saggy", "knackered",
)  # fmt: skip
# What nobody should eat any more.
BIN = (
    "going mouldy", "gone mouldy", "mouldy", "moldy", "mouldering", "with mould on", "with mould", "w mould on",
    "mould on it", "mould on top", "mould", "mold", "going slimy", "gone slimy", "slimy", "slime", "rotten", "rotting",
    "rotted", "gone off", "is off", "smells off", "smells bad", "smells funny", "smells weird", "smells", "smelly",
    "stinks", "stinky", "stinking", "sour smelling", "furry", "fuzzy", "fizzing", "curdled", "rancid", "gone bad",
    "gone sour", "gone funny", "off", "weevils", "maggots", "blown", "bulging",
)  # fmt: skip
_WORDS = frozenset(USE_SOON + BIN)
_SHAPES = [(re.compile(rf"(?<![\w-]){re.escape(word)}(?![\w-])"), word, True) for word in BIN]
_SHAPES += [(re.compile(rf"(?<![\w-]){re.escape(word)}(?![\w-])"), word, False) for word in USE_SOON]
_PHRASES = [one for one in _SHAPES if " " in one[1]]
_HOW = (
    r"(?:(?:a |an )?(?:wee |little )?(?:bit|little|tad|touch|smidge)|slightly|quite|very|rather|pretty|getting"
    r"|going|gone|turning|looking|fairly"
    r"|really|kind of|kinda|sort of|somewhat|too)"
)
_SINGLE = frozenset(word for word in _WORDS if " " not in word)
# `a bit wrinkly`, `going very soft`: nothing but the state of a thing is said so.
_STATES = "|".join(sorted((_SINGLE - {"off", "split"}) | {"ripe", "brown", "black", "yellow"}, key=len, reverse=True))
_RATHER = re.compile(rf"(?<![\w-]){_HOW}(?: {_HOW})*(?: on the)? ({_STATES})(?![\w-])")
# What looks like such a word and is none: `goes off friday` is a day, `cut off`, `half off` are not the food's state.
_NOT_OFF = re.compile(
    r"\b(?:cut|half|price|money|best|bit|took|take|day|top|polish|left|going|goes|go|end) off\b|\boff[ -]cuts?\b"
)
_NOT_MOULDY = re.compile(r"\b(?:not|no|isn't|without) (?:yet )?(?:mouldy|mould|mold|moldy|off|slimy|smelly|soft)\b")


def is_condition(word: str) -> bool:
    """Whether a word by itself says what state a thing is in."""
    return word in _SINGLE


def condition_words() -> frozenset[str]:
    """The single words of this kind."""
    return _SINGLE


def take_phrases(text: str) -> tuple[tuple[str, ...], bool, str]:
    """The phrases of several words, which belong to no name; whether they mean the bin; and the text without them."""
    return _taken(text, _PHRASES)


def take_words(text: str) -> tuple[tuple[str, ...], bool, str]:
    """Every condition in a text from which the food's name is gone already."""
    return _taken(text, _SHAPES)


def _taken(text: str, shapes: list[tuple[re.Pattern[str], str, bool]]) -> tuple[tuple[str, ...], bool, str]:
    found: list[str] = []
    to_bin = False
    text = _NOT_MOULDY.sub(" ", text)
    if shapes is _PHRASES:
        while hit := _RATHER.search(text):
            found.append(hit[1])
            to_bin |= hit[1] in BIN
            text = f"{text[: hit.start()]} {text[hit.end() :]}"
    for shape, word, is_bin in shapes:
        if word.split()[-1] not in text:
            continue
        hit = shape.search(text)
        if hit and not (word == "off" and _NOT_OFF.search(text)):
            found.append(word)
            to_bin |= is_bin
            text = f"{text[: hit.start()]} {text[hit.end() :]}"
    return tuple(found), to_bin, " ".join(text.split())
