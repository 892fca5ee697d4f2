"""Options of `waste`, `feel` and `days`."""

from calmlarder.commands.options import common


def add(commands: common.Commands) -> None:
    """All three."""
    waste = common.command(
        commands, "waste", "waste:waste", "what was thrown, what was used in time, what would help most"
    )
    waste.add_argument("--weeks", type=int, default=8, metavar="N", help="how many weeks back (default 8)")
    feel = common.command(commands, "feel", "days:feel", "say how your gut feels, 0 calm to 10 the worst you know")
    scores(feel)
    days = common.command(commands, "days", "days:days", "days side by side: what you ate of each group, how it felt")
    days.add_argument("--days", type=int, default=28, metavar="N", help="how many days back (default 28)")
    days.add_argument("--svg", metavar="FILE", help="write the plot as a picture, too")
    for parser in (feel, days):
        parser.add_argument("--who", default="me", metavar="NAME", help="whose (default me)")
    for parser in (waste, feel, days):
        common.home(parser)
        common.today(parser)
        if parser is waste:
            common.tables(parser)
        common.json(parser)


def scores(parser: common.Parser) -> None:
    """One number, or four: pain, bloating, wind and urgency; a note and a time."""
    words = "one number in your own scale, or four: pain, bloating, wind, urgency"
    parser.add_argument("score", type=int, nargs="+", metavar="0..10", help=words)
    parser.add_argument("--note", default="", metavar="TEXT", help="a few words to it")
    parser.add_argument("--when", metavar="TIME", help="HH:MM or 2026-03-12T18:30 (default: now; with --today 18:00)")
