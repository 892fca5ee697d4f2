"""A dinner is cooked: its lots leave the larder, each share is logged and the rest boxed, as one action."""

import math
from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import TYPE_CHECKING, Any, NamedTuple

from calmlarder.household.booking import Boxing, Taken, take
from calmlarder.household.challenge_dose import keep_doses
from calmlarder.household.household import Household
from calmlarder.household.kept_lots import KeptLot
from calmlarder.intake.eaten import ME, Eaten
from calmlarder.larder.lot import Lot, why_unfit, with_labels_of
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.documents import ASKED, COOKED_LAST, PROPOSED

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.compose.dinner import Dinner
    from calmlarder.tables.book import Tables


HALF = 0.5  # of a portion, into a box


class Took(NamedTuple):
    """What one lot gave, by the name of its food."""

    name: str
    grams: float


class Cooked(NamedTuple):
    """What was logged, where somebody ate; what was boxed, and how that keeps or why it must not be boxed.

    `boxes` portions were kept, HALF for half of a dish; `took` is what left the larder.
    """

    dinner: "Dinner"
    eaten: Eaten | None
    boxed: Lot | None
    about_boxes: str
    by_person: tuple[Eaten, ...] = ()  # where those who ate are named
    boxes: float = 0
    took: tuple[Took, ...] = ()


def cookable_dinners(composed: "Composed") -> "tuple[Dinner, ...]":
    """What may be cooked: the dinners, else the nearest one where nothing has to be bought for it first."""
    near = composed.nearest
    if composed.dinners or near is None or any(give.what == "buy" for give in near.gives):
        return composed.dinners
    return (near.dinner,)


def propose(household: Household, dinners: "Sequence[Dinner]") -> None:
    """Remember what was proposed today, so that it can be cooked by its number, where the home can be written."""
    note = {"day": household.today.isoformat(), "dinners": [dinner.model_dump(mode="json") for dinner in dinners]}
    household.note(PROPOSED, note)


def proposed(household: Household, number: int) -> "Dinner":
    """The dinner that was proposed today under a number, from 1. Raises CannotGoOn where there is none."""
    from pydantic import ValidationError

    from calmlarder.compose.dinner import Dinner

    kept: Any = household.noted(PROPOSED)
    note = kept if isinstance(kept, dict) else {}
    dinners = note.get("dinners", []) if note.get("day") == household.today.isoformat() else []
    if not 1 <= number <= len(dinners):
        what = f"`tonight` proposed no dinner {number} today" if dinners else "`tonight` proposed nothing today"
        raise CannotGoOn([Problem(where="cooked", what=what, remedy="ask `calmlarder tonight` first, then cook it")])
    try:
        return Dinner.model_validate(dinners[number - 1])
    except ValidationError:
        what = "an earlier calmlarder proposed it, in another form"
        raise CannotGoOn([Problem(where="cooked", what=what, remedy="ask `calmlarder tonight` again")]) from None


def is_proposed(household: Household) -> bool:
    """Whether a dinner that was proposed can be cooked by its number."""
    return household.noted(PROPOSED) is not None


class Boxable(NamedTuple):
    """How many portions of a dinner may go into boxes, whether half of it may, and why none may where none may.

    `mine`: of a table of names my own portion may, too (`my_portion_kept`).
    """

    most: int
    halves: bool
    why_not: str = ""
    mine: bool = False


def boxable(household: Household, dinner: "Dinner") -> Boxable:
    """What may be boxed of a dinner. Where people are named, the portions that no name is on, if all are alike."""
    from calmlarder.compose.boxed import why_not_boxed
    from calmlarder.patterns.load import shipped_patterns

    pattern = next(one for one in shipped_patterns() if one.id == dinner.pattern)
    never = why_not_boxed(dinner, pattern, household.tables)
    if never:
        return Boxable(0, False, never)
    if not dinner.portions:
        return Boxable(dinner.people, dinner.people == 1 and not dinner.doses)
    guests = sum(one.is_guest for one in dinner.portions)
    mine = not dinner.doses and any(one.who == ME and not one.is_guest for one in dinner.portions)
    is_alike = not dinner.apart and len({one.appetite for one in dinner.portions}) == 1
    if not guests:
        why = "every portion is somebody's by name: cook for one guest more to have one for a box"
        return Boxable(0, False, why, mine and is_alike)
    if not is_alike:
        return Boxable(0, False, "the portions are not alike: cook for a number of people to have some for boxes")
    return Boxable(guests, False, mine=mine)


def my_portion_kept(dinner: "Dinner") -> "Dinner":
    """The dinner with my portion as nobody's: it may be boxed, and is not logged as eaten now."""
    portions = tuple(one.model_copy(update={"is_guest": True}) if one.who == ME else one for one in dinner.portions)
    return dinner.model_copy(update={"portions": portions})


def cook(household: Household, dinner: "Dinner", weighed: Mapping[str, int], boxes: float, at: datetime) -> Cooked:
    """Take the dinner out of the larder, with the grams the scale showed by lot id; `boxes` portions are kept.

    They are whole ones, or HALF of a dish that may be halved.

    What is there is read in the transaction that takes it out: said in two windows at once, it is cooked once.
    Raises CannotGoOn for a lot that is gone or changed, or for more boxes than portions.
    """
    from calmlarder.compose.boxed import InBoxes, box_up
    from calmlarder.compose.cooked import dose_eaten, share_eaten, shares_eaten
    from calmlarder.patterns.load import shipped_patterns

    served, kept = _served(household, dinner, boxes)
    with household.store.as_one(f"cook {dinner.title}"):
        lots = household.lots()
        tables, eaters = household.tables, served.people - int(kept)
        _all_there(dinner, lots)
        _enough_there(dinner, lots, weighed)
        entry = share_eaten(served, weighed, at, tables, eaters) if eaters else None
        boxed, about = None, ""
        if boxes:
            pattern = next(one for one in shipped_patterns() if one.id == dinner.pattern)
            boxed, about = box_up(served, weighed, InBoxes(int(kept), household.today), pattern, tables)
            if boxed is not None:
                used = {use.lot for use in dinner.uses}
                boxed = with_labels_of(boxed, [one.lot for one in lots if one.lot.id in used])
        uses = {use.lot: weighed.get(use.lot, use.grams) for use in dinner.uses}
        for part in dinner.apart:
            uses[part.lot] = uses.get(part.lot, 0) + part.grams
        entries: tuple[Eaten, ...] = () if entry is None else (entry,)
        if dinner.portions:
            entries = shares_eaten(dinner, weighed, at, tables)
        for dose in dinner.doses:
            if not dose.in_dish:
                entries = (*entries, dose_eaten(dose, at, tables))
                there = [one.lot for one in lots if one.lot.food == dose.food and _holds(one.lot, dose.grams)]
                uses |= {lot.id: uses.get(lot.id, 0) + math.ceil(dose.grams) for lot in there[:1]}
        keep_doses(household, dinner.doses, at)
        take(household, lots, Taken(dinner.title, uses, entries, Boxing(boxed, kept / served.people)))
        household.store.remember(COOKED_LAST, {"dinners": [dinner.model_dump(mode="json")]})
    by_person = entries if dinner.portions else ()
    return Cooked(dinner, entry, boxed, about, by_person, boxes if boxed is not None else 0, _took(tables, lots, uses))


def _took(tables: "Tables", lots: Sequence[KeptLot], uses: Mapping[str, int]) -> tuple[Took, ...]:
    """What left the larder; what is always there stays."""
    taken = [(one.lot, uses[one.lot.id]) for one in lots if uses.get(one.lot.id) and not one.lot.always]
    return tuple(Took(tables.food_by_id[lot.food].name, min(grams, round(lot.grams))) for lot, grams in taken)


def cook_asked(
    household: Household, dinner: "Dinner", weighed: Mapping[str, int], boxes: float, at: datetime
) -> Cooked:
    """The same with the dinner that was asked for this evening: that is over, until the cooking is undone."""
    with household.store.as_one(f"cook {dinner.title}"):
        done = cook(household, dinner, weighed, boxes, at)
        household.store.forget_until_undone(ASKED)
    return done


def _served(household: Household, dinner: "Dinner", boxes: float) -> "tuple[Dinner, float]":
    """The dinner in as many equal parts as it goes, and how many of them are kept.

    What cannot be boxed at all is cooked without boxes, which is said. Raises CannotGoOn for more than may be.
    """
    may = boxable(household, dinner)
    if boxes == HALF and may.halves:
        return dinner.model_copy(update={"people": 2}), 1
    if boxes and dinner.portions and not may.most:
        what, _, remedy = may.why_not.partition(": ")
        raise CannotGoOn([Problem(where="boxes", what=what, remedy=remedy)])
    most = may.most if dinner.portions else dinner.people
    if not 0 <= boxes <= most or boxes != int(boxes):
        remedy = f"{most} of its {dinner.people} can go into boxes: give 0 to {most}"
        raise CannotGoOn([Problem(where="boxes", what=f"{boxes} portions are out of range", remedy=remedy)])
    return dinner, boxes


def _enough_there(dinner: "Dinner", lots: Sequence[KeptLot], weighed: Mapping[str, int]) -> None:
    """No lot gives more than it holds since another window took of it, unless the scale showed so."""
    takes: dict[str, int] = {}
    for lot, grams in [(one.lot, one.grams) for one in dinner.uses] + [(one.lot, one.grams) for one in dinner.apart]:
        takes[lot] = takes.get(lot, 0) + grams
    short = [one.lot for one in lots if one.lot.id not in weighed and one.lot.grams + 1 <= takes.get(one.lot.id, 0)]
    if short:
        raise CannotGoOn(
            Problem(
                where="the larder",
                what=f"`{one.line}` holds {one.grams:g} g by now, and the dish takes {takes[one.id]} g",
                remedy=f"say what went in, `--weighed {one.id}={one.grams:.0f}`, or ask `calmlarder tonight` again",
            )
            for one in short
        )


def _holds(lot: Lot, grams: float) -> bool:
    return lot.grams >= grams and why_unfit(lot) is None


def _all_there(dinner: "Dinner", lots: Sequence[KeptLot]) -> None:
    """Nothing is taken out that is no longer there."""
    there = {(one.lot.id, one.lot.food) for one in lots}
    taken = [(one.lot, one.food, one.line) for one in dinner.uses]
    taken += [(one.lot, one.food, one.line) for one in dinner.apart]
    gone = [line for lot, food, line in taken if (lot, food) not in there]
    if gone:
        remedy = "ask `calmlarder tonight` again"
        raise CannotGoOn(Problem(where="the larder", what=f"`{line}` is gone", remedy=remedy) for line in gone)
