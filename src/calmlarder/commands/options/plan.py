"""Options of `plan`."""

from calmlarder.commands.options import common
from calmlarder.commands.options.evening import at_home, eating, groups_of, log_that_counts


def add(commands: common.Commands) -> None:
    """The command."""
    plan = common.command(commands, "plan", "plan:plan", "the next meals together, so that least is wasted")
    plan.usage = "%(prog)s [--days D | --meals LIST] [--people N] [--minutes M] [--use FOOD] [more options]"
    groups = groups_of(plan)
    which = groups.first.add_mutually_exclusive_group()
    words = 'such as "tonight, tomorrow packed, sat dinner 30min for 4"'
    which.add_argument("--meals", "--sittings", dest="sittings", metavar="LIST", help=words)
    which.add_argument("--days", type=int, metavar="D", help="dinner each day, packed lunch from tomorrow (default 3)")
    eating(groups)
    groups.meal.add_argument(
        "--buy", type=int, default=3, metavar="K", help="most things to suggest buying (default 3)"
    )
    groups.run.add_argument("--seconds", type=float, metavar="S", help="longest time to think (default 20)")
    groups.run.add_argument(
        "--work", type=int, metavar="N", help="think for N rounds, not by the clock: the same plan each time (try 20)"
    )
    plan.set_defaults(sitting="dinner", count=1)
    log_that_counts(groups)
    at_home(plan, groups)
    common.today(groups.run)
    common.tables(groups.home)
    common.json(groups.run)
