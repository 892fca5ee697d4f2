"""Options of `limit`, `swap` and `match`."""

from calmlarder.commands.options import common


def add(commands: common.Commands) -> None:
    """All three."""
    limit = common.command(commands, "limit", "limit:limit", "how much of one food fits one sitting")
    limit.add_argument("food", nargs="+", metavar="FOOD")
    common.profile(limit)
    common.tolerance_at_home(limit)
    common.home(limit)
    swap = common.command(commands, "swap", "swap:swap", "what can stand in for a food")
    swap.add_argument("food", nargs="+", metavar="FOOD")
    place = swap.add_mutually_exclusive_group()
    place.add_argument("--in", dest="pattern", metavar="PATTERN", help="a dish pattern it stands in, such as stir-fry")
    place.add_argument("--in-recipe", dest="recipe", metavar="FILE", help="a recipe it stands in; its rest counts too")
    swap.add_argument("--amount", type=float, metavar="G", help="grams for one person (default: a usual portion)")
    common.profile(swap)
    common.eaters(swap)
    common.tolerance_at_home(swap)
    swap.add_argument("--from-larder", action="store_true", help="only what the kept larder holds enough of")
    common.home(swap)
    common.today(swap)
    match = common.command(commands, "match", "match:match", "what a larder line means")
    match.add_argument("text", nargs="+", metavar="TEXT", help="the words of one line, or - for many on standard input")
    common.today(match)
    for parser in (limit, swap, match):
        common.tables(parser)
        common.json(parser)
