"""`calmlarder cooked`: a dinner that `tonight` proposed was cooked."""

import argparse
import json
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from calmlarder.commands.kitchen_table import day_of, food_named, tables_of
from calmlarder.commands.moment import past_moment_of
from calmlarder.larder.box import boxes_of, with_boxes
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.logged import eaten_line, eaten_object
from calmlarder.store.cooked import Boxing, all_there, cook
from calmlarder.store.documents import PROPOSED
from calmlarder.store.home import home_folder
from calmlarder.store.larder import lots_on_day
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from calmlarder.tables.rows import Food

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner

_MOST_GRAMS = 20_000  # of one food in a dish for at most twelve; beyond it is a slip of the pen: ours


def remember(options: argparse.Namespace, dinners: "Sequence[Dinner]") -> None:
    """Keep what was proposed, for `cooked`."""
    proposed = {"day": day_of(options).isoformat(), "dinners": [dinner.model_dump(mode="json") for dinner in dinners]}
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store:
        store.remember(PROPOSED, proposed)


def cooked(options: argparse.Namespace) -> int:
    """Deduct the lots, log each share, box the rest, as one action. Raises CannotGoOn where that cannot be."""
    from calmlarder.compose.cooked import box_up, share_eaten
    from calmlarder.patterns.load import load_patterns

    today, at = day_of(options), past_moment_of(options)
    plain = tables_of(options)
    # What was proposed and what is there are read, and forgotten, in the transaction that takes it out: said in two
    # windows at once, it is cooked once.
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store, store.transaction():
        dinner = _proposed(store, options)
        lots = lots_on_day(store, today, plain)
        tables = with_boxes(plain, boxes_of(one.lot for one in lots))
        weighed = _weighed(options.weighed, dinner, tables)
        if not 0 <= options.boxes <= dinner.people:
            remedy = f"it serves {dinner.people}: give 0 to {dinner.people}"
            raise CannotGoOn([Problem(where="--boxes", what=f"{options.boxes} cannot be", remedy=remedy)])
        uses = {use.lot: weighed.get(use.lot, use.grams) for use in dinner.uses}
        all_there(((use.lot, use.food, use.line) for use in dinner.uses), lots)
        eaters = dinner.people - options.boxes
        entry = share_eaten(dinner, weighed, at, tables, eaters) if eaters else None
        lot, why = None, ""
        if options.boxes:
            pattern = next(one for one in load_patterns(shipped("recipes")) if one.id == dinner.pattern)
            lot, why = box_up(dinner, weighed, options.boxes, today, pattern, tables)
        boxing = Boxing(lot, options.boxes / dinner.people)
        cook(store, lots, dinner.title, uses, entry, boxing, today, tables)
    if options.json:
        told: dict[str, Any] = {
            "eaten": [] if entry is None else [eaten_object(None, entry)],
            "boxed": None if lot is None else {"line": lot.line, "grams": lot.grams, "days_left": lot.days_left},
            "not_boxed": why if options.boxes and lot is None else None,
        }
        print(json.dumps(told, ensure_ascii=False, indent=2))
        return 0
    print(f"{dinner.title}: taken out of the larder.")
    if entry is not None:
        print(eaten_line(None, entry))
    if lot is not None:
        print(f"boxed: {lot.line}, {lot.grams:g} g; {lot.days_left} d in the fridge ({why})")
    elif options.boxes:
        print(f"not boxed: {why}")
    return 0


def _proposed(store: Store, options: argparse.Namespace) -> "Dinner":
    from pydantic import ValidationError

    from calmlarder.compose.dinner import Dinner

    kept = store.settings().get(PROPOSED)
    note = kept if isinstance(kept, dict) else {}
    dinners = note.get("dinners", []) if note.get("day") == day_of(options).isoformat() else []
    if not 1 <= options.number <= len(dinners):
        what = f"`tonight` proposed no dinner {options.number} today" if dinners else "`tonight` proposed nothing today"
        raise CannotGoOn([Problem(where="cooked", what=what, remedy="ask `calmlarder tonight` first, then cook it")])
    try:
        return Dinner.model_validate(dinners[options.number - 1])
    except ValidationError:
        what = "an earlier calmlarder proposed it, in another form"
        raise CannotGoOn([Problem(where="cooked", what=what, remedy="ask `calmlarder tonight` again")]) from None


def _weighed(given: Sequence[str], dinner: "Dinner", tables: Tables) -> dict[str, int]:
    """Grams by lot id of what the scale showed; `LOT=G`, or `FOOD=G` where the dish holds one lot of it.

    Raises CannotGoOn for what is not in the dish, for a food of several lots, or no amount.
    """
    found = {}
    lots = {use.lot for use in dinner.uses}
    for text in given:
        name, _, grams = text.rpartition("=")
        number = grams.strip().removesuffix("g").strip()
        if not name or not number.isascii() or not number.isdigit() or int(number) > _MOST_GRAMS:
            remedy = 'write it like "firm tofu=180", or with the number of the lot, "12=180"'
            raise CannotGoOn([Problem(where="--weighed", what=f"`{text}` says no grams", remedy=remedy)])
        name = name.strip()
        found[name if name in lots else _only_lot(food_named(name, "--weighed", tables), dinner)] = int(number)
    return found


def _only_lot(food: Food, dinner: "Dinner") -> str:
    """The id of the one lot of a food in the dish. Raises CannotGoOn where there is none, or several."""
    uses = [use for use in dinner.uses if use.food == food.id]
    if len(uses) == 1:
        return uses[0].lot
    if not uses:
        what = f"{food.name} is not in the dish"
        remedy = f"it holds {', '.join(dict.fromkeys(use.name for use in dinner.uses))}"
    else:
        what = f"the dish holds {len(uses)} lots of {food.name}"
        ways = " or ".join(f"`{use.lot}={use.grams}` for {use.grams} g of `{use.line}`" for use in uses)
        remedy = f"say which one: {ways}"
    raise CannotGoOn([Problem(where="--weighed", what=what, remedy=remedy)])
