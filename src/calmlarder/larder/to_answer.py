"""What a line leaves open: kept with its choices until the cook answers, and treated as not there until then."""

import re
from typing import Literal

from pydantic import BaseModel, ConfigDict

About = Literal["food", "amount", "day", "kept"]
NO_DAY = "without a day"
_ALWAYS = re.compile(r"\s*(?:we |i )?(?:always|usually)\b[^,:]*:\s*", re.IGNORECASE)


class Answers(BaseModel):
    """What a cook said about one line: the foods its words mean, and whether an amount or a day may stand.

    `amount` is `as told` where an amount out of proportion is right, `usual` where a usual pack is meant. `only` are
    the words that are asked about where the other foods of the line are clear and stand already.
    """

    model_config = ConfigDict(frozen=True)

    foods: dict[str, tuple[str, ...]] = {}
    amount: Literal["", "as told", "usual"] = ""
    no_day: bool = False
    only: tuple[str, ...] = ()


UNANSWERED = Answers()


class ToAnswer(BaseModel):
    """A line that is no lot yet: where it stands, its text, what is asked, and what would answer.

    `id` is its number in the store, where it is kept; `about` says what is asked: about the food, its amount, its day,
    or about what is kept and can no longer be read. `said` are the words whose food is asked.
    """

    model_config = ConfigDict(frozen=True)

    where: str
    text: str
    question: str
    choices: tuple[str, ...]
    about: About = "food"
    said: str = ""
    id: int | None = None

    @property
    def called(self) -> str:
        """Its words; of a line that says what is always there only the foods that are asked about."""
        if not _ALWAYS.match(self.text) or not self.said:
            return self.text
        foods = [piece.strip() for piece in _ALWAYS.sub("", self.text, count=1).split(",")]
        asked = [food for food in foods if any(word in food.casefold() for word in self.said.casefold().split())]
        return ", ".join(asked) or self.text

    @property
    def named(self) -> str:
        """The words whose food is asked, as short as they are; where none are, the line."""
        return self.said or self.called

    @property
    def remedy(self) -> str:
        """How to answer it on the command line."""
        number = self.id if self.id is not None else "N"
        if self.choices:
            return f"`calmlarder larder answer {number} 1` takes the first" + (
                ", or name a food" * (self.about == "food")
            )
        if self.about == "food":
            return f'`calmlarder larder answer {number} "a food"`; parts: `calmlarder tables mine add`'
        return f'Say what it is with `calmlarder larder edit {number} "…"`, or take it out'
