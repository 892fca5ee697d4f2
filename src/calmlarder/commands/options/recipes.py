"""Options of `adapt`."""

from calmlarder.commands.options import common

FORMS = ("text", "markdown", "jsonld")


def add(commands: common.Commands) -> None:
    """A recipe brought under the caps."""
    adapt = common.command(commands, "adapt", "adapt:adapt", "the smallest change that makes a recipe fit the limits")
    adapt.add_argument(
        "file", metavar="FILE", help="text, Markdown, or schema.org/Recipe JSON-LD; - reads standard input"
    )
    adapt.add_argument("--serves", type=int, metavar="N", help="how many it serves (default: what the recipe says)")
    adapt.add_argument("--people", type=int, metavar="N", help="people who eat all of it at one sitting")
    common.profile(adapt)
    common.sitting(adapt)
    common.eaters(adapt)
    common.tolerance_at_home(adapt)
    common.home(adapt)
    adapt.add_argument("--format", choices=FORMS, help="form of the changed recipe (default: as it came in)")
    common.tables(adapt)
    common.json(adapt)
