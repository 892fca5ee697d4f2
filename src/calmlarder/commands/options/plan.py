"""Options of `plan`."""

from calmlarder.commands.options import common
from calmlarder.commands.options.dinner import log_that_counts


def add(commands: common.Commands) -> None:
    """The command."""
    plan = common.command(commands, "plan", "plan:plan", "the next sittings together, so that least is wasted")
    option = plan.add_argument
    which = plan.add_mutually_exclusive_group()
    which.add_argument("--sittings", metavar="LIST", help='such as "tonight, tomorrow packed, sat dinner 30min for 4"')
    which.add_argument("--days", type=int, metavar="D", help="dinner each day, packed lunch from tomorrow (default 3)")
    option("--people", type=int, default=1, metavar="N", help="people at each sitting (default 1)")
    common.profile(plan)
    option("--protein", type=float, metavar="G", help="least protein a person, g (default: 20 for a dinner)")
    option("--minutes", type=int, metavar="M", help="most minutes to cook at each sitting")
    common.eaters(plan)
    option("--without", action="append", default=[], metavar="FOOD", help="a food to leave out; may be repeated")
    option("--use", action="append", default=[], metavar="FOOD", help="a food for the first sitting; may be repeated")
    option("--use-shared", action="store_true", help="use what belongs to others too")
    option("--buy", type=int, default=3, metavar="K", help="most things to suggest buying (default 3)")
    option("--seconds", type=float, default=20.0, metavar="S", help="longest time to think (default 20)")
    plan.set_defaults(sitting="dinner", count=1)
    log_that_counts(plan)
    common.larder_file(plan)
    for more in (common.home, common.today, common.tables, common.json):
        more(plan)
