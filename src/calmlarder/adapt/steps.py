"""Steps of a recipe that name a food which was swapped or left out.

Steps are not rewritten: their words may mean another thing (`onion`, where a spring onion stays), and a cook who reads
a note beside them is not misled.
"""

from collections.abc import Sequence

from calmlarder.adapt.model import Adapted, Change
from calmlarder.adapt.names import foods_in, names_of
from calmlarder.adapt.rewriting import Part
from calmlarder.tables.book import Tables

MOST_SIGNS = 100_000  # of all steps together; beyond any recipe


def notes_on_steps(steps: Sequence[str], parts: Sequence[Part], adapted: Adapted, tables: Tables) -> tuple[str, ...]:
    """A note for each food that changed and that some step names."""
    changed = {
        parts[change.place].read.food or "": change
        for change in adapted.changes
        if change.place is not None and change.change in {"swap", "out"}
    }
    if not changed:
        return ()
    names = names_of({part.read.food for part in parts if part.read.food}, tables)
    named: dict[str, list[int]] = {}
    left = MOST_SIGNS
    for number, step in enumerate(steps, start=1):
        left -= len(step)
        if left < 0:
            break
        meant = (food for _, foods in foods_in(step, names) for food in sorted(foods) if food in changed)
        for food in dict.fromkeys(meant):
            named.setdefault(food, []).append(number)
    notes = [_note(tables.food_by_id[food].name, named[food], changed[food]) for food in changed if food in named]
    return (*notes, f"Steps from {number} on were not looked at.") if left < 0 else tuple(notes)


def _note(name: str, steps: Sequence[int], change: Change) -> str:
    numbers = ", ".join(map(str, steps))
    head = f"Step {numbers} names" if len(steps) == 1 else f"Steps {numbers} name"
    instead = f"use {' and '.join(change.lines)}" if change.lines else "it is left out"
    return f"{head} {name}: {instead}."
