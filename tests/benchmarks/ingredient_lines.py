"""How well ingredient lines as pages write them are read; measure only.

Run: python tests/benchmarks/ingredient_lines.py LINES.tsv [all|even|odd] [--show]. The table has the columns line,
name, quantity and unit as labelled. An amount is right where its number is among those the labeller gave, or where
neither gives one. Foods are judged by hand from what `--show` prints.
"""

import csv
import re
import sys
import time
from pathlib import Path

from calmlarder.cookbook.line_amount import Quantity, measure_word
from calmlarder.cookbook.lines import LineReader
from calmlarder.matching.amounts.measures import UNIT_GRAMS
from calmlarder.matching.amounts.numbers_and_fractions import NUMBER, number
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped


def labelled(quantity: str) -> set[float]:
    """The numbers a labeller gave; `1#1$2` stands for one and a half."""
    text = re.sub(r"(\d+)\$(\d+)", r"\1/\2", quantity.replace("#", " ")).strip().lower()
    return {round(number(found[0]), 2) for found in re.finditer(NUMBER, text)}


def said(amounts: tuple[Quantity, ...]) -> set[float]:
    """Ends of each amount read, in grams and in the units a weight may have been given in."""
    ends = {end for amount in amounts for end in (amount.number.low, amount.number.high)}
    factors = {1.0, *(UNIT_GRAMS[unit] for unit in ("oz", "lb", "kg"))}
    return {round(end / factor, 2) for end in ends for factor in factors}


def amount_right(amounts: tuple[Quantity, ...], quantity: str, unit: str) -> bool:
    """Whether what was read is what the labeller saw."""
    if not quantity.strip():
        return not amounts or any(measure_word(word) == amounts[0].unit for word in unit.lower().split())
    wanted = labelled(quantity)
    main = said(amounts[:1])
    added = bool(amounts) and len(wanted) > 1 and amounts[0].number.low not in wanted
    return bool(amounts) and bool(main & wanted or (added and said(amounts) & wanted) or (added and "plus" in unit))


def main() -> None:
    """Count, and show each line with what it was read as."""
    with Path(sys.argv[1]).open(encoding="utf-8") as file:
        rows = list(csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE))
    which = sys.argv[2] if len(sys.argv) > 2 else "all"
    rows = rows if which == "all" else rows[(0 if which == "even" else 1) :: 2]
    reader = LineReader(load_tables([shipped("ingredient_tables")]))
    start = time.perf_counter()
    reads = [reader.read(row["line"]) for row in rows]
    spent = time.perf_counter() - start
    right = 0
    for row, read in zip(rows, reads, strict=True):
        fine = amount_right(reader.quantity(row["line"]), row["quantity as labelled"], row["unit as labelled"])
        right += fine
        if "--show" in sys.argv:
            foods = [read.food, *(other.food for other in read.also)] if read.food else list(read.choices[:3])
            mark = "" if fine else "AMOUNT "
            print(f"{mark}{read.outcome:8}{row['line'][:90]} => {foods} {read.alternatives or ''} {read.grams}")
    print(f"{len(rows)} lines in {spent:.2f} s; amounts right {right} ({100 * right / len(rows):.1f} %)")
    for outcome in ("read", "ask", "unknown", "heading", "nothing"):
        print(f"{outcome}: {sum(read.outcome == outcome for read in reads)}")


if __name__ == "__main__":
    main()
