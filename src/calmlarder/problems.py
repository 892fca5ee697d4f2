"""A problem is a value: where it is, what is wrong, what to do. Commands show them."""

from collections.abc import Iterable

from pydantic import BaseModel, ConfigDict


class Problem(BaseModel):
    """One thing a cook can mend.

    `where` names a file, `file:line` or `file:line:column`, or an option; `what` says what is wrong;
    `remedy` says what to do about it.
    """

    model_config = ConfigDict(frozen=True)

    where: str
    what: str
    remedy: str

    def __str__(self) -> str:
        return f"{self.where}: {self.what}. {self.remedy[:1].upper()}{self.remedy[1:]}."


class CannotGoOn(Exception):
    """Raised at the edge of the domain when problems leave nothing to work with; carries them all."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(str(problem) for problem in self.problems))
