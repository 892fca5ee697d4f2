"""A kept plan after what was done of it: cooked and boxed, put into the freezer, bought."""

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from calmlarder.larder.lot import CRUMB_GRAMS, Lot

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.larder.freezing import ToFreeze
    from calmlarder.plan.planned import Planned, SittingPlanned, Wasted


def without_past(planned: "Planned", past: int, lots: Sequence[Lot], today: date) -> "Planned":
    """The meals after so many. What was to be eaten from a box of those before comes from that box, where it is there.

    Without it the meal is told as it was, and the check finds that its foods are gone.
    """

    def moved(number: int | None) -> int | None:
        return number - past if number is not None and number >= past else None

    left = []
    for one in planned.sittings[past:]:
        update: dict[str, object] = {"leftover_of": moved(one.leftover_of), "boxed_for": moved(one.boxed_for)}
        if one.leftover_of is not None and one.leftover_of < past and one.dinner is not None:
            update["from_box"] = _box_of(one.dinner, lots, (one.day - today).days)
        left.append(one.model_copy(update=update))
    return planned.model_copy(update={"sittings": tuple(left)})


def _box_of(dinner: "Dinner", lots: Sequence[Lot], days: int) -> str:
    """The id of the box of a dish that is still good in so many days; nothing where there is none."""
    boxes = (lot for lot in lots if lot.box is not None and lot.box.title == dinner.title)
    good = (lot.id for lot in boxes if lot.place == "freezer" or lot.days_left is None or lot.days_left >= days)
    return next(good, "")


def as_followed(planned: "Planned", lots: Sequence[Lot], since: date) -> "Planned":
    """Without advice that was followed since the day of the plan, or that comes too late.

    What was to be thawed out of a lot of which a part was frozen comes out of that part.
    """
    by_id = {lot.id: lot for lot in lots}
    used = {use.lot for one in planned.sittings if one.dinner for use in one.dinner.uses}
    new = [lot for lot in lots if lot.place == "freezer" and lot.id not in used and _is_frozen_since(lot, since)]
    parts: dict[str, Lot] = {}
    to_do: list[ToFreeze] = []
    for one in planned.freeze_today:
        lot, part = by_id.get(one.lot), _part_of(one, new)
        if part is not None:
            parts[one.lot] = part
        elif lot is not None and lot.place != "freezer" and (lot.days_left is None or lot.days_left >= 0):
            to_do.append(one.model_copy(update={"grams": min(one.grams, lot.grams)}))
    frozen = {one.lot: one.grams for one in planned.freeze_today if one.lot in parts}
    wasted = [left for one in planned.wasted if (left := _left_of(one, by_id, frozen)) is not None]
    bought = {lot.food for lot in lots if lot.id not in used}
    return planned.model_copy(
        update={
            "sittings": tuple(_out_of_parts(one, parts) for one in planned.sittings),
            "freeze_today": tuple(to_do),
            "wasted": tuple(wasted),
            "buy": tuple(one for one in planned.buy if one.food not in bought),
        }
    )


def _is_frozen_since(lot: Lot, since: date) -> bool:
    return any(one.kind == "frozen" and one.on is not None and one.on >= since for one in lot.dates)


def _part_of(one: "ToFreeze", new: Sequence[Lot]) -> Lot | None:
    """What was put into the freezer as it says, as a part of its lot."""
    return next((lot for lot in new if lot.food == one.food and lot.grams >= one.grams - CRUMB_GRAMS), None)


def _left_of(one: "Wasted", by_id: dict[str, Lot], frozen: dict[str, float]) -> "Wasted | None":
    """What will be left over of a lot by now; None where nothing will."""
    lot = by_id.get(one.lot)
    if lot is None or lot.place == "freezer":
        return None
    grams = min(lot.grams, one.grams - frozen.get(one.lot, 0.0))
    return one.model_copy(update={"grams": round(grams, 1)}) if grams >= CRUMB_GRAMS else None


def _out_of_parts(one: "SittingPlanned", parts: dict[str, Lot]) -> "SittingPlanned":
    """A meal that takes what it thaws out of the parts that were frozen."""
    if one.dinner is None or not parts.keys() & {use.lot for use in one.dinner.uses}:
        return one
    moved = {lot: part for lot, part in parts.items() if lot in one.from_freezer}
    uses = tuple(
        use.model_copy(update={"lot": moved[use.lot].id, "line": moved[use.lot].line}) if use.lot in moved else use
        for use in one.dinner.uses
    )
    return one.model_copy(
        update={
            "dinner": one.dinner.model_copy(update={"uses": uses}),
            "from_freezer": tuple(moved[lot].id if lot in moved else lot for lot in one.from_freezer),
        }
    )
