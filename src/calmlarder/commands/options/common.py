"""The parser, and options that several commands share."""

import argparse
import re
from typing import NoReturn, TypeAlias

from calmlarder.clean import clean_line
from calmlarder.tables.vocabulary import DIETS, SITTING_WORDS, SITTINGS

_NO_NUMBER = re.compile(r"argument (\S+): invalid (?:int|float) value: '(.*)'", re.DOTALL)


class Parser(argparse.ArgumentParser):
    """Errors of use in one line, with exit status 2."""

    def error(self, message: str) -> NoReturn:
        message = _NO_NUMBER.sub(r"\1: `\2` is no number", message)
        self.exit(2, f"{self.prog}: {clean_line(message)}. Try `{self.prog} --help`.\n")


Options: TypeAlias = "argparse._ActionsContainer"  # a parser, or a group of its options
Commands: TypeAlias = "argparse._SubParsersAction[Parser]"


def command(commands: Commands, name: str, run: str, help_text: str) -> Parser:
    """A new command; `run` is the `module:function` below `calmlarder.commands` that answers it."""
    parser = commands.add_parser(name, help=help_text, allow_abbrev=False)
    parser.set_defaults(run=run)
    return parser


def home(parser: Options) -> None:
    """Where the kept larder lives; stands before or behind the command."""
    parser.add_argument("--home", default=argparse.SUPPRESS, metavar="DIR", help="where the kept larder lives")


def today(parser: Options) -> None:
    """The day; stands before or behind the command."""
    parser.add_argument("--today", default=argparse.SUPPRESS, metavar="DATE", help="the day to count from")


def tables(parser: Options) -> None:
    """The cook's own tables; stands before or behind the command."""
    parser.add_argument(
        "--tables", default=argparse.SUPPRESS, metavar="DIR", help="a folder of your own tables, laid over ours"
    )


def json(parser: Options) -> None:
    """Plain values in place of words."""
    parser.add_argument("--json", action="store_true", help="plain values in place of words")


def larder_file(parser: Options) -> None:
    """A larder that is no kept one."""
    parser.add_argument(
        "--larder", metavar="FILE", help="one line an item; - reads standard input (default: the kept one)"
    )


def profile(parser: Options) -> None:
    """Which caps hold."""
    parser.add_argument(
        "--profile",
        metavar="P",
        help="which limits: elimination, careful, very-careful or roomy (default: as settled at home)",
    )


def sitting(parser: Options) -> None:
    """Which meal it is: some limits are for some meals only."""
    parser.add_argument(
        "--meal",
        "--sitting",
        dest="sitting",
        type=lambda word: SITTING_WORDS.get(word, word),
        default="dinner",
        choices=SITTINGS,
        metavar="MEAL",
        help="dinner (default), breakfast, packed (or lunch), shake or snack",
    )


def tolerance_at_home(parser: Parser) -> None:
    """The same, as settled at home where it is not given."""
    tolerance(parser)
    parser.set_defaults(eye=None, scale=None)


def tolerance(parser: Options) -> None:
    """How far amounts may come out above the plan."""
    parser.add_argument("--eye", type=int, default=30, metavar="PERCENT", help="how much more by eye (default 30)")
    parser.add_argument("--scale", type=int, default=2, metavar="GRAMS", help="how much more on a scale (default 2)")


def at_table(parser: Options) -> None:
    """Who eats, by name."""
    words = "who eats, such as me,kit+1: people of the home, and one guest in elimination"
    parser.add_argument("--for", dest="eaters", metavar="NAMES", help=words)


def diet(parser: Options, words: str) -> None:
    """What somebody eats, in either spelling of the diet with fish and in any case."""
    parser.add_argument("--diet", choices=DIETS, type=_diet_as_spelt_here, help=words)


def _diet_as_spelt_here(typed: str) -> str:
    return typed.lower().replace("pescetarian", "pescatarian")


def eaters(parser: Options) -> None:
    """What may be eaten, whatever the amount."""
    diet(parser, "default: the one settled at home, else omnivore: no limit")
    parser.add_argument("--avoid", metavar="A,B", help="allergens to leave out besides those settled at home")
