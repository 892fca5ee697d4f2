"""Who should see somebody before a challenge: the questions, and whom each yes leads to.

The five SCOFF questions: Morgan, Reid & Lacey 1999, BMJ 319:1467 (recalled, in our words). Red flags: AGA clinical
practice update 2022 (recalled). Pregnancy, children, underweight: Tuck & Barrett 2017, Whelan et al. 2018 (recalled).
"""

from collections.abc import Collection, Sequence
from typing import Literal, NamedTuple

Whom = Literal["doctor", "dietitian"]
SCOFF_YES = 2  # so many yes or more (Morgan, Reid & Lacey 1999)


class Question(NamedTuple):
    """One question to answer with yes or no; `whom` is who a yes leads to, None where it leads nowhere by itself.

    Of the SCOFF questions several together lead to a dietitian.
    """

    key: str
    words: str
    whom: Whom | None
    is_scoff: bool = False


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
    Question("sick", "Do you ever make yourself sick because you feel too full?", None, is_scoff=True),
    Question("control", "Do you worry that you have lost control over how much you eat?", None, is_scoff=True),
    # So much in so short a time leads on by itself, too: 3 kg that nobody meant to lose would.
    Question("one-stone", "Have you lost more than 6 kg in three months?", "dietitian", is_scoff=True),
    Question("fat", "Do you think you are too fat when others say you are too thin?", None, is_scoff=True),
    Question("food", "Would you say that food rules your life?", None, is_scoff=True),
    Question("seen", "Only if you wrote of a warning sign here: has a doctor seen you about it since?", None),
)
KEYS = tuple(question.key for question in QUESTIONS)
SCOFF = tuple(question.key for question in QUESTIONS if question.is_scoff)
SEEN, CHILD = "seen", "child"  # keys that more than the answers has a say in
ADULT_YEARS = 18


class Bar(NamedTuple):
    """Why not yet, by the keys of the questions or the `notes` that tell of a red flag, and who to see."""

    keys: tuple[str, ...]
    whom: Whom
    notes: tuple[str, ...] = ()


def bars(yes: Collection[str], notes: Sequence[str] = ()) -> tuple[Bar, ...]:
    """Why a challenge waits, doctors first; none where it may begin. `notes` tell of red flags.

    A note counts until a doctor was seen about it. Raises ValueError for a key that is none.
    """
    notes = () if SEEN in yes else tuple(notes)
    unknown = sorted(set(yes) - set(KEYS))
    if unknown:
        raise ValueError(", ".join(unknown))
    found = []
    for whom in ("doctor", "dietitian"):
        several = tuple(key for key in SCOFF if key in yes)
        counts = whom == "dietitian" and len(several) >= SCOFF_YES
        keys = tuple(one.key for one in QUESTIONS if one.key in yes and (one.whom == whom or (counts and one.is_scoff)))
        told = notes if whom == "doctor" else ()
        if keys or told:
            found.append(Bar(keys, whom, told))
    return tuple(found)
