"""Who should see somebody before a challenge: the questions, and whom each yes leads to.

The five SCOFF questions: Morgan, Reid & Lacey 1999, BMJ 319:1467 (recalled, in our words). Red flags: AGA clinical
practice update 2022 (recalled). Pregnancy, children, underweight: Tuck & Barrett 2017, Whelan et al. 2018 (recalled).
"""

from collections.abc import Collection, Sequence
from datetime import date
from typing import Literal, NamedTuple

from calmlarder.reintroduction.red_flag_words import Flag

Whom = Literal["doctor", "dietitian"]
SCOFF_YES = 2  # so many yes or more (Morgan, Reid & Lacey 1999)


class Question(NamedTuple):
    """One question to answer with yes or no; `whom` is who a yes leads to, None where it leads nowhere by itself.

    Of the SCOFF questions several together lead to a dietitian. What is `lasting` does not go away, so that a doctor
    who has seen them about it opens the way.
    """

    key: str
    words: str
    whom: Whom | None
    is_scoff: bool = False
    is_lasting: bool = False


QUESTIONS: tuple[Question, ...] = (
    Question("blood", "Have you seen blood in your stool?", "doctor"),
    Question("weight-loss", "Have you lost 3 kg, or 5 % of your weight, without meaning to?", "doctor"),
    Question("night", "Do pain, bloating or the need for the toilet wake you at night?", "doctor"),
    Question("fever", "Have you had a fever with your gut trouble?", "doctor"),
    Question("anaemia", "Has a blood test shown that you lack iron?", "doctor", is_lasting=True),
    Question("new-after-50", "Did your gut trouble begin, or change, after you turned 50?", "doctor", is_lasting=True),
    Question(
        "family-cancer", "Has a close relative had cancer of the bowel or the ovaries?", "doctor", is_lasting=True
    ),
    Question("family-coeliac", "Does somebody in your family have coeliac disease?", "doctor", is_lasting=True),
    Question("pregnant", "Are you pregnant, or breastfeeding?", "dietitian"),
    Question("child", "Is this for somebody under 18?", "dietitian"),
    Question("underweight", "Are you underweight (BMI under 18.5)?", "dietitian"),
    Question("sick", "Do you ever make yourself sick because you feel too full?", None, is_scoff=True),
    Question("control", "Do you worry that you have lost control over how much you eat?", None, is_scoff=True),
    # So much in so short a time leads on by itself, too: 3 kg that nobody meant to lose do.
    Question("one-stone", "Have you lost more than 6 kg in three months?", "doctor", is_scoff=True),
    Question("fat", "Do you think you are too fat when others say you are too thin?", None, is_scoff=True),
    Question("food", "Would you say that food rules your life?", None, is_scoff=True),
    Question("seen", "Has a doctor seen you about any of this, or about a sign that you noted, and agrees?", None),
)
KEYS = tuple(question.key for question in QUESTIONS)
SCOFF = tuple(question.key for question in QUESTIONS if question.is_scoff)
SEEN, CHILD = "seen", "child"  # keys that more than the answers has a say in
ADULT_YEARS = 18


_YES = frozenset({"y", "yes", "yeah", "yep"})
_NO = frozenset({"n", "no", "nope", "no thanks", "no thank you"})
# Why a challenge was stopped by an answer that leads to a dietitian.
DIETITIAN_FIRST = "you said something that a dietitian or doctor should hear first; please ask one before you go on"


def said_yes(text: str) -> bool | None:
    """Whether an answer is a clear yes or a clear no; None for any other, which is never read as no."""
    words = " ".join(text.lower().replace(",", " ").split()).rstrip(".! ")
    if words.split(" ")[0].rstrip(".!") in _YES:
        return True
    return False if words in _NO else None


# Why a challenge was stopped by what was said of somebody meanwhile.
AVOIDED = "its food is among what you avoid now, and that is never tried here; another food or another group may be"
UNDER_AGE = "it is noted now that this is for somebody under 18, for whom a children's dietitian or doctor goes first"
SAID_LATER = frozenset({AVOIDED, UNDER_AGE})


class Told(NamedTuple):
    """A warning sign that somebody noted: when, which, and in which words."""

    on: date
    flag: Flag
    line: str


class Bar(NamedTuple):
    """Why not yet, and who to see: keys of the questions, notes that tell of a sign, or an age, in years."""

    keys: tuple[str, ...]
    whom: Whom
    notes: tuple[Told, ...] = ()
    years: int | None = None


def bars(yes: Collection[str], notes: Sequence[Told] = (), years: int | None = None) -> tuple[Bar, ...]:
    """Why a challenge waits, doctors first; none where it may begin. `years` is how old they are, where it was said.

    What was noted, and what does not go away, counts until a doctor was seen about it. Raises ValueError for a key
    that is none.
    """
    unknown = sorted(set(yes) - set(KEYS))
    if unknown:
        raise ValueError(", ".join(unknown))
    seen = SEEN in yes
    counted = [one for one in QUESTIONS if one.key in yes and not (seen and one.is_lasting)]
    several = sum(one.is_scoff for one in counted) >= SCOFF_YES
    found = []
    for whom in ("doctor", "dietitian"):
        is_dietitian = whom == "dietitian"
        keys = tuple(one.key for one in counted if one.whom == whom or (is_dietitian and several and one.is_scoff))
        told = () if seen or is_dietitian else tuple(notes)
        child = years if is_dietitian and years is not None and years < ADULT_YEARS and CHILD not in keys else None
        if keys or told or child is not None:
            found.append(Bar(keys, whom, told, child))
    return tuple(found)


def has_one_worry(yes: Collection[str]) -> bool:
    """Whether one question about eating was answered with yes: too few to bar, too many for silence."""
    return sum(key in yes for key in SCOFF) == 1
