"""Text of strangers without what could steer a terminal: escape sequences, control and direction signs."""

import re

# ECMA-48 sequences, whole, so that no `[31m` is left behind; each alternative stops at the next escape.
_ESCAPE = re.compile(
    r"(?:\x1b\[|\x9b)[0-?]{0,64}[ -/]{0,8}[@-~]?|(?:\x1b[\]PX^_]|[\x9d\x90\x98\x9e\x9f])[^\x07\x1b\x9c\n]{0,2000}"
    r"(?:\x07|\x1b\\|\x9c)|\x1b[ -~]?"
)
_LINE_ENDS = re.compile(r"\r\n?|[\x0b\x0c\x85\u2028\u2029]")


def clean(text: str) -> str:
    """The text with `\\n` as its only control sign; other spaces become a plain space, other unprintable signs go."""
    if text.isascii() and text.replace("\n", "").isprintable():
        return text
    text = _LINE_ENDS.sub("\n", _ESCAPE.sub("", text))
    signs = {ord(sign): _instead(sign) for sign in set(text) if sign != "\n" and not sign.isprintable()}
    return text.translate(signs) if signs else text


def clean_line(text: str) -> str:
    """One cleaned line with single spaces."""
    return " ".join(clean(text).split())


def _instead(sign: str) -> str | None:
    return " " if sign.isspace() else None
