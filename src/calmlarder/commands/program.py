"""`calmlarder` with nothing behind it: the terminal program."""

import os
import sys
from datetime import date

from calmlarder.commands.given.common import Place
from calmlarder.commands.inputs import day_of, folders_of, home_of, tables_of
from calmlarder.problems import CannotGoOn, Problem


def program(options: Place) -> int:
    """Open the screens, where there is a terminal for them."""
    # Behind `calmlarder browser` the terminal is a page: textual-serve says so by the driver it asks for.
    in_browser = os.environ.get("TEXTUAL_DRIVER", "").startswith("textual.drivers.web_driver")
    if not in_browser and not (sys.stdin.isatty() and sys.stdout.isatty()):
        remedy = "name a command: `calmlarder --help` lists them"
        raise CannotGoOn([Problem(where="the program", what="needs a terminal for its screens", remedy=remedy)])
    if os.environ.get("TERM") == "dumb" and not in_browser:
        remedy = "name a command (`calmlarder --help` lists them), or set TERM to what the terminal is"
        raise CannotGoOn([Problem(where="the program", what="cannot draw on a dumb terminal", remedy=remedy)])
    from calmlarder.tui.app import LarderApp

    home = home_of(options)
    clock = date.today if options.today is None else None  # a day that was asked for stays
    app = LarderApp(home, tables_of(options), day_of(options), folders_of(options), clock)
    app.run()
    return app.return_code or 0
