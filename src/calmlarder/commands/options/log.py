"""Options of `cooked`, `ate` and `eaten`."""

from calmlarder.commands.options import common


def add(commands: common.Commands) -> None:
    """All three."""
    cooked = common.command(commands, "cooked", "cooked:cooked", "log a dinner that `tonight` proposed, box the rest")
    cooked.add_argument("number", nargs="?", type=int, default=1, metavar="K", help="which of them (default 1)")
    cooked.add_argument("--boxes", type=int, default=0, metavar="N", help="portions that go into boxes (default 0)")
    cooked.add_argument(
        "--weighed",
        action="append",
        default=[],
        metavar="ITEM=G",
        help="what the scale showed, of an item by its number, or of a food by its name; may be repeated",
    )
    cooked.add_argument("--when", metavar="TIME", help="HH:MM or 2026-03-12T18:30 (default: now; with --today 18:00)")
    ate = common.command(commands, "ate", "ate:ate", "log what you ate; it counts for the next hours")
    ate.add_argument("text", nargs="+", metavar="LINE", help='such as "200 ml orange juice"')
    ate.add_argument("--when", metavar="TIME", help="HH:MM or 2026-03-12T18:30 (default: now; with --today 18:00)")
    ate.add_argument("--who", default="me", metavar="NAME", help="who ate it (default me; everyone for all)")
    eaten = common.command(commands, "eaten", "ate:eaten", "what was eaten in the last days")
    eaten.add_argument("--days", type=int, default=3, metavar="N", help="how many days back (default 3)")
    for parser in (cooked, ate, eaten):
        common.home(parser)
        common.today(parser)
        if parser is not eaten:  # it shows what was written down when it was eaten
            common.tables(parser)
        common.json(parser)
