"""A question before what no undo, or only a whole one, reaches behind."""

import sys

from calmlarder.problems import CannotGoOn, Problem


def is_meant(words: str, question: str) -> bool:
    """The same of what may be meant as it stands: where nobody can be asked it is only said."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        print(words, file=sys.stderr)
        return True
    print(words)
    return input(question).strip().lower() in {"y", "yes"}


def is_sure(yes: bool, words: str, question: str) -> bool:
    """Whether to go on: said by --yes, or at a terminal. Raises CannotGoOn where nobody can be asked."""
    if yes:
        return True
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        raise CannotGoOn([Problem(where="--yes", what=words.rstrip("."), remedy="say --yes where that is meant")])
    print(words)
    return input(question).strip().lower() in {"y", "yes"}
