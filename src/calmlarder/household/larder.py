"""Lines that become lots, and lots that change: kept, written anew, moved, ended. Each change is one action."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from calmlarder.household.booking import move
from calmlarder.household.challenge_stopped_by_sign import stop_for_sign
from calmlarder.household.household import Household
from calmlarder.household.kept_lots import KeptLot, changed_meanwhile, kept, parked, still_as_seen
from calmlarder.household.signs_in_lines import signs_in
from calmlarder.intake.eaten import ME
from calmlarder.larder.freezing import frozen, thawed, why_not_frozen, why_not_thawed
from calmlarder.larder.lot import Lot
from calmlarder.larder.to_answer import UNANSWERED, Answers, ToAnswer
from calmlarder.problems import CannotGoOn, Problem

if TYPE_CHECKING:
    from calmlarder.larder.meaning import Reading

Place = Literal["freezer", "fridge"]


def lots_to_cook(household: Household) -> list[Lot]:
    """The kept lots as they stand today. Raises CannotGoOn when there are none."""
    lots = [one.lot for one in household.lots()]
    if not lots and household.to_answer():
        remedy = "`calmlarder larder list` shows them on top; `calmlarder larder answer N CHOICE` answers one"
        raise CannotGoOn([Problem(where="the larder", what="holds only lines that wait to be answered", remedy=remedy)])
    if not lots:
        remedy = '`calmlarder larder add "firm tofu 280g, use by friday"`, or give a list with --larder FILE'
        raise CannotGoOn([Problem(where="the larder", what="nothing is in it yet", remedy=remedy)])
    return lots


def clear(readings: "Sequence[Reading]", source: str) -> tuple[list[Lot], list[Problem]]:
    """Lots of the lines that are clear, and for each other line what to write."""
    lots: list[Lot] = []
    problems: list[Problem] = []
    for reading in readings:
        if reading.gone:
            continue
        if reading.lots:
            lots += reading.lots
        elif reading.problem is not None:
            problems.append(reading.problem)
        else:
            names = " or ".join(f"`{candidate.name}`" for candidate in reading.candidates)
            asked = reading.question or ("may be several foods" if names else "is no food of the tables")
            what = f"`{reading.text}` {asked}"
            remedy = f"write {names}" if names else "use another name"
            problems.append(Problem(where=source, what=what, remedy=remedy))
            lots += reading.standing
    return lots, problems


class Kept(NamedTuple):
    """What became of lines: lots, lines that stay to be answered, and what is wrong with those that cannot be kept."""

    lots: list[KeptLot]
    asked: list[ToAnswer]
    problems: list[Problem]


def keep_lines(household: Household, readings: "Sequence[Reading]") -> Kept:
    """Every line that says something, as one action: its lots, or the line itself where something must be answered.

    Lines that cannot be read at all are given back with their reason; one that tells of a warning sign with its
    answer, and no challenge goes on.
    """
    if any(map(signs_in, readings)):
        stop_for_sign(household, ME)
    always = {one.lot.food for one in household.lots() if one.lot.always}
    contents = [
        content
        for reading in readings
        for content in contents_of(reading, household.today)
        if not (content.get("always") and content["food"] in always)
    ]
    problems = [reading.problem for reading in readings if reading.problem is not None]
    problems += _taken_back(household, readings)
    if not contents:
        return Kept([], [], problems)
    words = f"add {said_of(household, contents[0])}" if len(contents) == 1 else f"add {_many(contents)}"
    ids = household.store.add_lots(contents, words)
    return _standing(household, ids, problems)


def said_of(household: Household, content: Mapping[str, Any]) -> str:
    """The food of what the store keeps of a lot; of a line that waits to be answered the words it is about."""
    if "asked" in content:
        return ToAnswer.model_validate({**content["asked"], "where": ""}).named
    return household.name_of(content["food"])


def _taken_back(household: Household, readings: "Sequence[Reading]") -> list[Problem]:
    """What is no longer always there goes out of the list; a problem for what was not said to be there."""
    problems: list[Problem] = []
    for reading in readings:
        lots = [one for one in household.lots() if one.lot.always and one.lot.food in reading.gone]
        if lots:
            names = " and ".join(household.name_of(one.lot.food) for one in lots)
            household.store.change_lots(dict.fromkeys(one.id for one in lots), f"{names}, no longer always there")
        elif reading.gone:
            what = f"{' and '.join(reading.names)}: not among what is always there"
            problems.append(Problem(where=reading.where, what=what, remedy="`calmlarder larder list` shows the list"))
    return problems


def contents_of(reading: "Reading", noted: date, answers: Answers = UNANSWERED) -> list[dict[str, Any]]:
    """What the store keeps of a line typed on a day: what must be answered of it, then its lots."""
    asked = reading.to_answer
    if reading.gone:
        return []
    if asked is None:
        return [kept(lot) for lot in reading.lots]
    answers = answers.model_copy(update={"only": reading.only}) if reading.only else answers
    return [parked(asked, noted, answers), *(kept(lot) for lot in reading.standing)]


def _standing(household: Household, ids: Sequence[int], problems: Sequence[Problem] = ()) -> Kept:
    lots = {one.id: one for one in household.lots()}
    asked = {one.id: one for one in household.to_answer()}
    return Kept([lots[one] for one in ids if one in lots], [asked[one] for one in ids if one in asked], list(problems))


class Seen(NamedTuple):
    """A lot, or a line that waits, by its number, and what was kept of it when somebody began to write it anew."""

    id: int
    content: dict[str, Any] | None


def as_seen(household: Household, lot_id: int) -> Seen:
    """What is kept under a number now; no content where nothing that can be read is."""
    rows = household.store.lots()
    return Seen(lot_id, next((row.content for row in rows if row.id == lot_id), None))


def write_anew(household: Household, seen: Seen, reading: "Reading") -> Kept:
    """A lot becomes what a line says: its first lot, or the line to be answered; its other lots join the larder.

    Raises CannotGoOn for a lot that is not there or changed since it was seen, or a line that cannot be read.
    """
    if reading.problem is not None:
        raise CannotGoOn([reading.problem])
    if reading.gone:
        raise CannotGoOn([Problem(where=reading.where, what="names nothing to keep", remedy="write the line again")])
    first, *others = contents_of(reading, household.today)
    with household.store.transaction():
        now = as_seen(household, seen.id)
        if now.content is not None and now != seen:
            raise changed_meanwhile(seen.id, now.content.get("line", ""))
        first = {**first, **_label_kept(now.content, first)}
        household.store.change_lots({seen.id: first}, f"edit {said_of(household, first)}", new=others)
    return _standing(household, [seen.id])


def _label_kept(before: Mapping[str, Any] | None, now: Mapping[str, Any]) -> dict[str, Any]:
    """The label of a lot that is still of the same food, as its packet is: only its line was written again."""
    if before is None or before.get("food") != now.get("food") or not before.get("label"):
        return {}
    return {name: before[name] for name in ("label", "label_allergens", "label_triggers") if name in before}


def remove_mistakes(household: Household, ones: Sequence[KeptLot]) -> None:
    """Lots that were typed by mistake: nothing was eaten or thrown."""
    words = household.name_of(ones[0].lot.food) if len(ones) == 1 else _many(ones)
    household.store.change_lots(dict.fromkeys((one.id for one in ones), None), f"remove {words}, typed by mistake")


def numbered(household: Household, ids: Sequence[int]) -> tuple[list[KeptLot], list[int]]:
    """The lots of these numbers, and the numbers of which no lot can be read, each once."""
    by_id = {one.id: one for one in household.lots()}
    ids = list(dict.fromkeys(ids))
    return [by_id[lot_id] for lot_id in ids if lot_id in by_id], [lot_id for lot_id in ids if lot_id not in by_id]


def move_to(household: Household, place: Place, ones: Sequence[KeptLot], grams: float | None = None) -> None:
    """Lots into the freezer or out of it, or `grams` of the one.

    Raises CannotGoOn for a lot that is there already, must stay as it is or changed since it was read; then none is
    changed.
    """
    moved, why_not, words = _ways(household, place)
    problems = [
        Problem(where=f"item {one.id}", what=why, remedy="`calmlarder larder list` shows the numbers")
        for one in ones
        if (why := why_not(one.lot)) is not None
    ]
    if problems:
        raise CannotGoOn(problems)
    if len(ones) == 1:
        move(household, ones[0], moved, words, grams)
        return
    with household.store.transaction():
        still_as_seen(household.store, ones)
        household.store.change_lots({one.id: kept(moved(one.lot)) for one in ones}, f"{words} {_many(ones)}")


def _ways(household: Household, place: Place) -> tuple[Callable[[Lot], Lot], Callable[[Lot], str | None], str]:
    """How a lot comes there, why it cannot, and the word for it."""
    if place == "freezer":
        return lambda lot: frozen(lot, household.today), why_not_frozen, "freeze"
    return (
        lambda lot: thawed(lot, household.today),
        lambda lot: why_not_thawed(lot) if lot.place == "freezer" else "it is not in the freezer",
        "thaw",
    )


def remove_unread(household: Household, ids: Sequence[int]) -> None:
    """Lots whose food the tables no longer know go out without an entry. Raises CannotGoOn for one that never was."""
    household.store.change_lots(dict.fromkeys(ids), f"remove {_many(ids)}")


def _many(lots: Sequence[object]) -> str:
    return f"{len(lots)} item{'' if len(lots) == 1 else 's'}"
