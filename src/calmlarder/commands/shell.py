"""`calmlarder completion SHELL` and `calmlarder manual`: both are made from the parser."""

import argparse
from collections.abc import Iterator

from calmlarder.commands.given.common import Place
from calmlarder.commands.given.home import Completion
from calmlarder.commands.parser import parser
from calmlarder.render.manual import Command, Option, manual_page


def completion(options: Completion) -> int:
    """A completion script for the shell."""
    import shtab

    whole = parser()
    for action in _actions(whole):
        kind = {"FILE": shtab.FILE, "DIR": shtab.DIRECTORY}.get(str(action.metavar))
        if kind is not None:
            action.complete = kind  # type: ignore[attr-defined]
    print(shtab.complete(whole, shell=options.shell))
    return 0


def _actions(one: argparse.ArgumentParser) -> Iterator[argparse.Action]:
    for action in one._actions:
        yield action
        if isinstance(action, argparse._SubParsersAction):
            for sub in action.choices.values():
                yield from _actions(sub)


def manual(options: Place) -> int:
    """The manual page in roff."""
    print(manual_page(_command("calmlarder", "", parser())), end="")
    return 0


def _command(name: str, about: str, one: argparse.ArgumentParser) -> Command:
    """A command with what stands behind it."""
    arguments, commands = [], []
    # argparse has no other way to ask a parser what it takes; shtab reads the same.
    for action in one._actions:
        if isinstance(action, argparse._SubParsersAction):
            told = {choice.dest: choice.help or "" for choice in action._choices_actions}
            commands += [_command(f"{name} {word}", told.get(word, ""), sub) for word, sub in action.choices.items()]
        elif action.help != argparse.SUPPRESS and action.dest != "help":
            arguments.append(_option(action))
    return Command(name, one.description or about, tuple(arguments), tuple(commands))


def _option(action: argparse.Action) -> Option:
    takes = action.nargs != 0
    value = action.metavar or (",".join(map(str, action.choices)) if action.choices else action.dest.upper())
    names = action.option_strings or [str(value)]
    shown = f" {value}" if takes and action.option_strings else ""
    return Option(", ".join(f"{name}{shown}" for name in names), action.help or "")
