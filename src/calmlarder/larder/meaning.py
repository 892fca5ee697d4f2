"""What one line of a cook means: its lots where it is clear, what is asked or wrong where it is not."""

from collections.abc import Sequence

from pydantic import BaseModel, ConfigDict

from calmlarder.larder.lot import Lot
from calmlarder.larder.to_answer import About, ToAnswer
from calmlarder.matching.amounts.amount_of_line import Amount
from calmlarder.matching.names.foods import Candidate, Match
from calmlarder.problems import Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

# What is said of a name that the tables lack.
NOT_KNOWN = "not a food I know: leave it in the list, or describe it by its parts"
_MOST_CHOICES = 4  # of a question: ours


class Reading(BaseModel):
    """What one line means: its lots where it is clear; a `question` or a `problem` where it is not.

    `assumed` says what was taken for granted, in words; several lots come from several foods on a line.
    """

    model_config = ConfigDict(frozen=True)

    text: str
    where: str
    match: Match
    lots: tuple[Lot, ...]
    problem: Problem | None
    assumed: tuple[str, ...] = ()
    question: str = ""
    names: tuple[str, ...] = ()  # of the foods of the lots
    about: About = "food"  # what the question is about
    said: str = ""  # the words whose food is asked
    choices: tuple[str, ...] = ()  # what would answer, where it is no food
    gone: tuple[str, ...] = ()  # foods that are said to be no longer always there
    amounts: tuple[Amount, ...] = ()  # of a line with several things, as each lot of it was told
    how: str = "none"  # how the amount was told: weighed, counted, guessed, none
    standing: tuple[Lot, ...] = ()  # of the foods that are clear, where another of the line is asked about
    only: tuple[str, ...] = ()  # the words that are asked about, where others stand

    @property
    def lot(self) -> Lot | None:
        """The first lot."""
        return self.lots[0] if self.lots else None

    @property
    def to_answer(self) -> ToAnswer | None:
        """What the cook must still say, where the line is no lot and could be one."""
        if self.lots or self.gone or self.problem is not None:
            return None
        names = self.choices or tuple(dict.fromkeys(candidate.name for candidate in self.candidates))[:_MOST_CHOICES]
        question = self.question or (NOT_KNOWN if self.match.outcome == "unknown" else "which one is it?")
        return ToAnswer(
            where=self.where, text=self.text, question=question, choices=names, about=self.about, said=self.said
        )

    @property
    def candidates(self) -> tuple[Candidate, ...]:
        """Foods that the line may mean, best first."""
        return self.match.candidates


def told_once(assumed: Sequence[str]) -> list[str]:
    """`whole: greens and whites` and `whole: whites and greens` are told once."""
    return list({frozenset(words.split()): words for words in reversed(assumed)}.values())[::-1]


def clearer(first: Reading | None, second: Reading | None) -> Reading | None:
    """The second reading of a line that was in doubt at first, where it leaves nothing to ask."""
    return second if second is not None and second.lots and second.to_answer is None else first


def match_of(foods: tuple[Food, ...], outcome: str, tables: Tables, candidates: tuple[Candidate, ...] = ()) -> Match:
    """What the words of a line came to: the first of its foods, or what they may be."""
    food = foods[0] if foods else None
    score = 100.0 if food else (candidates[0].score if candidates else 0.0)
    unique = tuple({one.food: one for one in reversed(candidates)}.values())[::-1]
    return Match(outcome, food, food.name if food else None, score, unique)  # type: ignore[arg-type]
