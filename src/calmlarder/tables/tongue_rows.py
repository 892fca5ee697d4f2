"""Rows of the tables of other tongues: names of foods, and words that stand beside them."""

from typing import Annotated, Literal

from pydantic import Field

from calmlarder.tables.cells import Row

# A language by its code of ISO 639-1 (or 639-2, where that has none).
Language = Annotated[str, Field(pattern=r"^[a-z]{2,3}$")]

# Where a word may mean something else, in English above all: it counts only beside others of its tongue.
Beside = Literal["yes", ""]


class NameElsewhere(Row):
    """A food's name in another tongue, and the English name that stands for it in names.csv or foods.csv."""

    name: Annotated[str, Field(min_length=2)]
    english: Annotated[str, Field(min_length=2)]
    language: Language
    beside: Beside = ""


class WordElsewhere(Row):
    """A word of another tongue that stands beside a food, and the English one for it.

    It says how much there is, in what state, until when (a day, or the label beside it), whose it is (an owner; or
    `my` before a person, `of` behind one), or that another food follows.
    """

    word: Annotated[str, Field(min_length=1)]
    english: Annotated[str, Field(min_length=1)]
    says: Literal["amount", "state", "label", "day", "my", "person", "of", "owner", "and"]
    language: Language
    beside: Beside = ""
