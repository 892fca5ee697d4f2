"""The answers to warning signs: calm, at once, without a judgement, and one clear sentence on whom to reach.

Common advice (recalled): bleeding from the gut, fainting, severe allergy and severe pain are emergencies; a coeliac
test needs wheat in what one eats. Numbers of services differ from place to place, so that none is named.
"""

from collections.abc import Sequence

from calmlarder.history.felt import Felt
from calmlarder.reintroduction.red_flag_words import ACUTE, Flag
from calmlarder.reintroduction.red_flags_in_notes import RedFlag, red_flags
from calmlarder.reintroduction.scores import SEVERE_PAIN

EMERGENCY = "Heavy bleeding, black stool, sudden severe pain or faintness: get emergency help now."
STILL_SO = "If that is still so, get emergency help now and do not wait for an appointment."
COELIAC = (
    "Do not cut out wheat before you are tested for coeliac disease: the test could miss it. If you do without it "
    "already, tell the doctor so."
)
_NOW = (
    "That needs emergency help now: call your local emergency number or go to hospital, and do not wait for an "
    "appointment."
)
_IF_SEVERE = (
    "comes suddenly, does not ease within hours, or comes with fever, vomiting or blood: get emergency help now"
)
_SOON = (
    "Please see a doctor about it soon, before any more changes to what you eat. It need not be serious, but only a "
    "doctor can tell."
)
_ANSWERS: dict[Flag, str] = {
    "life": (
        "That sounds very hard, and you need not bear it alone. If you might harm yourself, call your local emergency "
        "number or a crisis line now; else talk today to a doctor or to somebody you trust. Eating comes before any "
        "limit here."
    ),
    "bleeding": _NOW,
    "faint": _NOW,
    "allergy": (
        "Swelling of lips, tongue or throat, or trouble breathing, can be a severe allergy: call your local emergency "
        "number now."
    ),
    "severe pain": f"If it {_IF_SEVERE}. Else see a doctor today.",
    "vomiting": (
        "If that goes on, get medical help today; if you are faint, very thirsty, or pass little water, get it now."
    ),
    "eating": (
        "That sounds hard, and you need not bear it alone. Please talk to your doctor soon. Eating comes before any "
        "limit here."
    ),
    "family": "Please tell your doctor before you change what you eat any further. There is no hurry.",
    "coeliac": (
        "Please ask your doctor about a coeliac test before you cut out wheat, or tell them if you do without it "
        "already: the test can miss it then. There is no hurry."
    ),
}
_STOPS = "No challenge goes on until a doctor has seen you about it; you lose nothing by that."


def see_a_doctor(flags: Sequence[RedFlag]) -> str:
    """The answer to the signs of a note, as `red_flags` gives them: to the most urgent; the others are named."""
    first = flags[0]
    same = [one for one in flags if one.flag == first.flag or _answer(one.flag) == _answer(first.flag)]
    words = "; ".join(dict.fromkeys(f"“{one.words}”" for one in same))
    said = [f"You wrote {words}.", _answer(first.flag)]
    said += [EMERGENCY] if any(one.flag in ACUTE for one in same) else []
    said += [COELIAC] if any(one.flag == "anaemia" for one in flags) else []
    others = [one for one in flags if one not in same and one.words not in {here.words for here in same}]
    if others:
        named = "; ".join(dict.fromkeys(f"“{one.words}”" for one in others))
        said.append(f"You also wrote {named}: tell the doctor that, too.")
    return " ".join([*said, _STOPS])


def _answer(flag: Flag) -> str:
    return _ANSWERS.get(flag, _SOON)


def felt_answer(felt: Felt) -> str:
    """The answer to how somebody feels, by note and by number; empty where there is nothing to answer."""
    flags, severe = red_flags(felt.note), severe_words(felt)
    if not flags:
        return severe
    is_calmer = flags[0].urgency in {"soon", "calmly"}
    return f"{see_a_doctor(flags)} {severe}".strip() if is_calmer else see_a_doctor(flags)


def severe_words(felt: Felt) -> str:
    """What to do about pain this strong, where the numbers tell of it; empty where they do not."""
    pain = felt.score if felt.scores is None else felt.scores.pain
    if pain < SEVERE_PAIN:
        return ""
    start = f"Pain of {SEVERE_PAIN} of 10 or more" if felt.scores is not None else "If that is pain, and it"
    return f"{start} {'that ' if felt.scores is not None else ''}{_IF_SEVERE}."
