"""Options of `limit`, `swap`, `plate` and `match`."""

from calmlarder.commands.options import common


def add(commands: common.Commands) -> None:
    """All four."""
    limit = common.command(commands, "limit", "limit:limit", "how much of one food fits one meal")
    limit.add_argument("food", nargs="+", metavar="FOOD")
    common.profile(limit)
    common.sitting(limit)
    common.at_table(limit)
    common.tolerance_at_home(limit)
    common.home(limit)
    swap = common.command(commands, "swap", "swap:swap", "what can stand in for a food")
    swap.add_argument("food", nargs="+", metavar="FOOD")
    place = swap.add_mutually_exclusive_group()
    place.add_argument("--in", dest="pattern", metavar="PATTERN", help="a dish pattern it stands in, such as stir-fry")
    place.add_argument("--in-recipe", dest="recipe", metavar="FILE", help="a recipe it stands in; its rest counts too")
    swap.add_argument("--amount", type=float, metavar="G", help="grams for one person (default: a usual portion)")
    common.profile(swap)
    common.sitting(swap)
    common.at_table(swap)
    common.eaters(swap)
    common.tolerance_at_home(swap)
    swap.add_argument("--from-larder", action="store_true", help="only what the kept larder holds enough of")
    common.home(swap)
    common.today(swap)
    plate = common.command(commands, "plate", "plate:plate", "what a plate brings, and whether it fits")
    plate.add_argument("text", nargs="*", metavar="TEXT", help='such as "170 g firm tofu"')
    plate.add_argument("--file", metavar="FILE", help="one line a food; - reads standard input")
    common.sitting(plate)
    plate.add_argument("--people", type=int, default=1, metavar="N", help="people who share it (default 1)")
    plate.add_argument(
        "--profile",
        metavar="P",
        help="which limits: elimination, careful, very-careful or roomy (default: as settled at home)",
    )
    common.at_table(plate)
    plate.add_argument("--who", default="me", metavar="NAME", help="whose log counts (default me)")
    plate.add_argument(
        "--dose", action="store_true", help="with today's dose of a challenge, weighed, in place of dinner's"
    )
    plate.add_argument("--at", metavar="TIME", help="when it is eaten (default: now; with --today 18:00)")
    plate.add_argument("--weighed", action="store_true", help="the amounts were weighed, not judged by eye")
    plate.add_argument("--log", action="store_true", help="and log it as eaten, as one entry")
    common.tolerance_at_home(plate)
    common.home(plate)
    common.today(plate)
    match = common.command(commands, "match", "match:match", "what a larder line means")
    match.add_argument("text", nargs="+", metavar="TEXT", help="the words of one line, or - for many on standard input")
    common.today(match)
    for parser in (limit, swap, plate, match):
        common.tables(parser)
        common.json(parser)
