"""Options of `share`."""

from calmlarder.commands.options import common

WHATS = ("dinner", "plan", "recipe", "shopping", "freezer")
FORMATS = ("text", "markdown", "jsonld", "html")


def add(commands: common.Commands) -> None:
    """The command."""
    share = common.command(
        commands, "share", "share:share", "tonight's dinner, the plan, a recipe or a list to pass on"
    )
    share.add_argument(
        "what",
        nargs="?",
        default="dinner",
        choices=WHATS,
        help="the dinner proposed or cooked last, the last plan, the recipe adapted last, what to buy for the plan, "
        "what the freezer holds (default dinner)",
    )
    share.add_argument(
        "--format", default="text", choices=FORMATS, help="default text; html is a page that needs nothing"
    )
    share.add_argument("--number", type=int, default=1, metavar="K", help="which dinner of several (default 1)")
    share.add_argument("--out", metavar="FILE", help="write a file that must not be there yet (default: show it)")
    for more in (common.home, common.today, common.tables):
        more(share)
