"""Lines that wait to be answered: what answers them, what that makes of them, and what words mean in this house."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calmlarder.household.household import Household
from calmlarder.household.kept_lots import KeptLot, Parked, parked_lines
from calmlarder.household.larder import contents_of
from calmlarder.larder.grams_or_question import RIGHT
from calmlarder.larder.lot import Lot
from calmlarder.larder.meaning import Reading
from calmlarder.larder.to_answer import Answers, ToAnswer
from calmlarder.matching.names.words import plain, singular
from calmlarder.matching.part import AS_LAST_TIME, names_something
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.store import no_lot


class Answered(NamedTuple):
    """What an answer made: the lots, or what must still be answered; `words` and what they mean here from now on."""

    lots: list[KeptLot]
    asked: ToAnswer | None
    words: str
    means: tuple[str, ...]


def answer(household: Household, number: int, given: Sequence[str]) -> Answered:
    """Answer a line that waits, by the number of a choice, its words, or the name of a food, as one action.

    Several answers are several foods. What words meant is remembered. Raises CannotGoOn for a number that waits for no
    answer, and for an answer that means nothing or several foods.
    """
    waiting = parked_lines(household.store).get(number)
    if waiting is None:
        raise _not_waiting(household, number)
    answers = _with(household, waiting, given)
    reading = _read_again(household, waiting, answers)
    lots = {"lots": tuple(map(_answered, reading.lots)), "standing": tuple(map(_answered, reading.standing))}
    contents = contents_of(reading.model_copy(update=lots), waiting.noted, answers)
    learnt = {
        said: foods
        for said, foods in answers.foods.items()
        if waiting.answers.foods.get(said) != foods and names_something(said)
    }
    with household.store.as_one(f"answer {waiting.asked.named}"):
        ids = _replace(household, number, contents)
        if learnt:
            household.remember_words({**household.words(), **learnt})
    by_id = {one.id: one for one in household.lots()}
    asked = next((one for one in household.to_answer() if one.id == number), None)
    said = next(iter(learnt), "")
    return Answered([by_id[one] for one in ids if one in by_id], asked, said, learnt.get(said, ()))


def _replace(household: Household, number: int, contents: Sequence[dict[str, object]]) -> list[int]:
    """The line becomes the first of these, under its number; the others join the larder."""
    before = {row.id for row in household.store.lots()}
    household.store.change_lots({number: contents[0]}, "answer", new=contents[1:])
    return [number, *sorted({row.id for row in household.store.lots()} - before)]


def _answered(lot: Lot) -> Lot:
    """The lot without what was just said in place of being taken for granted."""
    return lot.model_copy(update={"assumed": tuple(one for one in lot.assumed if one != AS_LAST_TIME)})


def would_be(household: Household) -> list[tuple[ToAnswer, str, tuple[Lot, ...]]]:
    """For each line that waits and each of its choices the lots that it would be: what `tonight` may try."""
    found = []
    for waiting in parked_lines(household.store).values() if household.is_kept else ():
        for choice in waiting.asked.choices:
            reading = _read_again(household, waiting, _with(household, waiting, [choice]))
            if reading.lots:
                found.append((waiting.asked, choice, reading.lots))
    return found


def forget(household: Household, words: str) -> tuple[str, ...]:
    """Forget what words mean in this house; the foods they meant. Raises CannotGoOn where nothing is remembered."""
    said, known = _as_said(words), household.words()
    key = said if said in known else next((one for one in known if one == words), None)
    if key is None:
        remedy = "`calmlarder larder words` lists what is remembered"
        raise CannotGoOn([Problem(where=f"`{words}`", what="means nothing of its own here", remedy=remedy)])
    foods = known[key]
    household.store.set({"words": {one: list(food) for one, food in known.items() if one != key}}, f"forget {key}")
    return foods


def _as_said(words: str) -> str:
    return " ".join(singular(word) for word in plain(words).split())


def _with(household: Household, waiting: Parked, given: Sequence[str]) -> Answers:
    """The answers so far and this one."""
    asked, before = waiting.asked, waiting.answers
    chosen = [_chosen(asked, one) for one in given]
    if asked.about == "day":
        if chosen != [asked.choices[0]]:
            raise _no_answer(asked, given)
        return before.model_copy(update={"no_day": True})
    if asked.about == "amount":
        if len(chosen) != 1 or chosen[0] not in asked.choices:
            raise _no_answer(asked, given)
        return before.model_copy(update={"amount": "as told" if chosen[0].endswith(RIGHT) else "usual"})
    foods = tuple(_food_meant(household, asked, one) for one in chosen)
    if not foods or not asked.said:
        raise _no_answer(asked, given)
    return before.model_copy(update={"foods": {**before.foods, asked.said: foods}})


def _chosen(asked: ToAnswer, given: str) -> str:
    """The choice that a number stands for, or the words themselves."""
    if given.isdecimal() and 1 <= int(given) <= len(asked.choices):
        return asked.choices[int(given) - 1]
    return given


def _food_meant(household: Household, asked: ToAnswer, name: str) -> str:
    """The one food of a name. Raises CannotGoOn where it is none, or several."""
    named = next((food.id for food in household.plain_tables.foods if name in (food.id, food.name)), None)
    if named is not None:
        return named
    found = household.foods_meant(name)
    if len(found) != 1:
        names = " or ".join(f"`{household.name_of(food)}`" for food in found)
        what = f"`{name}` may be several foods" if found else f"`{name}` is no food of the tables"
        remedy = f"write {names}" if found else 'another name, or `calmlarder tables mine add "NAME" --from "…"` first'
        raise CannotGoOn([Problem(where=f"`{asked.text}`", what=what, remedy=remedy)])
    return found[0]


def _read_again(household: Household, waiting: Parked, answers: Answers) -> Reading:
    """The line with its answers, on the day on which it was typed: its `friday` is the friday of then."""
    reading = household.reader_of(waiting.noted).read(waiting.asked.text, waiting.asked.where, answers=answers)
    if reading is None or reading.problem is not None:
        raise _no_answer(waiting.asked, ())
    return reading


def _no_answer(asked: ToAnswer, given: Sequence[str]) -> CannotGoOn:
    choices = " or ".join(f"{number} ({choice})" for number, choice in enumerate(asked.choices, start=1))
    edit = f'`calmlarder larder edit {asked.id} "…"`'
    remedy = f"answer {choices}, or write it again: {edit}" if choices else f"write it again: {edit}"
    return CannotGoOn([Problem(where=f"`{asked.text}`", what=f"`{' '.join(given)}` does not answer it", remedy=remedy)])


def _not_waiting(household: Household, number: int) -> CannotGoOn:
    if all(row.id != number for row in household.store.lots()):
        return no_lot(number)
    remedy = "`calmlarder larder list` shows what is to be answered on top"
    return CannotGoOn([Problem(where=f"item {number}", what="waits for no answer", remedy=remedy)])


def words_in(household: Household) -> Mapping[str, tuple[str, ...]]:
    """What words mean in this house, by the names of the foods."""
    return {said: tuple(household.name_of(food) for food in foods) for said, foods in household.words().items()}
