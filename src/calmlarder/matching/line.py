"""One line a cook types, taken apart: whose, when, where, how much of what, and what was taken for granted."""

import re
from datetime import date
from typing import NamedTuple

from calmlarder.matching.amounts.amount_of_line import Amount, take_amount
from calmlarder.matching.amounts.half_kilos import half_kilos
from calmlarder.matching.amounts.taken_off import counted_inside, without_the_bad
from calmlarder.matching.conditions.condition_words import Phrase, marks_in, take_phrases, take_words, without_marks
from calmlarder.matching.conditions.in_doubt import nobody_eats
from calmlarder.matching.dates.bought_or_made import as_bought, as_made, bought_then
from calmlarder.matching.dates.date_words import Dated
from calmlarder.matching.dates.dates_in_line import UnreadDay, take_dates
from calmlarder.matching.lacks import refuse_lacks
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.line_text import line_of, without_bullet
from calmlarder.matching.names.foods import Candidate
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import as_one
from calmlarder.matching.names.words import plain, singular, words_of
from calmlarder.matching.owners.given_names import GIVEN_NAMES
from calmlarder.matching.owners.owner_phrases import take_owner
from calmlarder.matching.owners.typed_names import taken_by_capital
from calmlarder.matching.part import Part
from calmlarder.matching.places import Place, is_thawed, take_place
from calmlarder.matching.remarks import refuse_remarks
from calmlarder.matching.retold.asides import without_asides
from calmlarder.matching.retold.in_the_pot import parts_cooked, without_cooker
from calmlarder.matching.retold.put_plainly import put_plainly
from calmlarder.matching.several_foods.kinds import beside_its_food, of_that_kind
from calmlarder.matching.several_foods.several import parts_of
from calmlarder.matching.several_foods.shared_head import with_their_head
from calmlarder.tables.rows import Food

# A tin, and no verb: `I know you can't`.
_IN_A_TIN = LatePattern(r"\b(?:tins?|(?<!\bi )(?<!\bwe )(?<!\byou )(?<!\bthey )can|cans)\b(?!'t)")
_NOT_MARINATED = LatePattern(r"[,;]? ?\b(?:not (?:yet )?|un)marinated\b(?: yet)?")
_NOT_YET_COOKED = LatePattern(r"\bnot (?:yet )?cooked\b(?: yet)?")
# What is always there is said in one line, and each of it is a thing of its own.
_ALWAYS = LatePattern(
    r"^(?:we |i )?(?:always|usually) (?:have|has|got|there|in)(?: in)?\s*[:\-]?\s+"
    r"|^staples\s*[:\-]\s*",
    re.I,
)
_NOT = LatePattern(r"(?:no longer|no more|no|not|never)\b(?![ -](?:added|salt|sugar))\s*", re.I)
# What it is made of, and no other thing: `injera (100% teff)`.
# `(all beef)` is what it is made of, `(all mouldy)` what became of it.
_MADE_OF = LatePattern(
    r"\(\s*(?:\d{2,3} ?% |pure (?!mush|slime|liquid|mou?ld|sour|goo|gunk)|made (?:of|from|with) |all[ -](?:beef"
    r"|pork|turkey|chicken|lamb|meat|butter|rye|teff"
    r"|buckwheat|spelt|oats?|wheat|corn|rice|fruit|natural)\b)[^)]*\)"
)
_BEGINS = LatePattern(r"^(?:plus|and|also) (?=\S)", re.I)
# What is said of a part of it: `end slimy`, `outer leaves brown`.
_OF_A_PART = LatePattern(
    r"(?:(?<=[,;-] )|(?<=[,;])|(?<= )(?=(?:outer|outside|cut|both) )"
    r"|(?<=[a-z] )(?=(?:one |the )?(?:ends?|tips?|tops?|edges?) (?:is|are|went|turned|gone|going|a bit|bit"
    r"|looking|getting) ))"
    r"(?:the |its |just |only |a few )?(?:outer |outside |bottom |top |cut |some |few |one |both )?"
    r"(?:ends?|leaf|leaves|tops?|bottoms?|edges?|skins?|tips?|corners?|stalks?|stems?|middles?|insides?) "
    r"(?=(?:(?:is|are|a|bit|going|gone|getting|looking|slightly|little|very|all|quite|just|turning) )*"
    r"(?:slim|soft|brown|mould|mold|wilt|limp|yellow|dry|dried|black|mush|bend|rubber|flopp|wrinkl|curl))"
)
# What is peeled off anyway is no reason to throw the rest.
_OUTER_BAD = LatePattern(
    r"(?:[,;] ?)?\b(?:the |its |just |only |a bit |bit |going |slightly )*"
    r"(?:(?:outer|outside)(?: (?:leaf|leaves|layers?|skins?|stalks?|bits?))? "
    r"(?:(?:is|are|a|bit|going|gone|getting|looking|slightly|little|very|all|quite|just) )*"
    r"(?:slimy|manky|mouldy|moldy|rotten|off|bad|tatty|mush|mushy)"
    r"|(?:slimy|manky|mouldy|moldy|rotten|tatty|mushy) (?:on the |the )?(?:outside|outer)"
    r"(?: (?:leaf|leaves|layers?|skins?|stalks?|bits?))?)\b"
)
# The same the other way round: `slimy end`, `brown bits`.
_A_PART_OF_IT = LatePattern(
    r"\b(slimy|soft|brown|mouldy|moldy|wilted|limp|yellow|dry|dried|black|mushy|bendy|wrinkly|watery|soggy|squishy) "
    r"(?=(?:ends?|bits?|lea(?:f|ves)|tops?|bottoms?|edges?|tips?|corners?|stalks?|stems?|outsides?|spots?|patch(?:es)?)"
    r"\s*(?:$|[,;.)]| on (?:the )?(?:top|outside|bottom|leaves|skin|florets)\b| (?:but )?(?:the )?rest\b))\w+"
    r"(?: on (?:the )?(?:top|outside|bottom|leaves|skin|florets)\b)?"
    r"(?:,? (?:but )?(?:the )?rest (?:is |are )?(?:ok|okay|fine|good|grand|alright|all right)\b)?"
)
_FOR_US = LatePattern(r"(?<!\bnot )\bfor (?:me|us|myself|ourselves|everyone|everybody|all of us)\b")
_MADE = LatePattern(r"\bmade\b")
# Typed with a capital letter, and no first word of a line.
_OF_A_TOWN = re.compile(r"(?<=[a-z])(?<!property) (?:of|di|du) ([A-Z][a-zà-ú]{3,})(?=\s*(?:$|[,;(]|\d))")
_ALL_OF_THEM = LatePattern(r"\b(?:all|both|everything)\b")
# `chard/spinach wilting`: what stands behind two names with a stroke between them is said of both.
_STROKE = LatePattern(r"[^,;\d]*[a-z] ?/ ?[a-z][^,;\d]*(?:,[^,;\d]*)?")


class LineRead(NamedTuple):
    """A line taken apart. `question` is what must be asked whatever the food is (a day that cannot be read)."""

    text: str
    parts: tuple[Part, ...]
    place: Place | None
    dates: tuple[Dated, ...]
    owner: str | None
    owner_agrees: bool
    kept_for: str | None
    question: str = ""
    always: bool = False  # said to be there at all times
    no_longer: bool = False  # said to be no longer always there

    @property
    def candidates(self) -> tuple[Candidate, ...]:
        """Foods that the parts which are not clear may be."""
        return tuple(one for part in self.parts for one in part.named.candidates)


def read_line(text: str, today: date, lexicon: Lexicon, month_first: bool = False) -> LineRead | None:
    """A line taken apart, or None for an empty line or a comment; `month_first` as the home writes its days.

    Raises ValueError, in words for a cook, when the line cannot be.
    """
    line = line_of(text)
    if not line:
        return None
    bare = without_bullet(line)
    always = _ALWAYS.match(bare)
    bare = _MADE_OF.sub(" ", _ALWAYS.sub("", bare))
    bare = _BEGINS.sub("", bare)
    denied = _NOT.match(bare) if always else None
    bare = bare[denied.end() :] if denied else bare
    namesake, bare = taken_by_capital(_without_place(bare, lexicon), lexicon)
    rest = put_plainly(bare, lexicon)
    refuse_remarks(rest, lexicon)
    refuse_lacks(rest)
    rest = counted_inside(half_kilos(beside_its_food(of_that_kind(with_their_head(rest, lexicon), lexicon), lexicon)))
    owned = take_owner(_FOR_US.sub(" ", rest), lexicon, _capitals(bare))
    rest, question, owner = owned.rest, "", owned.owner or namesake
    dates: tuple[Dated, ...] = ()
    try:
        dates, rest = take_dates(rest, today, month_first)
    except UnreadDay as unread:
        question = str(unread)
    rest = _NOT_YET_COOKED.sub("uncooked", _NOT_MARINATED.sub("", rest))
    rest = _OUTER_BAD.sub(" check it over ", rest)
    phrases, rest = take_phrases(_A_PART_OF_IT.sub(_part_of_it, _OF_A_PART.sub("", without_the_bad(rest))))
    place, rest = take_place(rest)
    if place in {None, "freezer"} and is_thawed(plain(bare)):
        dates, place = tuple(dated for dated in dates if dated.kind != "frozen"), "fridge"
    if place is None and any(dated.kind == "frozen" for dated in dates):
        place = "freezer"
    rest, in_pot = without_cooker(rest)
    hints = _hints(rest, dates, place)
    brackets = tuple(without_asides(said) for said in owned.brackets if without_asides(f"1 {said} x") != "1 x")
    written = " ".join(words_of(rest))
    is_name = any(name in written for name in lexicon.for_something)  # `cheese sauce for nachos`
    read = parts_cooked if in_pot else parts_of
    rest_of_it = rest if is_name else without_asides(rest)
    parts = read(rest_of_it, hints, brackets, lexicon)
    if "cooked" in hints:
        as_sold = tuple(_MADE.sub(" ", said) for said in brackets)
        raw = read(_MADE.sub(" ", rest_of_it), hints - {"cooked"}, as_sold, lexicon)
        if bought_then(bare.casefold(), raw, lexicon):
            parts, dates = raw, as_bought(dates, bare.casefold(), _foods(raw, lexicon))
    dates = as_made(dates, parts, today, lexicon)
    is_past = any(dated.on < today for dated in dates if dated.on and dated.kind in {"use-by", "best-before"})
    told = _conditions(parts, phrases, rest, lexicon, is_past)
    return LineRead(
        line, told, place, dates, owner, owned.agrees, owned.kept_for, question, bool(always) and not denied,
        bool(denied),
    )  # fmt: skip


def _foods(parts: list[Part], lexicon: Lexicon) -> list[Food]:
    return [lexicon.tables.food_by_id[food] for part in parts for food in part.named.foods]


def _without_place(line: str, lexicon: Lexicon) -> str:
    """The line without the town a food comes from: `red onions of Tropea`; not `tin of Spinach`."""
    found = _OF_A_TOWN.search(line)
    if found is None or not {plain(found[1]), singular(plain(found[1]))}.isdisjoint(lexicon.words | GIVEN_NAMES):
        return line
    before = {singular(word) for word in words_of(line[: found.start()])}
    return line if before.isdisjoint(lexicon.words) else f"{line[: found.start()]}{line[found.end() :]}"


def _part_of_it(found: re.Match[str]) -> str:
    """The state that is told of a part; what has brown spots is a bit brown, and a banana with them is ripe."""
    spotted = found[1] in {"brown", "black"} and re.match(r"spots?|patch", found[0][len(found[1]) + 1 :])
    if not spotted:
        return found[1]
    return "ripe" if "banana" in found.string else f"a bit {found[1]}"


_ABBREVIATED = 3  # letters: `UHT`, `GF`, `BBE` are nobody: ours


def _capitals(line: str) -> frozenset[str]:
    """The words that were typed with a capital letter, or in capitals, unless the whole line is typed so."""
    words = re.findall(r"[^\W\d_]{2,}", line)
    typed = [word for word in words[1:] if word[0].isupper() and (not word.isupper() or len(word) > _ABBREVIATED)]
    return frozenset(plain(word) for word in typed) if 2 * len(typed) <= len(words) else frozenset()


def _conditions(
    parts: list[Part], phrases: tuple[Phrase, ...], text: str, lexicon: Lexicon, is_past: bool
) -> tuple[Part, ...]:
    """The parts with what is said of each; what stands with none of them, or of all, is said of all."""
    claimed = {mark for part in parts for mark in marks_in(part.words)}
    of_all = bool(_ALL_OF_THEM.search(text)) or (len(parts) == 2 and bool(_STROKE.fullmatch(text)))
    everywhere, bad_everywhere, _ = take_words(" , ".join(without_marks(part.words) for part in parts))
    shared = [phrase for index, phrase in enumerate(phrases) if of_all or index not in claimed]
    told: list[Part] = []
    for part in parts:
        own = [phrases[mark] for mark in marks_in(part.words) if mark < len(phrases)]
        found, worse, _ = take_words(without_marks(part.words))
        if of_all:
            found, worse = everywhere, bad_everywhere
        words = tuple(dict.fromkeys((*(phrase.words for phrase in (*shared, *own)), *found)))
        bad = worse or any(phrase.to_bin for phrase in (*shared, *own))
        bad = bad or nobody_eats(words, _foods([part], lexicon), text, is_past)
        told.append(part._replace(conditions=words, to_bin=bad))
    return tuple(told)


def amount_in(text: str, today: date) -> Amount | None:
    """How much a line tells of whatever it names; None where its days were told on another day and are none now."""
    try:
        line = as_one(without_bullet(line_of(text)))
        _, rest = take_dates(re.sub(r"[()\[\]]", " , ", line), today)
        return take_amount(without_marks(take_phrases(rest)[1]))[0]
    except ValueError:
        return None


def _hints(text: str, dates: tuple[Dated, ...], place: Place | None) -> frozenset[str]:
    hints: set[str] = set()
    if _IN_A_TIN.search(text):
        hints.add("canned")
    if any(dated.kind == "made" for dated in dates):
        hints.add("cooked")
    if place == "freezer":
        hints.add("frozen")
    return frozenset(hints)
