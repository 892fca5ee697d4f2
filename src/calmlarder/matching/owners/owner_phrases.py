"""Whose a thing is, and what it is kept for, wherever a line says so."""

import itertools
import re
from typing import NamedTuple

from calmlarder.matching.amounts.measures import MEASURE_WORDS
from calmlarder.matching.conditions.condition_words import is_condition
from calmlarder.matching.dates.day_names import MONTH
from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import HARMLESS
from calmlarder.matching.names.words import singular
from calmlarder.matching.owners import owner_signs as signs
from calmlarder.matching.owners.given_names import GIVEN_NAMES
from calmlarder.matching.owners.hands_off import HANDS_OFF
from calmlarder.matching.owners.owner_words import (
    COOKS_FOR_US,
    ENDS_IN_S,
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
    THE_OTHER,
    VARIETIES,
    bare_name,
    is_given,
    is_name,
    is_person,
)

# Of, before a name, in other tongues.
_OF_ELSEWHERE = frozenset({"da", "do", "de", "di", "del", "della", "du", "von", "van", "ni", "od", "à"})


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
    text = signs.OTHER_HALF.sub("partner's", text)
    text = signs.PERSON_NAMED.sub(lambda found: "" if found[1] in GIVEN_NAMES else found[0], text)
    agrees = False
    owner = kept_for = None
    brackets = []
    while found := signs.BRACKETS.search(text):
        inside = found[1].strip(" ,;")
        if signs.AMOUNT_ONLY.fullmatch(inside) or (signs.MORE.match(text, found.end()) and _only_says_how(inside)):
            text = f"{text[: found.start()]} {inside} {text[found.end() :]}"  # `tomatoes (4) cucumber (1)`
            continue
        text = f"{text[: found.start()]} {text[found.end() :]}"
        may = bool(signs.MAY.search(inside))
        yes = bool(signs.OK.search(inside))
        said, reason, rest = _inside(signs.OK.sub(" ", signs.MAY.sub(" ", inside)).strip(" ,;"), lexicon, capitals)
        agrees |= may or (yes and said is not None)
        owner, kept_for = owner or said, kept_for or reason
        brackets.append(inside if said is None and reason is None and rest == inside else rest)
    bare = text.strip(" ,;:-")
    if brackets and not owner and is_given(bare, lexicon):
        owner, text = bare, ""  # `aoife (eggs)`
    said, reason, text = _open(" ".join(text.split()), lexicon)
    if said and (owner is None or owner in SHARES_HOUSE | SOMEBODY_ELSES):
        owner = said  # `priya's paneer (flatmate)`: the name tells more
    kept_for = kept_for or reason
    if not owner and (of := signs.DASHED_OF.search(text)) and of[1] in capitals and is_name(of[1], lexicon):
        owner, text = of[1], _cut(text, of)
    last = None if owner else _by_capital_last(text, capitals, lexicon)
    owner, text = last or (owner, text)
    occasion = signs.OCCASION.search(text) if owner and not kept_for else None
    if occasion:
        kept_for, text = occasion[1], _cut(text, occasion)
    tail = "".join(f", {inside}" for inside in brackets if inside.strip())
    return Owned(owner, agrees and owner is not None, kept_for, f"{text}{tail}", tuple(brackets))


def _by_capital_last(text: str, capitals: frozenset[str], lexicon: Lexicon) -> tuple[str, str] | None:
    """The owner whose name ends a line with a capital letter, and the rest: `leftover pizza Josh`; no rogan Josh."""
    found = signs.LAST.search(text)
    if found is None or found[1] not in capitals & GIVEN_NAMES - OF_A_FOOD or _is_given_by(text, found):
        return None
    words = {singular(word) for word in signs.WORD.findall(text[: found.start()])}
    forms = {found[1], *itertools.chain.from_iterable(ABBREVIATIONS.get(found[1], ()))}
    beside = any(lexicon.is_beside(form, words) for form in forms)
    return None if beside or _is_a_month(text, found) else (found[1], _cut(text, found))


def _is_a_month(text: str, found: re.Match[str]) -> bool:
    """Whether a name stands where a month does: behind a word for a day, or as a month behind a number of a day."""
    before = text[: found.start()]
    numbered = signs.DAY_OF_A_MONTH.search(before) and re.fullmatch(MONTH, found[1])
    return bool(numbered or signs.BEFORE_A_MONTH.search(before))


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
    if (child := signs.A_CHILD.fullmatch(text)) and child[1] in signs.CHILDREN_BY_AGE:
        return child[0].removeprefix("for ").removesuffix("'s"), None, ""
    theirs = signs.FOR_THEM.fullmatch(text)
    if theirs and (is_person(theirs[1], lexicon) or theirs[1] in GIVEN_NAMES or theirs[1] in capitals):
        return bare_name(theirs[1]), None, ""
    if text.startswith("for ") and (name := text.removeprefix("for ")) in capitals & GIVEN_NAMES:
        return name, None, ""  # `(for Rob)`, as no rod of that name is typed
    alone = signs.FOR_HIM_ONLY.fullmatch(text)
    if alone and is_person(alone[1] or alone[2], lexicon):
        return bare_name(alone[1] or alone[2]), None, ""
    owner, kept, text = _open(text, lexicon)
    words = text.split()
    if owner or kept or not words:
        return owner, kept, text
    words = [word for word in words if word not in {"only", "just", "my", "our"}]  # `husband only`, `my sisters`
    if comma and len(first.split()) == 2:
        words = first.split()  # `(di Luca, io no)`
    if len(words) == 2 and words[0] in _OF_ELSEWHERE and words[1] in capitals:
        words = words[1:]  # `(de Pau)`
    if len(words) == 1 and (is_person(words[0], lexicon) or (words[0] in capitals and is_name(words[0], lexicon))):
        return bare_name(words[0]), None, ""
    return None, None, text


def _open(text: str, lexicon: Lexicon) -> tuple[str | None, str | None, str]:
    """The same outside brackets, where only clear forms count."""
    if found := signs.BY_MORE_WORDS.match(text):
        return found[1].replace(" in law", "-in-law"), None, _cut(text, found)
    text = " ".join(signs.FOR_TONIGHT.sub(" ", signs.TODAY_ONLY.sub("", text)).split())
    found = signs.ARE_THEIRS.search(text)
    if found and found.start() and _is_somebody(found[1], text[: found.start()], lexicon):
        rest = HANDS_OFF.sub(" ", signs.NOT_MINE.sub(" ", _cut(text, found)))
        return found[1], None, " ".join(rest.split()).strip(" ,;-")
    found = signs.NOT_MINE.search(text)
    if found:
        owner, kept, rest = _open(_cut(text, found).strip(" ,;-"), lexicon)
        return owner or "somebody else", kept, rest
    found = HANDS_OFF.search(text)
    if found:
        owner, kept, rest = _open(_cut(text, found).strip(), lexicon)
        return owner or "somebody else", kept, rest
    found = signs.HIS.search(text)
    if found:
        return "somebody else", None, signs.SAYS.sub("", _cut(text, found).strip())
    found = signs.LEFT_BY.search(text)
    if found and found[1] in PEOPLE:
        return found[1], None, _cut(text, found)
    found = signs.LEFT_BY_NAME.search(text)
    if found and (who := found[found.lastgroup or 0]) and (who in PEOPLE | THE_OTHER or who in GIVEN_NAMES):
        return who, None, _cut(text, found)
    found = signs.ASK_FIRST.search(text)
    if found and found.start() and (found[1] in PEOPLE | KIN or found[1] in GIVEN_NAMES):
        return found[1], None, _cut(text, found).strip(" ,;(-")
    found = signs.BELONGS.search(text)
    if found:
        return None if found[1] in NOBODY else found[1], None, _cut(text, found)
    found = signs.ONLY_FOR.search(text)
    if found and is_person(found[1] or found[2], lexicon):
        return bare_name(found[1] or found[2]), None, _cut(text, found)
    found = signs.KEPT_FOR.search(text)
    if found:
        owner, _, rest = _open(_cut(text, found).strip(" ,;-"), lexicon)
        return owner, found[1], rest
    found = signs.TITLED.search(text)
    if found and not signs.GIVEN_BY.search(text[: found.start()]):
        return found[1], None, _cut(text, found)
    found = signs.MY_PERSON.match(text)
    if found and found[1] in PEOPLE:
        return found[1], None, _cut(text, found)
    for last in (signs.MY_PERSON_LAST, signs.FOR_CHILDREN):
        found = last.search(text)
        if found and found.start() and {found[1], f"{found[1]}s"} & PEOPLE and not _is_given_by(text, found):
            return found[1], None, _cut(text, found)
    found = signs.OF_SOMEBODY.search(text)
    if found and found.start() and (found[1] in PEOPLE | KIN or is_given(found[1], lexicon)):
        return found[1], None, _cut(text, found)
    named = _named_first(text, lexicon)
    if named:
        return named[0], None, named[1]
    named = _by_possessive(text, lexicon) or _meant_for(text, lexicon)
    if named:
        return named[0], None, named[1]
    for shape in (signs.DASHED, signs.COLON, signs.FIRST):
        found = shape.search(text)
        if found and is_person(found[1], lexicon):
            return bare_name(found[1]), None, _cut(text, found)
    found = signs.BEHIND.search(text)
    known = found is None or not lexicon.words.isdisjoint({found[1], singular(found[1])})
    if found and not known and (found[1] in PEOPLE or is_given(found[1], lexicon)):
        return found[1], None, _cut(text, found)  # `oat milk, roomies`
    found = signs.BARE.match(text)
    if found and _owns_one_food(f"{found[1]}s", text[found.end() :], lexicon):
        return found[1], None, _cut(text, found)
    if found and ({found[1], f"{found[1]}s"} & (PEOPLE | KIN) or is_given(found[1], lexicon)):
        return f"{found[1]}s" if f"{found[1]}s" in ENDS_IN_S else found[1], None, _cut(text, found)
    found = signs.LAST.search(text)
    if found and (_is_given_by(text, found) or _is_a_month(text, found)):
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
    name = word[:-1]
    may_be_food = word in ABBREVIATIONS or name in ABBREVIATIONS or name in VARIETIES
    if not may_be_food or name not in GIVEN_NAMES or name in MEASURE_WORDS or signs.LISTED.search(rest):
        return False
    words = [singular(one) for one in signs.WORD.findall(rest)]
    foods = [lexicon.tables.food_by_id[food] for one in words for food in lexicon.called(one)]
    beside = any(lexicon.is_beside(short, words) for short in (name, *ABBREVIATIONS.get(word, ())))
    return bool(foods) and not beside and not any(food.kind in signs.GROWN for food in foods)


def _names_somebody(word: str, lexicon: Lexicon) -> bool:
    """Whether a word beside another name is one: `tom & beth's`, where a short tomato owns nothing."""
    return is_given(word, lexicon) or word in PEOPLE or (word in GIVEN_NAMES and singular(word) not in lexicon.alone)


def _is_given_by(text: str, found: re.Match[str]) -> bool:
    """Whether somebody who is named gave it: it is theirs no more."""
    return signs.GIVEN_BY.search(text[: found.start() + 1]) is not None


def _named_first(text: str, lexicon: Lexicon) -> tuple[str | None, str] | None:
    """The owner whose name opens a line without an English possessive, and the rest: `josh milk`, `rohit ka dudh`."""
    found = signs.OF_TWO.match(text)
    if found and all(_names_somebody(word, lexicon) for word in found.groups()):
        return f"{found[1]} and {found[2]}", text[found.end() :]
    found = signs.HINDI.match(text)
    if found and found[1] in COOKS_FOR_US:
        return None, text[found.end() :]
    if found and (found[1] in PEOPLE | KIN or is_given(found[1], lexicon)):
        return found[1], text[found.end() :]
    found = signs.NAME_FIRST.match(text)
    if found and found[1] in SOMEBODY_ELSES:
        return "somebody else", text[found.end() :]
    if found and found[1] in HOUSE_PETS:
        return found[1], text[found.end() :]
    if not found or lexicon.is_beside(found[1], {singular(word) for word in signs.WORD.findall(text)[1:]}):
        return None  # `hung curd` is nobody's
    if found[1] in SHARES_HOUSE or (found[1] not in OF_A_FOOD and is_given(found[1], lexicon)):
        return found[1], text[found.end() :]
    return None


def _by_possessive(text: str, lexicon: Lexicon) -> tuple[str | None, str] | None:
    """The owner by an English possessive, and the rest: `dan's ham`; nobody where the word tells no person."""
    for found in signs.POSSESSIVE.finditer(text):
        word = found[1]
        if found[0].endswith("s'") and f"{word}s" in GIVEN_NAMES:
            return f"{word}s", _cut(text, found)
        if signs.GIVEN_BY.search(text[: found.start()]):
            continue  # given, and not theirs any more
        if signs.IS_THEIRS.search(text[: found.start()]) and (word in PEOPLE or is_given(word, lexicon)):
            return word, signs.IS_THEIRS.sub("", text[: found.start()]) + text[found.end() :]
        if lexicon.is_beside(word, {singular(one) for one in text[found.end() :].split()[:1]}):
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
    found = signs.FOR_MY.search(text)
    if found and found[1] not in MEMBERS and (found[1] in PEOPLE or is_name(found[1].replace("-", ""), lexicon)):
        return found[1], _cut(text, found)
    found = signs.FOR.search(text)
    if found and found[1] == "her" and text[found.end() :].strip(" ,;.)"):
        found = None  # `for her quesadilla` is a purpose
    if found and found[1] in MEMBERS and "'s" not in found[0]:
        return None, _cut(text, found)
    if found and (found[1] in PETS | PEOPLE or (found[1] not in HARMLESS and is_person(found[1], lexicon))):
        return found[1], _cut(text, found)
    return None


def _cut(text: str, found: re.Match[str]) -> str:
    return f"{text[: found.start()]} {text[found.end() :]}"
