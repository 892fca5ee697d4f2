"""From a cook's lines to lots: what each line means, what must be asked, what is not known."""

from collections.abc import Iterable
from datetime import date

from pydantic import BaseModel, ConfigDict

from calmlarder.larder.grams import grams_of
from calmlarder.larder.lot import Lot, LotDate
from calmlarder.larder.urgency import COOKED_STATES, urgency_of
from calmlarder.matching.entry import Entry, Place, read_entry, with_name
from calmlarder.matching.foods import UNKNOWN, Candidate, FoodMatcher, Match
from calmlarder.problems import Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_CUPBOARD_KINDS = frozenset({
    "flour", "starch", "oil", "acid", "spice", "sweetener", "nut", "seed", "dried-fruit", "soy-sauce",
    "sea-vegetable", "nut-butter", "potato",
})  # fmt: skip
_CUPBOARD_STATES = frozenset({"dry", "canned", "canned drained", "dried"})

_LEAST_GRAMS = 0.1  # a lot is kept to a tenth of a gram, and what is there is not nothing


class Reading(BaseModel):
    """What one line means. `lot` is there when it is matched; `problem` says why a line could not be read."""

    model_config = ConfigDict(frozen=True)

    text: str
    match: Match
    lot: Lot | None
    problem: Problem | None

    @property
    def candidates(self) -> tuple[Candidate, ...]:
        """Foods that the line may mean, best first."""
        return self.match.candidates


class LarderReader:
    """Reads lines against the tables for a given day."""

    def __init__(self, tables: Tables, today: date) -> None:
        self._tables = tables
        self._today = today
        self._matcher = FoodMatcher(tables)

    def read(self, text: str, where: str, number: int = 1) -> Reading | None:
        """One line; None for a comment or an empty line. `number` is its place in its file, for the id of its lot."""
        try:
            entry = read_entry(text, self._today, self._matcher.plain_names)
        except ValueError as error:
            problem = Problem(where=where, what=str(error), remedy="write the line again")
            return Reading(text=text[:200], match=UNKNOWN, lot=None, problem=problem)
        if entry is None:
            return None
        match = self._matcher.match(entry.words, _hints(entry))
        named = self._named_with_measure(entry, match)
        if named is not None:
            entry, match = named
        if match.food is None:
            match = match if match.candidates else self._matcher.nearly(entry.words)
            return Reading(text=entry.text, match=match, lot=None, problem=None)
        lot = self._lot(entry, match.food, f"{number}.1")
        if lot is None:
            measure = entry.amount.measure
            problem = Problem(
                where=where,
                what=f"`{measure}` says nothing about {match.food.name}",
                remedy="give grams, or add the measure to measures.csv",
            )
            return Reading(text=entry.text, match=match, lot=None, problem=problem)
        return Reading(text=entry.text, match=match, lot=lot, problem=None)

    def renamed(self, text: str, name: str) -> str:
        """A line with the chosen name for its food. Raises ValueError for a line that cannot be read."""
        return with_name(text, name, self._today, self._matcher.plain_names)

    def read_all(self, lines: Iterable[str], source: str) -> tuple[Reading, ...]:
        """Every line that says something."""
        readings = (self.read(line, f"{source}:{number}", number) for number, line in enumerate(lines, start=1))
        return tuple(reading for reading in readings if reading is not None)

    def _named_with_measure(self, entry: Entry, match: Match) -> tuple[Entry, Match] | None:
        """The line read anew where its measure word belongs to the name: `whole urad` is no piece of urad."""
        if entry.amount.measured_words is None:
            return None
        whole = self._matcher.match(entry.amount.measured_words)
        if whole.food is None or whole.score < 100 or whole.food == match.food:
            return None
        if match.food is not None and not self._matcher.is_name(entry.amount.measured_words):
            return None
        return entry._replace(amount=entry.amount._replace(measure=None)), whole

    def _lot(self, entry: Entry, food: Food, lot_id: str) -> Lot | None:
        span = grams_of(entry.amount, food, self._tables)
        if span is None:
            return None
        place = entry.place or _usual_place(food, entry)
        urgency = urgency_of(entry.dates, entry.condition, food, place, self._today, self._tables)
        return Lot(
            id=lot_id,
            line=entry.text,
            food=food.id,
            grams_low=max(_LEAST_GRAMS, round(span.low, 1)),
            grams=max(_LEAST_GRAMS, round(span.typical, 1)),
            grams_high=max(_LEAST_GRAMS, round(span.high, 1)),
            place=place,
            opened=_is_opened(entry),
            dates=tuple(LotDate(kind=dated.kind, on=dated.on) for dated in entry.dates),
            **urgency._asdict(),
            condition=entry.condition,
            to_bin=entry.to_bin,
            owner=entry.owner,
            owner_agrees=entry.owner_agrees,
        )


def _hints(entry: Entry) -> set[str]:
    hints = {entry.amount.measure} if entry.amount.measure else set()
    if any(dated.kind == "made" for dated in entry.dates):
        hints.add("cooked")
    if entry.place == "freezer":
        hints.add("frozen")
    return {hint for hint in hints if hint}


def _is_opened(entry: Entry) -> bool:
    part = entry.amount.grams is None and entry.amount.number.typical < 1
    return part or any(dated.kind == "opened" for dated in entry.dates)


def _usual_place(food: Food, entry: Entry) -> Place:
    if food.state == "frozen":
        return "freezer"
    if food.state in COOKED_STATES:
        return "fridge"
    shelf = food.is_staple or food.kind in _CUPBOARD_KINDS or food.state in _CUPBOARD_STATES
    return "cupboard" if shelf and not any(dated.kind == "opened" for dated in entry.dates) else "fridge"
