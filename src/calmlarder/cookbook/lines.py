"""What an ingredient line of a recipe means: which food, how much, and what it leaves open."""

import re

from calmlarder.clean import clean_line
from calmlarder.cookbook.allowed import is_so_much_of_it, what_is_allowed, with_amount_of
from calmlarder.cookbook.citrus import citrus_of
from calmlarder.cookbook.covered import Coverage
from calmlarder.cookbook.either import either_of
from calmlarder.cookbook.free_from import freed
from calmlarder.cookbook.green_and_white import both_parts
from calmlarder.cookbook.kitchen_talk import said_plainly
from calmlarder.cookbook.line_amount import Found, Quantity, added, take_quantity
from calmlarder.cookbook.line_amounts import amounts_of, no_inches, without_likeness
from calmlarder.cookbook.names import IngredientNames, Part
from calmlarder.cookbook.notation import in_plain_words, spoons_told
from calmlarder.cookbook.recipe import IngredientRead, Outcome, shared_out, together
from calmlarder.cookbook.remarks import cooked_later, crushed_cloves, taken_dry, without_verbs
from calmlarder.cookbook.retold import apart, kinds_behind, retold, tossed, with_more
from calmlarder.cookbook.several_foods import SeveralFoods
from calmlarder.cookbook.told_twice import metric_alone
from calmlarder.cookbook.unlike_usual import as_it_weighs
from calmlarder.cookbook.weight import weight_of, with_weight
from calmlarder.cookbook.wording import NOTHING, OPTIONAL, is_heading, names_nothing, without_prep, without_tail
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.words import plain, words_of
from calmlarder.tables.book import Tables

_LONGEST = 400
_WHOLE = 100.0  # the score of a name in full
_START = re.compile(r"^[^\w(\[½⅓¼¾⅔⅛]+")
_ONLY_CUT = re.compile(r"(?:cut|sliced|torn|split|halved|broken) (?:in|into|on|across|horizontally|lengthways)\b")
_WITH_SO_MUCH = re.compile(r"\b(?:with|in) [\d½¼¾⅓⅔⅛][\d./]* ?(?:tsp|tbsp|teaspoons?|tablespoons?|g|pinch(?:es)?)\b")
_CLOVES = "cloves"
_SCALES = re.compile(r"\W*(?:\d{1,2}(?:/\d)?x\W*){2,}", re.IGNORECASE)  # buttons of a page: `1x 2x 3x`
# `(about 67 g each)`: what one of them weighs, and no list of several.
_EACH_WEIGHS = re.compile(r"\([^()]*\d[^()]*\)")


class LineReader:
    """Reads ingredient lines against the tables; built once, it may read any number."""

    def __init__(self, tables: Tables, lexicon: Lexicon | None = None) -> None:
        """`lexicon` is that of the same tables, where it was made before."""
        self._tables = tables
        self._names = IngredientNames(tables, lexicon)
        self._coverage = Coverage(tables)
        self._several = SeveralFoods(self._names, tables, self._told)

    def read(self, text: str) -> IngredientRead:
        """One line. Never raises: what cannot be read is `unknown`, what may be several foods is `ask`."""
        shown = clean_line(text)[: 2 * _LONGEST]
        line = metric_alone(plain(spoons_told(_START.sub("", shown))))
        bare = line.strip(" *_:")
        if not bare or NOTHING.fullmatch(bare):
            return IngredientRead(text=shown, outcome="nothing")
        if len(line) > _LONGEST:
            return IngredientRead(text=shown, outcome="unknown")
        if (
            is_heading(shown, bare)
            or _SCALES.fullmatch(shown)
            or (line.rstrip("*_ ").endswith(":") and not re.match(r"\W*\d", line))
        ):
            return IngredientRead(text=shown, outcome="heading")
        try:
            return self._best(shown, in_plain_words(without_verbs(with_more(said_plainly(line)))))
        except ValueError:
            return IngredientRead(text=shown, outcome="unknown")

    def _best(self, shown: str, line: str) -> IngredientRead:
        """The line as several foods with amounts of their own, as it stands, in other words, or as several foods."""
        # `garlic, crushed with 1/2 tsp salt`, `a pinch of saffron, soaked in 2 tbsp milk`
        instead = what_is_allowed(line) is not None  # `buttermilk, or 400 ml milk with 1 tbsp lemon juice`
        counted = self._all_of(shown, tossed(line)) if _WITH_SO_MUCH.search(line) and not instead else None
        counted = counted or self._all_of(shown, apart(line))  # `2 carrots and 1 parsnip`
        either = None if counted is not None else self._one_of(shown, line)
        if counted is not None or either is not None:
            return counted or either  # type: ignore[return-value]
        first = self._whole(shown, line)
        if first.outcome in {"read", "nothing"}:
            return first
        kinds = self._kinds(shown, kinds_behind(line))
        if kinds is not None:
            return kinds
        for told in retold(shown, line, self._coverage.knows):
            again = self._whole(shown, in_plain_words(without_verbs(told)))
            if again.outcome == "read":
                return again
        both = self._all_of(shown, tossed(line))
        return first if both is None else self._coverage.without_trifles(both)

    def _one_of(self, shown: str, line: str) -> IngredientRead | None:
        """The line without what it allows in its food's place, where each is read by itself.

        Of one that is not known the other stands; None where neither is, or the line is of another kind.
        """
        told, as_written = what_is_allowed(line), what_is_allowed(shown)
        if told is None:
            return None
        if as_written is None or plain(as_written.line) != told.line:
            as_written = told  # it is a piece of the line
        first, other = self._part_of(shown, told.line), self._whole(shown, told.other)
        if first.outcome != "read":
            other = self._whole(shown, with_amount_of(told.line, told.other))
            said = with_amount_of(as_written.line, as_written.other)
            return other.model_copy(update={"said": said}) if _is_one(other) else None
        if is_so_much_of_it(told.other):  # `4 tomatoes, or half a tin`
            return first
        if other.outcome != "read" or other.food == first.food:
            again = self._whole(shown, line)
            return None if again.outcome == "read" else first.model_copy(update={"said": as_written.line})
        foods = tuple(dict.fromkeys((*first.alternatives, other.food, *(one.food for one in other.also))))
        alternatives = tuple(food for food in foods if food not in {None, first.food})
        instead = (other.model_copy(update={"text": as_written.other}),) if _is_one(other) else ()
        told_all = {"said": as_written.line, "alternatives": alternatives, "instead": instead}
        return first.model_copy(update=told_all)

    def _part_of(self, shown: str, line: str) -> IngredientRead:
        """A piece of a line, which may itself be of several foods."""
        return self._all_of(shown, apart(line)) or self._whole(shown, line)

    def _all_of(self, shown: str, pieces: tuple[str, ...]) -> IngredientRead | None:
        """The pieces of a line as one reading, where each is read as a food of its own; else nothing."""
        told = [self._one_of(shown, piece) or self._whole(shown, piece) for piece in pieces]
        reads = [read for read in told if read.outcome != "nothing"]  # water
        foods = {read.food for read in reads if read.outcome == "read"}
        return together(reads) if reads and len(foods) == len(reads) else None

    def _kinds(self, shown: str, lines: tuple[str, ...]) -> IngredientRead | None:
        """Kinds of one thing that share an amount, any of which may be nearly all of it; None where one is not read."""
        reads = [self._whole(shown, one) for one in lines]
        foods = {read.food for read in reads}
        if not reads or any(read.outcome != "read" or read.also for read in reads):
            return None
        if len(foods) == 1:
            return reads[0]
        return together([shared_out(one, len(reads)) for one in reads]) if len(foods) == len(reads) else None

    def _whole(self, shown: str, line: str) -> IngredientRead:
        return self._if_whole(self._dry(shown, line) or self._read(shown, line), without_likeness(both_parts(line)))

    def _dry(self, shown: str, line: str) -> IngredientRead | None:
        """What is weighed dry and cooked later (`8 oz spaghetti, cooked`); None for every other line."""
        later = cooked_later(line)
        read = self._read(shown, later.line) if later else None
        food = self._tables.food_by_id[read.food] if read and read.food else None
        return read if later and food and taken_dry(food.kind, food.state, later.sure) else None

    def quantity(self, text: str) -> tuple[Quantity, ...]:
        """The amounts a line gives, first the one that counts; for measuring the reader."""
        found, _ = amounts_of(no_inches(plain(_START.sub("", clean_line(text)))))
        return ((found.main,) if found.main else ()) + found.sizes

    def _read(self, shown: str, line: str) -> IngredientRead:
        optional = bool(OPTIONAL.search(line))
        bare = OPTIONAL.sub(" ", line)
        found, notes = amounts_of(no_inches(both_parts(bare)))
        rest = found.rest.strip(" ,.;:-*_")
        unit = found.main.unit if found.main is not None else None
        if (
            unit is not None
            and unit != "clove"
            and (names_nothing(rest) or _ONLY_CUT.match(rest))
            and self._names.match(unit, frozenset()).score >= _WHOLE
        ):
            rest = f"{unit}, {rest}"  # `1 baguette`: a measure that is a food
        if NOTHING.fullmatch(without_prep(without_tail(rest.split(",")[0]))):
            return IngredientRead(text=shown, outcome="nothing")
        freed_name = self._freed(rest, notes)
        if freed_name is None:
            return IngredientRead(text=shown, outcome="unknown", optional=optional)
        rest = freed_name
        citrus = citrus_of(shown, rest, optional, self._tables)
        if citrus is not None:
            return citrus
        told = frozenset(words_of(f"{rest} {notes}")) | _parts_told(f"{rest} {notes}")
        if found.main is not None and found.main.unit is not None:
            told |= {found.main.unit}
        each = {"each"} if re.search(r"\beach\b", _EACH_WEIGHS.sub(" ", line)) else set()
        told = (told - {"each"}) | each
        several = self._several.read(shown, found, rest, told, optional)
        if several is not None:
            return several
        names = either_of(rest, told, self._names, self._tables)
        part, others = names[0], names[1:]
        found = as_it_weighs(self._with_more(found, rest, part), part, rest, line)
        known = tuple(dict.fromkeys(other.match.food.id for other in others if other.match.food is not None))
        return self._told(shown, found, part, known, optional)

    def _freed(self, rest: str, notes: str) -> str | None:
        """The name with what stands beside it and makes another food of it; None where that food is not known."""
        head, _, tail = rest.partition(",")
        name = freed(head, f"{notes} {tail}")
        if name == head:
            return rest
        match = self._names.match(without_tail(name), frozenset())
        if match.food is not None and match.score >= _WHOLE:
            return name
        plain_one = self._names.match(without_tail(head), frozenset()).food
        return None if name.startswith(("vegan", "dairy")) and plain_one and plain_one.diet != "vegan" else rest

    def _with_more(self, found: Found, rest: str, part: Part) -> Found:
        """The amount with what a line adds of the same food (`4 tbsp butter, plus 2 tbsp butter, chilled`)."""
        more = re.search(r"\bplus\s+(\d.*)", rest)
        extra = take_quantity(more[1]) if more else None
        if found.main is None or extra is None or extra.main is None:
            return found
        name = extra.rest.split(",")[0]
        if without_prep(without_tail(name)) and self._names.match(name, frozenset()).food != part.match.food:
            return found
        of_its_kind = (
            found.main.unit is None and extra.main.unit == part.unit_in_name
        )  # `3 garlic cloves, plus 1 clove`
        total = added(found.main, extra.main._replace(unit=None) if of_its_kind else extra.main)
        return found if total is None else found._replace(main=total, sizes=())

    def _if_whole(self, read: IngredientRead, line: str) -> IngredientRead:
        """The reading where it covers every food the line names; else a question."""
        if read.outcome != "read":
            return read
        ids = [read.food, *(other.food for other in read.also), *read.alternatives]
        foods = [food for food in ids if food is not None]
        besides = self._coverage.left_out(line, foods)
        if read.food == _CLOVES and crushed_cloves(line):
            besides = ("garlic",)
        pieces = re.split(r",\s+|\band\s+", line)[1:]
        counted = [take_quantity(piece).rest for piece in pieces if re.match(r"\d|an? ", piece)]
        known = {self._tables.food_by_id[food].id for food in foods}
        strange = [match.food.name for match in (self._names.match(rest, frozenset()) for rest in counted)
                   if match.food is not None and match.food.id not in known]  # fmt: skip
        if not besides and not strange:
            return read
        names = (self._tables.food_by_id[foods[0]].name, *besides, *strange)
        return IngredientRead(
            text=read.text, outcome="ask", optional=read.optional, choices=tuple(dict.fromkeys(names))
        )

    def _told(
        self, shown: str, found: Found, part: Part, alternatives: tuple[str, ...], optional: bool
    ) -> IngredientRead:
        match = part.match
        outcome: Outcome = {"matched": "read", "ask": "ask", "unknown": "unknown"}[match.outcome]  # type: ignore[assignment]
        if match.food is None:
            choices = tuple(candidate.name for candidate in match.candidates)
            return IngredientRead(
                text=shown, outcome=outcome, optional=optional, choices=choices, alternatives=alternatives
            )
        others = tuple(other for other in alternatives if other != match.food.id)
        reads = [
            with_weight(
                IngredientRead(
                    text=shown,
                    outcome=outcome,
                    food=food.id,
                    optional=optional,
                    assumed="; ".join(part.assumed[:1]),
                    alternatives=others,
                ),
                weight_of(found, part.unit_in_name, food, self._tables),
            )
            for food in (match.food, *part.also)
        ]
        if len(reads) > 1 and any(read.weighed for read in reads):
            reads = [shared_out(read, len(reads)) for read in reads]
        return reads[0].model_copy(update={"also": tuple(reads[1:])}) if len(reads) > 1 else reads[0]


def _is_one(read: IngredientRead) -> bool:
    return read.outcome == "read" and not read.also


def _parts_told(line: str) -> set[str]:
    """`white part` and `green part` where a line on spring onions or leeks speaks of them."""
    rest = re.sub(r"\b(?:green|spring|salad) onions?\b", " ", line)
    return {f"{colour} part" for colour in ("white", "green") if re.search(rf"\b{colour}s?\b|{colour} top", rest)}
