"""Options of `backup` and `restore`."""

from calmlarder.commands.options import common


def add(commands: common.Commands) -> None:
    """Both commands."""
    backup = common.command(commands, "backup", "backup:backup", "write everything the household keeps to one file")
    backup.add_argument("file", metavar="FILE", help="a file that is not there yet; - writes standard output")
    restore = common.command(commands, "restore", "backup:restore", "put a backup in place of what is kept")
    restore.add_argument("file", metavar="FILE", help="what `backup` wrote; - reads standard input")
    restore.add_argument("--yes", action="store_true", help="do not ask")
    for parser in (backup, restore):
        for more in (common.home, common.tables, common.json):
            more(parser)
