"""Options of `ate` and `eaten`."""

from calmlarder.commands.options import common


def add(commands: common.Commands) -> None:
    """Both commands."""
    ate = common.command(commands, "ate", "ate:ate", "log what you ate; it counts for the next hours")
    ate.add_argument("text", nargs="+", metavar="LINE", help='such as "200 ml orange juice"')
    ate.add_argument("--when", metavar="TIME", help="HH:MM or 2026-03-12T18:30 (default: now; with --today 18:00)")
    ate.add_argument("--who", default="me", metavar="NAME", help="who ate it (default me; everyone for all)")
    eaten = common.command(commands, "eaten", "ate:eaten", "what was eaten in the last days")
    eaten.add_argument("--days", type=int, default=3, metavar="N", help="how many days back (default 3)")
    for parser in (ate, eaten):
        common.home(parser)
        common.today(parser)
        common.tables(parser)
        common.json(parser)
