"""Random and mangled lines through the reader: no exception, and no line takes long.

    python tests/long/test_lines.py [COUNT] [SEED]

Lines are names of the tables with amounts, dates and owners, then cut, doubled, shuffled and misspelt, and plain noise.
No line may raise, take longer than a second of processor time, or be matched without a lot.
"""

import random
import sys
import time
from collections import Counter
from datetime import date

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped

TODAY = date(2026, 3, 11)
SLOW_SECONDS = 1.0
AMOUNTS = (
    "", "2", "x3", "half", "1/2", "500g", "1.5 kg", "a bag of", "2 tins", "loads of", "a bit of", "pack of 6", "-3",
    "0", "1e9", "½", "2 x 400g", "12oz/340g", "50%", "a dozen", "half left",
)  # fmt: skip
ENDS = (
    "", "ub fri", "use by 31 feb", "(off)", "(sam's)", "- jess", "opened mon", "bbe 13/3", "3 days left", "for the cat",
    "going slimy", "in the freezer", "use by xyz", "best before next friday", ", soft", "(", ")", "#", "not mine",
)  # fmt: skip
SIGNS = "abcdefghijklmnopqrstuvwxyz0123456789 '()-/.,%&+#½é\t\u200b\x1b[]:;!?"


def line_of(rng: random.Random, names: list[str]) -> str:
    """One line as somebody in a hurry, or a cat on the keyboard, would type it."""
    if rng.random() < 0.1:
        return "".join(rng.choice(SIGNS) for _ in range(rng.randrange(120)))
    parts = [rng.choice(AMOUNTS), *rng.sample(names, rng.choice((1, 1, 1, 2, 3))), rng.choice(ENDS)]
    if rng.random() < 0.3:
        rng.shuffle(parts)
    text = list(rng.choice((" ", " ", ", ", " and ")).join(parts))
    for _ in range(rng.choice((0, 0, 1, 2, 8))):
        at = rng.randrange(len(text)) if text else 0
        change = rng.randrange(4)
        if change == 0 and text:
            del text[at]
        elif change == 1:
            text.insert(at, rng.choice(SIGNS))
        elif change == 2 and len(text) > 1:
            text[at - 1], text[at] = text[at], text[at - 1]
        elif text:
            text[at:at] = text[at : at + rng.randrange(20)]
    return "".join(text)


def failures(count: int, seed: int) -> list[str]:
    """What went wrong with so many lines; prints what became of them."""
    rng = random.Random(seed)
    tables = load_tables([shipped("ingredient_tables")])
    names = sorted({food.name for food in tables.foods} | {row.name for row in tables.names})
    reader = LarderReader(tables, TODAY)
    outcomes: Counter[str] = Counter()
    found: list[str] = []
    longest = 0.0
    for number in range(count):
        text = line_of(rng, names)
        start = time.process_time()
        try:
            reading = reader.read(text, "line")
        except Exception as error:
            found.append(f"line {number}: {text!r} raised {error!r}")
            continue
        took = time.process_time() - start
        longest = max(longest, took)
        if took > SLOW_SECONDS:
            found.append(f"line {number}: {text!r} took {took:.1f} s")
        outcomes["nothing" if reading is None else "problem" if reading.problem else reading.match.outcome] += 1
        if reading is not None and (reading.match.outcome == "matched") != bool(reading.lots):
            found.append(f"line {number}: {text!r} is {reading.match.outcome} with {len(reading.lots)} lots")
    print(f"{count} lines, seed {seed}: {dict(outcomes)}; longest {longest * 1000:.0f} ms; {len(found)} failures")
    return found


def test_no_line_breaks_the_reader() -> None:
    assert failures(300_000, 1) == []


if __name__ == "__main__":
    wrong = failures(*(int(word) for word in [*sys.argv[1:], "300000", "1"][:2]))
    print("\n".join(wrong))
    sys.exit(bool(wrong))
