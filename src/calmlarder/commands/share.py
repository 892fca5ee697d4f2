"""`calmlarder share`: what was proposed, planned or adapted last, or a list, to pass on."""

from pathlib import Path

from calmlarder.commands.given.home import Share
from calmlarder.commands.inputs import household_of
from calmlarder.household.sharing import sheet_of, written
from calmlarder.household.write_out import write_out


def share(options: Share) -> int:
    """Show it in the form that was asked for, or write it to a file."""
    with household_of(options) as household:
        text = written(sheet_of(household, options.what, options.number), options.format)
    if options.out is None:
        print(text, end="")
    else:
        write_out(Path(options.out), text, None, "--out")
        print(f"Wrote {Path(options.out).absolute()}.")
    return 0
