"""Names of foods in other tongues, and the words beside them, put in English before a line is read.

An English reading of a word wins. What may mean something else counts only beside other words of its tongue.
"""

import itertools
import re
from collections.abc import Mapping
from typing import NamedTuple

from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.dates.date_words import KINDS, SURE
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import DECIDING, DISHES, HARMLESS, NO_SLIPS, NOTES, is_note
from calmlarder.matching.names.plain_words import PLAIN_WORDS
from calmlarder.matching.names.words import SMALL, singular, words_of
from calmlarder.matching.owners.given_names import GIVEN_NAMES
from calmlarder.matching.owners.owner_words import MEMBERS, NOBODY, PEOPLE
from calmlarder.matching.part import SOFT
from calmlarder.matching.retold.tongues import LONGEST_NAME, WORD_OF_A_NAME, Rows, meanings, spaced

# Arabic in Latin letters writes some of its sounds as digits: `7aleeb`, `ba9al`.
_WITH_DIGITS = LatePattern(r"(?<![\w.,/-])(?=[a-z']*\d)(?=\d?[a-z])[a-z2-9']+(?!\w)")
_SHORTEST_SLIP = 6  # shorter names are never taken for misspelt: they lie near to English words
_SURE_SLIP = 8  # a misspelt name is read by itself from this length, below it beside others of its tongue: ours
_SHORT_DAY = 3  # `mar`, `sab`: a day behind a label; or beside its tongue, before a number or at an end
_ENGLISH = frozenset().union(
    ABBREVIATIONS, GIVEN_NAMES, DECIDING, DISHES, HARMLESS, NO_SLIPS, NOTES, SOFT, MEMBERS, NOBODY, PEOPLE,
    PLAIN_WORDS, FITS, SMALL, *map(str.split, KINDS),
)  # fmt: skip
_GAP = LatePattern(r"[ -]+")
_DAY_BEHIND = LatePattern(r"\.?\s*(?:$|[,;)]|(?:[12]?\d|3[01])(?![\w/.-])(?! ?[a-z]))")
_LABELS = SURE | {"until", "till", "by", "use", "eat", "cook", "finish"}
_LABEL_BEFORE = LatePattern(
    rf"(?<![\w-])(?:{'|'.join(sorted(map(re.escape, _LABELS), key=len, reverse=True))})[:.]?"
    r"(?: the| on)? $"
)
_BEHIND_LABEL = LatePattern(r"[:.]? *\w")  # a day, or words for one
_ONE_COUNT = LatePattern(r"[^\d,;]*[^\W\d][^\d,;]* \d+ $")
_NOTHING = LatePattern(r" *(?:$|[,;(])")
_TWICE = LatePattern(r"\b([^\W\d_]{4,})2\b")
_COUNTED = LatePattern(r"[^\W\d_] \d+ ?$")
_LAST_WORD = LatePattern(r"([^\W\d_]+)[\s\d]*$")
_BRACKET_BEHIND = LatePattern(r"[^,;()]*\(([^()]*)\)")


class _Found(NamedTuple):
    """Words of a line that a table tells, what each of its rows says of them, and how sure their tongue is.

    `strange` ones are no English word. `foreign` ones are known to names.csv, and no food's own name; they only tell a
    tongue. All others count beside words of their tongue alone.
    """

    start: int
    end: int
    rows: Rows
    is_name: bool
    strange: bool
    foreign: bool = False

    @property
    def tongues(self) -> frozenset[str]:
        return frozenset(row[-1] for row in self.rows)


_OWNED = frozenset({("my", "person"), ("person", "of")})
_OF_OWNERS = frozenset({"my", "of"})
_Told = tuple[_Found | None, int]  # what was found, and how many words it takes


def in_english(text: str, lexicon: Lexicon) -> str:
    """A plain line with what the tables know of other tongues put in English, and the rest as it stands."""
    text = _TWICE.sub(lambda one: _written_twice(one, lexicon), text)
    spans = _found_in(text, lexicon)
    told: list[tuple[int, int, str]] = []
    for before, one in zip([None, *spans], spans, strict=False):
        others = frozenset().union(*(two.tongues for two in spans if two is not one and _tells(two)))
        if lexicon.spoken and not _is_plain_english(text[one.start : one.end], lexicon):
            others |= lexicon.spoken
        said = _said_by_others(one, others, text, lexicon)
        said = _counted(said, before if before is not None and before.is_name else None, text, lexicon)
        if said.is_name:
            english = _food(said, others, text, lexicon)
        else:
            is_label = before is not None and before.rows[0][2] == "label"
            labelled = text[before.end : one.start].strip() == "" if before and is_label else False
            english = _word(said, others, text, lexicon, labelled)
        if english is not None:
            told.append((one.start, one.end, english))
    for start, end, english in reversed(told):
        text = f"{text[:start]}{english}{text[end:]}"
    return text


def tongues_told(text: str, lexicon: Lexicon) -> frozenset[str]:
    """The tongues that a plain line is written in, by its words that are no English."""
    return frozenset().union(*(one.tongues for one in _found_in(text, lexicon) if _tells(one)))


def _is_plain_english(name: str, lexicon: Lexicon) -> bool:
    """Whether a word of it is English: none that a tongue has too for an amount, a day or a state, and no name."""
    words, known = words_of(name), lexicon.tongues.words
    return not words or any(word in _ENGLISH and word not in GIVEN_NAMES and word not in known for word in words)


def _tells(one: _Found) -> bool:
    return one.strange or one.foreign


def _found_in(text: str, lexicon: Lexicon) -> list[_Found]:
    """All of a line that the tables of other tongues have, the longest names first."""
    words = _words(text, lexicon)
    spans: list[_Found] = []
    at = 0
    while at < len(words):
        found, size = _found_at(words[at : at + LONGEST_NAME], text, lexicon)
        spans += [found] if found else []
        at += size
    return spans


def _words(text: str, lexicon: Lexicon) -> list[re.Match[str]]:
    """The words of a line; one that holds digits where a table has it so."""
    words = [one for one in WORD_OF_A_NAME.finditer(text) if not one[0].endswith("'s")]
    whole = [one for one in _WITH_DIGITS.finditer(text) if one[0] in lexicon.tongue_starts]
    if not whole:
        return words
    apart = [one for one in words if not any(two.start() <= one.start() < two.end() for two in whole)]
    return sorted([*apart, *whole], key=lambda one: one.start())


def _said_by_others(one: _Found, others: frozenset[str], text: str, lexicon: Lexicon) -> _Found:
    """A name that is a word of another tongue too, as that word where only that tongue stands beside it.

    `ingen` names beans in one tongue, and beside `ost` it says that there is none.
    """
    rows = lexicon.tongues.words.get(spaced(text[one.start : one.end]), ())
    if not one.is_name or not rows or not others.isdisjoint(one.tongues) or others.isdisjoint(row[-1] for row in rows):
        return one
    return one._replace(rows=rows, is_name=False)


def _written_twice(word: re.Match[str], lexicon: Lexicon) -> str:
    """A word that is said twice and written with a 2, in full where the tables have it so: `anak2`."""
    twice = f"{word[1]} {word[1]}"
    return twice if twice in lexicon.tongues.words else word[0]


def _counted(one: _Found, behind: _Found | None, text: str, lexicon: Lexicon) -> _Found:
    """A name that is a measure too, as that measure behind a number and a food of its tongue: `hanh la 1 nam`."""
    rows = lexicon.tongues.words.get(spaced(text[one.start : one.end]), ()) if one.is_name and behind else ()
    amounts = [row for row in rows if behind and row[2] == "amount" and row[-1] in behind.tongues]
    if not amounts or not _COUNTED.search(text[: one.start]):
        return one
    return one._replace(rows=amounts, is_name=False)


def _found_at(words: list[re.Match[str]], text: str, lexicon: Lexicon) -> _Told:
    """What the tables tell of the words that begin here, the longest first, and how many words that are."""
    tongues = lexicon.tongues
    first = words[0]
    if first[0] == "the" and first.start() == 0 and len(words) > 1:
        return None, 1  # the article, and no tea
    begins = first[0] in lexicon.tongue_starts
    if not begins and singular(first[0]) not in lexicon.words:
        slip = _slip(first[0], lexicon)
        is_long = len(first[0]) >= _SURE_SLIP
        return (_Found(first.start(), first.end(), tongues.names[slip], True, is_long), 1) if slip else (None, 1)
    size = next(
        (n for n in range(1, len(words)) if not _GAP.fullmatch(text[words[n - 1].end() : words[n].start()])), len(words)
    )
    owner = _owner_at([one[0] for one in words[:size]], tongues.words) if begins else None
    if owner:
        rows, count = owner
        strange = not all(row[1] for row in rows)
        return _Found(first.start(), words[count - 1].end(), rows, False, strange), count
    for count in range(size, 0, -1):
        said = [one[0] for one in words[:count]]
        phrase = " ".join(said)
        place = first.start(), words[count - 1].end()
        if begins and phrase in tongues.names:
            return _name(said, place, tongues.names[phrase], lexicon), count
        bare = frozenset(words_of(phrase)) if words_of(said[-1]) else frozenset()  # `de` may begin what stands behind
        if len(bare) > 1 and lexicon.is_name(bare) and not _says_more(words[:size], count, tongues.words):
            return None, count  # `cavolo nero` is no cavolo
        if begins and phrase in tongues.words:
            rows = tongues.words[phrase]
            is_english = all(row[1] for row in rows) or not any(_is_foreign(word, lexicon) for word in said)
            if {row[2] for row in rows} <= _OF_OWNERS:
                return None, 1  # none without a person beside it
            return _Found(*place, rows, False, not is_english), count
    return None, 1


def _says_more(words: list[re.Match[str]], count: int, known: Mapping[str, Rows]) -> bool:
    """Whether words that begin within a name and end behind it are known: `doi tok hoye geche` is no `tok doi`."""
    said = [one[0] for one in words]
    ends = range(count + 1, len(said) + 1)
    return any(" ".join(said[first:end]) in known for first in range(1, count) for end in ends)


def _owner_at(said: list[str], words: Mapping[str, Rows]) -> tuple[Rows, int] | None:
    """Whose a thing is, by a person behind a word for `my` (`min kone`) or before one for `of` (`mama de`), and how
    many words tell it; the longest first."""
    for count in range(len(said), 1, -1):
        for cut in range(1, count):
            first, second = " ".join(said[:cut]), " ".join(said[cut:count])
            if first not in words or second not in words:
                continue
            rows = [
                (f"my {(one if one[2] == 'person' else two)[0]}'s", one[1] and two[1], "owner", one[3])
                for one, two in itertools.product(words[first], words[second])
                if (one[2], two[2]) in _OWNED and one[3] == two[3]
            ]
            if rows:
                return rows, count
    return None


def _name(said: list[str], place: tuple[int, int], rows: Rows, lexicon: Lexicon) -> _Found:
    """A name of a food in another tongue, and what it is beside English."""
    only_beside = all(row[1] for row in rows)
    bare = frozenset(singular(word) for word in said if word not in SMALL)
    if not all(_is_english(word, lexicon) for word in said):
        return _Found(*place, rows, True, not only_beside)
    if lexicon.is_name(bare) and not only_beside:
        return _Found(*place, rows, True, False, True)
    # Words of some longer name, and of no food's own: nothing that they mean by themselves is known in English.
    strange = any(word in lexicon.elsewhere and word not in _ENGLISH for word in bare)
    return _Found(*place, rows, True, strange and not only_beside)


def _is_foreign(word: str, lexicon: Lexicon) -> bool:
    """Whether a word is none of English, though it may stand in a name of another tongue in names.csv."""
    bare = singular(word)
    if word in _ENGLISH or bare in _ENGLISH or bare in lexicon.at_home:
        return False
    return bare not in lexicon.words or not lexicon.is_name(frozenset({bare}))


def _is_english(word: str, lexicon: Lexicon) -> bool:
    """Whether the reader knows a word without the tables of other tongues."""
    bare = singular(word)
    return word in _ENGLISH or bare in _ENGLISH or bare in lexicon.words


def _slip(word: str, lexicon: Lexicon) -> str | None:
    """The name in another tongue that a strange word can only be a slip of, or None."""
    if len(word) < _SHORTEST_SLIP or _is_english(word, lexicon) or is_note(word):
        return None
    return lexicon.tongue_slip(word)


def _food(one: _Found, others: frozenset[str], text: str, lexicon: Lexicon) -> str | None:
    """The English name for a name, or None where it stays: another tongue's, or doubtful, or told in a bracket."""
    behind = _BRACKET_BEHIND.match(text, one.end)
    if behind:
        explained = frozenset(words_of(behind[1]))
        agreeing = [row for row in one.rows if explained == frozenset(words_of(row[0]))]
        if agreeing or not (explained - _ENGLISH).isdisjoint(lexicon.at_home):
            return agreeing[0][0] if agreeing and not one.foreign else None  # `ale (ginger)` is no beer
    rows = [row for row in one.rows if row[-1] in others]
    if one.foreign:
        # Known to names.csv: only where its tongue decides between several foods.
        return rows[0][0] if len(meanings(one.rows)) > 1 == len(meanings(rows)) else None
    if not rows and one.strange:
        rows = [row for row in one.rows if not row[1]]
    return rows[0][0] if len(meanings(rows)) == 1 else None


def _word(one: _Found, others: frozenset[str], text: str, lexicon: Lexicon, is_labelled: bool) -> str | None:
    """The English for a word beside a food, or None where it stays."""
    before, behind = text[: one.start], text[one.end :]
    rows = [row for row in one.rows if row[-1] in others]
    if not rows and one.strange:
        rows = [row for row in one.rows if not row[1]] or [*one.rows]
    if not _BEHIND_LABEL.match(behind):
        rows.sort(key=lambda row: row[2] == "label")  # `habis` before a day is its label, else what became of the food
    english, _, says, _ = rows[0] if rows else one.rows[0]
    if says == "day" and (one.end - one.start <= _SHORT_DAY or not one.strange):
        is_day = is_labelled or _LABEL_BEFORE.search(before) or (rows and _DAY_BEHIND.match(behind))
        return english if is_day else None
    if says == "person":
        return english if before.rstrip().endswith("(") and behind.lstrip().startswith(")") else None
    if says == "and":
        word = _LAST_WORD.search(before)
        foreign = one.strange and word is not None and singular(word[1]) in lexicon.elsewhere
        return english if word and behind.strip() and (foreign or (rows and rows[0][-1] in others)) else None
    if says == "state" and _ONE_COUNT.match(before) and _NOTHING.match(behind):
        english = f", {english}"  # `thakkali 5 azhugi pochu`: all five are rotten, not five of some more
    return english if rows else None
