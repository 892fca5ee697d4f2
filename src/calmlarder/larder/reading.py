"""From a cook's lines to lots: what each line means, what must be asked, what is not known."""

from collections.abc import Iterable
from datetime import date

from pydantic import BaseModel, ConfigDict

from calmlarder.larder.grams import fits_measure, grams_of, out_of_proportion, share_of
from calmlarder.larder.lot import Lot, LotDate
from calmlarder.larder.to_answer import ToAnswer
from calmlarder.larder.urgency import COOKED_STATES, urgency_of
from calmlarder.matching.amounts import Amount
from calmlarder.matching.dates import Dated
from calmlarder.matching.foods import Candidate, Match
from calmlarder.matching.lexicon import Lexicon
from calmlarder.matching.line import LineRead, Part, Place, read_line
from calmlarder.matching.numbers import Span
from calmlarder.matching.renaming import with_name
from calmlarder.problems import Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_CUPBOARD_KINDS = frozenset({
    "flour", "starch", "oil", "acid", "spice", "sweetener", "nut", "seed", "dried-fruit", "soy-sauce",
    "sea-vegetable", "nut-butter", "potato",
})  # fmt: skip
_CUPBOARD_STATES = frozenset({"dry", "canned", "canned drained", "dried"})

_FRESH_KINDS = frozenset({
    "leaf", "salad-leaf", "brassica", "root", "mushroom", "tomato", "pepper", "pod", "shoot", "stem", "fruit-vegetable",
    "sweetcorn", "fruit", "herb", "fish", "shellfish", "poultry", "meat", "milk", "cream", "yoghurt", "cheese", "bread",
})  # fmt: skip
_FRESH_DAYS = 14  # what keeps longer in the fridge presses nobody: ours
_OPENED_YESTERDAY = "opened yesterday"
_LEAST_GRAMS = 0.1  # a lot is kept to a tenth of a gram, and what is there is not nothing


class Reading(BaseModel):
    """What one line means: its lots where it is clear; a `question` or a `problem` where it is not.

    `assumed` says what was taken for granted, in words; several lots come from several foods on a line.
    """

    model_config = ConfigDict(frozen=True)

    text: str
    where: str
    match: Match
    lots: tuple[Lot, ...]
    problem: Problem | None
    assumed: tuple[str, ...] = ()
    question: str = ""
    names: tuple[str, ...] = ()  # of the foods of the lots
    how: str = "none"  # how the amount was told: weighed, counted, guessed, none

    @property
    def lot(self) -> Lot | None:
        """The first lot."""
        return self.lots[0] if self.lots else None

    @property
    def to_answer(self) -> ToAnswer | None:
        """What the cook must still say, where the line is no lot and could be one."""
        if self.lots or self.problem is not None:
            return None
        names = tuple(candidate.name for candidate in self.candidates)
        question = self.question or ("which one is it?" if names else "no food of the tables has that name")
        return ToAnswer(where=self.where, text=self.text, question=question, choices=names)

    @property
    def candidates(self) -> tuple[Candidate, ...]:
        """Foods that the line may mean, best first."""
        return self.match.candidates


class LarderReader:
    """Reads lines against the tables for a given day."""

    def __init__(self, tables: Tables, today: date) -> None:
        self._tables = tables
        self._today = today
        self._lexicon = Lexicon(tables)

    def read(self, text: str, where: str, number: int = 1) -> Reading | None:
        """One line; None for a comment or an empty line. `number` is its place in its file, for the ids of its lots."""
        try:
            line = read_line(text, self._today, self._lexicon)
        except ValueError as error:
            problem = Problem(where=where, what=str(error), remedy="write the line again")
            return Reading(
                text=text[:200], where=where, match=_match((), "unknown", self._tables), lots=(), problem=problem
            )
        if line is None:
            return None
        unclear = [part for part in line.parts if part.named.outcome != "matched"]
        if unclear or line.question:
            outcome = "unknown" if not line.question and all(p.named.outcome == "unknown" for p in unclear) else "ask"
            match = _match((), outcome, self._tables, line.candidates)
            return Reading(
                text=line.text, where=where, match=match, lots=(), problem=None, question=line.question,
            )  # fmt: skip
        return self._clear(line, where, number)

    def _clear(self, line: LineRead, where: str, number: int) -> Reading:
        """A line whose foods are known; its amounts may still need a question."""
        foods = [(part, self._tables.food_by_id[food]) for part in line.parts for food in part.named.foods]
        lots: list[Lot] = []
        for part, food in foods:
            span, question = self._grams(part, food)
            if span is None:
                match = _match((), "ask", self._tables, (Candidate(food.id, food.name, 100.0),))
                return Reading(text=line.text, where=where, match=match, lots=(), problem=None, question=question)
            lots.append(self._lot(line, part, food, span, f"{number}.{len(lots) + 1}"))
        assumed = tuple(dict.fromkeys(word for part in line.parts for word in part.named.assumed))
        if any(one.on is None for one in line.dates):
            assumed += (_OPENED_YESTERDAY,)
        match = _match(tuple(food for _, food in foods), "matched", self._tables, line.candidates)
        return Reading(
            text=line.text, where=where, match=match, lots=tuple(lots), problem=None, assumed=assumed,
            names=tuple(food.name for _, food in foods), how=line.parts[0].amount.how,
        )  # fmt: skip

    def renamed(self, text: str, name: str) -> str:
        """A line with the chosen name for its food. Raises ValueError for a line that cannot be read."""
        return with_name(text, name, self._today, self._lexicon)

    def read_all(self, lines: Iterable[str], source: str) -> tuple[Reading, ...]:
        """Every line that says something."""
        readings = (self.read(line, f"{source}:{number}", number) for number, line in enumerate(lines, start=1))
        return tuple(reading for reading in readings if reading is not None)

    def _grams(self, part: Part, food: Food) -> tuple[Span | None, str]:
        """Grams of a food of the line, or what must be asked about them."""
        amount = part.amount
        if amount.measure is not None and not fits_measure(amount, food, self._tables):
            return None, f"`{amount.measure}` says nothing about {food.name}"
        span = grams_of(amount, food, self._tables)
        if span is None:
            return None, f"how much {food.name} is there?"
        if amount.grams is not None and len(part.named.foods) > 1:
            shares = [share_of(self._tables.food_by_id[one], self._tables) for one in part.named.foods]
            part_of_it = share_of(food, self._tables) / sum(shares)
            span = span.times(Span(part_of_it, part_of_it, part_of_it))
        if out_of_proportion(amount, span, food):
            return None, f"{span.typical:g} g of {food.name}: is that right?"
        return span, ""

    def _noted(self, food: Food, place: Place, line: LineRead) -> tuple[Dated, ...]:
        """The day of typing, where a fresh thing has no date: its days are counted from there, as an estimate."""
        state = "cooked" if food.state in COOKED_STATES else "whole"
        row = self._tables.keeping_of(food, place, state)
        fresh = row is not None and row.days <= _FRESH_DAYS and (food.kind in _FRESH_KINDS or row.kind == "safety")
        fresh = fresh and place == "fridge" and not line.to_bin
        return (Dated("noted", self._today),) if fresh else ()

    def _lot(self, line: LineRead, part: Part, food: Food, span: Span, lot_id: str) -> Lot:
        place = line.place or _usual_place(food, line)
        condition = ", ".join(part.conditions) or None
        dates = tuple(one.since(self._today) for one in line.dates) or self._noted(food, place, line)
        urgency = urgency_of(dates, condition, food, place, self._today, self._tables)
        return Lot(
            id=lot_id,
            line=line.text,
            food=food.id,
            grams_low=max(_LEAST_GRAMS, round(span.low, 1)),
            grams=max(_LEAST_GRAMS, round(span.typical, 1)),
            grams_high=max(_LEAST_GRAMS, round(span.high, 1)),
            place=place,
            opened=_is_opened(line, part.amount),
            dates=tuple(LotDate(kind=dated.kind, on=dated.on, assumed=dated.assumed) for dated in dates),
            **urgency._asdict(),
            condition=condition,
            to_bin=line.to_bin,
            owner=line.owner,
            owner_agrees=line.owner_agrees,
            kept_for=line.kept_for,
        )


def _match(foods: tuple[Food, ...], outcome: str, tables: Tables, candidates: tuple[Candidate, ...] = ()) -> Match:
    food = foods[0] if foods else None
    score = 100.0 if food else (candidates[0].score if candidates else 0.0)
    unique = tuple({one.food: one for one in reversed(candidates)}.values())[::-1]
    return Match(outcome, food, food.name if food else None, score, unique)  # type: ignore[arg-type]


def _is_opened(line: LineRead, amount: Amount) -> bool:
    part = amount.grams is None and amount.number.typical < 1
    return part or any(dated.kind == "opened" for dated in line.dates)


def _usual_place(food: Food, line: LineRead) -> Place:
    if food.state == "frozen":
        return "freezer"
    if food.state in COOKED_STATES:
        return "fridge"
    shelf = food.is_staple or food.kind in _CUPBOARD_KINDS or food.state in _CUPBOARD_STATES
    return "cupboard" if shelf and not any(dated.kind == "opened" for dated in line.dates) else "fridge"
