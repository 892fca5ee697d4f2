"""One line a cook types, taken apart: whose, when, where, how much of what, and what was taken for granted."""

import itertools
import re
from collections.abc import Iterable
from datetime import date
from typing import Literal, NamedTuple

from calmlarder.matching.amounts import MEASURE_WORDS, UNIT_GRAMS, Amount, take_amount
from calmlarder.matching.conditions import condition_words, take_phrases, take_words
from calmlarder.matching.dates import Dated, UnreadDay, take_dates
from calmlarder.matching.foods import Candidate
from calmlarder.matching.lexicon import Lexicon, as_one
from calmlarder.matching.naming import NOTHING, Named, name
from calmlarder.matching.notes import HARMLESS, WITH, WITHOUT
from calmlarder.matching.numbers import PART_WORDS, WHOLE_WORDS
from calmlarder.matching.owners import take_owner
from calmlarder.matching.states import FITS
from calmlarder.matching.tokens import Token, tokens_of, words_of_food
from calmlarder.matching.words import singular

LONGEST_LINE = 400
AS_LAST_TIME = "as last time"  # the assumption of a word that meant a food in this house before
Place = Literal["fridge", "freezer", "cupboard"]
_PLACES: dict[str, Place] = {
    "freezer": "freezer", "frozen": "freezer", "fridge": "fridge", "refrigerator": "fridge",
    "cupboard": "cupboard", "pantry": "cupboard", "larder": "cupboard", "shelf": "cupboard", "counter": "cupboard",
}  # fmt: skip
_IN_PLACE = re.compile(
    r"\b(?:in|from|at|on) (?:the )?(?:back of |bottom of |top of )?(?:the )?(freezer|fridge|refrigerator"
    r"|cupboard|pantry|larder)\b"
    r"|\b(?:on) the (shelf|counter)\b"
)
_PLACE_WORD = re.compile(r"\b(freezer|fridge|cupboard|pantry)\b(?! ?(?:burn|burnt))")
_BULLET = re.compile(r"^\s*(?:[-*•·–—>+~]+\s*|\[[ x]?\]\s*|\d{1,2}[.)]\s+)+")
_WORD = re.compile(r"[^\W_]+(?:'[^\W_]+)?")
_SMALL = frozenset({"of", "the", "a", "an", "and", "in", "from", "with", "some", "my", "our", "n", "w"})
_ENDS = " .-+*&,;/:!?\"'~"
_SPLIT = re.compile(r"\s*(?:,|;|&|\+|\band\b|\bplus\b|(?<!\w)n(?!\w)|/(?!\d))\s*")
_RESTART = re.compile(r"(?<=[a-z]) (?=(?:\d+|half|one|two|three|four|five|six) (?:[a-z]))")
_BEFORE_NUMBER = re.compile(r"(?<=[a-z]) (?=\d+ [a-z])")
# What tells one kind of a food from another.
_KIND = re.compile(
    r"\b(?:red|green|yellow|orange|white|brown|black|firm|silken|smoked|dry|dried|canned|tinned|cooked|fresh|frozen|raw)\b"
)
_FILLING = frozenset({"one", "ones", "too", "also", "x", "as", "well"})
_SEASONINGS = frozenset({"spice", "herb"})
_MOST_SEASONINGS = 8
_BRACKET = re.compile(r"[(\[]([^)\]]*)[)\]]")
_SALT_AND_PEPPER = re.compile(r"\bsalt (?:and|&|n|\+) pepper\b|\bs ?& ?p\b")
# A bracket that tells of another thing, and not of what stands before it.
_SAYS_MORE = re.compile(r"\d|,|&|\+|^(?:and|plus|also|half)\b")
_ANDS = re.compile(r"\band\b|&|\+|\bplus\b|(?<!\w)n(?!\w)")
# What is always there is said in one line, and each of it is a thing of its own.
_ALWAYS = re.compile(
    r"^(?:we |i )?(?:always|usually) (?:have|has|got|there|in)(?: in)?\s*[:\-]?\s+"
    r"|^staples\s*[:\-]\s*",
    re.I,
)
_NOT = re.compile(r"(?:no|not|never)\b", re.I)
_NO_ADDED = re.compile(r"\b(?:no|without) added \w+(?: (?:or|and) \w+)?")
_MOST_PARTS = 20
_PAST_DATE = re.compile(r"\bpast (?:the |its |their )?(?:sell by |use by |best before )?date\b")
_NOTHING_LEFT = re.compile(
    r"^(?:no|out of|run out of|ran out of|need|need more|buy|none of) (?!added|knead)(?=\w)(?!.*\b(?:with|but)\b)"
    r"|\b(?:none left|all gone|none|nahi(?: hai)?|ran out|run out|finished)$"
)
_FOR_US = re.compile(r"\bfor (?:me|us|myself|ourselves|everyone|everybody|all of us)\b")
# Words that cannot be left over: they tell how much, or in what state it is.
SOFT = frozenset({
    *MEASURE_WORDS, *(singular(word) for word in MEASURE_WORDS), *UNIT_GRAMS, *WHOLE_WORDS, *PART_WORDS,
    *condition_words(), "pack", "packet", "bit", "end", "scrap", "x", "dozen", "doz", "half", "quarter", "frozen",
    "load", "some", "drop", "drizzle", "dribble", "smear", "scrape", "scraping", "dreg", "trickle", "lump", "nub",
    "stub", "hunk", "chunk", "remain", "remnant", "splash", "few", "lot", "about", "left", "going",
    "gone", "brown", "each",
})  # fmt: skip

_HOW_MUCH = frozenset({*MEASURE_WORDS, *UNIT_GRAMS, *WHOLE_WORDS, *PART_WORDS, "left", "some", "few", "bit", "x"})


class Part(NamedTuple):
    """One food of a line: what it is, how much, and in which state."""

    words: str
    named: Named
    amount: Amount
    conditions: tuple[str, ...]
    said: str = ""  # the words that name it, as a house remembers them


class LineRead(NamedTuple):
    """A line taken apart. `question` is what must be asked whatever the food is (a day that cannot be read)."""

    text: str
    parts: tuple[Part, ...]
    place: Place | None
    dates: tuple[Dated, ...]
    to_bin: bool
    owner: str | None
    owner_agrees: bool
    kept_for: str | None
    question: str = ""
    always: bool = False  # said to be there at all times

    @property
    def candidates(self) -> tuple[Candidate, ...]:
        """Foods that the parts which are not clear may be."""
        return tuple(one for part in self.parts for one in part.named.candidates)


def read_line(text: str, today: date, lexicon: Lexicon) -> LineRead | None:
    """A line taken apart, or None for an empty line or a comment.

    Raises ValueError, in words for a cook, when the line cannot be.
    """
    line = line_of(text)
    if not line:
        return None
    bare = without_bullet(line)
    always = _ALWAYS.match(bare)
    bare = _ALWAYS.sub("", bare)
    if always and _NOT.match(bare):
        raise ValueError("what is no longer always there is taken out of the list, by its number or with Del")
    rest = _NO_ADDED.sub(" ", _SALT_AND_PEPPER.sub("salt and black pepper", as_one(bare)))
    rest = _PAST_DATE.sub("past its best", rest)
    if _NOTHING_LEFT.search(rest):
        raise ValueError("it says that there is none")
    owned = take_owner(_FOR_US.sub(" ", rest), lexicon)
    rest, question = owned.rest, ""
    dates: tuple[Dated, ...] = ()
    try:
        dates, rest = take_dates(rest, today)
    except UnreadDay as unread:
        question = str(unread)
    conditions, to_bin, rest = take_phrases(rest)
    place, rest = _take_place(rest)
    if place is None and any(dated.kind == "frozen" for dated in dates):
        place = "freezer"
    hints = _hints(rest, dates, place)
    parts = _parts(rest, hints, lexicon)
    if any(part.named.outcome != "matched" for part in parts):
        _, colon, behind = rest.partition(":")
        parts = _listed((*owned.brackets, *([behind] if colon else [])), hints, rest, lexicon) or parts
    if len(owned.brackets) == 1 and len(parts) == 2 and not _SAYS_MORE.search(owned.brackets[0]):
        parts = _without_bracket(parts, rest, hints, lexicon)
    bad = to_bin
    told: list[Part] = []
    for part in parts:
        found, worse, _ = take_words(part.words)
        bad |= worse
        told.append(part._replace(conditions=tuple(dict.fromkeys((*conditions, *found)))))
    return LineRead(
        line, tuple(told), place, dates, bad, owned.owner, owned.agrees, owned.kept_for, question, bool(always),
    )  # fmt: skip


def line_of(text: str) -> str:
    """The line without its comment and its bullet. Raises ValueError for what is no line of text."""
    if len(text) > LONGEST_LINE:
        raise ValueError(f"the line is longer than {LONGEST_LINE} signs")
    line = re.sub(r"(?:^|\s)#.*$", "", text).strip()
    if any(not sign.isprintable() for sign in line.replace("\t", " ")):
        raise ValueError("the line holds signs that are no text")
    return line


def without_bullet(line: str) -> str:
    """The line without the sign that lists begin their lines with."""
    bare = _BULLET.sub("", line) if not re.match(r"^-\s?\d", line) else line
    return bare.strip() or line


def amount_in(text: str, today: date) -> Amount | None:
    """How much a line tells of whatever it names; None where its days were told on another day and are none now."""
    try:
        line = as_one(without_bullet(line_of(text)))
        _, rest = take_dates(re.sub(r"[()\[\]]", " , ", line), today)
        return take_amount(take_phrases(rest)[2])[0]
    except ValueError:
        return None


def _take_place(text: str) -> tuple[Place | None, str]:
    found = _IN_PLACE.search(text) or _PLACE_WORD.search(text)
    if found:
        word = next(group for group in found.groups() if group)
        return _PLACES[word], f"{text[: found.start()]} {text[found.end() :]}"
    # `frozen` stays among the words: frozen peas are a food of their own.
    return ("freezer", text) if re.search(r"\b(?:frozen|frozn|frzn)\b", text) else (None, text)


def _hints(text: str, dates: tuple[Dated, ...], place: Place | None) -> frozenset[str]:
    hints: set[str] = set()
    if re.search(r"\b(?:tins?|cans?)\b", text):
        hints.add("canned")
    if any(dated.kind == "made" for dated in dates):
        hints.add("cooked")
    if place == "freezer":
        hints.add("frozen")
    return frozenset(hints)


def _parts(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The foods of a line: one where the whole line names one, else one for each of its pieces."""
    whole = _part(text, hints, lexicon)
    kinds = _kinds_of_one(text, hints, lexicon)
    if kinds:
        return kinds
    if whole.named.outcome == "matched":
        return [whole]
    seasonings = _seasonings(text, hints, lexicon)
    if seasonings:
        return seasonings
    for pieces in (_SPLIT.split(text), _RESTART.split(text)):
        pieces = [piece for piece in pieces if piece.strip(_ENDS)]
        if 2 <= len(pieces) <= _MOST_PARTS:
            several = _several(pieces, whole, hints, lexicon)
            if several:
                return several
    head, comma, _ = text.partition(",")
    if comma:
        first = _part(head, hints, lexicon)
        if first.named.outcome == "matched" and not whole.named.left:
            return [whole._replace(named=first.named, amount=whole.amount)]
    return [whole]


def _kinds_of_one(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """Several kinds of one food: `firm tofu 400g, silken 1`, `bell peppers 1 red 1 green`, `chickpeas dry, canned x4`.

    The first piece names the food; every other one says but another kind of it, with its amount.
    """
    for split in (_SPLIT, _BEFORE_NUMBER):
        pieces = [piece for piece in split.split(text) if piece.strip(_ENDS)]
        if not 2 <= len(pieces) <= _MOST_PARTS or not all(map(_kind_only, pieces[1:])):
            continue
        head = " ".join(word for word in _WORD.findall(_KIND.sub(" ", pieces[0])) if not _says_amount(word))
        if not head:
            continue
        first = [pieces[0]] if _KIND.search(pieces[0]) else []
        texts = [*first, *(f"{piece} {head}" for piece in pieces[1:])]
        parts = [_part(one, hints, lexicon) for one in texts]
        foods = {part.named.foods for part in parts}
        if all(part.named.outcome == "matched" for part in parts) and len(foods) == len(parts) > 1:
            return parts
    return []


def _says_amount(word: str) -> bool:
    return word.isdigit() or bool(re.fullmatch(r"x?\d+[a-z]*", word)) or singular(word) in SOFT


def _kind_only(piece: str) -> bool:
    """Whether a piece says a kind and an amount, and nothing else."""
    words = _WORD.findall(_KIND.sub(" ", piece))
    return bool(_KIND.search(piece)) and all(_says_amount(word) or word in _SMALL | _FILLING for word in words)


def _seasonings(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """Herbs and spices one behind the other without a sign between them: `rosemary thyme`, `zaatar sumac`."""
    words = text.split()
    if not 2 <= len(words) <= _MOST_SEASONINGS or any(not word.isalpha() for word in words):
        return []
    found: list[Part] = []
    at = 0
    while at < len(words):
        for end in range(min(len(words), at + 2), at, -1):
            part = _part(" ".join(words[at:end]), hints, lexicon, whole_name=True)
            foods = [lexicon.tables.food_by_id[food] for food in part.named.foods]
            if part.named.outcome == "matched" and all(food.kind in _SEASONINGS for food in foods):
                found.append(part)
                at = end
                break
        else:
            return []
    return found if len(found) > 1 else []


def _without_bracket(parts: list[Part], text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The parts without one that a bracket says of a food that is clear without it: `salsa (onion in it)` is one."""
    outside = _part(text.rpartition(", ")[0], hints, lexicon)
    if outside.named.outcome == "matched" and outside.named.foods == parts[0].named.foods:
        return [parts[0]]
    return parts


def _listed(brackets: tuple[str, ...], hints: frozenset[str], text: str, lexicon: Lexicon) -> list[Part]:
    """The foods that a bracket lists, or that stand behind a colon, in the state that the line tells.

    As in `leftover roast veg (carrots parsnips)`.
    """
    told = hints | (frozenset(singular(word) for word in _WORD.findall(text)) & frozenset(FITS))
    for inside in brackets:
        pieces = [piece for piece in _SPLIT.split(inside) if piece.strip(_ENDS)]
        if len(pieces) == 1:
            pieces = inside.split()
        if not 2 <= len(pieces) <= _MOST_PARTS or pieces[0].split()[0] in WITH:
            continue
        parts = [_part(piece, told, lexicon, whole_name=True) for piece in pieces]
        if all(part.named.outcome == "matched" for part in parts):
            return parts
    return []


def _several(pieces: list[str], whole: Part, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """Every piece as a food of its own, or nothing where one of them is none."""
    found: list[Part] = []
    for piece in pieces:
        if piece.split()[0] in WITH:
            return []
        part = _part(piece, hints, lexicon, whole_name=True)
        if part.named.outcome == "unknown" and found and not _says_food(piece, lexicon):
            continue  # a note
        found.append(part)
    clear = [part for part in found if part.named.outcome == "matched"]
    if len(clear) < 2 or len(clear) < len(found):
        return []
    return found


def _says_food(piece: str, lexicon: Lexicon) -> bool:
    return any(singular(word) in lexicon.words for word in _WORD.findall(piece) if singular(word) not in SOFT)


def _part(text: str, hints: frozenset[str], lexicon: Lexicon, whole_name: bool = False) -> Part:
    """One food: its name first, since a word of it says nothing else; what is left tells how much."""
    typed = [found for found in _WORD.finditer(text) if found[0] not in _SMALL]
    words = [singular(found[0].replace("'", "")) for found in typed]
    tokens = tuple(
        token._replace(
            piece=text.count(",", 0, found.start()),
            raw=found[0],
            group=len(_ANDS.findall(text, 0, found.start())),
        )
        for token, found in zip(tokens_of(words, lexicon, SOFT), typed, strict=True)
    )
    denied = _denied(text, typed)
    spoken = [
        (token, found.start())
        for token, found in zip(tokens, typed, strict=True)
        if not found[0].isdigit()
        or (found[0] in lexicon.words and f"{found[0]} {singular(_next(text, found))}" in lexicon.numbered)
    ]
    named = name(words_of_food((token for token, _ in spoken), hints, SOFT, lexicon)) if spoken else NOTHING
    if denied and named.outcome != "matched":
        rest_of_it = (token for token, start in spoken if start not in denied)
        named = name(words_of_food(rest_of_it, hints, SOFT, lexicon))
    said = _said((token for token, _ in spoken), hints, lexicon)
    if named.outcome != "matched" or named.assumed:
        named = _as_last_time(named, said, spoken, lexicon)
    if whole_name and named.partly:
        named = named._replace(outcome="ask", foods=())
    takes = _released(named, lexicon)
    rest = _without(text, typed, tokens, takes)
    amount, _ = take_amount(rest)
    plural = any(
        set(token.words) & takes and found[0] != token.typed and found[0].endswith("s")
        for token, found in zip(tokens, typed, strict=True)
    )
    several = plural and (amount.how == "none" or amount.share)
    amount = amount._replace(plural=amount.plural or several)
    return Part(rest, named, amount, (), said)


def _said(tokens: Iterable[Token], hints: frozenset[str], lexicon: Lexicon) -> str:
    """The words that name a food, without how much of it there is, and the state that the line tells elsewhere.

    A word that stands in some food's name stays: brown rice is not what was once said of rice.
    """
    words = [
        token.typed
        for token in tokens
        if not (token.typed in _HOW_MUCH or token.typed[0].isdigit())
        and (token.typed in lexicon.words or token.typed not in SOFT | HARMLESS)
    ]
    told = sorted(hints - set(words))
    return " ".join([*words, *(f"({hint})" for hint in told)]) if words else ""


def _as_last_time(named: Named, said: str, spoken: list[tuple[Token, int]], lexicon: Lexicon) -> Named:
    """What exactly these words meant in this house before, where nothing in the line decides."""
    foods = lexicon.meant.get(said)
    if not foods:
        return named
    takes = frozenset(word for token, _ in spoken for word in token.words if token.typed not in SOFT)
    return Named("matched", foods, takes, (AS_LAST_TIME,), named.candidates)


def _next(text: str, found: re.Match[str]) -> str:
    """The word behind another, or nothing."""
    following = _WORD.search(text, found.end())
    return following[0] if following else ""


def _denied(text: str, typed: list[re.Match[str]]) -> set[int]:
    """Where the words stand that a line says are not in it (`no onion`)."""
    return {
        found.start()
        for before, found in itertools.pairwise(typed)
        if before[0] in WITHOUT - {"free"} and found[0] not in WITH
    }


def _released(named: Named, lexicon: Lexicon) -> frozenset[str]:
    """The words of a name without its measure: in `celery stalks` the stalks tell how much there is."""
    takes = named.takes
    for food in named.foods[:1]:
        for word in sorted(takes & SOFT):
            fewer = takes - {word}
            if any(core <= fewer for core in lexicon.cores[food]):
                takes = fewer
    return takes


def _without(text: str, typed: list[re.Match[str]], tokens: tuple[Token, ...], takes: frozenset[str]) -> str:
    kept = []
    end = 0
    for found, token in zip(typed, tokens, strict=True):
        kept.append(text[end : found.start()])
        if not (token.words and set(token.words) <= takes):
            kept.append(found[0])
        end = found.end()
    kept.append(text[end:])
    return " ".join(word for word in "".join(kept).split() if word.strip("-'"))
