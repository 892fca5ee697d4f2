"""Words for the state a thing is in: what has to go within a day, and what has to go in the bin."""

import re
from typing import NamedTuple

from calmlarder.matching.conditions.conditions_of_one_sort import HOW, OF_ONE_SORT
from calmlarder.matching.conditions.in_doubt import LEFT_OUT, NO_DAY_TOLD, PAST_DATE, STOOD_OUT
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.retold.done_with import GIVEN, MUSH, THROWN, USED_UP

# What is still good to eat, and not for long.
USE_SOON = (
    "seen better days", "on the turn", "on the way out", "looking sorry", "sorry looking", "a bit past it", "past it",
    "nearly dead", "half dead", "dying", "past its best", "past their best",
    "on its way out", "on their way out", "on its last legs", "on their last legs",
    "going off", "going soft", "going limp", "going over", "going brown", "going yellow", "going wrinkly",
    "gone yellow", "brownish", "yellowish", "greyish",
    "going floppy", "going bendy", "going stale", "going mushy", "going a bit soft", "a bit soft", "bit soft",
    "getting soft", "getting old", "gone soft", "gone limp", "gone brown", "gone floppy", "gone bendy", "gone stale",
    "bit limp", "bit sad", "bit old", "bit wilted", "bit tired", "dried up", "dried out", "drying out", "very ripe",
    "needs using up", "need using up", "needs using", "need using", "needs eating", "need eating", "need to use",
    "use up", "use asap", "use soon", "eat soon", "use first", "use me", "use fast", "use quick", "use quickly",
    "use them fast", "use it fast", "finish fast", "finish soon", "finish first", "eat first", "eat fast", "eat quick",
    "cook soon", "cook first", "cook fast", "wants using", "wants eating", "wants using up", "has to go", "have to go",
    "needs to go", "need to go", "must go", "won't last", "wont last", "won't keep", "wont keep", "not long left",
    "starting to go", "about to go",
    "about to turn",
    "soft", "bendy", "wilting", "wilted", "wilty", "limp", "floppy", "tired", "tired looking", "wrinkly", "wrinkled",
    "curled", "curling",
    "bruised", "sad looking", "sad", "drooping", "droopy", "rubbery", "sprouting", "yellowing", "browning", "squishy",
    "squashy", "mushy", "shrivelled", "shriveled", "withered", "overripe", "spotty", "blemished", "stale", "battered",
    "freezer burnt", "freezer burned", "freezer burn", "freezerburnt", "split", "cracked", "saggy", "knackered",
    "looking rough", "looks rough", "rough looking", "a bit rough", "bit rough", "gone rough", "worse for wear",
    "looking sad", "looks sad", "looking tired", "looking dodgy", "hanging on", "hanging in there", "clinging on",
    "on borrowed time", "on its way", "ropey", "ropy", "soggy", "bedraggled", "dead", "dodgy", "going grey",
    "gone grey", "going dry", "gone dry", "check it over", "tatty", "whiskery", "hairy roots",
    PAST_DATE, "iffy", "suspect", "gone over",
    "scabby", "ratty", "rusty", "rusted", "rust spots", "crispy round the edges",
    "eat me first", "use me first", "eat me", "eat this first", "use this first", "use it first", "eat it first",
    "asap", "urgent", "priority", "top priority", "first to go", "use or lose", "use it or lose it", "needs cooking",
    "need cooking", "needs finishing", "need finishing", "needs finishing off", "needs finishing up", "to use up",
    "to be used up", "to finish up", "to finish off", "finish up", "must use", "must eat", "gotta use", "gotta eat",
    "wizened", "over ripe", "weeping", "watery", "not so good", "not too good", "not looking good", "not looking great",
    "not great", "not the best", "not at their best", "not at its best",
    "not going to last", "won't last long", "wont last long", "running out of time", "needs to be used",
    "needs to be eaten", "need to be used", "need to be eaten", "should be used", "should be eaten",
)  # fmt: skip
# What nobody should eat any more, or is not there.
BIN = (
    "going mouldy", "gone mouldy", "mouldy", "moldy", "mouldering", "with mould on", "with mould", "w mould on",
    "mould on it", "mould on top", "mould", "mold", "going slimy", "gone slimy", "slimy", "slime", "rotten", "rotting",
    "rotted", "gone off", "is off", "smells off", "smells bad", "smells funny", "smells weird", "smells", "smelly",
    "stinks", "stinky", "stinking", "sour smelling", "furry", "fuzzy", "fizzing", "curdled", "rancid", "gone bad",
    "gone sour", "gone funny", "green fur", "blue fur", "white fur", "with fur",
    "green fuzz", "blue fuzz", "white fuzz", "black fuzz", "grey fuzz", "green spots on", "white spots on",
    "half chewed", "half-chewed", "chewed on",
    "turned to soup", "gone to soup",
    "turned to mush", "gone to mush", "brown mush", "black mush", "green mush", "total mush", "complete mush",
    "turned to liquid", "gone to liquid", "gone liquid", "liquid in a bag",
    "liquid in the bag", "turned to slime", "leaking", "gone fizzy", "gone green", "turned green", "growing fur",
    "growing something", "walking by itself", "has turned", "fur on", "off", "weevils", "maggots",
    "liquidy", "gloopy", "frost got it", "frost got them", "frost got to it",
    "has bugs", "bugs in it", "moths in it", "has moths",
    "pantry moths", "ants in it", "mice got it", "mouse got it", "blown", "bulging",
    "going to mush", "going to soup", "going to slime", "going to liquid", "smells sour", "smell sour", "smell bad",
    "tastes sour", "bit sour", "slightly sour",
    "going sour", "turning sour", "going rancid",
    "smells like", "smelling", "gone to mush", "turning to mush", "turning to slime", "stinks of",
    "spoiled", "spoilt", "exploded", "putrid", "maggoty", "weevily", "gone furry", "hairy", "manky", "minging",
    "past saving", "beyond saving", "a goner", "done for", "no longer edible", "inedible", "not edible",
    "not safe", "isn't safe", "isnt safe", "no good", "not good anymore", "not good any more", "not any good",
    "not right", "has had it", "have had it", "well past it", "way past it", "long past it", "ruined", "wrecked",
    "kaput", "reeks", "reeking", "honks", "honking", "whiffy", "grim", "rank", "green spots", "wilted to death",
    "cat licked it", "dog licked it", "dropped on floor", "dropped on the floor", "fell on the floor", "ate the last",
    "had to go", "had to be thrown", "not fit to eat",
    "unfit to eat",
    THROWN, USED_UP, GIVEN, MUSH,
)  # fmt: skip
_WORDS = frozenset(USE_SOON + BIN)
_SHAPES = [
    (LatePattern(rf"(?<![\w-]){re.escape(word)}(?![\w-])", needs=(word.split()[-1],)), word, is_bin)
    for words, is_bin in ((BIN, True), (USE_SOON, False))
    for word in words
]
_PHRASES = [one for one in _SHAPES if " " in one[1]]
# Signs for private use, which no line that is typed can hold: they stand for phrases that were taken out.
_FIRST_MARK, _LAST_MARK = 0xE000, 0xE0FF
_MARKS = LatePattern("[\ue000-\ue0ff]")
# A piece of each of these.
_NEARLY = (
    "bit", "little", "tad", "touch", "smidge", "slightly", "quite", "very", "rather", "pretty", "getting", "going",
    "gone", "turning", "looking", "fairly", "really", "kind", "sort of", "somewhat", "too",
)  # fmt: skip
_SINGLE = frozenset(word for word in _WORDS if " " not in word)
# `a bit wrinkly`, `going very soft`: nothing but the state of a thing is said so.
_AT_THE_EDGE = LatePattern(
    r"\b(?:a bit |bit |slightly |going |gone )*(dry|brown|crusty|hard|black|curling|limp|soft|wilted|squishy|mushy"
    r"|bendy|wrinkly|rubbery|floppy|yellow|green|slimy|mouldy) "
    r"(?:round|around|at|on|in)(?: the| one| both)? (?:edges?|ends?|middle|tips?|top|outside|corners?|side|cut)\b",
    needs=(" round ", " around ", " at ", " on ", " in "),
)
_STATES = "|".join(sorted((_SINGLE - {"off", "split"}) | {"ripe", "brown", "black", "yellow"}, key=len, reverse=True))
# `3 carrots, one bendy`: said of some of them, so that the rest need not be eaten within a day.
_SOME_WORDS = r"(?:(?:only |just )?(?:one|two|three|1|2|3|a couple|couple|a few|few|some))"
_OF_SOME = LatePattern(
    rf"(?<=[a-z0-9) ])(?:\s*[,;(-]+\s*(?:but |and |with )?|\s+(?:but|and|with) )"
    rf"({_SOME_WORDS})(?: of (?:them|em|these))?"
    rf"(?: (?:is|are|has|have|{HOW}))* ({'|'.join(sorted(_SINGLE - set(BIN), key=len, reverse=True))})"
    r"(?=\s*(?:$|[,;.)]))"
)
_SAID_OF_SOME = LatePattern(rf"{_SOME_WORDS} ")
# What is a bit dry is no packet; a very dry sherry is one.
_NO_DRINK = r"(?! (?:white|red|wine|cider|sherry|cured|goods|ros\w+|roast\w*|vermouth))"
_RATHER = LatePattern(rf"(?<![\w-]){HOW}(?: {HOW})*(?: on the)? ({_STATES}|dry{_NO_DRINK})(?![\w-])", needs=_NEARLY)
# `yellowing a bit`: how much of a state, and no amount.
_A_BIT_BEHIND = LatePattern(
    rf"(?<![\w-])({'|'.join(sorted(_SINGLE - set(BIN), key=len, reverse=True))})"
    r" (?:a|an) (?:(?:wee|little|tiny) )?(?:bit|little|tad|touch)\b(?! of)",
    needs=(" a ", " an "),
)
# `courgette going`, `the tomatoes are going fast`: on the way to bad, where nothing says what they are going to be.
_GOING = LatePattern(
    r"(?<=[a-z),;(] )(?<!not )(?<!keeps )(?<!keep )(?<!still )(?:just |already |all )?going"
    r"(?: (?:a bit|fast|quick|quickly|now|on me))?(?=\s*(?:$|[,;.!)\]]))"
)
# A wet bag of leaves; wet garlic and wet walnuts are fresh ones, and a wet cloth is none of the food's.
_WET = LatePattern(r"(?<!not )\bwet\b(?! (?:garlic|walnuts?|paper|kitchen|tea|towel|cloth|wipes?|markets?)\b)")
# Leaves that are brown or dark and wet are rotting: wet alone is not.
_BROWN_AND_WET = LatePattern(
    r"\b(?:brown|black|dark|smelly)(?:ish)? ?(?:and|&|n|\+|,) ?(?:a bit |all )?wet\b"
    r"|\bwet ?(?:and|&|n|\+|,) ?(?:brown|black|dark|smelly)\b",
    needs=("wet",),
)
# What looks like such a word and is none: `goes off friday` is a day, `cut off`, `half off` are not the food's state.
_NOT_OFF = LatePattern(
    r"\b(?:cut|half|price|money|best|(?:took|cut|had|ate|sliced|trimmed|knocked|with) (?:a |the )?(?:wee |little )?bit"
    r"|took|take|day|polish|left|going|goes|go|fresh|straight|just) off\b"
    r"|\b(?:drop|dropp?ed|dropping|brought|bought|taken|came|come|fell|broke|trimmed|sliced|chopped|scraped|pulled|picked)"
    r"(?: (?:it|them|'?em|these|those|this|some|one))? off\b"
    r"|\b(?:cut|trim|peel|scrape|take|pull|pick)(?: (?:the|its|their|any))?(?: [a-z]+){1,2} off\b"
    r"|\bends? off\b|\boff (?:the|our|my|his|her|their|next|some|mr|mrs)\b"
    r"|\boff (?:neighbou?r|gran|nan|mum|dad|mam|mom|sister|brother)\w*'?s?\b"
    r"|\boff[ -]cuts?\b|\boff (?:the |a )?(?:boat|bone|cob|vine|tree|bush|plant|market|shelf|quay|farm|grill)\b"
)
_NOT_MOULDY = LatePattern(
    r"\b(?:not|no|isn't|without|never|hasn't|haven't|has not|have not) (?:yet )?(?:gone |turned )?"
    r"(?:mouldy|mould|mold|moldy|off|slimy|smelly|soft|spoiled|spoilt|bad|furry|turned|exploded)\b(?: yet)?"
    r"|\b(?:smells?|smelling|tastes?|looks?) (?:still )?(?:ok|okay|fine|alright|all right|good|grand|normal)\b",
    needs=("not ", "no ", "n't ", "without ", "never ", "smell", "taste", "look"),
)
# What has gone bad in other Englishes: `don spoil`, `went bad`, `has turned`; not what will (`before it turns`).
_BAD = r"(?:bad|off|sour|rotten|rot|mouldy|moldy|slimy|fuzzy|furry|funny|fizzy|rancid|green|spoil|spoiled|spoilt)"
_GONE_BAD = LatePattern(
    r"(?<!\bnot )(?<!\btoo )(?<!\bso )(?<!\bthat )\bbad\b(?! (?:ends?|bits?|parts?|tops?|spots?|patch(?:es)?)\b)"
    r"|\b(?:is|are|all|pure|just) (?:mush|sour|slime|liquid|spoil)\b(?! cream)|"
    rf"\b(?:(?:has|have|had|is|are|was|were|it'?s|they'?ve) )?(?:(?:all|already|just) )?"
    rf"(?:don(?: (?:go|dey|turn))?|gone|went|turned|(?!^)got|gotten|become|became) (?:all |a bit )?{_BAD}(?![\w-])"
    r"|\b(?:(?:has|have|had|it'?s|they'?ve) )?turned(?=\s*(?:$|[,;.!?)]| i (?:think|reckon)\b))"
    r"|\bdon (?:turn|die|expire)\b",
    needs=(
        "bad",
        "mush",
        "sour",
        "slime",
        "liquid",
        "spoil",
        "don ",
        "gone",
        "went",
        "turned",
        "got",
        "become",
        "became",
    ),
)


def is_condition(word: str) -> bool:
    """Whether a word by itself says what state a thing is in."""
    return word in _SINGLE


def condition_words() -> frozenset[str]:
    """The single words of this kind."""
    return _SINGLE


def presses(condition: str) -> bool:
    """Whether a condition is one of the whole lot, and not of some of it (`one bendy`)."""
    return not _SAID_OF_SOME.match(condition)


class Phrase(NamedTuple):
    """A condition that takes several words, and whether it means the bin."""

    words: str
    to_bin: bool


def take_phrases(text: str) -> tuple[tuple[Phrase, ...], str]:
    """The phrases of several words, which belong to no name, and the text with a mark in the place of each.

    The mark keeps what is said of one food from what is said of another of the line.
    """
    phrases: list[Phrase] = []
    text = _NOT_MOULDY.sub(" ", text)
    while hit := _OF_SOME.search(text):
        text = _marked(text, hit, Phrase(f"{hit[1]} {hit[2]}", False), phrases)
    while hit := _AT_THE_EDGE.search(text) or _A_BIT_BEHIND.search(text) or _RATHER.search(text):
        text = _marked(text, hit, Phrase(hit[1], hit[1] in BIN), phrases)
    for one in OF_ONE_SORT:
        if one.sort.search(text) and (hit := one.shape.search(text)):
            text = _marked(text, hit, Phrase(one.words, one.to_bin), phrases, one.instead)
    if hit := _BROWN_AND_WET.search(text):
        text = _marked(text, hit, Phrase("brown and wet", True), phrases)
    for shape, words in ((_GOING, "going"), (_WET, "wet"), (STOOD_OUT, LEFT_OUT), (NO_DAY_TOLD, PAST_DATE)):
        while hit := shape.search(text):
            text = _marked(text, hit, Phrase(words, False), phrases)
    while hit := _GONE_BAD.search(text):
        text = _marked(text, hit, Phrase("gone bad", True), phrases)
    for shape, word, is_bin in _PHRASES:
        if hit := shape.search(text):
            text = _marked(text, hit, Phrase(word, is_bin), phrases)
    return tuple(phrases), " ".join(text.split())


def _marked(text: str, hit: re.Match[str], phrase: Phrase, phrases: list[Phrase], instead: str = "") -> str:
    phrases.append(phrase)
    return f"{text[: hit.start()]} {instead} {chr(_FIRST_MARK + len(phrases) - 1)} {text[hit.end() :]}"


def marks_in(text: str) -> tuple[int, ...]:
    """Which of the phrases that were taken stood in this piece of the text."""
    return tuple(ord(sign) - _FIRST_MARK for sign in text if _FIRST_MARK <= ord(sign) <= _LAST_MARK)


def without_marks(text: str) -> str:
    """The text without the marks of phrases."""
    return " ".join(_MARKS.sub(" ", text).split())


def take_words(text: str) -> tuple[tuple[str, ...], bool, str]:
    """Every condition in a text from which the food's name is gone already."""
    found: list[str] = []
    to_bin = False
    text = _NOT_MOULDY.sub(" ", text)
    for shape, word, is_bin in _SHAPES:
        hit = shape.search(text)
        if hit and not (word == "off" and _NOT_OFF.search(text)):
            found.append(word)
            to_bin |= is_bin
            text = f"{text[: hit.start()]} {text[hit.end() :]}"
    return tuple(found), to_bin, " ".join(text.split())
