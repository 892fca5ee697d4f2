"""Options of `browser`."""

from calmlarder.commands.options import common


def add(commands: common.Commands) -> None:
    """The command."""
    browser = common.command(commands, "browser", "browser:browser", "the screens in a browser on this machine")
    browser.add_argument("--port", type=int, default=0, metavar="N", help="default: a free one")
    browser.add_argument("--address", default="127.0.0.1", metavar="IP", help="default 127.0.0.1: this machine alone")
    browser.add_argument("--open-to-network", action="store_true", help="let --address be one that others reach")
    for more in (common.home, common.today, common.tables):
        more(browser)
