"""Foods of an adapted recipe of which the tables say: read the label."""

from collections.abc import Sequence

from calmlarder.adapt.model import Adapted
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.tables.book import Tables

_ASKS = "read the label"


def labels_to_read(reads: Sequence[IngredientRead], adapted: Adapted, tables: Tables) -> tuple[str, ...]:
    """One remark on what the dish holds in the end, with what its label may hide; nothing where no row says so."""
    changed = {change.place for change in adapted.changes}
    kept = [read.food for place, read in enumerate(reads) if place not in changed and read.outcome == "read"]
    new = [
        food for change in adapted.changes for food in (*(one.food for one in change.to), *change.unmeasured)
    ]  # fmt: skip
    told = {}
    for food in dict.fromkeys([*kept, *new]):
        row = tables.food_by_id.get(food or "")
        note = next((part.strip() for part in row.note.split(";") if _ASKS in part), "") if row is not None else ""
        if row is not None and note:
            told[row.name] = note.replace(_ASKS, "").strip(" :,")
    if not told:
        return ()
    named = "; ".join(f"{name} ({why})" if why else name for name, why in told.items())
    return (f"Read the label of: {named}.",)
