"""The whole parser: every command with its options; or as much of it as one command needs."""

from collections.abc import Iterable, Mapping
from functools import cache
from importlib import import_module
from types import MappingProxyType

from calmlarder import __version__
from calmlarder.commands.options.common import Parser

_DESCRIPTION = "Decide tonight's dinner from what is left in the fridge, with every fermentable group under its limit."
# The modules below `options`, each with the commands that it adds, in the order in which they are listed.
FAMILIES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "evening": ("demo", "tonight", "why"),
        "plan": ("plan",),
        "larder": ("larder", "freeze"),
        "log": ("cooked", "ate", "eaten"),
        "ledger": ("waste", "feel", "days"),
        "foods": ("limit", "swap", "plate", "match"),
        "recipes": ("label", "adapt"),
        "share": ("share",),
        "backup": ("backup", "restore"),
        "browser": ("browser",),
        "tables": ("tables",),
        "people": ("people",),
        "challenge": ("challenge",),
        "shell": ("completion", "manual"),
    }
)
_WITH_A_VALUE = frozenset({"--home", "--today", "--tables"})


@cache
def parser(command: str = "") -> Parser:
    """Made once a process for a command, or for all where it is none; reading options leaves it as it is."""
    made = Parser(prog="calmlarder", description=_DESCRIPTION, allow_abbrev=False)
    made.add_argument("--version", action="version", version=f"calmlarder {__version__}")
    made.add_argument("--home", metavar="DIR", help="where the kept larder lives")
    made.add_argument("--today", metavar="DATE", help="the day to count from (default: today)")
    made.add_argument("--tables", metavar="DIR", help="a folder of your own tables")
    made.set_defaults(run="program:program")
    commands = made.add_subparsers(dest="command", metavar="COMMAND")
    for family in [name for name, added in FAMILIES.items() if command in added] or FAMILIES:
        import_module(f"calmlarder.commands.options.{family}").add(commands)
    return made


def command_in(arguments: Iterable[str]) -> str:
    """The command that arguments begin with, behind where a home is and which day; empty where that is not plain."""
    words = iter(arguments)
    for word in words:
        if word in _WITH_A_VALUE:
            next(words, None)
        elif not word.startswith("-"):
            return word
        elif word.partition("=")[0] not in _WITH_A_VALUE:
            return ""
    return ""
