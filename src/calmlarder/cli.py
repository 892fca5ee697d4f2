"""The command line: options in, exit status out. 0 done, 2 wrong input or use, 3 no dinner meets the limits."""

import atexit
import gc
import os
import sys
import traceback
from collections.abc import Sequence
from contextlib import suppress
from importlib import import_module
from io import TextIOWrapper

from calmlarder.render.plain_signs import JSON, WORDS, is_unicode

_FAULT = 70  # the program found itself at fault: sysexits.h, EX_SOFTWARE
# Objects made before waste in rings is looked for, and rounds before old ones are: tables and models hold some hundred
# thousand that stay, and looking through them again and again took a tenth of a start. Ours, measured.
_WASTE_SEEN_AFTER = (600_000, 10, 100)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and give its exit status."""
    _open_what_is_closed()
    gc.set_threshold(*_WASTE_SEEN_AFTER)
    # We have no plugins: to look for them, pydantic reads what every package of the environment says of itself.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    # At the end the system takes all memory back at once; to look for rings in it first takes a seventh of a start.
    atexit.unregister(gc.freeze)
    atexit.register(gc.freeze)
    try:
        status = _run(arguments)
        sys.stdout.flush()
    except BrokenPipeError:
        _say_no_more()
        return 0
    except OSError as error:
        # What was to be kept is kept, or was said to be not: only the words are lost.
        _say_no_more()
        _complain(
            f"the output cannot be written ({error.strerror or error}); what was asked for may be done all the same"
        )
        return 2
    return status


def _run(arguments: Sequence[str] | None) -> int:
    from calmlarder.commands.given.common import given  # behind the threshold: they make much that stays
    from calmlarder.commands.parser import command_in, parser
    from calmlarder.problems import CannotGoOn

    _write_what_can_be_written(as_json=False)
    typed = sys.argv[1:] if arguments is None else arguments
    options = parser(command_in(typed)).parse_args(typed)
    _write_what_can_be_written(as_json=getattr(options, "json", False))
    # Each command imports what it needs and no more: `match` never waits for the solver.
    module, _, function = options.run.partition(":")
    run = getattr(import_module(f"calmlarder.commands.{module}"), function)
    try:
        return int(run(given(run, options)))
    except CannotGoOn as stop:
        for problem in stop.problems:
            _complain(str(problem))
        return 2
    except (KeyboardInterrupt, EOFError):  # Ctrl-D at a question is no answer
        _complain("stopped")
        return 130
    except OSError:
        raise
    except Exception as error:
        frame = traceback.extract_tb(error.__traceback__)[-1]
        where = f"{os.path.basename(frame.filename)}:{frame.lineno}"
        _complain(f"it is at fault ({type(error).__name__}: {error}, at {where}); what was kept is kept")
        return _FAULT
    finally:
        _tell_unread()


def _write_what_can_be_written(as_json: bool) -> None:
    """Where the output has no Unicode (a code page, LC_ALL=C), signs are written in ASCII and never end in an error."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper) and not is_unicode(stream.encoding):
            stream.reconfigure(errors=JSON if as_json else WORDS)


def _tell_unread() -> None:
    """What of the larder could not be read, where one was opened."""
    unread = sys.modules.get("calmlarder.store.unread")
    for words in unread.take() if unread else ():
        _complain(words)


def _complain(words: str) -> None:
    with suppress(OSError):  # where even this cannot be said, the exit status says it
        print(f"calmlarder: {words}", file=sys.stderr, flush=True)


def _open_what_is_closed() -> None:
    """Closed standard streams lead nowhere: else the next file opened, such as the store, takes their place."""
    for number, name in enumerate(("stdin", "stdout", "stderr")):
        if getattr(sys, name) is None:
            with suppress(OSError):
                os.fstat(number)
                continue
            setattr(sys, name, os.fdopen(os.open(os.devnull, os.O_RDWR), "r" if number == 0 else "w"))


def _say_no_more() -> None:
    """What is still to be written goes nowhere, and the interpreter does not complain of it at its end."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())
    os.close(nowhere)
