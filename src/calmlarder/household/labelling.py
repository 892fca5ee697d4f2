"""A packet's list of ingredients read at home, and kept with the lot that it came with."""

from calmlarder.household.household import Household
from calmlarder.household.kept_lots import KeptLot, kept, still_as_seen
from calmlarder.household.larder import numbered
from calmlarder.labels.packet import packet_of
from calmlarder.labels.read import Label, label_of
from calmlarder.labels.words import read_label_words
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.allergens import read_misleading


def label_read(household: Household, text: str) -> Label:
    """What in a packet's list matters. Raises CannotGoOn where it is no list, or label_words.csv cannot be read."""
    words, problems = read_label_words(household.folders)
    misleading, faults = read_misleading(household.folders)
    if problems or faults:
        raise CannotGoOn([*problems, *faults])
    return label_of(packet_of(text), words, misleading)


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
    lot = one.lot.model_copy(update={"label": " ".join(text.split())})
    with household.store.transaction():
        still_as_seen(household.store, [one])
        household.store.change_lots({one.id: kept(lot)}, f"label of {one.lot.line}")
    return label


def in_short(label: Label) -> str:
    """What matters in a few words, certain things first: for a line of the larder."""
    sure = dict.fromkeys(one.word.words for one in label.told if one.word.sure == "yes")
    may = [one.word.words for one in label.told if one.word.sure == "may" and one.word.words not in sure]
    parts = [f"holds {', '.join(sure)}"] if sure else []
    parts += [f"may hide in {', '.join(dict.fromkeys(may))}"] if may else []
    return "; ".join(parts) or "names nothing that is known to matter"
