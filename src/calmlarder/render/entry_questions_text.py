"""Before a challenge: how the questions are introduced, why it waits and who to see, what is said to who begins early.

That lack of iron may come of coeliac disease, and that the test needs wheat: common advice (recalled).
"""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.reintroduction.clock import OFFER_WEEK, Early
from calmlarder.reintroduction.entry_questions import QUESTIONS, SCOFF, Bar
from calmlarder.reintroduction.red_flag_words import ACUTE, URGENCY
from calmlarder.render.challenge_names import name_of
from calmlarder.render.challenge_text import light_words
from calmlarder.render.signs_text import COELIAC, EMERGENCY, STILL_SO

if TYPE_CHECKING:
    from calmlarder.household.challenge_start import Begun

ABOUT = "A few questions first, so that nobody begins who should see a doctor beforehand. The answers are not kept."
IF_UNSURE = "If you are not sure, say yes: a doctor can tell."
IF_UNSURE_SEEN = "If you are not sure, take no."
BEFORE_SCOFF = (
    "The next five are about how eating feels for you. Many people find them hard; you may stop here and talk to a "
    "dietitian instead."
)
_DOCTOR = "Please see a doctor soon, before you change what you eat any further."
_NEED_NOT = "It need not be serious, but only a doctor can tell, and these are among the first things they ask about."
_PREGNANT = (
    "While you are pregnant or breastfeeding, no challenge here. Please ask your midwife, doctor or dietitian: they "
    "can say what you should eat now."
)
_CHILD = "under 18 a challenge needs a children's dietitian or doctor, as growing comes first."
_UNDERWEIGHT = "Underweight: please see a doctor or dietitian first, and until then eat freely rather than by limits."
_WORRIES = (
    "You said yes to some of the questions about how eating feels. Please talk to your doctor or dietitian first: they "
    "can say whether this is right for you now, and what helps instead. Rules about food can make worries about food "
    "heavier, and nobody has to bear those alone."
)
_ONE_WORRY = (
    "You said yes to one question about worries around eating. If rules about food weigh on you, talk to a dietitian "
    "or doctor first; this can wait."
)
_CLOSING = "This is no diagnosis. Once they agree, come back and begin whenever you like."
_ALL_THE_SAME: dict[Early, str] = {
    "early": f"before elimination has had its {OFFER_WEEK} weeks",
    "no elimination": "though no elimination is noted here",
    "no help": "though elimination did not clearly help",
}
_ACUTE_KEYS = frozenset({"blood", "night", "fever"})
_TEST_KEYS = frozenset({"family-coeliac", "anaemia"})
_LASTING = frozenset(one.key for one in QUESTIONS if one.is_lasting)
_WORDS = {one.key: one.words for one in QUESTIONS}


def bars_object(bars: Sequence[Bar]) -> list[dict[str, Any]]:
    """Plain values."""
    return [
        {
            "see": bar.whom,
            "because": [
                *(_WORDS[key] for key in bar.keys),
                *(one.line for one in bar.notes),
                *([f"aged {bar.years}"] if bar.years is not None else []),
            ],
        }
        for bar in bars
    ]


def begun_text(begun: "Begun", on_screen: bool = False) -> str:
    """Why it waits, and who to see; or, of one that began, what to think of first, and that may be nothing."""
    if not begun.bars:
        return "\n".join(_beforehand(begun, on_screen))
    if begun.stopped is None:
        lines = ["No challenge was started; it can wait."]
    else:
        lines = [f"Your challenge of {name_of(begun.stopped.challenge)} is stopped, and no other begins."]
    for bar in begun.bars:
        lines += _doctor(bar, on_screen) if bar.whom == "doctor" else _dietitian(bar, begun.today.who.name)
    return "\n".join([*lines, _CLOSING])


def _doctor(bar: Bar, on_screen: bool) -> Iterator[str]:
    yield _DOCTOR
    if bar.keys:
        yield "You said yes to:"
        yield from (f"  {_WORDS[key]}" for key in bar.keys)
    if bar.notes:
        yield "Here you noted:"
        yield from (f"  {one.line}" for one in bar.notes)
    flags = {one.flag for one in bar.notes}
    is_emergency = any(URGENCY[one] in {"crisis", "emergency"} for one in flags)
    yield STILL_SO if is_emergency else _NEED_NOT
    if not is_emergency and _ACUTE_KEYS.intersection(bar.keys) | (flags & ACUTE):
        yield EMERGENCY
    if _TEST_KEYS.intersection(bar.keys) or flags & {"coeliac", "anaemia"}:
        yield COELIAC
    if bar.notes or _LASTING.intersection(bar.keys):
        how = "tick the last question, too" if on_screen else "answer `seen` as well (--yes)"
        yield (
            f"Once a doctor has seen you about it and has nothing against a challenge, {how}: then it no longer stands "
            "in the way."
        )


def _dietitian(bar: Bar, who: str) -> Iterator[str]:
    if "pregnant" in bar.keys:
        yield _PREGNANT
    if bar.years is not None:
        name = "You are" if who == "me" else f"{who} is"
        yield f"{name} {bar.years}, as noted here: {_CHILD}"
    if "child" in bar.keys:
        yield _CHILD[:1].upper() + _CHILD[1:]
    if "underweight" in bar.keys:
        yield _UNDERWEIGHT
    if set(SCOFF).intersection(bar.keys):
        yield _WORRIES


def early_words(early: Early, days: int | None) -> str:
    """Why a challenge would tell little yet, without the stop at its end."""
    if early == "no help":
        return (
            "Elimination did not clearly help you, so that challenges cannot tell much. Please see a dietitian, and "
            "eat as before; this challenge is not needed"
        )
    told = f"You are {days} day{'' if days == 1 else 's'} into elimination. " if days else ""
    told = told if early == "early" else "No elimination is noted here. "
    return (
        f"{told}Challenges tell most after about {OFFER_WEEK} weeks of it and with clearly calmer days; this one "
        "can wait"
    )


def all_the_same(early: Early) -> str:
    """What a cook chooses who begins before a challenge can tell much."""
    return f"Begin the challenge all the same, {_ALL_THE_SAME[early]}"


def _beforehand(begun: "Begun", on_screen: bool) -> Iterator[str]:
    stop = "Esc, then x" if on_screen else "`calmlarder challenge stop`"
    if begun.early is not None:
        yield f"{early_words(begun.early, begun.days)}: {stop} stops it."
    if begun.best_from is not None:
        yield (
            f"The last challenge of it ended with a reaction. Another try is best from {begun.best_from:%B} on, with "
            f"your dietitian; {stop} stops this one."
        )
    if begun.is_light:
        yield light_words(begun.today.who)
    if begun.has_one_worry:
        yield _ONE_WORRY
