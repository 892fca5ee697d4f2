"""Pulses of a tin in a changed line: called so, drained and rinsed, as they are counted."""

import re

from calmlarder.tables.rows import Food

_FROM_A_TIN = re.compile(r"\b(?:tins?|tinned|cans?|canned|jars?|jarred|cooked|boiled|pouch)\b", re.IGNORECASE)
_TINNED = re.compile(r"\b(?:tins?|tinned|cans?|canned|jars?|jarred)\b", re.IGNORECASE)
_RINSED = re.compile(r"\brinsed\b", re.IGNORECASE)
_POUCH = re.compile(r"\b(?:pouch\w*|sachets?|vacuum\w*)\b", re.IGNORECASE)  # these hold no liquid
_DRAINED = re.compile(r",? (?:drained|rinsed)(?:,? (?:and )?(?:well )?(?:drained|rinsed))*", re.IGNORECASE)


def said_of_a_tin(words: str, line: str, food: Food) -> str:
    """What a line is called whose own one had a pulse from a tin; `words` are what it says otherwise."""
    if food.kind != "pulse":
        return words
    if food.name.startswith("canned") and not _FROM_A_TIN.search(words):
        words = f"canned {words}"  # nobody takes them for dry ones
    if words.startswith("boiled ") and _TINNED.search(line):
        return f"canned {_DRAINED.sub('', words.removeprefix('boiled '))}, drained and rinsed"
    if food.name.startswith("canned") and not (_RINSED.search(words) or _POUCH.search(line)):
        return f"{_DRAINED.sub('', words)}, drained and rinsed"
    return words
