"""The whole parser: every command with its options."""

from functools import cache

from calmlarder import __version__
from calmlarder.commands.options import (
    backup,
    browser,
    challenge,
    evening,
    foods,
    larder,
    ledger,
    log,
    people,
    plan,
    recipes,
    share,
    shell,
    tables,
)
from calmlarder.commands.options.common import Parser

_DESCRIPTION = "Decide tonight's dinner from what is left in the fridge, with every fermentable group under its limit."
_FAMILIES = (
    evening, plan, larder, log, ledger, foods, recipes, share, backup, browser, tables, people, challenge, shell,
)  # fmt: skip


@cache
def parser() -> Parser:
    """Made once a process; reading options leaves it as it is."""
    made = Parser(prog="calmlarder", description=_DESCRIPTION, allow_abbrev=False)
    made.add_argument("--version", action="version", version=f"calmlarder {__version__}")
    made.add_argument("--home", metavar="DIR", help="where the kept larder lives")
    made.add_argument("--today", metavar="DATE", help="the day to count from (default: today)")
    made.add_argument("--tables", metavar="DIR", help="a folder of your own tables")
    made.set_defaults(run="program:program")
    commands = made.add_subparsers(dest="command", metavar="COMMAND")
    for family in _FAMILIES:
        family.add(commands)
    return made
