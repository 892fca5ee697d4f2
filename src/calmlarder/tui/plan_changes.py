"""What a key changes of a plan: which meals are looked for again, and what came of it, in words."""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.plan.sittings import Key, key_of
from calmlarder.tui.plan_view import kind_of

if TYPE_CHECKING:
    from calmlarder.plan.planned import SittingPlanned

_NOT_BESIDE = "no other dish fits there beside the other meals"
FREED = f"{_NOT_BESIDE}: they may change, too"
_STAYS = f"{_NOT_BESIDE}, so it stays; x lets them change, too"
_EMPTY = "nothing else fits there: Ctrl+Z brings the plan of before back"
_MOST_NAMED = 3


class Change(NamedTuple):
    """Meals that are to have another dish, as the plan was before; `frees` whether the others may change for it."""

    meals: frozenset[Key]
    before: "Mapping[Key, SittingPlanned]"
    frees: bool
    is_freed: bool = False


def by_key(sittings: "Sequence[SittingPlanned]") -> "dict[Key, SittingPlanned]":
    """The meals of a plan by day and kind."""
    return {key_of(one.at, one.sitting): one for one in sittings}


def left_empty(change: Change, sittings: "Sequence[SittingPlanned]") -> bool:
    """Whether a meal that had a dish has none any more."""
    now = by_key(sittings)
    return any(
        key in now and now[key].dinner is None and key in change.before and change.before[key].dinner is not None
        for key in change.meals
    )


def changed_meals(change: Change, sittings: "Sequence[SittingPlanned]") -> frozenset[int]:
    """The places of meals that are not what they were."""
    return _others(change.before, sittings)


def other_meals(before: "Sequence[SittingPlanned]", sittings: "Sequence[SittingPlanned]") -> frozenset[int]:
    """The places of meals that are not what they are in a plan of the same meals."""
    return _others(by_key(before), sittings)


def _others(before: "Mapping[Key, SittingPlanned]", sittings: "Sequence[SittingPlanned]") -> frozenset[int]:
    return frozenset(
        n for n, one in enumerate(sittings)
        if (key := key_of(one.at, one.sitting)) in before and _is_other(before[key], one)
    )  # fmt: skip


def _is_other(was: "SittingPlanned", one: "SittingPlanned") -> bool:
    if was.dinner is None or one.dinner is None:
        return was.dinner is not one.dinner
    return (was.dinner.pattern, was.dinner.uses) != (one.dinner.pattern, one.dinner.uses)


def how_changed(change: Change, one: "SittingPlanned") -> str:
    """What is another in a meal that was not to change: its amounts, or its dish; empty of one that was."""
    key = key_of(one.at, one.sitting)
    was = change.before.get(key)
    if key in change.meals or was is None or not _is_other(was, one):
        return ""
    if one.dinner is None or was.dinner is None or one.dinner.pattern != was.dinner.pattern:
        return f"was {was.dinner.title}" if was.dinner is not None else "had no dish before"
    before = {(use.lot, use.slot): use.grams for use in was.dinner.uses}
    now = {(use.lot, use.slot): use.grams for use in one.dinner.uses}
    names = {(use.lot, use.slot): use.name for use in (*was.dinner.uses, *one.dinner.uses)}
    most_first = sorted(names, key=lambda use: -abs(now.get(use, 0) - before.get(use, 0)))
    told = [
        f"{names[use]} {now.get(use, 0)} g, was {before.get(use, 0)} g"
        for use in most_first
        if now.get(use, 0) != before.get(use, 0)
    ]
    more = f" and {len(told) - _MOST_NAMED} more" if len(told) > _MOST_NAMED else ""
    return f"{', '.join(told[:_MOST_NAMED])}{more}"


def _named(change: Change, one: "SittingPlanned") -> str:
    how = how_changed(change, one)
    return f"{one.at:%a} {kind_of(one)}{f' ({how})' if how else ''}"


def words_of(change: Change, sittings: "Sequence[SittingPlanned]") -> str:
    """What came of a change, in a line."""
    if left_empty(change, sittings):
        return _EMPTY if change.frees else _STAYS
    places = sorted(changed_meals(change, sittings))
    rest = len(sittings) - len(places)
    others = f"; the other {rest} stay" if rest > 1 else "; the other one stays" if rest else ""
    named = [_named(change, sittings[n]) for n in places[:_MOST_NAMED]]
    more = f" and {len(places) - _MOST_NAMED} more" if len(places) > _MOST_NAMED else ""
    return f"changed: {'; '.join(named)}{more}{others}" if places else "nothing else was found: all meals stay"
