"""Options of `tables`."""

from calmlarder.commands.options import common
from calmlarder.tables.vocabulary import KINDS, ROLES


def add(commands: common.Commands) -> None:
    """Check, show, mine add."""
    tables = commands.add_parser("tables", help="work on the ingredient tables", allow_abbrev=False)
    table_commands = tables.add_subparsers(dest="table_command", required=True, metavar="COMMAND")
    check = common.command(table_commands, "check", "tables:check", "say everything that is wrong in them")
    show = common.command(table_commands, "show", "tables:show", "one food whole, with its sources")
    show.add_argument("food", nargs="+", metavar="FOOD")
    mine = table_commands.add_parser("mine", help="foods you have made", allow_abbrev=False)
    mine_commands = mine.add_subparsers(dest="mine_command", required=True, metavar="COMMAND")
    made = common.command(mine_commands, "add", "tables:add", "describe one by its ingredients")
    made.add_argument("name", metavar="NAME")
    made.add_argument(
        "--from", dest="ingredients", required=True, metavar="LINES", help='"50 g basil; 20 g walnuts; …"'
    )
    made.add_argument("--weighs", type=float, metavar="G", help="what the whole weighs when done (default: its parts)")
    made.add_argument("--kind", default="sauce", choices=KINDS, metavar="KIND", help="kind of food (default sauce)")
    made.add_argument("--role", default="sauce", choices=ROLES, metavar="ROLE", help="what it can be in a dish")
    for parser in (check, show, made):
        common.tables(parser)
