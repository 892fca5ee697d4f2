"""Whose a thing is, and what it is kept for, wherever a line says so."""

import re
from typing import NamedTuple

from calmlarder.matching.abbreviations import ABBREVIATIONS
from calmlarder.matching.calendar_days import DAY_WORD
from calmlarder.matching.conditions import is_condition
from calmlarder.matching.given_names import GIVEN_NAMES
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.lexicon import Lexicon
from calmlarder.matching.measures import MEASURE, UNIT
from calmlarder.matching.notes import DECIDING, DISHES, HARMLESS
from calmlarder.matching.words import singular

# People of a house without a name.
PEOPLE = frozenset({
    "flatmate", "flatmates", "housemate", "housemates", "roommate", "roommates", "neighbour", "neighbours", "mum",
    "mums", "mom", "dad", "dads", "gran", "nan", "granny", "kid", "kids", "children", "child", "toddler", "husband",
    "wife", "partner", "boyfriend", "girlfriend", "bf", "gf's", "hers", "his", "theirs", "lodger", "landlady",
    "landlord", "guest", "guests", "visitor", "visitors", "cat", "dog", "cats", "dogs", "baby's", "son", "daughter",
    "mam", "mams", "mammy", "mummy", "mommy", "hubby", "wifey", "sis", "bro", "bub", "bubs", "bubba", "brother",
    "sister", "sisters", "brothers", "sons", "daughters",
    "lads", "lasses", "boys", "girls", "guys", "bros", "roomie", "roomies", "flattie", "flatties", "flattys",
    "housie", "housies", "parents", "grandma", "grandpa", "grandad", "nana", "auntie", "aunty", "uncle", "tenant",
    "work", "someone else's", "somebody else's", "their", "her", "him", "them", "you", "baby",
})  # fmt: skip
_PETS = frozenset({"cat", "dog", "cats", "dogs", "rabbit", "hamster", "bird", "birds", "hens", "guinea"})
_NOBODY = frozenset({
    "mine", "my", "ours", "our", "own", "everyone", "everyones", "everyone's", "everybody", "everybodys",
    "everybody's", "all", "shared", "communal", "house", "household", "anyone", "anyones", "anyone's", "me", "us",
})  # fmt: skip
# Possessives that are no person's.
_NO_PERSON = frozenset({
    "goat", "goats", "sheep", "ewe", "cow", "lady", "ladies", "baker", "bakers", "brewer", "brewers", "confectioner",
    "confectioners", "shepherd", "shepherds", "cottage", "bird", "birds", "lamb", "lambs", "pig", "calf", "hen",
    "it", "that", "there", "here", "what", "let", "today", "yesterday", "tomorrow", "tonight", "last", "week", "lunch",
    "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "year", "month", "best", "who",
    "new", "christmas", "child", "za", "bob", "devil", "collard", "butcher", "butchers", "grocer", "farmer", "farmers",
    "hunter", "vegetarian", "mother", "kid's", "bull", "ox", "don", "won", "isn", "doesn", "cat s", "noon",
})  # fmt: skip
# Meals and ends that a thing is kept for; nobody else's then.
_MEALS = r"(?:breakfast|brunch|lunch|lunches|dinner|tea|supper|work|school|packed lunch|picnic|party|cake|baking)"
_DAYS = (
    r"(?:today|tonight|tomorrow|tomorrows|tomorrow's|tmrw|tmr|monday|tuesday|wednesday|thursday|friday|saturday|sunday"
    r"|mon|tues?|wed|thurs?|fri|sat|sun)"
)
_KEPT_FOR = LatePattern(
    rf"\b(?:kept |keep |saved |save |saving |is |are )*for ((?:{_DAYS}(?:'s)?(?: (?:night"
    rf"|morning))? )?{_MEALS}\b(?: {_DAYS})?"
    rf"|{_DAYS}(?:'s)?(?: (?:night|morning))?\b)"
)
# What is meant for tonight is there for tonight's dinner; `for today only` says its day as well.
_FOR_TONIGHT = LatePattern(
    r"\b(?:kept |keep |saved |save |saving |is |are )*for (?:today(?! only)"
    r"|(?:today|tonight|tonite)'?s? (?:dinner|tea|supper)"
    r"|(?:tonight|tonite|this evening)|(?:our |my )?(?:dinner|tea|supper))\b"
    rf"(?! (?:on )?{_DAYS}\b)"
)
_TODAY_ONLY = LatePattern(r"\bfor (?=today only\b)")
# What comes from somebody's hens, tree or kitchen, or was made, sent or given by somebody, is ours.
_GIVEN_BY = LatePattern(
    r"\b(?:from|off|out of|via|by|courtesy of|thanks to|(?:made|sent|given|brought|gifted|baked|grown) by|gift from"
    r"|present from|swapped with|leftover from) (?:(?:my|our|the|next|old|auntie|aunty|uncle|mrs?|ms) )*$"
)
# Those of a house for whom a thing may be meant, and is eaten by all the same.
_MEMBERS = frozenset({
    "mum", "mums", "mom", "dad", "gran", "nan", "granny", "kid", "kids", "children", "child", "toddler", "husband",
    "wife", "partner", "boyfriend", "girlfriend", "son", "daughter", "brother", "sister", "her", "him", "them", "you",
    "mam", "mammy", "mummy", "mommy", "hubby", "wifey", "sis", "bro", "bub", "bubs", "bubba",
})  # fmt: skip
_FOR = LatePattern(
    r"\b(?:kept |keep |saved |save |is |are )*for (?:the )?([a-z]+)(?:'s|s')?(?: (?:breakfast|lunch|dinner|tea"
    r"|supper|packed lunch))?(?![\w'])"
)
_NOT_MINE = LatePattern(
    r"\bnot (?:mine|ours|my own)\b|\b(?:someone|somebody) else'?s\b|^(?:the )?others'?$"
    r"|(?:- ?)?\bfor (?:(?:the )?others|(?:some|every|any)(?:one|body) else|other people)\b(?:\s*[:-])?"
)
_BELONGS = LatePattern(r"\b(?:belongs to|belonging to|property of) ((?:the |my )?[a-z]+)\b")
_POSSESSIVE = LatePattern(r"(?<![\w'])(?:my |the )?([a-z]{2,})(?:'s|s')(?![\w'])")
_BRACKETS = LatePattern(r"[(\[{]([^)\]}]*)(?:[)\]}]|$)")
_DASHED = LatePattern(r"\s-\s*([a-z]{2,}(?:'?s)?)\s*$")
_AMOUNT_ONLY = LatePattern(
    rf"(?:about |approx |x ?)?\d{{1,4}}(?:[./]\d)? ?(?:x|pcs?|{UNIT}|{MEASURE})?|half|a half|a few",
    needs=("half", "a few", *"0123456789"),
)
_MORE = LatePattern(r"\s*(?:,|;|&|\+|and\b)\s*\S")  # more foods of a line
_OK = LatePattern(r"[,;]?\s*\b(?:ok(?:ay)?|shared|sharing)\b\s*")
_VERBS = (
    r"(?:do|does|don'?t|doesn'?t|did|didn'?t|won'?t|wouldn'?t|can'?t|will|might|may|hates?|loves?|likes?|liked|refuses?"
    r"|ate|eats?|said|says?|wants?|made|makes?|prefers?|left|have|had|has|got|needs?|are|is|were|was)"
)
_BARE = LatePattern(rf"^(?:my )?([a-z]{{2,}})s (?!{_VERBS}\b)(?=[a-z])")
_ADJECTIVE = LatePattern(r".*(?:ing|ed|ish|ly|able|ful|less|ier|est|[a-z]{3}ian|[a-z]{3}ese)$")
# Kinds of a food that bear a person's name: `potatoes, charlotte`.
_VARIETIES = frozenset({
    "charlotte", "victoria", "edward", "bob", "jack", "graham", "florence", "wellington", "stanley", "jasmine", "hope",
    "april", "may", "june", "faith", "grace", "joy", "dawn", "ray", "jin", "mei", "nana", "baba", "papa", "dale",
    "summer", "bill", "mark", "will", "frank", "flora", "gala", "alba", "stella", "rosa", "viola", "pat", "rod", "rob",
})  # fmt: skip
# Given names that are written before a food and name a kind of it: angus mince, marie biscuits, ruby chard.
_OF_A_FOOD = _VARIETIES | frozenset({
    "angus", "marie", "maria", "georgia", "virginia", "carolina", "clara", "sharon", "valentina", "lorraine", "ruby",
    "amber", "jade", "hazel", "heather", "poppy", "daisy", "violet", "iris", "penny", "sandy", "chuck", "jasmin",
    "anna",
    "savannah", "lima", "pink", "diana", "della", "linda", "sally", "kim", "maris", "desiree", "nicola", "ming",
    "francis", "benedict", "caesar", "anya", "nadine", "annabelle", "laura",
    "melody", "oscar", "roma", "sofia", "san", "chen", "lee", "obi", "uma", "may", "ma", "mama",
})  # fmt: skip
_SOMEBODY_ELSES = frozenset({"her", "his", "their"})
_HOUSE_PETS = frozenset({"dog", "dogs", "cat", "cats", "puppy", "kitten", "hamster", "bunny"})  # `dog mince 500g`
_SHARES_HOUSE = frozenset({"flatmate", "housemate", "roommate", "lodger", "landlord", "landlady", "neighbour"})
# Those whose cooking is given: `nani ka achaar`.
_COOKS_FOR_US = frozenset({"nani", "dadi", "nana", "dada", "amma", "ammi", "mummy", "maa", "ma", "mom", "mum", "mami"})
_KIN = frozenset({"papa", "bhai", "bhaiya", "didi", "bhabhi", "chacha", "chachi", "beta", "beti"})
# `rohit ka dudh`: the possessive of Hindi and Urdu.
_HINDI = LatePattern(r"^([a-z]{2,}) k[aie] (?=[a-z\d])")
_OF_TWO = LatePattern(r"^([a-z]{2,}) (?:\+|&|and|n) ([a-z]{2,})(?:'s|s'?) (?=[a-z\d])")
_NAME_FIRST = LatePattern(rf"^([a-z]{{2,}}) (?!{_VERBS}\b|and\b|or\b)(?=[a-z])")
_HIS = LatePattern(r"\b(?:is|are) (?:his|hers|theirs)\b")
_SAYS = LatePattern(r"^\w+ (?:says|said|claims|reckons) (?:that )?(?:the )?")
_MY_PERSON = LatePattern(r"^(?:my|our) ([a-z]+?)(?:'s|s')? (?=[a-z])")
_FIRST = LatePattern(r"^([a-z]{2,})\s*[-:]\s+(?=[a-z\d])")
_LAST = LatePattern(r"(?<=[a-z\d]) ([a-z]{2,})$")
_BEHIND = LatePattern(r",\s*([a-z]{2,})$")
_COLON = LatePattern(r":\s*([a-z]{2,})$")


class Owned(NamedTuple):
    """Whose a thing is (None: of the one who types), whether they agree, what it is kept for, and the rest."""

    owner: str | None
    agrees: bool
    kept_for: str | None
    rest: str
    brackets: tuple[str, ...] = ()


def take_owner(text: str, lexicon: Lexicon, capitals: frozenset[str] = frozenset()) -> Owned:
    """The owner that a plain text names, and the text without it; brackets that say something else are opened.

    `capitals` are the words that were typed with a capital letter: in a bracket such a word is a name.
    """
    agrees = False
    owner = kept_for = None
    brackets = []
    while found := _BRACKETS.search(text):
        inside = found[1].strip(" ,;")
        if _AMOUNT_ONLY.fullmatch(inside) or (_MORE.match(text, found.end()) and _only_says_how(inside)):
            text = f"{text[: found.start()]} {inside} {text[found.end() :]}"  # `tomatoes (4) cucumber (1)`
            continue
        text = f"{text[: found.start()]} {text[found.end() :]}"
        yes = bool(_OK.search(inside))
        said, reason, rest = _inside(_OK.sub(" ", inside).strip(" ,;"), lexicon, capitals)
        agrees |= yes and said is not None
        owner, kept_for = owner or said, kept_for or reason
        brackets.append(inside if said is None and reason is None and rest == inside else rest)
    bare = text.strip(" ,;:-")
    if brackets and not owner and _is_given(bare, lexicon):
        owner, text = bare, ""  # `aoife (eggs)`
    said, reason, text = _open(" ".join(text.split()), lexicon)
    owner, kept_for = owner or said, kept_for or reason
    tail = "".join(f", {inside}" for inside in brackets if inside.strip())
    return Owned(owner, agrees, kept_for, f"{text}{tail}", tuple(brackets))


def _only_says_how(inside: str) -> bool:
    """Whether a bracket tells only the state of what it stands behind: `ham (opened), eggs`."""
    words = inside.split()
    return bool(words) and all(word in _NOTES or is_condition(word) or word in HARMLESS for word in words)


def _inside(text: str, lexicon: Lexicon, capitals: frozenset[str]) -> tuple[str | None, str | None, str]:
    """The owner or the purpose in a bracket, and what else it says."""
    if text in _NOBODY:
        return None, None, ""
    owner, kept, text = _open(text, lexicon)
    words = text.split()
    if owner or kept or not words:
        return owner, kept, text
    words = [word for word in words if word not in {"only", "just", "my", "our"}]  # `husband only`, `my sisters`
    if len(words) == 1 and (_is_person(words[0], lexicon) or (words[0] in capitals and _is_name(words[0], lexicon))):
        return _bare_name(words[0]), None, ""
    return None, None, text


def _open(text: str, lexicon: Lexicon) -> tuple[str | None, str | None, str]:
    """The same outside brackets, where only clear forms count."""
    text = " ".join(_FOR_TONIGHT.sub(" ", _TODAY_ONLY.sub("", text)).split())
    found = _NOT_MINE.search(text)
    if found:
        return "somebody else", None, _cut(text, found)
    found = _HIS.search(text)
    if found:
        return "somebody else", None, _SAYS.sub("", _cut(text, found).strip())
    found = _BELONGS.search(text)
    if found:
        return found[1], None, _cut(text, found)
    found = _KEPT_FOR.search(text)
    if found:
        return None, found[1], _cut(text, found)
    found = _MY_PERSON.match(text)
    if found and found[1] in PEOPLE:
        return found[1], None, _cut(text, found)
    named = _named_first(text, lexicon)
    if named:
        return named[0], None, named[1]
    for found in _POSSESSIVE.finditer(text):
        word = found[1]
        if found[0].endswith("s'") and f"{word}s" in GIVEN_NAMES:
            return f"{word}s", None, _cut(text, found)
        if _GIVEN_BY.search(text[: found.start()]):
            continue  # given, and not theirs any more
        if lexicon.beside(word) & {singular(one) for one in text[found.end() :].split()}:
            continue  # a name that a food bears: `jacob's cattle beans`
        if word in _NOBODY or f"{word}s" in _NOBODY:
            return None, None, _cut(text, found)
        if word in PEOPLE or f"{word}s" in PEOPLE or word in GIVEN_NAMES:
            return word, None, _cut(text, found)
        if word not in _NO_PERSON and word not in lexicon.words:
            return word, None, _cut(text, found)
    found = _FOR.search(text)
    if found and found[1] in _MEMBERS and "'s" not in found[0]:
        return None, None, _cut(text, found)
    if found and (found[1] in _PETS | PEOPLE or (found[1] not in HARMLESS and _is_person(found[1], lexicon))):
        return found[1], None, _cut(text, found)
    for shape in (_DASHED, _COLON, _FIRST):
        found = shape.search(text)
        if found and _is_person(found[1], lexicon):
            return _bare_name(found[1]), None, _cut(text, found)
    found = _BEHIND.search(text)
    if found and found[1] in PEOPLE and lexicon.words.isdisjoint({found[1], singular(found[1])}):
        return found[1], None, _cut(text, found)  # `oat milk, roomies`
    found = _BARE.match(text)
    if found and (f"{found[1]}s" in PEOPLE or _is_given(found[1], lexicon)):
        return found[1], None, _cut(text, found)
    found = _LAST.search(text)
    if found and _GIVEN_BY.search(text[: found.start() + 1]):
        return None, None, text
    if found and lexicon.words.isdisjoint({found[1], singular(found[1])}) and _is_given(_bare_name(found[1]), lexicon):
        return _bare_name(found[1]), None, _cut(text, found)
    found = re.match(r"^(?:my|our|the)\s+", text)
    return None, None, text[found.end() :] if found else text


def _named_first(text: str, lexicon: Lexicon) -> tuple[str | None, str] | None:
    """The owner whose name opens a line without an English possessive, and the rest: `josh milk`, `rohit ka dudh`."""
    found = _OF_TWO.match(text)
    if found and all(_is_given(word, lexicon) for word in found.groups()):
        return f"{found[1]} and {found[2]}", text[found.end() :]
    found = _HINDI.match(text)
    if found and found[1] in _COOKS_FOR_US:
        return None, text[found.end() :]
    if found and (found[1] in PEOPLE | _KIN or _is_given(found[1], lexicon)):
        return found[1], text[found.end() :]
    found = _NAME_FIRST.match(text)
    if found and found[1] in _SOMEBODY_ELSES:
        return "somebody else", text[found.end() :]
    if found and found[1] in _HOUSE_PETS:
        return found[1], text[found.end() :]
    if not found or lexicon.beside(found[1]) & {singular(word) for word in text.split()[1:]}:
        return None  # `hung curd` is nobody's
    if found[1] in _SHARES_HOUSE or (found[1] not in _OF_A_FOOD and _is_given(found[1], lexicon)):
        return found[1], text[found.end() :]
    return None


def _bare_name(word: str) -> str:
    """A name without what makes it a possessive: dan's, dans."""
    bare = re.sub(r"'s?$", "", word)
    return bare[:-1] if bare not in GIVEN_NAMES and bare.endswith("s") and bare[:-1] in GIVEN_NAMES else bare


def _is_given(word: str, lexicon: Lexicon) -> bool:
    """Whether a word by itself is a given name and no food's word."""
    forms = {word, f"{word}s"}
    return word in GIVEN_NAMES - _VARIETIES and not forms & lexicon.alone and forms.isdisjoint(ABBREVIATIONS)


def _is_person(word: str, lexicon: Lexicon) -> bool:
    if word in _NOBODY:
        return False
    bare = _bare_name(word)
    return word in PEOPLE or bare in PEOPLE or _is_given(bare, lexicon) or (word != bare and _is_name(bare, lexicon))


def _is_name(word: str, lexicon: Lexicon) -> bool:
    """Whether a word that stands alone, typed like a name, may be a person's: in no food's name, no state, no note."""
    forms = {word, singular(word), f"{word}s"}
    if len(word) < 2 or not word.isalpha() or forms & (HARMLESS | DECIDING | DISHES | _NOTES | _NO_PERSON):
        return False
    if forms & lexicon.words or is_condition(word) or _ADJECTIVE.match(word) or re.fullmatch(DAY_WORD, word):
        return False
    return word not in ABBREVIATIONS and f"{word}s" not in ABBREVIATIONS


def _cut(text: str, found: re.Match[str]) -> str:
    return f"{text[: found.start()]} {text[found.end() :]}"


# Words that people put in brackets or behind a dash and that name nobody.
_NOTES = frozenset({
    "off", "open", "opened", "gone", "empty", "full", "tiny", "huge", "loads", "lots", "some", "few", "bits", "scraps",
    "wonky", "spare", "extra", "urgent", "asap", "soon", "now", "fridge", "freezer", "cupboard", "pantry", "shelf",
    "drawer", "bottom", "top", "back", "front", "unopened", "sealed", "vac", "pack", "packs", "bag", "bags", "kg",
    "fresh", "stale", "bad", "good", "fine", "ok", "okay", "maybe", "check", "smells", "smell", "mould", "mold",
    "approx", "about", "roughly", "ish", "garden", "allotment", "market", "local", "shop", "deli",
    "use", "tonight", "today", "tomorrow", "yesterday", "end", "heel", "heels", "crust", "crusts", "log", "block",
    "wedge", "wheel", "round", "stump", "stub", "nub", "knob", "lump", "last", "first", "old", "new", "big", "small",
    "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "mon", "tue", "tues", "wed", "thu",
    "thurs", "fri", "sat", "sun", "date", "dates", "best", "half", "quarter", "third", "whole", "spice", "spices",
    "unsure", "unknown", "other", "another", "both", "none", "nothing", "several", "various", "assorted", "mixed",
    "windfall", "windfalls", "homegrown", "tbc", "tub", "pot", "box", "container", "left", "leftover", "leftovers",
    "each", "per", "pair", "couple", "dozen", "ones", "one", "two", "three", "four", "five", "six", "seven", "eight",
    "nine", "ten", "boxes", "tins", "jars", "bottles", "tired", "sad", "limp", "brown", "black", "white", "green",
    "red", "yellow", "purple", "orange", "pink", "blue", "gold", "rest", "parts", "part", "more", "less", "much",
    "plain",
    "christmas", "easter", "batch", "load", "sack", "crate", "punnet", "punnets", "thick", "thin",
    "bulk", "family", "value", "frozen", "defrosted", "thawed", "meh", "yuck", "yum", "nice", "lush", "hmm", "urgh",
})  # fmt: skip
