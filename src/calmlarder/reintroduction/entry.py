"""Who should see somebody before a challenge: the questions, and whom each yes leads to.

The five SCOFF questions: Morgan, Reid & Lacey 1999, BMJ 319:1467 (recalled, in our words). Red flags: AGA clinical
practice update 2022 (recalled). Pregnancy, children, underweight: Tuck & Barrett 2017, Whelan et al. 2018 (recalled).
"""

from collections.abc import Collection
from typing import Literal, NamedTuple

Whom = Literal["doctor", "dietitian"]
SCOFF_YES = 2  # so many yes or more (Morgan, Reid & Lacey 1999)


class Question(NamedTuple):
    """One question to answer with yes or no; `whom` is who a yes leads to, None where only several count."""

    key: str
    words: str
    whom: Whom | None


QUESTIONS: tuple[Question, ...] = (
    Question("blood", "Have you seen blood in your stool?", "doctor"),
    Question("weight-loss", "Have you lost 3 kg, or 5 % of your weight, without meaning to?", "doctor"),
    Question("night", "Do pain, bloating or the need for the toilet wake you at night?", "doctor"),
    Question("fever", "Have you had a fever with your gut trouble?", "doctor"),
    Question("anaemia", "Has a blood test shown that you lack iron?", "doctor"),
    Question("new-after-50", "Did your gut trouble begin, or change, after you turned 50?", "doctor"),
    Question("family-cancer", "Has a close relative had cancer of the bowel or the ovaries?", "doctor"),
    Question("family-coeliac", "Does somebody in your family have coeliac disease?", "doctor"),
    Question("pregnant", "Are you pregnant, or breastfeeding?", "dietitian"),
    Question("child", "Is this for somebody under 18?", "dietitian"),
    Question("underweight", "Are you underweight (BMI under 18.5)?", "dietitian"),
    Question("sick", "Do you ever make yourself sick because you feel too full?", None),
    Question("control", "Do you worry that you have lost control over how much you eat?", None),
    Question("one-stone", "Have you lost more than 6 kg in three months?", None),
    Question("fat", "Do you think you are too fat when others say you are too thin?", None),
    Question("food", "Would you say that food rules your life?", None),
)
KEYS = tuple(question.key for question in QUESTIONS)
SCOFF = tuple(question.key for question in QUESTIONS if question.whom is None)


class Bar(NamedTuple):
    """Why not yet, by the keys of the questions, and who to see."""

    keys: tuple[str, ...]
    whom: Whom


def bars(yes: Collection[str]) -> tuple[Bar, ...]:
    """Why a challenge waits, doctors first; none where it may begin. Raises ValueError for a key that is none."""
    unknown = sorted(set(yes) - set(KEYS))
    if unknown:
        raise ValueError(", ".join(unknown))
    found = []
    for whom in ("doctor", "dietitian"):
        keys = tuple(one.key for one in QUESTIONS if one.whom == whom and one.key in yes)
        if whom == "dietitian" and len(several := tuple(key for key in SCOFF if key in yes)) >= SCOFF_YES:
            keys = (*keys, *several)
        if keys:
            found.append(Bar(keys, whom))
    return tuple(found)
