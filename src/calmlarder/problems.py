"""A problem is a value: where it is, what is wrong, what to do. Commands show them."""

from collections.abc import Iterable
from typing import Annotated

from pydantic import AfterValidator, BaseModel, ConfigDict

from calmlarder.clean import clean

# A problem quotes what it was given: a cell, an option, the name of a file. None of it may steer the terminal.
Quoting = Annotated[str, AfterValidator(clean)]


class Problem(BaseModel):
    """One thing a cook can mend.

    `where` names a file, `file:line` or `file:line:column`, or an option; `what` says what is wrong;
    `remedy` says what to do about it. All three are cleaned of control signs.
    """

    model_config = ConfigDict(frozen=True)

    where: Quoting
    what: Quoting
    remedy: Quoting

    def __str__(self) -> str:
        return f"{self.where}: {self.what}. {self.remedy[:1].upper()}{self.remedy[1:]}."


class CannotGoOn(Exception):
    """Raised at the edge of the domain when problems leave nothing to work with; carries them all."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(str(problem) for problem in self.problems))
