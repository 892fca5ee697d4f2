"""Whose a thing is, and what it is kept for, wherever a line says so."""

import itertools
import re
from typing import NamedTuple

from calmlarder.matching.amounts.measures import MEASURE, UNIT
from calmlarder.matching.conditions.condition_words import is_condition
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import HARMLESS
from calmlarder.matching.names.words import singular
from calmlarder.matching.owners.given_names import GIVEN_NAMES
from calmlarder.matching.owners.hands_off import HANDS_OFF
from calmlarder.matching.owners.owner_words import (
    COOKS_FOR_US,
    HOUSE_PETS,
    KIN,
    MEMBERS,
    NO_PERSON,
    NOBODY,
    NOT_NAMES,
    OF_A_FOOD,
    PEOPLE,
    PETS,
    SHARES_HOUSE,
    SOMEBODY_ELSES,
    bare_name,
    is_given,
    is_name,
    is_person,
)

# Meals and ends that a thing is kept for; nobody else's then.
_MEALS = (
    r"(?:breakfast|brekkie|brekky|brunch|lunch|lunches|lunch ?box|tiffin|dinner|tea|supper|work|school"
    r"|packed lunch|picnic|party|bbq|barbie|cake|baking)"
)
# What it is to become on a day: `for tomorrows tacos`.
_DISHES_OF_A_DAY = (
    r"(?:tacos?|curry|stew|pie|bake|lasagne|pasta|stir[ -]?fry|salad|soup|roast|fajitas?|burgers?|risotto|casserole"
    r"|sandwich(?:es)?|wraps?|pizzas?|chilli|spag bol|bolognese)"
)
_DAYS = (
    r"(?:today|tonight|tomorrow|tomorrows|tomorrow's|tmrw|tmr|monday|tuesday|wednesday|thursday|friday|saturday|sunday"
    r"|mon|tues?|wed|thurs?|fri|sat|sun)"
)
_KEPT_FOR = LatePattern(
    rf"\b(?:kept |keep |saved |save |saving |is |are )*for ((?:{_DAYS}(?:'s)?(?: (?:night"
    rf"|morning))? )?{_MEALS}\b(?: {_DAYS})?"
    rf"|{_DAYS}(?:'s)?(?: (?:night|morning))?\b)(?: {_DISHES_OF_A_DAY}\b)?",
    needs=("for ",),
)
# What is meant for tonight is there for tonight's dinner; `for today only` says its day as well.
_FOR_TONIGHT = LatePattern(
    r"\b(?:kept |keep |saved |save |saving |is |are )*for (?:today(?! only)"
    r"|(?:today|tonight|tonite)'?s? (?:dinner|tea|supper)"
    r"|(?:tonight|tonite|this evening)|(?:our |my )?(?:dinner|tea|supper)(?: (?:tonight|tonite|this evening))?)\b"
    rf"(?! (?:on )?{_DAYS}\b)",
    needs=("for ",),
)
_FOR_HIM_ONLY = LatePattern(
    r"(?:only|just) for (?:my |our |the )?([a-z]+)|for (?:my |our |the )?([a-z]+) only", needs=("only", "just")
)
_TODAY_ONLY = LatePattern(r"\bfor (?=today only\b)")
# What comes from somebody's hens, tree or kitchen, or was made, sent or given by somebody, is ours.
_GIVEN_BY = LatePattern(
    r"\b(?:from|off|out of|via|by|courtesy of|thanks to|(?:made|sent|given|brought|gifted|baked|grown) by|gift from"
    r"|present from|swapped with|leftover from) (?:(?:my|our|the|next|old|auntie|aunty|uncle|mrs?|ms) )*$"
)
_FOR = LatePattern(
    r"\b(?:kept |keep |saved |save |is |are )*for (?:the )?([a-z]+)(?:'s|s')?(?: (?:breakfast|lunch|dinner|tea"
    r"|supper|packed lunch))?(?![\w'])",
    needs=("for ",),
)
_NOT_MINE = LatePattern(
    r"(?:\b(?:is|are) )?\bnot (?:mine|ours|my own|for (?:me|us))\b"
    r"|\b(?:isn'?t|ain'?t|aren'?t) (?:mine|ours)\b|^not (?:my|our)\b"
    r"|\b(?:unknown owner|owner unknown)\b|\b(?:no idea|(?:do not|don'?t|dunno|not sure|idk)(?: know)?) whose\b"
    r"(?: (?:it is|they are|this is))?|\b(?:someone|somebody) else'?s\b|^(?:the )?others'?$"
    r"|(?:- ?)?\bfor (?:(?:the )?others|(?:some|every|any)(?:one|body) else|other people)\b(?:\s*[:-])?",
    needs=("not m", "not o", "not f", "'t mine", "'t ours", "nt mine", "nt ours", "owner", "whose", " else", "other"),
)
# `rice and spuds are dans, not touching them`: a name behind such a verb is the owner's, with or without a sign.
_ARE_THEIRS = LatePattern(
    r"(?<= )(?:is|are|its|it'?s|thats|that'?s|they'?re|theyre) (?:all )?(?:my |the )?([a-z]{2,}?)'?s"
    r"(?= ?(?:$|[,;.()!-])| (?:so|not|no|dont|don'?t|do not|hands|leave|i'?m)\b)",
    needs=("is ", "are ", "its ", "it's ", "thats ", "that's ", "they're ", "theyre "),
)
# `cheese - ask Kate`: hers, unless she says yes.
_ASK_FIRST = LatePattern(
    r"(?:^|[,;(-] ?| )(?:ask|check with|need to ask|have to ask) (?:my |our |the )?([a-z]{2,})"
    r"(?: (?:first|before|if)\b[^;]*)?(?=\s*(?:$|[,;)]))"
)
_BELONGS = LatePattern(r"\b(?:belongs to|belonging to|property of) ((?:the |my )?[a-z]+)\b")
_POSSESSIVE = LatePattern(r"(?<![\w'])(?:my |the )?([a-z]{2,})(?:'s|s')(?![\w'])")
# `uncle fred's stockfish`: nobody else's name stands behind such a word.
_TITLED = LatePattern(
    r"\b((?:uncle|auntie|aunty|aunt|granny|grandma|grandpa|cousin|sister|brother|mama|sir|mrs|mr|miss) [a-z]{2,})'s"
    r"(?=\s*(?:$|[,;.)]| (?!(?:hens?|eggs?|garden|tree|farm|allotment|shop|market)\b)[a-z]))",
    needs=("'s",),
)
_IS_THEIRS = LatePattern(r" (?:is|are|'?s)(?: all)? $")  # `rashers are mam's`
# `ham is for my suegra, she does eat it`: somebody of ours by whatever word; the rest of the sentence is about them.
_FOR_MY = LatePattern(
    r"[,;-]? ?\b(?:kept |keep |saved |is |are )*for (?:my|our) ([a-z]+(?:-[a-z]+)*)(?:'s)?"
    r"(?: (?:breakfast|lunch|dinner|tea|supper|packed lunch))?(?:,? (?:she|he|they)\b[^,;]*)?(?=\s*(?:$|[,;.)]))"
)
_BRACKETS = LatePattern(r"[(\[{]([^)\]}]*)(?:[)\]}]|$)")
_WORD = LatePattern(r"[^\W_]+")
_DASHED = LatePattern(r"\s(?:[-=]+>?|//|~)\s*([a-z]{2,}(?:'?s)?)\s*$")
_AMOUNT_ONLY = LatePattern(
    rf"(?:about |approx |x ?)?\d{{1,4}}(?:[./]\d)? ?(?:x|pcs?|{UNIT}|{MEASURE})?|half|a half|a few",
    needs=("half", "a few", *"0123456789"),
)
_MORE = LatePattern(r"\s*(?:,|;|&|\+|and\b)\s*\S")  # more foods of a line
_OK = LatePattern(r"[,;]?\s*\b(?:ok(?:ay)?|shared|sharing)\b\s*")
# `josh's cheddar (we can use it)`: they said so. Who gives a bit gives no dinner of it, and is asked first.
_MAY = LatePattern(
    r"\bhelp yourself\b|\b(?:i|we|you)? ?(?:can|may) (?:use|have|take)\b(?! (?:a bit|a little|some))(?: it)?"
)
_VERBS = (
    r"(?:do|does|don'?t|doesn'?t|did|didn'?t|won'?t|wouldn'?t|can'?t|will|might|may|hates?|loves?|likes?|liked|refuses?"
    r"|ate|eats?|said|says?|wants?|made|makes?|prefers?|left|have|had|has|got|needs?|are|is|were|was"
    r"|brought|gave|sent|cooked|baked|grew|picked|dropped|shared|caught)"
)
_BARE = LatePattern(rf"^(?:my |the )?([a-z]{{2,}})s (?!{_VERBS}\b)(?=[a-z])")
# `rohit ka dudh`: the possessive of Hindi and Urdu.
_HINDI = LatePattern(r"^([a-z]{2,}) k[aie] (?=[a-z\d])")
_OF_TWO = LatePattern(r"^([a-z]{2,}) (?:\+|&|and|n) ([a-z]{2,})(?:'s|s'?) (?=[a-z\d])")
_NAME_FIRST = LatePattern(rf"^([a-z]{{2,}}) (?!{_VERBS}\b|and\b|or\b)(?=[a-z])")
# `eggs my sisters`; `raisins kids lunch`.
_MY_PERSON_LAST = LatePattern(r"[,;-]?\s*\bmy ([a-z]+?)(?:'s|s'?)?$")
_CHILDREN = r"(?:kids?|child|children|toddler|bubs?|bubba|boys|girls|lads)"
_FOR_CHILDREN = LatePattern(
    rf"\b({_CHILDREN})'?s?'? (?:packed )?(?:lunch(?:es|box(?:es)?)?|snacks?|tea|dinner|supper|school|treats?)$",
    needs=("kid", "child", "toddler", "bub", "boys", "girls", "lads"),
)
_HIS = LatePattern(r"\b(?:is|are) (?:his|hers|theirs)\b")
_LEFT_BY = LatePattern(
    r"[,;-]?\s*\b(?:my |our |the )([a-z]+) (?:left|forgot) (?:it|them|this|these)(?: here| behind)?\b"
)
_SAYS = LatePattern(r"^\w+ (?:says|said|claims|reckons) (?:that )?(?:the )?")
_MY_PERSON = LatePattern(r"^(?:my|our) ([a-z]+?)(?:'s|s')? (?=[a-z])")
_FIRST = LatePattern(r"^([a-z]{2,})\s*[-:]\s+(?=[a-z\d])")
_LAST = LatePattern(r"(?<=[a-z\d]) ([a-z]{2,})$")
_BEHIND = LatePattern(r",\s*([a-z]{2,})$")
_COLON = LatePattern(r":\s*([a-z]{2,})$")
# What stands before a month that is a name as well: `miso opened jan`.
_BEFORE_A_MONTH = LatePattern(
    r"\b(?:opened|open|since|frozen|made|bought|in|end|early|late|mid|ub|use by|bbe?|best before|exp|until|till)$"
)


# What somebody keeps for a day of theirs is not asked for tonight.
# `(littlest one's)`: one of the children.
_A_CHILD = LatePattern(
    r"(?:for )?(?:the |my |our )?([a-z]+) (?:one(?:'s|s')|(?:child|kid|boy|girl|lad|son|daughter)(?:'s|s')?)"
)
# `for Rob, he eats them`: theirs, whoever it is; more of the sentence tells nothing of the food.
_FOR_THEM = LatePattern(
    r"(?:only |just |kept )?for (?:my |our |the )?([a-z]+)(?: only)?[,;.]? (?:(?:as|because|coz|cos|cause|bc) )?"
    r"(?:he|she|they|who|i|we) (?:still |can |do |does |don'?t |doesn'?t |loves? |likes? |will )*"
    r"(?:eat|eats|have|has|like|likes|love|loves|want|wants|need|needs|don'?t|can'?t|do|does)\b[^;()]*"
)
_OCCASION = LatePattern(
    r"\bfor (?:(?:his|her|their|the|my|our|[a-z]+'s) )?(birthday|anniversary|party|wedding|visit|holiday|christmas)\b"
)


_CHILDREN_BY_AGE = frozenset({
    "littlest", "youngest", "younger", "oldest", "older", "eldest", "elder", "smallest", "biggest", "little", "middle",
})  # fmt: skip


_LISTED = LatePattern(r"[,;&+/]|\b(?:and|n|or|plus)\b")
# Kinds that stand beside tomatoes in a list without commas.
_GROWN = frozenset({
    "leaf", "salad-leaf", "brassica", "root", "mushroom", "tomato", "pepper", "pod", "shoot", "stem", "allium",
    "fruit-vegetable", "sweetcorn", "herb", "potato", "squash", "fruit", "citrus",
})  # fmt: skip


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
        may = bool(_MAY.search(inside))
        yes = bool(_OK.search(inside))
        said, reason, rest = _inside(_OK.sub(" ", _MAY.sub(" ", inside)).strip(" ,;"), lexicon, capitals)
        agrees |= may or (yes and said is not None)
        owner, kept_for = owner or said, kept_for or reason
        brackets.append(inside if said is None and reason is None and rest == inside else rest)
    bare = text.strip(" ,;:-")
    if brackets and not owner and is_given(bare, lexicon):
        owner, text = bare, ""  # `aoife (eggs)`
    said, reason, text = _open(" ".join(text.split()), lexicon)
    owner, kept_for = owner or said, kept_for or reason
    last = None if owner else _by_capital_last(text, capitals, lexicon)
    owner, text = last or (owner, text)
    occasion = _OCCASION.search(text) if owner and not kept_for else None
    if occasion:
        kept_for, text = occasion[1], _cut(text, occasion)
    tail = "".join(f", {inside}" for inside in brackets if inside.strip())
    return Owned(owner, agrees and owner is not None, kept_for, f"{text}{tail}", tuple(brackets))


def _by_capital_last(text: str, capitals: frozenset[str], lexicon: Lexicon) -> tuple[str, str] | None:
    """The owner whose name ends a line with a capital letter, and the rest: `leftover pizza Josh`; no rogan Josh."""
    found = _LAST.search(text)
    if found is None or found[1] not in capitals & GIVEN_NAMES - OF_A_FOOD or _is_given_by(text, found):
        return None
    words = {singular(word) for word in _WORD.findall(text[: found.start()])}
    forms = {found[1], *itertools.chain.from_iterable(ABBREVIATIONS.get(found[1], ()))}
    beside = any(lexicon.is_beside(form, words) for form in forms)
    return None if beside or _BEFORE_A_MONTH.search(text[: found.start()]) else (found[1], _cut(text, found))


def _only_says_how(inside: str) -> bool:
    """Whether a bracket tells only the state of what it stands behind: `ham (opened), eggs`."""
    words = inside.split()
    return bool(words) and all(word in NOT_NAMES or is_condition(word) or word in HARMLESS for word in words)


def _inside(text: str, lexicon: Lexicon, capitals: frozenset[str]) -> tuple[str | None, str | None, str]:
    """The owner or the purpose in a bracket, and what else it says."""
    if text in NOBODY:
        return None, None, ""
    first, comma, more = text.partition(",")
    if comma and len(first.split()) == 1 and is_person(first, lexicon):
        return bare_name(first), None, more  # `mums, she's visiting`
    if (child := _A_CHILD.fullmatch(text)) and child[1] in _CHILDREN_BY_AGE:
        return child[0].removeprefix("for ").removesuffix("'s"), None, ""
    theirs = _FOR_THEM.fullmatch(text)
    if theirs and (is_person(theirs[1], lexicon) or theirs[1] in GIVEN_NAMES or theirs[1] in capitals):
        return bare_name(theirs[1]), None, ""
    if text.startswith("for ") and (name := text.removeprefix("for ")) in capitals & GIVEN_NAMES:
        return name, None, ""  # `(for Rob)`, as no rod of that name is typed
    alone = _FOR_HIM_ONLY.fullmatch(text)
    if alone and is_person(alone[1] or alone[2], lexicon):
        return bare_name(alone[1] or alone[2]), None, ""
    owner, kept, text = _open(text, lexicon)
    words = text.split()
    if owner or kept or not words:
        return owner, kept, text
    words = [word for word in words if word not in {"only", "just", "my", "our"}]  # `husband only`, `my sisters`
    if len(words) == 1 and (is_person(words[0], lexicon) or (words[0] in capitals and is_name(words[0], lexicon))):
        return bare_name(words[0]), None, ""
    return None, None, text


def _open(text: str, lexicon: Lexicon) -> tuple[str | None, str | None, str]:
    """The same outside brackets, where only clear forms count."""
    text = " ".join(_FOR_TONIGHT.sub(" ", _TODAY_ONLY.sub("", text)).split())
    found = _ARE_THEIRS.search(text)
    if found and found.start() and _is_somebody(found[1], text[: found.start()], lexicon):
        rest = HANDS_OFF.sub(" ", _NOT_MINE.sub(" ", _cut(text, found)))
        return found[1], None, " ".join(rest.split()).strip(" ,;-")
    found = _NOT_MINE.search(text)
    if found:
        owner, kept, rest = _open(_cut(text, found).strip(" ,;-"), lexicon)
        return owner or "somebody else", kept, rest
    found = HANDS_OFF.search(text)
    if found:
        owner, kept, rest = _open(_cut(text, found).strip(), lexicon)
        return owner or "somebody else", kept, rest
    found = _HIS.search(text)
    if found:
        return "somebody else", None, _SAYS.sub("", _cut(text, found).strip())
    found = _LEFT_BY.search(text)
    if found and found[1] in PEOPLE:
        return found[1], None, _cut(text, found)
    found = _ASK_FIRST.search(text)
    if found and found.start() and (found[1] in PEOPLE | KIN or found[1] in GIVEN_NAMES):
        return found[1], None, _cut(text, found).strip(" ,;(-")
    found = _BELONGS.search(text)
    if found:
        return None if found[1] in NOBODY else found[1], None, _cut(text, found)
    found = _KEPT_FOR.search(text)
    if found:
        owner, _, rest = _open(_cut(text, found).strip(" ,;-"), lexicon)
        return owner, found[1], rest
    found = _TITLED.search(text)
    if found and not _GIVEN_BY.search(text[: found.start()]):
        return found[1], None, _cut(text, found)
    found = _MY_PERSON.match(text)
    if found and found[1] in PEOPLE:
        return found[1], None, _cut(text, found)
    for last in (_MY_PERSON_LAST, _FOR_CHILDREN):
        found = last.search(text)
        if found and found.start() and {found[1], f"{found[1]}s"} & PEOPLE and not _is_given_by(text, found):
            return found[1], None, _cut(text, found)
    named = _named_first(text, lexicon)
    if named:
        return named[0], None, named[1]
    named = _by_possessive(text, lexicon) or _meant_for(text, lexicon)
    if named:
        return named[0], None, named[1]
    for shape in (_DASHED, _COLON, _FIRST):
        found = shape.search(text)
        if found and is_person(found[1], lexicon):
            return bare_name(found[1]), None, _cut(text, found)
    found = _BEHIND.search(text)
    known = found is None or not lexicon.words.isdisjoint({found[1], singular(found[1])})
    if found and not known and (found[1] in PEOPLE or is_given(found[1], lexicon)):
        return found[1], None, _cut(text, found)  # `oat milk, roomies`
    found = _BARE.match(text)
    if found and _owns_one_food(f"{found[1]}s", text[found.end() :], lexicon):
        return found[1], None, _cut(text, found)
    if found and ({found[1], f"{found[1]}s"} & (PEOPLE | KIN) or is_given(found[1], lexicon)):
        return found[1], None, _cut(text, found)
    found = _LAST.search(text)
    if found and (_is_given_by(text, found) or _BEFORE_A_MONTH.search(text[: found.start()])):
        return None, None, text
    if found and lexicon.words.isdisjoint({found[1], singular(found[1])}) and is_given(bare_name(found[1]), lexicon):
        return bare_name(found[1]), None, _cut(text, found)
    found = re.match(r"^(?:my|our|the)\s+", text)
    return None, None, text[found.end() :] if found else text


def _is_somebody(word: str, before: str, lexicon: Lexicon) -> bool:
    """Whether a word behind `is` or `are` is a person: `carrots are toms`, and not `potatoes are charlottes`."""
    if word in SOMEBODY_ELSES or word in NOBODY or f"{word}s" in NOBODY:
        return False
    beside = lexicon.is_beside(word, {singular(one) for one in before.split()})
    return word in PEOPLE or (word in GIVEN_NAMES and not beside)


def _owns_one_food(word: str, rest: str, lexicon: Lexicon) -> bool:
    """Whether a short form of a food is a person's name before another food: `toms bacon`; not `toms cucumber`."""
    if word not in ABBREVIATIONS or word[:-1] not in GIVEN_NAMES or _LISTED.search(rest):
        return False
    words = [singular(one) for one in _WORD.findall(rest)]
    foods = [lexicon.tables.food_by_id[food] for one in words for food in lexicon.called(one)]
    beside = any(lexicon.is_beside(short, words) for short in ABBREVIATIONS[word])
    return bool(foods) and not beside and not any(food.kind in _GROWN for food in foods)


def _names_somebody(word: str, lexicon: Lexicon) -> bool:
    """Whether a word beside another name is one: `tom & beth's`, where a short tomato owns nothing."""
    return is_given(word, lexicon) or word in PEOPLE or (word in GIVEN_NAMES and singular(word) not in lexicon.alone)


def _is_given_by(text: str, found: re.Match[str]) -> bool:
    """Whether somebody who is named gave it: it is theirs no more."""
    return _GIVEN_BY.search(text[: found.start() + 1]) is not None


def _named_first(text: str, lexicon: Lexicon) -> tuple[str | None, str] | None:
    """The owner whose name opens a line without an English possessive, and the rest: `josh milk`, `rohit ka dudh`."""
    found = _OF_TWO.match(text)
    if found and all(_names_somebody(word, lexicon) for word in found.groups()):
        return f"{found[1]} and {found[2]}", text[found.end() :]
    found = _HINDI.match(text)
    if found and found[1] in COOKS_FOR_US:
        return None, text[found.end() :]
    if found and (found[1] in PEOPLE | KIN or is_given(found[1], lexicon)):
        return found[1], text[found.end() :]
    found = _NAME_FIRST.match(text)
    if found and found[1] in SOMEBODY_ELSES:
        return "somebody else", text[found.end() :]
    if found and found[1] in HOUSE_PETS:
        return found[1], text[found.end() :]
    if not found or lexicon.is_beside(found[1], {singular(word) for word in _WORD.findall(text)[1:]}):
        return None  # `hung curd` is nobody's
    if found[1] in SHARES_HOUSE or (found[1] not in OF_A_FOOD and is_given(found[1], lexicon)):
        return found[1], text[found.end() :]
    return None


def _by_possessive(text: str, lexicon: Lexicon) -> tuple[str | None, str] | None:
    """The owner by an English possessive, and the rest: `dan's ham`; nobody where the word tells no person."""
    for found in _POSSESSIVE.finditer(text):
        word = found[1]
        if found[0].endswith("s'") and f"{word}s" in GIVEN_NAMES:
            return f"{word}s", _cut(text, found)
        if _GIVEN_BY.search(text[: found.start()]):
            continue  # given, and not theirs any more
        if _IS_THEIRS.search(text[: found.start()]) and (word in PEOPLE or is_given(word, lexicon)):
            return word, _IS_THEIRS.sub("", text[: found.start()]) + text[found.end() :]
        if lexicon.is_beside(word, {singular(one) for one in text[found.end() :].split()}):
            continue  # a name that a food bears: `jacob's cattle beans`
        if word in NOBODY or f"{word}s" in NOBODY:
            return None, _cut(text, found)
        if word in PEOPLE or f"{word}s" in PEOPLE or word in GIVEN_NAMES:
            return word, _cut(text, found)
        if word not in NO_PERSON and word not in lexicon.words:
            return word, _cut(text, found)
    return None


def _meant_for(text: str, lexicon: Lexicon) -> tuple[str | None, str] | None:
    """Whom a thing is for, and the rest; nobody where it is for one of the house."""
    found = _FOR_MY.search(text)
    if found and found[1] not in MEMBERS and (found[1] in PEOPLE or is_name(found[1].replace("-", ""), lexicon)):
        return found[1], _cut(text, found)
    found = _FOR.search(text)
    if found and found[1] == "her" and text[found.end() :].strip(" ,;.)"):
        found = None  # `for her quesadilla` is a purpose
    if found and found[1] in MEMBERS and "'s" not in found[0]:
        return None, _cut(text, found)
    if found and (found[1] in PETS | PEOPLE or (found[1] not in HARMLESS and is_person(found[1], lexicon))):
        return found[1], _cut(text, found)
    return None


def _cut(text: str, found: re.Match[str]) -> str:
    return f"{text[: found.start()]} {text[found.end() :]}"
