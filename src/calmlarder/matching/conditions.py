"""Words for the state a thing is in: what has to go within a day, and what has to go in the bin."""

import re

USE_SOON = (
    "past its best", "past their best", "on its way out", "on their way out", "on its last legs", "going off",
    "going soft", "going limp", "going over", "needs using", "need using", "needs eating", "soft", "bendy", "wilting",
    "wilted", "limp", "floppy", "tired", "wrinkly", "wrinkled", "bruised", "sad", "drooping", "droopy", "rubbery",
    "sprouting", "yellowing", "browning", "squishy",
)  # fmt: skip
BIN = (
    "mouldy", "moldy", "mould", "mold", "slimy", "rotten", "rotting", "gone off", "furry", "smells off",
    "smells bad", "sour smelling", "fizzing",
)  # fmt: skip
_SPLIT = re.compile(r"[,;]")


def take_condition(text: str, is_name: "frozenset[str] | set[str]") -> tuple[str | None, bool, str]:
    """The condition words of a plain text, whether they mean the bin, and the text without them.

    `is_name` holds names that begin with such a word (`soft tofu`): there the word belongs to the food.
    """
    for words, to_bin in ((BIN, True), (USE_SOON, False)):
        for word in words:
            found = re.search(rf"(?<![\w-]){word}(?![\w-])", text)
            if found and not _part_of_name(text, found.start(), is_name):
                rest = f"{text[: found.start()]} {text[found.end() :]}"
                further, worse, rest = take_condition(rest, is_name)
                return (f"{word}, {further}" if further else word), to_bin or worse, " ".join(rest.split())
    return None, False, text


def _part_of_name(text: str, start: int, names: "frozenset[str] | set[str]") -> bool:
    following = _SPLIT.split(text[start:])[0].split()
    return any(" ".join(following[:size]) in names for size in range(2, len(following) + 1))
