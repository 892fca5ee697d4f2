"""`calmlarder browser`: the screens in a browser on this machine."""

from calmlarder.commands.given.home import Browser
from calmlarder.commands.inputs import day_of, household_of
from calmlarder.problems import CannotGoOn, Problem


def browser(options: Browser) -> int:
    """Say the address, and serve until Ctrl-C. Raises CannotGoOn where it cannot, or more is open than was meant."""
    try:
        from calmlarder.browser.serving import Serving, is_loopback, listening
    except ImportError:
        remedy = "install them with `pip install 'calmlarder[browser]'`"
        raise CannotGoOn([Problem(where="browser", what="needs libraries that are not here", remedy=remedy)]) from None
    if not is_loopback(options.address) and not options.open_to_network:
        what = (
            f"{options.address} is no address of this machine alone: whoever reaches it and learns the page's secret "
            "address reads and changes the larder, the log and how guts felt, and nothing on the way is encrypted"
        )
        remedy = "leave --address out, or add --open-to-network where that is meant"
        raise CannotGoOn([Problem(where="--address", what=what, remedy=remedy)])
    day_of(options)  # what is wrong is said here, and not in the browser
    with household_of(options) as household:
        household.lots()
    words = [
        word
        for name, value in (("home", options.home), ("today", options.today), ("tables", options.tables))
        if value
        for word in (f"--{name}", value)
    ]
    serving = Serving(words, listening(options.address, options.port))
    print(f"Open {serving.url}", flush=True)
    print("The address is a secret: who has it has the larder. One window at a time; Ctrl-C ends it.", flush=True)
    serving.run()
    return 0
