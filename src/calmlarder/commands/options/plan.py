"""Options of `plan`."""

from calmlarder.commands.options import common
from calmlarder.commands.options.dinner import at_home, eating, log_that_counts


def add(commands: common.Commands) -> None:
    """The command."""
    plan = common.command(commands, "plan", "plan:plan", "the next sittings together, so that least is wasted")
    option = plan.add_argument
    which = plan.add_mutually_exclusive_group()
    which.add_argument("--sittings", metavar="LIST", help='such as "tonight, tomorrow packed, sat dinner 30min for 4"')
    which.add_argument("--days", type=int, metavar="D", help="dinner each day, packed lunch from tomorrow (default 3)")
    eating(plan)
    option("--buy", type=int, default=3, metavar="K", help="most things to suggest buying (default 3)")
    option("--seconds", type=float, default=20.0, metavar="S", help="longest time to think (default 20)")
    plan.set_defaults(sitting="dinner", count=1)
    log_that_counts(plan)
    at_home(plan)
    for more in (common.today, common.tables, common.json):
        more(plan)
