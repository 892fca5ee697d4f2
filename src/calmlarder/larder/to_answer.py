"""What a line leaves open: kept with its choices until the cook answers, and treated as not there until then."""

from pydantic import BaseModel, ConfigDict


class ToAnswer(BaseModel):
    """A line that is no lot yet: where it stands, its text, what is asked, and the names that would answer."""

    model_config = ConfigDict(frozen=True)

    where: str
    text: str
    question: str
    choices: tuple[str, ...]
