"""From a cook's lines to lots: what each line means, what must be asked, what is not known."""

import re
from collections.abc import Callable, Iterable, Mapping
from datetime import date

from rapidfuzz import fuzz, process

from calmlarder.larder.grams_or_question import grams_or_question
from calmlarder.larder.jarred_herbs import among_spices
from calmlarder.larder.leeks import in_greens_and_whites
from calmlarder.larder.lot import Lot, LotDate
from calmlarder.larder.meaning import NOT_KNOWN, Reading, clearer, match_of
from calmlarder.larder.parts_of_line import names_some_kind, not_added, of_any_kind, state_of
from calmlarder.larder.refrozen import REFROZEN, is_refrozen
from calmlarder.larder.said_to_hold import said_to_hold
from calmlarder.larder.standing import (
    cut_when_bought,
    is_brown_and_old,
    is_opened,
    noted,
    place_of,
    thawed_by,
    was_open,
)
from calmlarder.larder.still_hard import keeps_to_ripen
from calmlarder.larder.to_answer import NO_DAY, UNANSWERED, Answers
from calmlarder.larder.trimmed import MOULDY_CORNER, bad_at_the_edge, is_cracked_egg
from calmlarder.larder.urgency import NO_DAYS, Kept, urgency_of
from calmlarder.larder.with_bones import eatable_grams
from calmlarder.matching.amounts.numbers_and_fractions import Span
from calmlarder.matching.amounts.some_of_them import half_cooked
from calmlarder.matching.conditions.condition_words import presses
from calmlarder.matching.dates.month_first import writes_month_first
from calmlarder.matching.lacks import NotThere
from calmlarder.matching.line import LineRead, read_line
from calmlarder.matching.line_text import without_bullet
from calmlarder.matching.names.foods import Candidate
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import NO_SLIPS
from calmlarder.matching.names.of_one_sort import of_one_sort, worth_offering
from calmlarder.matching.names.words import plain
from calmlarder.matching.owners.apart_by_owner import apart_by_owner
from calmlarder.matching.part import Part, names_something
from calmlarder.matching.remarks import says_no_food
from calmlarder.matching.renaming import with_name
from calmlarder.matching.retold.apart_by_place import apart_by_place
from calmlarder.matching.retold.apart_when_opened import apart_when_opened
from calmlarder.matching.retold.done_with import THROWN
from calmlarder.matching.retold.spoken_at_home import spoken_at_home
from calmlarder.matching.several_foods.under_headings import under_headings
from calmlarder.problems import Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

NO_LONGER = "no longer always there"
_MOST_NEAREST, _NEAR = 4, 75.0  # names that are shown, and from which likeness of spelling, 0 to 100: ours
_OPENED_YESTERDAY = "opened yesterday"
_NOT_ASKED = "kind not asked, as it is somebody else's"
_TOO_OLD = "kind not asked, as it is too old to eat"
_UNNAMED = "mystery leftover"  # the name in names.csv, in the singular, for what nobody names
_LEAST_GRAMS = 0.1  # a lot is kept to a tenth of a gram, and what is there is not nothing


_AS_USUAL = Answers(amount="usual")


class LarderReader:
    """Reads lines against the tables for a given day."""

    def __init__(self, tables: Tables, today: date, lexicon: Lexicon | None = None) -> None:
        self._tables = tables
        self._today = today
        self._lexicon = Lexicon(tables) if lexicon is None else lexicon
        self._left_out: Callable[[Food], bool] = lambda food: False
        self._month_first = False
        self._at_home: tuple[str, ...] = ()

    def on_day(self, day: date) -> "LarderReader":
        """A reader of the same names for another day."""
        return self._in_words_of(self._lexicon, day)

    def _in_words_of(self, lexicon: Lexicon, day: date) -> "LarderReader":
        reader = LarderReader(self._tables, day, lexicon)
        reader.leave_out(self._left_out)
        reader._month_first, reader._at_home = self._month_first, self._at_home
        return reader

    def as_written_at_home(self, month_first: bool, lines: Iterable[str]) -> None:
        """From now on read as a home writes: `12/7` beside `11/24` is the seventh of December; so are its tongues."""
        self._at_home = tuple(lines)
        self._month_first = month_first or writes_month_first(map(plain, self._at_home), self._today)

    def leave_out(self, is_left_out: Callable[[Food], bool]) -> None:
        """Of what a line may be, do not offer some foods where there are others: those that are not eaten here."""
        self._left_out = is_left_out

    def remember(self, meant: Mapping[str, tuple[str, ...]]) -> None:
        """What words meant in this house, by the words; what an unnamed box once held tells nothing of another."""
        told = {said: foods for said, foods in meant.items() if names_something(said)}
        self._lexicon = self._lexicon.knowing(told)

    def read(self, text: str, where: str, number: int = 1, answers: Answers = UNANSWERED) -> Reading | None:
        """One line; None for a comment or an empty line. `number` is its place in its file, for the ids of its lots.

        `answers` are what the cook said to the questions of this line.
        """
        lexicon = self._lexicon
        if answers.foods:
            lexicon = lexicon.knowing({**lexicon.meant, **answers.foods})
        try:
            line = read_line(text, self._today, lexicon, self._month_first)
        except ValueError as error:
            return self._problem(text, where, error)
        if line is None:
            return None
        if answers == UNANSWERED and (both := self._as_two_lines(line.text, where, number)) is not None:
            return both
        line = _what_is_open(line, answers)
        good, bad = self._apart_from_the_bad(line)
        if bad and not good:
            return self._problem(text, where, not_added(bad))
        read = self._what_is_there(line._replace(parts=good), text, where, (number, answers))
        foods = self._tables.food_by_id
        names = (foods[part.named.foods[0]].name if part.named.foods else part.said for part in bad)
        told = (f"{name} not added: {state_of(part)}" for name, part in zip(names, bad, strict=True))
        return read.model_copy(update={"assumed": (*read.assumed, *told)}) if bad else read

    def _as_two_lines(self, line: str, where: str, number: int) -> Reading | None:
        """A line of one food of two sorts, or of a list of which one thing is somebody's, as its lots; else None.

        Two sorts: in two places, or some of it opened.
        """
        bare = plain(without_bullet(line))
        of_two_sorts = apart_by_place(bare) or apart_when_opened(bare)
        reads = [
            self.read(one, where, number) for one in of_two_sorts or apart_by_owner(bare) or half_cooked(bare) or ()
        ]
        clear = [read for read in reads if read is not None and read.lots]
        lots = [lot for read in clear for lot in read.lots]
        if not clear or len(clear) != len(reads):
            return None
        if of_two_sorts and (len(lots) != len(reads) or len({lot.food for lot in lots}) != 1):
            return None
        told = [lot.model_copy(update={"id": f"{number}.{at}", "line": line}) for at, lot in enumerate(lots, start=1)]
        assumed = dict.fromkeys(word for read in clear for word in read.assumed)
        names = tuple(name for read in clear for name in read.names)
        amounts = tuple(amount for read in clear for amount in read.amounts)
        update = {"text": line, "lots": tuple(told), "names": names, "assumed": tuple(assumed)}
        update |= {"amounts": amounts if len(amounts) == len(told) else ()}
        return clear[0].model_copy(update=update)

    def _apart_from_the_bad(self, line: LineRead) -> tuple[tuple[Part, ...], tuple[Part, ...]]:
        """The parts that are there, and those that the line says are gone or bad; hard cheese can be trimmed."""
        foods = self._tables.food_by_id
        bad = tuple(
            part
            for part in line.parts
            if part.to_bin
            and (
                THROWN in part.conditions
                or not any(bad_at_the_edge(foods[food], line.text) for food in part.named.foods)
            )
        )
        return tuple(part for part in line.parts if part not in bad), bad

    def _what_is_there(self, line: LineRead, text: str, where: str, which: tuple[int, Answers]) -> Reading:
        """What a line means of which all is there."""
        number, answers = which
        parts = among_spices(line.parts, line.text, self._tables.food_by_id)
        line = line._replace(parts=in_greens_and_whites(parts))
        unclear = [part for part in line.parts if part.named.outcome != "matched"]
        if line.question and not answers.no_day:
            match = match_of((), "ask", self._tables, line.candidates)
            return Reading(
                text=line.text, where=where, match=match, lots=(), problem=None, question=line.question, about="day",
                choices=(NO_DAY,),
            )  # fmt: skip
        if unclear and line.owner and not line.owner_agrees and all(map(names_some_kind, unclear)):
            # What is somebody else's is set aside: nobody needs to know which kind it is, or just how much.
            aside = line._replace(parts=tuple(of_any_kind(part, _NOT_ASKED) for part in line.parts))
            read = self._clear(aside, where, (number, answers))
            return read if read.lots else self._clear(aside, where, (number, _AS_USUAL))
        names_nothing = len(unclear) == len(line.parts) and not any(part.named.takes for part in unclear)
        if names_nothing and says_no_food(line.text, self._lexicon):
            return self._problem(text, where, NotThere("it names no food", "nothing was added"))
        if unclear:
            past = self._past_whatever_it_is(line, where, (number, answers))
            return past or self._unclear(line, where, unclear, (number, answers))
        return self._clear(line, where, (number, answers))

    def _problem(self, text: str, where: str, error: ValueError) -> Reading:
        """A line that gives nothing, with the reason and what to do."""
        remedy = error.remedy if isinstance(error, NotThere) else "write the line again"
        problem = Problem(where=where, what=str(error), remedy=remedy)
        match = match_of((), "unknown", self._tables)
        return Reading(text=text[:200], where=where, match=match, lots=(), problem=problem)

    def _past_whatever_it_is(self, line: LineRead, where: str, which: tuple[int, Answers]) -> Reading | None:
        """A line of leftovers that are too old to be eaten, whatever is in them: nobody need say what it was."""
        made = [one.on for one in line.dates if one.kind == "made" and one.on is not None]
        if not made or not all(part.named.candidates for part in line.parts if part.named.outcome != "matched"):
            return None
        parts = tuple(of_any_kind(part, _TOO_OLD) for part in line.parts)
        read = self._clear(line._replace(parts=parts), where, which)
        days = [lot.safety_days_left for lot in read.lots]
        return read if days and all(left is not None and left < 0 for left in days) else None

    def _unclear(self, line: LineRead, where: str, unclear: list[Part], which: tuple[int, Answers]) -> Reading:
        """A line of which some food is not clear; the others stand, if their amounts are clear as well."""
        said = unclear[0].said
        rest = line._replace(parts=tuple(part for part in line.parts if part not in unclear))
        clear = self._clear(rest, where, which) if rest.parts and said else None
        stands = clear is not None and bool(clear.lots)
        first = unclear[:1] if stands else unclear
        outcome = "unknown" if all(part.named.outcome == "unknown" for part in first) else "ask"
        candidates = unclear[0].named.candidates if stands else line.candidates
        candidates = of_one_sort(candidates, line.text, self._lexicon)
        if outcome == "unknown" and said and not names_something(said):
            outcome, candidates = "ask", self._of_no_name()
        candidates = worth_offering(candidates, self._left_out, self._lexicon)
        question = f"what is `{said}`?" if outcome == "ask" else f"`{said}` is {NOT_KNOWN}"
        if "marinated" in unclear[0].named.left:
            question = f"is there onion or garlic in the marinade of `{said}`? name the food only where there is none"
            candidates = candidates[:1]
        asked = Reading(
            text=line.text, where=where, match=match_of((), outcome, self._tables, candidates), lots=(), problem=None,
            said=said, choices=self._nearest(said) if outcome == "unknown" else (),
            question=question if "marinated" in unclear[0].named.left else "",
        )  # fmt: skip
        if clear is None or not stands:
            return asked
        stand = {"standing": clear.lots, "names": clear.names, "assumed": clear.assumed}
        return asked.model_copy(update={**stand, "question": question, "only": tuple(part.said for part in unclear)})

    def _of_no_name(self) -> tuple[Candidate, ...]:
        """What a box may hold of which only its colour is told: the dish that is counted with what most dishes hold."""
        food = self._tables.food_by_id.get(self._lexicon.spelt.get(_UNNAMED, ""))
        return (Candidate(food.id, food.name, 75.0),) if food else ()

    def _nearest(self, said: str) -> tuple[str, ...]:
        """Names that are spelt most like words that are none."""
        bare = re.sub(r" ?\([^)]*\)", "", said)
        if bare in NO_SLIPS:
            return ()  # another food than any here, however near the spelling
        names = self._lexicon.spelt
        found = process.extract(bare, names.keys(), scorer=fuzz.ratio, limit=_MOST_NEAREST, score_cutoff=_NEAR)
        foods = dict.fromkeys(names[name] for name, _, _ in found)
        likely = [food for food in foods if food in self._lexicon.common] or list(foods)
        return tuple(self._tables.food_by_id[food].name for food in likely)

    def _clear(self, line: LineRead, where: str, which: tuple[int, Answers]) -> Reading:
        """A line whose foods are known; its amounts may still need a question."""
        number, answers = which
        if line.no_longer:
            return self._no_longer(line, where)
        foods = [(part, self._tables.food_by_id[food]) for part in line.parts for food in part.named.foods]
        lots: list[Lot] = []
        for part, food in foods:
            span, question, choices = grams_or_question(part, food, answers, self._tables)
            if span is None:
                match = match_of((), "ask", self._tables, (Candidate(food.id, food.name, 100.0),))
                return Reading(
                    text=line.text, where=where, match=match, lots=(), problem=None, question=question, about="amount",
                    choices=choices,
                )  # fmt: skip
            lots.append(self._lot(line, part, food, span, f"{number}.{len(lots) + 1}"))
        assumed = tuple(dict.fromkeys(word for part in line.parts for word in part.named.assumed))
        if any(one.on is None for one in line.dates) or any(was_open(lot, self._today) for lot in lots):
            assumed += (_OPENED_YESTERDAY,)
        match = match_of(tuple(food for _, food in foods), "matched", self._tables, line.candidates)
        return Reading(
            text=line.text, where=where, match=match, lots=tuple(lots), problem=None, assumed=assumed,
            names=tuple(food.name for _, food in foods), how=line.parts[0].amount.how,
            amounts=tuple(part.amount for part, _ in foods) if len(line.parts) > 1 else (),
        )  # fmt: skip

    def _no_longer(self, line: LineRead, where: str) -> Reading:
        """A line that takes back what was said to be always there."""
        foods = tuple(self._tables.food_by_id[food] for part in line.parts for food in part.named.foods)
        names = tuple(food.name for food in foods)
        return Reading(
            text=line.text, where=where, match=match_of(foods, "matched", self._tables), lots=(), problem=None,
            assumed=(NO_LONGER,), names=names, gone=tuple(food.id for food in foods),
        )  # fmt: skip

    def renamed(self, text: str, name: str) -> str:
        """A line with the chosen name for its food. Raises ValueError for a line that cannot be read."""
        return with_name(text, name, self._today, self._lexicon)

    def read_all(self, lines: Iterable[str], source: str) -> tuple[Reading, ...]:
        """Every line that says something, with what its heading says of it."""
        lines = tuple(lines)
        self._month_first = self._month_first or writes_month_first(map(plain, lines), self._today)
        told = list(enumerate(under_headings(lines), start=1))
        readings = [self.read(line, f"{source}:{number}", number) for number, line in told]
        in_doubt = [at for at, reading in enumerate(readings) if reading is not None and reading.to_answer is not None]
        if in_doubt and (reader := self.in_its_tongue(line for _, line in told)) is not None:
            for at in in_doubt:
                number, line = told[at]
                readings[at] = clearer(readings[at], reader.read(line, f"{source}:{number}", number))
        return tuple(reading for reading in readings if reading is not None)

    def in_its_tongue(self, lines: Iterable[str]) -> "LarderReader | None":
        """The reader of a home that speaks another tongue than English, by its lines and these; else None."""
        tongues = spoken_at_home((*self._at_home, *lines), self._lexicon)
        return self._in_words_of(self._lexicon.where_spoken(tongues), self._today) if tongues else None

    def _lot(self, line: LineRead, part: Part, food: Food, span: Span, lot_id: str) -> Lot:
        kept = Kept(food, place_of(food, line, part.amount), self._today, self._tables)
        refrozen = (REFROZEN,) if is_refrozen(food, line.text) else ()
        condition = ", ".join((*part.conditions, *refrozen)) or None
        dates = tuple(one.since(self._today) for one in line.dates)
        dates = (*dates, *thawed_by(dates, kept, line.text)) or noted(kept, line, part)
        dates = cut_when_bought(dates, food, line.text)
        span = eatable_grams(span, part.amount, food, line.text)
        urgency = urgency_of(dates, ", ".join(filter(presses, part.conditions)) or None, kept)
        to_bin = (
            is_cracked_egg(food, part.conditions) or is_brown_and_old(food, part.conditions, urgency) or bool(refrozen)
        )
        return Lot(
            id=lot_id,
            line=line.text,
            food=food.id,
            grams_low=max(_LEAST_GRAMS, round(span.low, 1)),
            grams=max(_LEAST_GRAMS, round(span.typical, 1)),
            grams_high=max(_LEAST_GRAMS, round(span.high, 1)),
            place=kept.place,
            opened=is_opened(line, part.amount),
            dates=tuple(LotDate(kind=dated.kind, on=dated.on, assumed=dated.assumed) for dated in dates),
            **(NO_DAYS if to_bin else urgency)._asdict(),
            condition=MOULDY_CORNER if part.to_bin else condition,
            assumed=part.named.assumed if len(part.named.foods) == 1 else (),
            always=line.always,
            to_bin=to_bin,
            owner=line.owner,
            owner_agrees=line.owner_agrees,
            kept_for=line.kept_for or keeps_to_ripen(food, line.text),
            label_allergens=said_to_hold(line.text, food),
        )


def _what_is_open(line: LineRead, answers: Answers) -> LineRead:
    """The line without the foods that stand already."""
    parts = tuple(part for part in line.parts if part.said in answers.only)
    return line._replace(parts=parts) if parts else line
