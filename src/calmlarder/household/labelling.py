"""A packet's list of ingredients read at home, and kept with the lot that it came with."""

from decimal import Decimal

from calmlarder.household.household import Household
from calmlarder.household.kept_lots import KeptLot, kept, still_as_seen
from calmlarder.household.larder import numbered
from calmlarder.household.settings import people_of
from calmlarder.labels.packet import packet_of
from calmlarder.labels.read import Label, label_of
from calmlarder.labels.words import read_label_words
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.allergens import read_misleading, said
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import ALLERGENS, COMPONENTS, Component

_COUNTED_G = Decimal("0.3")  # in 100 g; below it a food's figures do not speak of what its label names: ours
_COMPONENTS: dict[str, tuple[Component, ...]] = {
    **{one: (one,) for one in COMPONENTS}, "polyols": ("sorbitol", "mannitol"),
}  # fmt: skip


def label_read(household: Household, text: str) -> Label:
    """What in a packet's list matters. Raises CannotGoOn where it is no list, or label_words.csv cannot be read."""
    words, problems = read_label_words(household.folders)
    misleading, faults = read_misleading(household.folders)
    if problems or faults:
        raise CannotGoOn([*problems, *faults])
    return label_of(packet_of(text), words, misleading)


def avoided_here(household: Household) -> tuple[str, ...]:
    """The allergens that somebody at home does without."""
    avoided = {one for person in people_of(household.settled()) for one in person.avoid}
    return tuple(one for one in ALLERGENS if one in avoided)


def lot_labelled(household: Household, lot_id: int) -> KeptLot:
    """A lot by its number. Raises CannotGoOn where there is none."""
    found, _ = numbered(household, [lot_id])
    if not found:
        remedy = "`calmlarder larder list` shows the numbers"
        raise CannotGoOn([Problem(where=f"item {lot_id}", what="is not in the larder", remedy=remedy)])
    return found[0]


def keep_label(household: Household, one: KeptLot, text: str) -> Label:
    """Read a list and keep it with a lot from then on, in the place of an earlier one. Raises CannotGoOn as reading."""
    label = label_read(household, text)
    found = {
        "label": " ".join(text.split()),
        "label_allergens": tuple(one for one in ALLERGENS if one in {*label.allergens, *label.traces}),
        "label_triggers": not_counted(label, household.tables.food_by_id[one.lot.food], household),
    }
    lot = one.lot.model_copy(update=found)
    with household.store.transaction():
        still_as_seen(household.store, [one])
        household.store.change_lots({one.id: kept(lot)}, f"label of {one.lot.line}")
    return label


def not_counted(label: Label, food: Food, household: Household) -> tuple[str, ...]:
    """The words of a list that surely hold a group of which the food's own figures count next to nothing.

    What its row names among its allergens it is made of, and its figures speak of that: soya of tofu, milk of cheese.
    """
    figures = household.tables.fermentables_of(food.id)
    misleading, _ = read_misleading(household.folders)
    found = []
    for one in label.told:
        components = _COMPONENTS.get(one.word.holds, ())
        counted = any(figures[part].g_per_100g >= _COUNTED_G for part in components if part in figures)
        own = said(one.word.words, misleading) & set(food.allergens)
        if one.word.sure == "yes" and components and not counted and not own:
            found.append(one.word.words)
    return tuple(dict.fromkeys(found))


def in_short(label: Label) -> str:
    """What matters in a few words, certain things first: for a line of the larder."""
    sure = dict.fromkeys(one.word.words for one in label.told if one.word.sure == "yes")
    may = [one.word.words for one in label.told if one.word.sure == "may" and one.word.words not in sure]
    parts = [f"holds {', '.join(sure)}"] if sure else []
    parts += [f"may hide in {', '.join(dict.fromkeys(may))}"] if may else []
    return "; ".join(parts) or "names nothing that is known to matter"
