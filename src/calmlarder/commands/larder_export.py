"""`larder export`: the list as a file of lines, or its last days as a calendar."""

from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from calmlarder.commands.given.larder import Larder
from calmlarder.household.household import Household
from calmlarder.household.write_out import write_out
from calmlarder.larder.lot import Lot, lot_line

if TYPE_CHECKING:
    from calmlarder.household.kept_lots import KeptLot


def export(options: Larder, household: Household) -> int:
    """Lines that `import` reads: relative days are written as dates. Boxed dishes are comments.

    What is to be answered is written as it was typed, its question behind it as a comment: imported, it waits again.
    With --ics the labels' days for a calendar.
    """
    lots = household.lots()
    if options.ics is not None:
        return _calendar(options.ics, lots, household)
    for one in lots:
        print(f"# {one.lot.line}" if one.lot.box is not None else _line_of(one.lot, household))
    for asked in household.to_answer():
        about = f"to answer: {asked.question}"
        if asked.text and asked.about != "kept":
            print(f"{asked.text}  # {about}")
        else:
            print(f"# {asked.text or f'lot {asked.id}'} ({about})")
    return 0


def _line_of(lot: Lot, household: Household) -> str:
    """What `import` reads, and what it cannot keep: a label is typed with its item."""
    line = lot_line(lot, household.plain_tables)
    if not lot.label:
        return line
    named = f" names {', '.join(lot.label_allergens)}" if lot.label_allergens else ""
    return f"{line}  # its label{named}: after an import give it again, `calmlarder label --item N`"


def _calendar(file: str, lots: "Sequence[KeptLot]", household: Household) -> int:
    from calmlarder.household.sharing import meals_planned
    from calmlarder.render.ics import calendar

    text = calendar(lots, household.tables, datetime.now(UTC), meals_planned(household))
    if file == "-":
        print(text, end="")
    else:
        write_out(Path(file), text, "BEGIN:VCALENDAR", "--ics")
        count = text.count("BEGIN:VEVENT")
        empty = "an empty calendar, as no label has a day and nothing is planned,"
        shown = f"{count} event{'' if count == 1 else 's'}" if count else empty
        print(f"Wrote {shown} to {Path(file).name}.")
    return 0
