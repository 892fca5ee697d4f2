"""Options of `demo`, `tonight` and `why`."""

from argparse import BooleanOptionalAction

from calmlarder.commands.options import common
from calmlarder.tables.vocabulary import SITTINGS

FROM_HOME = ("people", "profile", "diet", "eye", "scale", "rings", "window", "fade")


def add(commands: common.Commands) -> None:
    """All three."""
    demo = common.command(commands, "demo", "tonight:demo", "dinner from the larder of an invented household")
    request(demo)
    count(demo)
    tonight = common.command(commands, "tonight", "tonight:tonight", "dinner from your own larder")
    count(tonight)
    why = common.command(commands, "why", "why:why", "what a food does in tonight's dinner, or why it is not in it")
    why.set_defaults(count=1)
    why.add_argument("food", nargs="+", metavar="FOOD")
    for parser in (tonight, why):
        log_that_counts(parser)
        request(parser)
        at_home(parser)
    for parser in (demo, tonight, why):
        common.today(parser)
        common.tables(parser)
        common.json(parser)


def at_home(parser: common.Parser) -> None:
    """The kept larder or a file; what is not given is what is settled at home, else the usual: household/request.py."""
    common.larder_file(parser)
    common.home(parser)
    parser.add_argument("--no-settings", action="store_true", help="leave out what people and limits say at home")
    parser.set_defaults(**dict.fromkeys(FROM_HOME))


def log_that_counts(parser: common.Parser) -> None:
    """Whose log, of which hours, and how it fades."""
    option = parser.add_argument
    option("--at", metavar="TIME", help="when you eat (default: now; with --today 18:00)")
    option("--who", action="append", metavar="NAME", help="whose log counts (default: me; may be repeated)")
    option("--window", type=float, default=3.0, metavar="HOURS", help="how long a sitting counts (default 3)")
    option("--own", action="append", default=[], metavar="WHO", help='one person\'s own hours, such as "kit 5 fades"')
    words = "who eats, such as me,kit+1: people of the home, and one guest in elimination"
    option("--for", dest="eaters", metavar="NAMES", help=words)
    option("--fade", action=BooleanOptionalAction, default=False, help="what was eaten fades over the window")


def request(parser: common.Parser) -> None:
    """Who eats and what is asked for at one sitting."""
    eating(parser)
    option = parser.add_argument
    option("--sitting", default="dinner", choices=SITTINGS, help="what is cooked (default dinner)")
    option("--seconds", type=float, default=10.0, metavar="S", help="longest time to think (default 10)")


def count(parser: common.Parser) -> None:
    """How many dinners are asked for."""
    parser.add_argument("--count", type=int, default=1, metavar="K", help="how many different dinners (default 1)")


def eating(parser: common.Parser) -> None:
    """Who eats, and what holds for them at every sitting."""
    option = parser.add_argument
    option("--people", type=int, default=1, metavar="N", help="people who share the dish (default 1)")
    common.profile(parser)
    option("--protein", type=float, metavar="G", help="protein to aim at a person, g (default: 20 for a dinner)")
    option("--protein-floor", type=float, metavar="G", help="protein a person, at least, g (default: 12 for a dinner)")
    option("--minutes", type=int, metavar="M", help="most minutes to cook")
    common.eaters(parser)
    option("--without", action="append", default=[], metavar="FOOD", help="a food to leave out; may be repeated")
    option("--use", action="append", default=[], metavar="FOOD", help="a food that must be in it; may be repeated")
    option("--dislike", action="append", default=[], metavar="FOOD", help="only where nothing else is as good")
    option("--lysine", type=int, default=0, metavar="MG", help="least lysine a person, mg (default: none asked)")
    common.tolerance(parser)
    option("--rings", type=int, default=2, metavar="N", help="rings of the stove, 1 to 4 (default 2)")
    option("--no-equipment", metavar="A,B", help="what the kitchen lacks, such as oven,blender")
    option("--use-shared", action="store_true", help="use what belongs to others too")
