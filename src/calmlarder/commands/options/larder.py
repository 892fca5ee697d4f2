"""Options of `larder` and `freeze`."""

from calmlarder.commands.options import common
from calmlarder.tables.vocabulary import HOWS, WHYS

_WORDS = (
    ("list", "what is there, what goes first before what keeps"),
    ("add", "keep one line"),
    ("answer", "answer a line that waits: the number of a choice, or a food"),
    ("words", "what words mean in this house: answers that are remembered"),
    ("forget", "forget what a word means here"),
    ("edit", "write an item again"),
    ("remove", "take items out"),
    ("freeze", "put items into the freezer"),
    ("thaw", "take items out of the freezer, to be eaten within a day"),
    ("import", "keep the lines of a file"),
    ("export", "write all items as lines that import reads"),
    ("undo", "take the last change back"),
    ("redo", "do it again"),
    ("restore", "set a damaged file aside and start from the newest copy that is whole"),
)
_WHO = "who ate it, for the log; may be repeated; everyone shares it, nobody logs nothing (default: the one who eats)"


def add(commands: common.Commands) -> None:
    """Both commands."""
    larder = commands.add_parser("larder", help="the kept larder", allow_abbrev=False)
    kept = larder.add_subparsers(dest="larder_command", required=True, metavar="COMMAND")
    for name, help_text in _WORDS:
        parser = common.command(kept, name, "larder:larder", help_text)
        common.home(parser)
        if name != "restore":
            common.today(parser)
            common.tables(parser)
        if name != "export":
            common.json(parser)
        if name in {"add", "edit"}:
            if name == "edit":
                parser.add_argument("id", type=int, metavar="ID")
            parser.add_argument("text", nargs="+", metavar="TEXT")
        elif name == "answer":
            parser.add_argument("id", type=int, metavar="N")
            parser.add_argument("choice", nargs="+", metavar="CHOICE", help="several are several foods")
        elif name == "forget":
            parser.add_argument("words", nargs="+", metavar="WORD")
        elif name in {"remove", "freeze", "thaw"}:
            parser.add_argument("ids", type=int, nargs="+", metavar="ID")
            if name == "remove":
                _ending(parser)
        elif name == "export":
            parser.add_argument(
                "--ics",
                nargs="?",
                const="-",
                metavar="FILE",
                help="use-by and best-before days and the last plan's meals as iCalendar",
            )
        elif name == "restore":
            parser.add_argument("--yes", action="store_true", help="do not ask")
        elif name == "import":
            parser.add_argument("file", metavar="FILE", help="- reads standard input")
    freeze = common.command(commands, "freeze", "freeze:freeze", "what to freeze today, how, and for how long")
    common.larder_file(freeze)
    freeze.add_argument("--within", type=int, default=1, metavar="DAYS", help="days left at most (default 1)")
    _common(freeze)


def _ending(parser: common.Parser) -> None:
    """What became of lots."""
    parser.add_argument("--how", default="eaten", choices=HOWS, help="what became of it (default eaten)")
    parser.add_argument("--why", choices=WHYS, help="why it was thrown")
    parser.add_argument("--grams", type=float, metavar="G", help="only a part of the item")
    parser.add_argument("--who", action="append", metavar="NAME", help=_WHO)
    parser.add_argument("--when", metavar="TIME", help="when it was eaten (default: now; with --today 18:00)")


def _common(parser: common.Parser) -> None:
    common.home(parser)
    common.today(parser)
    common.tables(parser)
    common.json(parser)
