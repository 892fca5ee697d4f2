"""A line that its reader left open, settled piece by piece: what it surely names is counted, at the worst it may be.

Nothing that a line names is lost: where a piece of it may hold what counts and is not read, the line stays open.
"""

import re
from typing import NamedTuple

from rapidfuzz import fuzz, process

from calmlarder.adapt.model import Eaters
from calmlarder.adapt.names import names_of_all
from calmlarder.adapt.pieces_of_a_line import (
    BRACKETS,
    HEAD,
    ITS_USE,
    KEPT_IN,
    LEAD,
    LIES_IN,
    OF_WHATEVER,
    OR,
    OR_TWO,
    PIECES,
    SENTENCES,
    TAIL,
    WATER_OF,
    amount_before,
    amount_of,
    is_treatment,
)
from calmlarder.adapt.worst import is_plain_word, matters, named_in, passing_of, worst_of
from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.notation import SALT_AND_PEPPER
from calmlarder.cookbook.recipe import IngredientRead, shared_out, together
from calmlarder.cookbook.retold import OTHER_THINGS
from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables

_LONGEST = 200  # signs; more is no ingredient line: ours
_MOST_PIECES = 8  # of a sentence; more is a text: ours
AT_WORST = "the most it may be"
MAY_BE = "it may be several foods, one of them"
_COMMA_OR = re.compile(r",\s+or\b(?! (?:to|more|less|as|until)\b)", re.IGNORECASE)
_BREADS, _ALLIUM = frozenset({"bread"}), "allium"
_SAME_WORD = 80  # likeness of two words, 0 to 100, from which the one may be the other misspelt: ours


class _Piece(NamedTuple):
    """A piece of a line: what it was read as, or None where it names nothing; `fails` where that cannot be told."""

    read: IngredientRead | None
    fails: bool = False


_NOTHING = _Piece(None)
_FAILS = _Piece(None, fails=True)


class Settler:
    """Settles what the reader of lines left open, under the limits of who eats."""

    def __init__(self, reader: LineReader, eaters: Eaters, tables: Tables) -> None:
        self._reader = reader
        self._eaters = eaters
        self._tables = tables
        self._ids = {food.name: food.id for food in tables.foods}
        self._words = sorted({word for words in names_of_all(tables) for word in words})

    def settle(self, read: IngredientRead) -> IngredientRead:
        """The line as it counts; itself where it was read, or where nobody can say what it brings."""
        open_line = read.outcome in {"ask", "unknown"} or (read.outcome == "nothing" and self._hides(read.text))
        if not open_line or len(read.text) > _LONGEST:
            return read
        found = self._only_choice(read) or self._line(read.text)
        if found is None:
            return read if read.outcome != "nothing" else read.model_copy(update={"outcome": "unknown"})
        optional = read.optional or found.optional
        also = tuple(one.model_copy(update={"text": read.text, "optional": optional}) for one in found.also)
        return found.model_copy(update={"text": read.text, "optional": optional, "also": also})

    def _only_choice(self, read: IngredientRead) -> IngredientRead | None:
        """`hummus` as the one thing that it asks for, `hummus with garlic`: without is what a packet has to say."""
        name, with_, _ = read.choices[0].partition(" with ") if len(read.choices) == 1 else ("", "", "")
        if not with_ or len(re.findall(rf"\b{re.escape(name)}\b", read.text, re.IGNORECASE)) != 1:
            return None
        whole = re.sub(rf"\b{re.escape(name)}\b", read.choices[0], read.text, flags=re.IGNORECASE)
        told = self._reader.read(whole)
        return told if told.outcome == "read" and told.food == self._ids.get(read.choices[0]) else None

    def _hides(self, text: str) -> bool:
        """Whether a line that was taken for water names what matters (`water mixed with 1 stock pot`)."""
        return any(
            matters(one, self._eaters, self._tables)
            for _, _, meant in named_in(WATER_OF.sub("water", text), self._tables)
            for one in meant
        )

    def _line(self, text: str) -> IngredientRead | None:
        text = _COMMA_OR.sub(" or", SALT_AND_PEPPER.sub("salt and black pepper", text))
        head = HEAD.match(text)
        bare = OR_TWO.sub(lambda one: f"2 {one[2]}{'es' if one[2].endswith(('sh', 'ch')) else 's'}", text)
        bare = OF_WHATEVER.sub("of ", bare[head.end() :] if head else bare)
        reads: list[IngredientRead] = []
        for number, sentence in enumerate(SENTENCES.split(bare)):
            pieces = self._sentence(sentence)
            if pieces is None and number and reads and self._is_remark(sentence):
                continue
            if pieces is None:
                return None
            reads += [one for one in pieces if all(one.food != other.food for other in reads)]
        # What it allows besides and nobody can count is struck out: `dill, or fennel fronds`.
        alone = len(reads) == 1 and bool(reads[0].said)
        counted = " . ".join((reads[0].said, *(one[0] for one in BRACKETS.finditer(bare)))) if alone else bare
        if not reads or not self._all_counted(counted, reads):
            return None
        told = together(reads) if len(reads) > 1 else reads[0]
        return told.model_copy(update={"optional": told.optional or bool(head and "ption" in head["head"])})

    def _sentence(self, text: str) -> list[IngredientRead] | None:
        """What a sentence names, each food once; None where a piece of it may be anything."""
        whole = self._reader.read(text) if text.strip() else IngredientRead(text=text, outcome="nothing")
        if whole.outcome == "read" and self._all_counted(text, [whole]):
            return [whole]
        bare = BRACKETS.sub(" ", text)
        parts = PIECES.split(bare)
        pieces = [("", parts[0]), *zip((by.strip().casefold() for by in parts[1::2]), parts[2::2], strict=True)]
        if len(pieces) > _MOST_PIECES:
            return None
        found: list[IngredientRead] = []
        for by, piece in pieces:
            if found and self._is_a_use(piece):
                continue
            told = self._options(piece, first=not found)
            if told.read is not None:
                new = (told.read.model_copy(update={"also": ()}), *told.read.also)
                found += [one for one in new if all(one.food != other.food for other in found)]
            elif told.fails and not (by == "," and found and self._is_aside(piece)):
                return self._in_brackets(text) if not found else None
        return found

    def _is_a_use(self, piece: str) -> bool:
        """Whether a piece behind a food says but what so much of it is for (`40 for sauce 20 for mash`)."""
        rest = ITS_USE.sub(" ", piece)
        told = rest != piece and not named_in(rest, self._tables)
        return told and all(is_plain_word(word) for word in words_of(rest))

    def _is_aside(self, piece: str) -> bool:
        """Whether what stands behind a comma names nothing, and nothing that may be misspelt."""
        words = (word for word in words_of(piece) if not is_plain_word(word))
        return not named_in(piece, self._tables) and not any(map(self._is_slip, words))

    def _in_brackets(self, text: str) -> list[IngredientRead] | None:
        """What a bracket tells with amounts (`slurry (1 tbsp cornflour + 2 tbsp water)`), or as kinds of one thing."""
        for bracket in BRACKETS.finditer(text):
            inside = (bracket[1] or bracket[2] or "").strip()
            found = self._sentence(inside) if inside else None
            if found and re.match(r"[\d½¼¾]", inside):
                return found
            if found and len(found) > 1:  # `300 g mixed vegetables (carrot, swede)`: any may be nearly all of it
                amount = amount_of(text)
                kinds = [self._named(one.food or "", amount) for one in found]
                if amount and all(kinds):
                    return [shared_out(one, len(kinds)) for one in kinds if one is not None]
        return None

    def _options(self, text: str, first: bool) -> _Piece:
        """A piece of which each option is read: the first counts, the others are what the line allows besides."""
        options = [one for one in OR.split(text) if one.strip()]
        if len(options) < 2:
            return self._one(text)
        told = [self._one(one) for one in options]
        if told[0].read is None:
            return _FAILS if any(one.fails or one.read for one in told) else _NOTHING
        others = {one.read.food: None for one in told[1:] if one.read is not None and one.read.food is not None}
        others |= dict.fromkeys(told[0].read.alternatives)
        strange = any(one.fails for one in told[1:])
        allowed = tuple(food for food in others if food not in {None, told[0].read.food})
        if told[0].read.also or (strange and not first):
            return _FAILS
        update: dict[str, object] = {"alternatives": allowed}
        if strange:
            update["said"] = options[0].strip(" ,")
        return _Piece(told[0].read.model_copy(update=update))

    def _one(self, text: str) -> _Piece:
        """One name with its amount, by the shorter ways to say it."""
        bare = BRACKETS.sub(" ", text).strip(" ,.")
        if not bare or is_treatment(bare):
            return _NOTHING
        asked: IngredientRead | None = None
        short = TAIL.sub("", bare)
        if LIES_IN.match(bare, len(short)) and not all(map(is_plain_word, words_of(bare[len(short) :]))):
            short = bare  # nobody knows what it lies in
        tries = (text, bare, short, LEAD.sub("", bare), LEAD.sub("", short), LEAD.sub("", ITS_USE.sub("", bare)))
        for one in dict.fromkeys(tries):
            read = self._reader.read(one) if one.strip() else IngredientRead(text=one, outcome="nothing")
            if read.outcome == "read":
                return _Piece(read)
            if read.outcome in {"nothing", "heading"} and not named_in(one, self._tables):
                return _NOTHING
            if read.outcome == "ask" and asked is None:
                asked = read
        if asked is not None:
            settled = self._at_worst(asked, short)
            return _FAILS if settled is None else _Piece(settled)
        if self._is_remark(bare):
            return _NOTHING
        settled = (
            self._at_worst(IngredientRead(text=bare, outcome="ask"), short) if named_in(short, self._tables) else None
        )
        return _FAILS if settled is None else _Piece(settled)

    def _at_worst(self, asked: IngredientRead, text: str) -> IngredientRead | None:
        """Each name in a piece as the food that brings most of all it may mean; None where a word may be anything."""
        names = named_in(text, self._tables)
        spans = self._sorts_as_one(text, names)
        chosen = [self._ids[name] for name in asked.choices if name in self._ids]
        sure = self._is_explained(text, spans)
        if not sure and not self._is_of_a_sort(text, spans):
            return None
        if len(spans) < len(names):
            meant = [sorted(foods) for _, _, foods in spans]
        elif len(spans) < 2:
            meant = [[*chosen, *(food for _, _, foods in spans for food in foods), *asked.alternatives]]
        else:
            meant = [[*foods, *(one for one in chosen if one in foods)] for _, _, foods in spans]
        reads = []
        for number, foods in enumerate(meant):
            worst = worst_of(foods, self._eaters, self._tables) if sure else None
            # What passes a limit is swapped, whatever else it might have been.
            passing = None if worst else passing_of(foods, self._eaters, self._tables)
            read = self._named(worst or passing or "", amount_before(text, spans) if number == 0 else "")
            if read is None:
                return None
            told = {"optional": asked.optional, "assumed": AT_WORST, "unsure": MAY_BE if passing else ""}
            reads.append(read.model_copy(update=told))
        reads = list({read.food: read for read in reversed(reads)}.values())[::-1]
        return together(reads) if reads else None

    def _sorts_as_one(
        self, text: str, spans: list[tuple[int, int, frozenset[str]]]
    ) -> list[tuple[int, int, frozenset[str]]]:
        """Names side by side that may be of one kind are one name (`brioche hamburger buns`): no food is counted twice.

        What stands right before buns is their sort (`potato hamburger buns`), but for onion and garlic.
        """
        found: list[tuple[int, int, frozenset[str]]] = []
        for start, end, meant in spans:
            first, last, before = found[-1] if found else (0, -1, frozenset())
            beside = bool(found) and not text[last:start].strip(" -")
            theirs = {self._kind(one) for one in meant}
            kinds = {self._kind(one) for one in before} & theirs
            sorts = theirs & _BREADS if text[first:last] == "white" or not self._holds_allium(before) else set()
            if beside and (kinds or sorts):
                both = before | meant if kinds else meant
                found[-1] = first, end, frozenset(one for one in both if self._kind(one) in (kinds or sorts))
            else:
                found.append((start, end, meant))
        return found

    def _holds_allium(self, foods: frozenset[str]) -> bool:
        return any(self._kind(one) == _ALLIUM for one in foods)

    def _kind(self, food: str) -> str:
        return self._tables.food_by_id[food].kind

    def _named(self, food: str, amount: str) -> IngredientRead | None:
        """A food by its own name, with an amount where it is measured so."""
        if food not in self._tables.food_by_id:
            return None
        name = self._tables.food_by_id[food].name
        reads = (self._reader.read(told) for told in dict.fromkeys((f"{amount}{name}", name)))
        return next((read for read in reads if read.outcome == "read" and read.food == food), None)

    def _is_explained(self, text: str, spans: list[tuple[int, int, frozenset[str]]]) -> bool:
        """Whether no word of a piece may make another food of it: a strange one before a whole food is but its sort."""
        rest, last = text, 0
        sorts = [end for start, end, _ in spans if not set(words_of(text[start:end])[-1:]) & OTHER_THINGS]
        for start, end, _ in reversed(spans):
            rest = f"{rest[:start]} {rest[end:]}"
            last = max(last, end)
        strange = [word for word in words_of(rest) if not is_plain_word(word)]
        if not strange:
            return True
        behind = words_of(text[last:])
        return len(sorts) == len(spans) == 1 and not any(word in behind or self._is_slip(word) for word in strange)

    def _is_of_a_sort(self, text: str, spans: list[tuple[int, int, frozenset[str]]]) -> bool:
        """Whether all that is strange in a piece stands before the one food that it names."""
        return len(spans) == 1 and all(is_plain_word(word) for word in words_of(text[spans[0][1] :]))

    def _is_slip(self, word: str) -> bool:
        """Whether a strange word may be a misspelt word of a name."""
        return process.extractOne(word, self._words, scorer=fuzz.ratio, score_cutoff=_SAME_WORD) is not None

    def _is_remark(self, text: str) -> bool:
        """Whether a sentence names nothing that matters and has no word that may be anything."""
        spans = named_in(text, self._tables)
        if any(matters(food, self._eaters, self._tables) for _, _, meant in spans for food in meant):
            return False
        for start, end, _ in reversed(spans):
            text = f"{text[:start]} {text[end:]}"
        return all(is_plain_word(word) for word in words_of(text))

    def _all_counted(self, text: str, reads: list[IngredientRead]) -> bool:
        """Whether all that a line names is of what was read, or brings nothing that counts; its use aside."""
        parts = [part for read in reads for part in (read, *read.also)]
        foods = {food for part in parts for food in (part.food, *part.alternatives) if food is not None}
        words = {word for food in foods for name in self._names_of(food) for word in words_of(name)}
        pieces = PIECES.sub(
            lambda one: f" {one['by']} \n", ITS_USE.sub(" . ", KEPT_IN.sub(" ", SENTENCES.sub(" . \n", text)))
        )
        told = "".join(one for one in pieces.splitlines(keepends=True) if not is_treatment(one.strip(" ,.&+\n")))
        for start, end, meant in self._sorts_as_one(told, named_in(told, self._tables)):
            named = set(words_of(told[start:end]))
            if (
                not meant & foods
                and not named <= words
                and any(matters(one, self._eaters, self._tables) for one in meant)
            ):
                return False
        return True

    def _names_of(self, food: str) -> tuple[str, ...]:
        return (self._tables.food_by_id[food].name, *self._tables.names_of(food))
