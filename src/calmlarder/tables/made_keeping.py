"""How long a food of the cook's own keeps, and how it is seen that it is done: by what is in it."""

from collections.abc import Sequence

from calmlarder.tables.book import Tables
from calmlarder.tables.leftovers import days_as_leftover
from calmlarder.tables.rows import Caution, Food, Keeping
from calmlarder.tables.vocabulary import COOKED_STATES

# What lasts this long once it is open needs no cold to be safe (vinegar, soy sauce, mustard): ours, from keeping.csv.
_LASTING_DAYS = 60
_UNCOOKED = frozenset({"raw", "frozen"})


def keeping_of_made(food: Food, parts: Sequence[Food], tables: Tables) -> list[Keeping]:
    """Rows for the cook's own keeping.csv.

    With anything fresh in it, it is a leftover, whatever its kind says: those are the days of a sealed shop jar. Made
    of dry and lasting things alone, it keeps as the first of them does once it is open.
    """
    lasting = [_open_days(one, tables) for one in parts]
    fresh = [one for one, days in zip(parts, lasting, strict=True) if days is None]
    if fresh:
        days = min(_safe_days(one, tables) for one in (*fresh, food))
        cold = [_fresh_row(food, "fridge", state, days) for state in ("whole", "opened", "cooked")]
        return [*cold, *(_fresh_row(food, "cupboard", state, 0) for state in ("whole", "opened"))]
    days = min(days for days in lasting if days is not None)
    places = [(place, state) for place in ("fridge", "cupboard") for state in ("whole", "opened")]
    return [_row(food, at, days, "quality", "as the first of what is in it, once open") for at in places]


def cautions_of_made(food: Food, parts: Sequence[Food], tables: Tables) -> list[Caution]:
    """Rows for the cook's own cautions.csv: how the first raw thing in it is seen to be cooked through."""
    for part in raw_parts(parts, tables):
        row = next(row for row in tables.cautions_of(part) if row.done_when)
        return [Caution(applies_to=food.id, states=(), done_when=row.done_when, caution="", source=row.source)]
    return []


def raw_parts(parts: Sequence[Food], tables: Tables) -> list[Food]:
    """Those that must be cooked through before they are eaten."""
    return [one for one in parts if one.state in _UNCOOKED and tables.done_sign(one)]


def _open_days(food: Food, tables: Tables) -> int | None:
    """Days it lasts once open, in the fridge if it goes there; None where it is fresh."""
    row = tables.keeping_of(food, "fridge", "opened") or tables.keeping_of(food, "cupboard", "opened")
    return row.days if row is not None and row.kind == "quality" and row.days >= _LASTING_DAYS else None


def _safe_days(food: Food, tables: Tables) -> int:
    """Days in the fridge, open, of what is in a home-made dish: as leftovers at the most."""
    rows = [tables.keeping_of(food, "fridge", "opened")]
    if food.state in COOKED_STATES:
        rows.append(tables.keeping_of(food, "fridge", "cooked"))
    return days_as_leftover(rows)


def _fresh_row(food: Food, place: str, state: str, days: int) -> Keeping:
    why = "home-made, with fresh things in it: as leftovers" if days else "home-made: not out of the fridge"
    return _row(food, (place, state), days, "safety", why)


def _row(food: Food, at: tuple[str, str], days: int, kind: str, why: str) -> Keeping:
    source = "fsa_uk" if kind == "safety" else "common_practice"
    told = {"food": food.id, "place": at[0], "state": at[1], "days": days, "kind": kind, "source": source}
    return Keeping.model_validate({**told, "how_or_why": why})
