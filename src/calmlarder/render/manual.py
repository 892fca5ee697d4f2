"""The manual page in roff (man macros), from what the parser says of itself."""

from collections.abc import Iterator
from typing import NamedTuple

from calmlarder import __version__
from calmlarder.render.caution import CAUTION
from calmlarder.render.plain_signs import plain_words

_EXIT = (
    ("0", "done"),
    ("2", "the input or the use is wrong"),
    ("3", "nothing meets the limits"),
    ("70", "the program found itself at fault and shows nothing"),
)


class Option(NamedTuple):
    """An option or argument as it is typed, and what it does."""

    typed: str
    about: str


class Command(NamedTuple):
    """A command, what it takes, and the commands behind it."""

    name: str
    about: str
    options: tuple[Option, ...]
    commands: "tuple[Command, ...]"


def manual_page(whole: Command) -> str:
    """The page of all commands."""
    lines = [
        f'.TH CALMLARDER 1 "" "calmlarder {__version__}"',
        ".SH NAME",
        f"calmlarder \\- {_text(whole.about)}",
        ".SH SYNOPSIS",
        r".B calmlarder",
        "[options] [command]",
        ".SH OPTIONS",
        *_options(whole.options),
        ".SH COMMANDS",
    ]
    for command in whole.commands:
        lines += _command(command)
    lines += [".SH EXIT STATUS"]
    lines += [line for status, means in _EXIT for line in (".TP", status, means)]
    lines += [".SH CAUTIONS", _text(CAUTION)]
    return "\n".join(lines) + "\n"


def _command(command: Command) -> Iterator[str]:
    if command.commands:
        for one in command.commands:
            yield from _command(one)
        return
    yield f'.SS "{_text(command.name)}"'
    yield _text(f"{command.about[:1].upper()}{command.about[1:]}.")
    yield from _options(command.options)


def _options(options: tuple[Option, ...]) -> Iterator[str]:
    for option in options:
        yield from (".TP", f"\\fB{_text(option.typed)}\\fR", _text(option.about) or r"\&")


def _text(words: str) -> str:
    """Words that roff sets as they are: no request, no escape (groff_man(7))."""
    ascii_words = "".join(sign if sign.isascii() else plain_words(sign) for sign in " ".join(words.split()))
    plain = ascii_words.replace("\\", r"\e").replace("-", r"\-").replace('"', r"\(dq").replace("'", r"\(aq")
    return f"\\&{plain}" if plain[:1] == "." else plain
