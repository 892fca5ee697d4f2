"""`calmlarder label TEXT|FILE|-`: what in a packet's list of ingredients matters."""

import json
from pathlib import Path

from calmlarder.commands.given.foods import Label
from calmlarder.commands.inputs import household_of
from calmlarder.household.labelling import avoided_here, keep_label, label_read, lot_labelled
from calmlarder.labels.packet import LONGEST
from calmlarder.larder.files import read_text
from calmlarder.problems import CannotGoOn, Problem

_LONGEST_PATH = 255  # longer is no name of a file on any system, and asking about it fails


def label(options: Label) -> int:
    """Read the list and say what matters; never a verdict, so the status is 0 for every list that was read.

    With the number of a lot the list is kept with it, or the one that it has is read again.
    """
    text = _text_of(options.text)
    with household_of(options) as household:
        if options.lot is None:
            found = label_read(household, _given(text, "TEXT"))
        else:
            one = lot_labelled(household, options.lot)
            given = text.strip()
            found = (
                keep_label(household, one, given) if given else label_read(household, _given(one.lot.label, "--item"))
            )
        avoided = avoided_here(household)
    if options.json:
        from calmlarder.render.label_text import label_object

        print(json.dumps(label_object(found), ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.label_text import label_text
        from calmlarder.render.style import style_of_output

        print(label_text(found, style_of_output(), avoided), end="")
    return 0


def _text_of(typed: tuple[str, ...]) -> str:
    """The list as typed, or from standard input or a file where one is named: its name alone is no list."""
    named = typed[0] if len(typed) == 1 else ""
    if named == "-" or (named and len(named) <= _LONGEST_PATH and Path(named).is_file()):
        return read_text(named, LONGEST, "give the list alone")
    return " ".join(typed)


def _given(text: str, where: str) -> str:
    if not text.strip():
        remedy = "type what the packet has behind `Ingredients:`"
        raise CannotGoOn([Problem(where=where, what="no list of ingredients is given", remedy=remedy)])
    return text
