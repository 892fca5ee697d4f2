"""The command line: options in, exit status out. 0 done, 2 wrong input or use, 3 no dinner meets the limits."""

import os
import sys
from collections.abc import Sequence
from importlib import import_module

from calmlarder import __version__
from calmlarder.commands.options import challenge, dinner, foods, larder, ledger, log, plan, recipes, tables
from calmlarder.commands.options.common import Parser
from calmlarder.problems import CannotGoOn

_DESCRIPTION = "Decide tonight's dinner from what is left in the fridge, with every fermentable group under its cap."


def _parser() -> Parser:
    parser = Parser(prog="calmlarder", description=_DESCRIPTION, allow_abbrev=False)
    parser.add_argument("--version", action="version", version=f"calmlarder {__version__}")
    parser.add_argument("--home", metavar="DIR", help="where the kept larder lives")
    parser.add_argument("--today", metavar="DATE", help="the day to count from (default: today)")
    parser.add_argument("--tables", metavar="DIR", help="a folder of your own tables")
    parser.set_defaults(run="program:program")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND")
    for family in (dinner, plan, larder, log, ledger, foods, recipes, tables, challenge):
        family.add(commands)
    return parser


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and give its exit status."""
    options = _parser().parse_args(arguments)
    # Each command imports what it needs and no more: `match` never waits for the solver.
    module, _, function = options.run.partition(":")
    run = getattr(import_module(f"calmlarder.commands.{module}"), function)
    try:
        return int(run(options))
    except CannotGoOn as stop:
        print("\n".join(f"calmlarder: {problem}" for problem in stop.problems), file=sys.stderr)
        return 2
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except (KeyboardInterrupt, EOFError):  # Ctrl-D at a question is no answer
        print("calmlarder: stopped", file=sys.stderr)
        return 130
