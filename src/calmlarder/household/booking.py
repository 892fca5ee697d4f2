"""Whatever leaves a lot is booked in the action that takes it out: as eaten, given or thrown, and logged once.

Every gram that came in is in a lot, in the ledger or in a box.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date, timedelta
from typing import Any, NamedTuple

from calmlarder.compose.weights import URGENT_DAYS
from calmlarder.history.eaten_up import LOOK_BACK_DAYS, Before, Eaters, at_one_sitting, eaten_up
from calmlarder.history.ended import Ended, Logged
from calmlarder.household.household import Household
from calmlarder.household.kept_lots import KeptLot, kept, still_as_seen
from calmlarder.household.settings import people_of
from calmlarder.intake.eaten import EVERYONE, ME, Eaten
from calmlarder.larder.lot import CRUMB_GRAMS, Lot, lot_line, why_unfit
from calmlarder.larder.opening import opened_by_use
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.documents import AT_STOVE, PROPOSED
from calmlarder.store.logs import KeptEaten, content_of, ended, entries
from calmlarder.store.store import Store
from calmlarder.tables.vocabulary import How, Why


class Boxing(NamedTuple):
    """What goes into boxes, and which share of the dish it is, 0 to 1."""

    lot: Lot | None
    share: float


class Taken(NamedTuple):
    """What a dinner takes: grams by lot id, the shares that were eaten, and what goes into boxes."""

    title: str
    uses: Mapping[str, int]
    entries: tuple[Eaten, ...]
    boxing: Boxing


class Ending(NamedTuple):
    """What became of lots, or of `grams` of each; `eaters` of what was eaten, None where no log is asked for."""

    how: How = "eaten"
    why: Why | None = None
    grams: float | None = None
    eaters: Eaters | None = None


def take(household: Household, lots: Sequence[KeptLot], taken: Taken) -> None:
    """Take the grams out of the lots, log the shares that were eaten, and keep the boxes, as one action.

    What was proposed before, or stands at the stove, rests on a larder that is no more: it is forgotten with the same
    action, and what was proposed is there again where that is undone. Raises CannotGoOn where a lot changed since it
    was read.
    """
    store, boxing = household.store, taken.boxing
    left = used_up(household, lots, taken.uses)
    with store.as_one(f"cook {taken.title}"):
        still_as_seen(store, [one for one in lots if one.id in left])
        store.change_lots(
            left,
            f"cook {taken.title}",
            eaten=[content_of(entry) for entry in taken.entries],
            ended=dinner_took(household, lots, left, boxing.share if boxing.lot is not None else 0.0),
            new=[] if boxing.lot is None else [kept(boxing.lot)],
        )
        store.forget_until_undone(PROPOSED)
        store.remember(AT_STOVE, None)


def eat_box(household: Household, entry: Eaten, lots: Sequence[KeptLot]) -> int:
    """One box of the dish that the entry names is eaten; the entry's number.

    Raises CannotGoOn for a box that is not safe to eat.
    """
    mine = [one for one in lots if one.lot.food == entry.food][:1]
    unfit = next((why for one in mine if (why := why_unfit(one.lot))), None)
    if unfit:
        remedy = "throw it away: `calmlarder larder remove`"
        raise CannotGoOn([Problem(where=entry.title, what=unfit, remedy=remedy)])
    left = used_up(household, mine, {one.lot.id: round(entry.grams) for one in mine})
    ended = dinner_took(household, mine, left, logged=(Logged(who=entry.who, grams=entry.grams),))
    with household.store.transaction():
        still_as_seen(household.store, mine)
        return household.store.change_lots(left, f"ate {entry.text}", eaten=[content_of(entry)], ended=ended)[0]


def end(household: Household, lots: Sequence[KeptLot], ending: Ending) -> list[KeptEaten]:
    """Take lots out, or so many grams of each, and log it for those who ate, as one action; the new entries.

    What the log holds already is not logged again. Raises CannotGoOn for more than there is, or for a lot that changed
    since it was read; then nothing ends.
    """
    store, today, eaters = household.store, household.today, ending.eaters
    left, ends = _ending(household, lots, ending)
    logged: list[Eaten] = []
    with store.transaction():
        still_as_seen(store, lots)
        eaten, ended_before = log_and_ledger(store, today) if eaters is not None else ([], [])
        for number, one in enumerate(lots if eaters is not None else ()):
            assert eaters is not None
            before = Before(today, [*eaten, *logged], [*ended_before, *ends[:number]])
            found = eaten_up(one.lot, ends[number].grams, eaters, before, household.tables)
            ends[number] = ends[number].model_copy(update={"logged": found.logged})
            logged += found.entries
        words = f"{ending.how} {', '.join(_said_of_end(entry) for entry in ends)}"
        ids = store.change_lots(
            left, words, eaten=[content_of(one) for one in logged],
            ended=[entry.model_dump(mode="json") for entry in ends],
        )  # fmt: skip
    return [KeptEaten(number, one) for number, one in zip(ids, logged, strict=True)]


def _said_of_end(entry: Ended) -> str:
    """The food, and how much of it where some stays."""
    return entry.title if entry.grams >= entry.of_grams else f"{entry.grams:g} g of {entry.title}"


def log_and_ledger(store: Store, on: date) -> tuple[list[Eaten], list[Ended]]:
    """Both over the days in which something logged by itself may be of a lot that ends on a day."""
    since = on - timedelta(days=LOOK_BACK_DAYS)
    return [one for _, one in entries(store, since.isoformat())], ended(store, since)


def _ending(
    household: Household, lots: Sequence[KeptLot], ending: Ending
) -> tuple[dict[int, dict[str, Any] | None], list[Ended]]:
    """What is left of each lot, and the entries of the ledger in their order."""
    left: dict[int, dict[str, Any] | None] = {}
    entries = []
    for one in lots:
        taken = one.lot.grams if ending.grams is None or spoils_whole(household, one, ending) else ending.grams
        if not 0 < taken <= one.lot.grams:
            remedy = f"there are {one.lot.grams:g} g of it: give more than 0 and no more than that"
            raise CannotGoOn([Problem(where=f"item {one.id}", what=f"{taken:g} g cannot end", remedy=remedy)])
        left[one.id] = smaller(household, one.lot, one.lot.grams - taken)
        entries.append(_entry(household, one, left[one.id], ending))
    return left, entries


def dinner_took(
    household: Household,
    lots: Iterable[KeptLot],
    left: Mapping[int, dict[str, Any] | None],
    boxed: float = 0.0,
    logged: tuple[Logged, ...] = (),
) -> list[dict[str, Any]]:
    """Entries, as the store keeps them, for what a proposed dinner took of its lots.

    `boxed` is the share of the dish that went into boxes, 0 to 1: that part has not ended. `logged` is what the log
    holds of it under the food's own name.
    """
    found = []
    for one in lots:
        if one.id in left:
            whole = _entry(household, one, left[one.id], Ending())
            urgent = one.lot.days_left is not None and 0 <= one.lot.days_left <= URGENT_DAYS
            share = round(whole.grams * boxed, 1)
            parts = {"grams": round(whole.grams - share, 4), "boxed": share, "rescued": urgent, "logged": logged}
            found.append(whole.model_copy(update=parts).model_dump(mode="json"))
    return found


def spoils_whole(household: Household, one: KeptLot, ending: Ending) -> bool:
    """Whether all of a lot goes with a part that is thrown away as mouldy; fresh pieces lie apart, each by itself.

    USDA FSIS, Molds on Food: what is soft, cooked or in a jar is thrown away whole. Recalled.
    """
    food = household.tables.food_by_id[one.lot.food]
    apart = food.state == "raw" and food.kind in _IN_PIECES and not one.lot.opened
    return ending.how == "thrown" and ending.why == "mouldy" and not apart


def _entry(household: Household, one: KeptLot, rest: Mapping[str, Any] | None, ending: Ending) -> Ended:
    """What the lot lost, so that whatever came in is still there or in the ledger."""
    lot, food = one.lot, household.tables.food_by_id[one.lot.food]
    after = 0.0 if rest is None else float(rest["grams"])
    return Ended(
        on=household.today, lot=one.id, food=food.id, title=food.name, portion_g=float(food.portion_g), line=lot.line,
        of_grams=lot.grams, grams=round(lot.grams - after, 4), how=ending.how,
        why=ending.why if ending.how == "thrown" else None,
    )  # fmt: skip


def move(
    household: Household, one: KeptLot, moved: Callable[[Lot], Lot], words: str, grams: float | None = None
) -> None:
    """A lot in another place, or `grams` of it as a lot of its own, as one action; a crumb goes with the rest."""
    lot, store = one.lot, household.store
    rest = None if grams is None else smaller(household, lot, lot.grams - grams)
    if rest is None:
        with store.transaction():
            still_as_seen(store, [one])
            store.change_lots({one.id: kept(moved(lot))}, f"{words} {household.name_of(lot.food)}")
        return
    amounts = {name: round(getattr(lot, name) - rest[name], 1) for name in ("grams_low", "grams", "grams_high")}
    part = moved(lot.model_copy(update=amounts))
    # Words of its own: those of the whole would say too much.
    part = part.model_copy(update={"line": lot_line(part, household.tables)})
    with store.transaction():
        still_as_seen(store, [one])
        words = f"{words} {part.grams:g} g of {household.name_of(lot.food)}"
        store.change_lots({one.id: rest}, words, new=[kept(part)])


def used_up(household: Household, lots: Sequence[KeptLot], uses: Mapping[str, int]) -> dict[int, dict[str, Any] | None]:
    """What is left of each lot that was cooked from, of grams by lot id; None where it is used up.

    What is always there stays as it is.
    """
    taken = (one for one in lots if one.lot.id in uses and not one.lot.always)
    return {one.id: smaller(household, one.lot, one.lot.grams - uses[one.lot.id]) for one in taken}


def smaller(household: Household, lot: Lot, rest: float) -> dict[str, Any] | None:
    """What the store keeps of a lot of which `rest` grams are left, and is open now; None for a crumb."""
    if rest < CRUMB_GRAMS:
        return None
    share = rest / lot.grams
    less = {
        "grams_low": round(lot.grams_low * share, 1),
        "grams": round(rest, 1),
        "grams_high": round(lot.grams_high * share, 1),
    }
    left = lot.model_copy(update=less)
    return kept(opened_by_use(left, rest, household.today, household.tables))


# Kinds of which one piece is mouldy and the next is not.
_IN_PIECES = frozenset(
    {
        "root",
        "potato",
        "brassica",
        "fruit",
        "fruit-vegetable",
        "citrus",
        "pepper",
        "tomato",
        "squash",
        "allium",
        "leaf",
        "egg",
    }
)

NOBODY = "nobody here, or it is in the log already"


class Answer(NamedTuple):
    """In words, and who it means."""

    words: str
    eaters: Eaters


def answers(one: KeptLot, household: Household, grams: float | None = None) -> list[Answer]:
    """What may be said of a lot, or `grams` of it; where that is no sitting's amount, first that nobody ate it so."""
    held, taken = household.settled(), one.lot.grams if grams is None else grams
    before = Before(household.today, *log_and_ledger(household.store, household.today))
    here = [one.name for one in people_of(held)]
    names = dict.fromkeys([ME, *here, *(own.who for own in held.own), *(entry.who for entry in before.eaten)])
    asked = [(who,) for who in names if who != EVERYONE]
    if held.people > 1:
        asked.insert(1, (EVERYONE,))
    found = []
    for who in asked:
        eaters = Eaters(who=who, at=household.now(), people=held.people, sure=held.tolerance)
        each = eaters.shares(taken)[who[0]]
        new = sum(entry.grams for entry in eaten_up(one.lot, taken, eaters, before, household.tables).entries)
        found.append(Answer(_words(who[0], each, new, held.people), eaters))
    nobody = Answer(NOBODY, Eaters(who=(), at=household.now()))
    sitting = at_one_sitting(one.lot, taken, held.people, household.tables)
    return [*found, nobody] if sitting else [nobody, *found]


def _words(who: str, each: float, new: float, people: int) -> str:
    shared = f"{EVERYONE}, shared by {people}" if who == EVERYONE else who
    already = each - new
    return f"{shared}: {new:g} g" + (f", as {already:g} g are in the log already" if already > 1 else "")
