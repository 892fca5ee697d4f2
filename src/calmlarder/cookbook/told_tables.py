"""Tables of a Markdown text: rows of a food and its amount, or whole ingredients side by side, as a list."""

import re
from collections.abc import Sequence

from calmlarder.matching.names.words import plain

_ROW = re.compile(r"\s*\|(.+)\|\s*")
_RULE = re.compile(r"[\s|:-]+")
_NAMES = re.compile(r"(?:ingredients?|items?|foods?|what(?: you need)?|name|for the \w+)")
_AMOUNTS = re.compile(r"(?:amounts?|quantit(?:y|ies)|qty|how much|needed|measures?|grams|weight|metric)")
_NUMBER = re.compile(r"\W*(?:[\d½¼¾⅓⅔⅛]|an? |half\b|to (?:serve|taste)|some\b|pinch|handful|few\b)", re.IGNORECASE)
_LEAST_ROWS = 3  # fewer are no list: ours
_HEADS = re.compile(r"\W*(?:ingredients?|(?:what )?you(?:['’]ll| will)? need|shopping list)\W*", re.IGNORECASE)


def tables_as_lists(text: str) -> str:
    """The text with each table of ingredients as a list with a heading; any other text as it is."""
    lines = text.split("\n")
    told: list[str] = []
    at = 0
    while at < len(lines):
        end = at
        while end < len(lines) and _ROW.fullmatch(lines[end]):
            end += 1
        listed = _listed([_cells(line) for line in lines[at:end]]) if end - at >= _LEAST_ROWS else []
        if listed:
            above = next((line for line in reversed(told) if line.strip()), "")
            told += ([] if _HEADS.fullmatch(above) else ["## Ingredients", ""]) + [f"- {one}" for one in listed]
        else:
            told += lines[at : max(end, at + 1)]
        at = max(end, at + 1)
    return "\n".join(told)


def _cells(line: str) -> list[str]:
    found = _ROW.fullmatch(line)
    return [cell.strip() for cell in found[1].split("|")] if found else []


def _listed(rows: Sequence[list[str]]) -> list[str]:
    """The ingredients of a table's rows; nothing of a table of something else."""
    head = [plain(cell) for cell in rows[0]]
    ruled = len(rows) > 1 and all(_RULE.fullmatch(cell) or not cell for cell in rows[1])
    body = [row for row in rows[2 if ruled else 0 :] if any(row)]
    name = next((place for place, cell in enumerate(head) if _NAMES.fullmatch(cell)), None)
    amount = next((place for place, cell in enumerate(head) if _AMOUNTS.fullmatch(cell)), None)
    if name is None and amount is None:
        cells = [cell for row in body for cell in row if cell]  # a whole ingredient in each cell
        counted = sum(_NUMBER.match(cell) is not None and len(cell.split()) > 1 for cell in cells)
        return cells if len(cells) >= _LEAST_ROWS and 3 * counted >= 2 * len(cells) else []
    name = name if name is not None else 1 - min(amount or 0, 1)
    amount = amount if amount is not None else 1 - min(name, 1)
    return [_line(row, name, amount) for row in body if len(row) > name]


def _line(row: list[str], name: int, amount: int) -> str:
    """A row as one line: its amount, its food, and what further cells say of it."""
    food, much = row[name], row[amount] if amount < len(row) else ""
    rest = [cell for place, cell in enumerate(row) if place not in {name, amount} and cell]
    behind = [] if _counts(much) or not much else [much]
    return ", ".join([f"{much} {food}".strip() if _counts(much) else food, *behind, *rest])


def _counts(much: str) -> bool:
    return _NUMBER.match(much) is not None and not plain(much).startswith("to ")
