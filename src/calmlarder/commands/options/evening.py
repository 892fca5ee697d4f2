"""Options of `demo`, `tonight` and `why`."""

from argparse import BooleanOptionalAction
from typing import NamedTuple

from calmlarder.commands.options import common

FROM_HOME = ("people", "profile", "diet", "eye", "scale", "rings", "window", "fade")
_USAGE = (
    "%(prog)s [--people N] [--minutes M] [--dish KIND] [--use FOOD]\n"
    "       [--without FOOD] [--diet DIET] [--avoid A,B] [more options]"
)


class Groups(NamedTuple):
    """The options as help shows them: what most evenings need stands first."""

    first: common.Options
    meal: common.Options
    kitchen: common.Options
    before: common.Options
    home: common.Options
    run: common.Options


def groups_of(parser: common.Parser) -> Groups:
    """The groups of a parser; one that stays empty is not shown."""
    titles = ("what matters most", "the meal", "the kitchen", "what was eaten before", "the larder", "the run")
    return Groups(*map(parser.add_argument_group, titles))


def add(commands: common.Commands) -> None:
    """All three."""
    demo = common.command(commands, "demo", "tonight:demo", "dinner from the larder of an example household")
    tonight = common.command(commands, "tonight", "tonight:tonight", "dinner from your own larder")
    why = common.command(commands, "why", "why:why", "what a food does in tonight's dinner, or why it is not in it")
    why.set_defaults(count=1)
    why.add_argument("food", nargs="+", metavar="FOOD")
    for parser in (demo, tonight, why):
        groups = groups_of(parser)
        request(groups)
        dish(groups)
        if parser is not why:
            parser.usage = _USAGE
            count(groups)
        if parser is not demo:
            log_that_counts(groups)
            at_home(parser, groups)
        common.today(groups.run)
        common.tables(groups.home)
        common.json(groups.run)


def at_home(parser: common.Parser, groups: Groups) -> None:
    """The kept larder or a file; what is not given is what is settled at home, else the usual: household/request.py."""
    common.larder_file(groups.home)
    common.home(groups.home)
    groups.home.add_argument(
        "--no-settings", action="store_true", help="leave out what people and limits say at home; allergens hold"
    )
    parser.set_defaults(**dict.fromkeys(FROM_HOME))


def log_that_counts(groups: Groups) -> None:
    """Whose log, of which hours, and how it fades."""
    option = groups.before.add_argument
    option("--at", metavar="TIME", help="when you eat (default: now; with --today 18:00)")
    option("--who", action="append", metavar="NAME", help="whose log counts (default: me; may be repeated)")
    option("--window", type=float, default=3.0, metavar="HOURS", help="how long a meal counts (default 3)")
    option("--own", action="append", default=[], metavar="WHO", help='one person\'s own hours, such as "kit 5 fades"')
    common.at_table(groups.meal)
    option("--fade", action=BooleanOptionalAction, default=False, help="what was eaten fades over the window")


def request(groups: Groups) -> None:
    """Who eats and what is asked for at one sitting."""
    eating(groups)
    common.sitting(groups.meal)
    groups.run.add_argument(
        "--seconds", type=float, default=10.0, metavar="S", help="longest time to think (default 10)"
    )


def dish(groups: Groups) -> None:
    """What dish is wanted."""
    words = "a kind of dish, such as soup, curry or salad, or a word of its title; ? lists the kinds"
    groups.meal.add_argument("--dish", metavar="KIND", help=words)


def count(groups: Groups) -> None:
    """How many dinners are asked for."""
    groups.meal.add_argument("--count", type=int, default=1, metavar="K", help="how many different dinners (default 1)")


def eating(groups: Groups) -> None:
    """Who eats, and what holds for them at every sitting."""
    option = groups.first.add_argument
    option("--people", type=int, default=1, metavar="N", help="people who share the dish (default 1)")
    option("--minutes", type=int, metavar="M", help="most minutes to cook")
    option("--use", action="append", default=[], metavar="FOOD", help="a food that must be in it; may be repeated")
    option("--without", action="append", default=[], metavar="FOOD", help="a food to leave out; may be repeated")
    common.eaters(groups.first)
    option = groups.meal.add_argument
    common.profile(groups.meal)
    option("--protein", type=float, metavar="G", help="protein to aim at a person, g (default: 20 for a dinner)")
    option("--protein-floor", type=float, metavar="G", help="protein a person, at least, g (default: 12 for a dinner)")
    option("--dislike", action="append", default=[], metavar="FOOD", help="only where nothing else is as good")
    option("--lysine", type=int, default=0, metavar="MG", help="least lysine a person, mg (default: none asked)")
    option = groups.kitchen.add_argument
    common.tolerance(groups.kitchen)
    option("--rings", type=int, default=2, metavar="N", help="rings of the stove, 1 to 4 (default 2)")
    option("--no-equipment", metavar="A,B", help="what the kitchen lacks, such as oven,blender")
    groups.home.add_argument("--use-shared", action="store_true", help="use what belongs to others too")
