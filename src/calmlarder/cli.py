"""The command line: options in, exit status out. 0 done, 2 wrong input or use, 3 no dinner meets the limits."""

import argparse
import os
import sys
from collections.abc import Sequence
from typing import NoReturn

from calmlarder import __version__
from calmlarder.problems import CannotGoOn
from calmlarder.tables.vocabulary import DIETS, KINDS, ROLES, SITTINGS

_DESCRIPTION = "Decide tonight's dinner from what is left in the fridge, with every fermentable group under its cap."


class _Parser(argparse.ArgumentParser):
    """Errors of use in one line, with exit status 2."""

    def error(self, message: str) -> NoReturn:
        self.exit(2, f"{self.prog}: {message}. Try `{self.prog} --help`.\n")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(prog="calmlarder", description=_DESCRIPTION, allow_abbrev=False)
    parser.add_argument("--version", action="version", version=f"calmlarder {__version__}")
    parser.add_argument("--home", metavar="DIR", help="where the kept larder lives")
    parser.add_argument("--today", metavar="DATE", help="the day to count from (default: today)")
    parser.add_argument("--tables", metavar="DIR", help="a folder of your own tables")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND")

    demo = commands.add_parser("demo", help="dinner from the larder of an invented household", allow_abbrev=False)
    _dinner_options(demo)
    tonight = commands.add_parser("tonight", help="dinner from your own larder", allow_abbrev=False)
    tonight.add_argument(
        "--larder", metavar="FILE", help="one line a lot; - reads standard input (default: the kept one)"
    )
    tonight.add_argument("--home", default=argparse.SUPPRESS, metavar="DIR", help="where the kept larder lives")
    tonight.add_argument("--at", metavar="TIME", help="when you eat (default: now; with --today 18:00)")
    tonight.add_argument(
        "--who", action="append", metavar="NAME", help="whose log counts (default: me; may be repeated)"
    )
    tonight.add_argument(
        "--window", type=float, default=3.0, metavar="HOURS", help="how long a sitting counts (default 3)"
    )
    tonight.add_argument("--fade", action="store_true", help="what was eaten fades over the window")
    _dinner_options(tonight)
    _larder_commands(commands)
    _log_commands(commands)

    freeze = commands.add_parser("freeze", help="what to freeze today, how, and for how long", allow_abbrev=False)
    freeze.add_argument(
        "--larder", metavar="FILE", help="one line a lot; - reads standard input (default: the kept one)"
    )
    freeze.add_argument("--home", default=argparse.SUPPRESS, metavar="DIR", help="where the kept larder lives")
    freeze.add_argument("--within", type=int, default=1, metavar="DAYS", help="days left at most (default 1)")
    freeze.add_argument("--today", default=argparse.SUPPRESS, metavar="DATE", help="the day to count from")
    freeze.add_argument("--json", action="store_true")

    limit = commands.add_parser("limit", help="how much of one food fits one sitting", allow_abbrev=False)
    limit.add_argument("food", nargs="+", metavar="FOOD")
    limit.add_argument("--profile", default="elimination", metavar="P", help="profile of caps.csv")
    limit.add_argument("--json", action="store_true")

    swap = commands.add_parser("swap", help="what can stand in for a food", allow_abbrev=False)
    _swap_options(swap)

    match = commands.add_parser("match", help="what a larder line means", allow_abbrev=False)
    match.add_argument("text", nargs="+", metavar="TEXT", help="the words of one line, or - for many on standard input")
    match.add_argument(
        "--today", default=argparse.SUPPRESS, metavar="DATE", help="the day to count from (default: today)"
    )
    match.add_argument("--json", action="store_true", help="one JSON object a line")

    tables = commands.add_parser("tables", help="work on the ingredient tables", allow_abbrev=False)
    table_commands = tables.add_subparsers(dest="table_command", required=True, metavar="COMMAND")
    check = table_commands.add_parser("check", help="say everything that is wrong in them", allow_abbrev=False)
    show = table_commands.add_parser("show", help="one food whole, with its sources", allow_abbrev=False)
    show.add_argument("food", nargs="+", metavar="FOOD")
    mine = table_commands.add_parser("mine", help="foods you have made", allow_abbrev=False)
    mine_commands = mine.add_subparsers(dest="mine_command", required=True, metavar="COMMAND")
    add = mine_commands.add_parser("add", help="describe one by its ingredients", allow_abbrev=False)
    add.add_argument("name", metavar="NAME")
    add.add_argument("--from", dest="ingredients", required=True, metavar="LINES", help='"50 g basil; 20 g walnuts; …"')
    add.add_argument("--weighs", type=float, metavar="G", help="what the whole weighs when done (default: its parts)")
    add.add_argument("--kind", default="sauce", choices=KINDS, metavar="KIND", help="kind of food (default sauce)")
    add.add_argument("--role", default="sauce", choices=ROLES, metavar="ROLE", help="what it can be in a dish")
    for command in (demo, tonight, freeze, limit, swap, match, check, show, add):
        command.add_argument(
            "--tables", default=argparse.SUPPRESS, metavar="DIR", help="a folder of your own tables, laid over ours"
        )
    return parser


def _swap_options(command: argparse.ArgumentParser) -> None:
    add = command.add_argument
    add("food", nargs="+", metavar="FOOD")
    add("--amount", type=float, metavar="G", help="grams for one person (default: a usual portion)")
    add("--profile", default="elimination", metavar="P", help="profile of caps.csv (default elimination)")
    add("--diet", default="omnivore", choices=DIETS, help="default omnivore: no limit")
    add("--avoid", metavar="A,B", help="allergens to leave out, such as gluten,sesame")
    add("--from-larder", action="store_true", help="only what the kept larder holds enough of")
    add("--home", default=argparse.SUPPRESS, metavar="DIR", help="where the kept larder lives")
    add("--today", default=argparse.SUPPRESS, metavar="DATE", help="the day to count from (default: today)")
    add("--json", action="store_true")


def _larder_commands(commands: "argparse._SubParsersAction[_Parser]") -> None:
    larder = commands.add_parser("larder", help="the kept larder", allow_abbrev=False)
    kept = larder.add_subparsers(dest="larder_command", required=True, metavar="COMMAND")
    for name, help_text in (
        ("list", "what is there, what goes first before what keeps"),
        ("add", "keep one line"),
        ("edit", "write a lot anew"),
        ("remove", "take lots out"),
        ("import", "keep the lines of a file"),
        ("export", "write all lots as lines that import reads"),
        ("undo", "take the last change back"),
        ("redo", "do it again"),
        ("restore", "set a damaged file aside and start from the copy"),
    ):
        command = kept.add_parser(name, help=help_text, allow_abbrev=False)
        command.add_argument("--home", default=argparse.SUPPRESS, metavar="DIR", help="where the kept larder lives")
        command.add_argument("--today", default=argparse.SUPPRESS, metavar="DATE", help="the day to count from")
        command.add_argument("--tables", default=argparse.SUPPRESS, metavar="DIR", help="a folder of your own tables")
        command.add_argument("--json", action="store_true")
        if name in {"add", "edit"}:
            if name == "edit":
                command.add_argument("id", type=int, metavar="ID")
            command.add_argument("text", nargs="+", metavar="TEXT")
        elif name == "remove":
            command.add_argument("ids", type=int, nargs="+", metavar="ID")
        elif name == "import":
            command.add_argument("file", metavar="FILE", help="- reads standard input")


def _log_commands(commands: "argparse._SubParsersAction[_Parser]") -> None:
    ate = commands.add_parser("ate", help="log what you ate; it counts for the next hours", allow_abbrev=False)
    ate.add_argument("text", nargs="+", metavar="LINE", help='such as "200 ml orange juice"')
    ate.add_argument("--when", metavar="TIME", help="HH:MM or 2026-03-12T18:30 (default: now; with --today 18:00)")
    ate.add_argument("--who", default="me", metavar="NAME", help="who ate it (default me; everyone for all)")
    eaten = commands.add_parser("eaten", help="what was eaten in the last days", allow_abbrev=False)
    eaten.add_argument("--days", type=int, default=3, metavar="N", help="how many days back (default 3)")
    for command in (ate, eaten):
        command.add_argument("--home", default=argparse.SUPPRESS, metavar="DIR", help="where the kept larder lives")
        command.add_argument("--today", default=argparse.SUPPRESS, metavar="DATE", help="the day to count from")
        command.add_argument("--tables", default=argparse.SUPPRESS, metavar="DIR", help="a folder of your own tables")
        command.add_argument("--json", action="store_true")


def _dinner_options(command: argparse.ArgumentParser) -> None:
    add = command.add_argument
    add("--people", type=int, default=1, metavar="N", help="people who share the dish (default 1)")
    add("--profile", default="elimination", metavar="P", help="profile of caps.csv (default elimination)")
    add("--sitting", default="dinner", choices=SITTINGS, help="what is cooked (default dinner)")
    add("--protein", type=float, metavar="G", help="least protein a person, g (default: 20 for a dinner)")
    add("--minutes", type=int, metavar="M", help="most minutes to cook")
    add(
        "--diet",
        default="omnivore",
        choices=("vegan", "vegetarian", "omnivore"),
        help="default omnivore: no limit",
    )
    add("--avoid", metavar="A,B", help="allergens to leave out, such as gluten,sesame")
    add("--without", action="append", default=[], metavar="FOOD", help="a food to leave out; may be repeated")
    add(
        "--use",
        action="append",
        default=[],
        metavar="FOOD",
        help="a food that must be in it; may be repeated",
    )
    add("--use-shared", action="store_true", help="use what belongs to others too")
    add("--count", type=int, default=1, metavar="K", help="how many different dinners (default 1)")
    add("--today", default=argparse.SUPPRESS, metavar="DATE", help="the day to count from (default: today)")
    add("--seconds", type=float, default=10.0, metavar="S", help="longest time to think (default 10)")
    add("--json", action="store_true")


def _run(options: argparse.Namespace) -> int:
    # Each command imports what it needs and no more: `match` never waits for the solver.
    if options.command is None:
        from calmlarder.commands.program import program

        return program(options)
    if options.command == "demo":
        from calmlarder.commands.tonight import demo

        return demo(options)
    if options.command == "tonight":
        from calmlarder.commands.tonight import tonight

        return tonight(options)
    if options.command == "larder":
        from calmlarder.commands.larder import larder

        return larder(options)
    if options.command == "freeze":
        from calmlarder.commands.freeze import freeze

        return freeze(options)
    if options.command in {"ate", "eaten"}:
        from calmlarder.commands import ate

        return ate.ate(options) if options.command == "ate" else ate.eaten(options)
    if options.command == "limit":
        from calmlarder.commands.limit import limit

        return limit(options)
    if options.command == "swap":
        from calmlarder.commands.swap import swap

        return swap(options)
    if options.command == "match":
        from calmlarder.commands.match import match

        return match(options)
    if options.table_command == "show":
        from calmlarder.commands.show import show

        return show(options)
    if options.table_command == "mine":
        from calmlarder.commands.mine import add

        return add(options)
    from calmlarder.commands.check import check

    return check(options)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and give its exit status."""
    options = _parser().parse_args(arguments)
    try:
        return _run(options)
    except CannotGoOn as stop:
        print("\n".join(f"calmlarder: {problem}" for problem in stop.problems), file=sys.stderr)
        return 2
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        print("calmlarder: stopped", file=sys.stderr)
        return 130
