"""`calmlarder backup FILE` and `calmlarder restore FILE`: the whole household in one file, and back."""

import json
import sys
from pathlib import Path

from calmlarder.commands.given.home import Backup
from calmlarder.commands.inputs import household_of, own_tables_of
from calmlarder.commands.sure import is_sure
from calmlarder.household.backup import MOST_BYTES, backup_text, read_backup, restore_backup
from calmlarder.household.write_out import write_out
from calmlarder.larder.files import read_text, where_of


def backup(options: Backup) -> int:
    """Write everything the household keeps to a file that is not there yet, for its owner alone."""
    with household_of(options) as household:
        text, words = backup_text(household, own_tables_of(options))
    if options.file == "-":
        print(text, end="")
        return 0
    write_out(Path(options.file), text, None, "FILE", private=True)
    print(json.dumps({"backup": options.file}) if options.json else f"Wrote {Path(options.file).name}: {words}.")
    return 0


def restore(options: Backup) -> int:
    """Put the household of a file in place of what is kept; `larder undo` takes it back."""
    where = where_of(options.file)
    found = read_backup(read_text(options.file, MOST_BYTES, "name a file that `calmlarder backup` wrote"), where)
    with household_of(options) as household:
        there = household.is_kept and not household.is_untouched
        if there and not is_sure(
            options.yes,
            f"The backup is of {found.made}: {found.words}. It takes the place of everything that is kept in "
            f"{household.home}; `calmlarder larder undo` takes that back.",
            "Restore it? y or n: ",
        ):
            print("Nothing was changed.")
            return 0
        aside = restore_backup(household, found, own_tables_of(options))
    if options.json:
        print(json.dumps({"restored": found.made, "set_aside": list(aside)}))
        return 0
    print(f"Restored the household of {found.made}: {found.words}.")
    if aside:
        print(f"Own tables of before are kept as {', '.join(aside)}.", file=sys.stderr)
    return 0
