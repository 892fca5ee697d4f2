"""Why a challenge waits, and who to see first, in words and as plain values."""

from collections.abc import Sequence
from typing import Any

from calmlarder.reintroduction.entry import QUESTIONS, SCOFF, Bar
from calmlarder.render.challenge_text import EMERGENCY

_SEE = {
    "doctor": "Please see a doctor soon, before you change what you eat any further.",
    "dietitian": "Please talk to a dietitian or your doctor first: they can make it safe for you.",
}
_SEEN = (
    "Once a doctor has seen you about it, say so with the last of the questions (`seen`), and it no longer stands in "
    "the way."
)
_NEED_NOT = "It need not be serious, but only a doctor can tell, and these are things that they ask first."
_WORRIES = "Rules about food can make worries about food heavier, and nobody has to bear those alone."
_COELIAC = (
    "Do not cut out wheat before you are tested for coeliac disease: the test could miss it. If you do without it "
    "already, tell the doctor so."
)
_ACUTE = {"blood", "night", "fever"}  # with these an emergency may be near
_WORDS = {one.key: one.words for one in QUESTIONS}


def bars_object(bars: Sequence[Bar]) -> list[dict[str, Any]]:
    """Plain values."""
    return [{"see": bar.whom, "because": [*(_WORDS[key] for key in bar.keys), *bar.notes]} for bar in bars]


def bars_text(bars: Sequence[Bar]) -> str:
    """Why it waits, and who to see."""
    lines = ["No challenge was started; it can wait."]
    for bar in bars:
        lines.append(_SEE[bar.whom])
        lines += ["You said yes to:", *(f"  {_WORDS[key]}" for key in bar.keys)] if bar.keys else []
        lines += ["Here you noted:", *(f"  {note}" for note in bar.notes), _SEEN] if bar.notes else []
    keys = {key for bar in bars for key in bar.keys}
    lines += [_NEED_NOT] if any(bar.whom == "doctor" for bar in bars) else []
    lines += [_WORRIES] if keys.intersection(SCOFF) else []
    lines += [EMERGENCY] if keys & _ACUTE or any(bar.notes for bar in bars) else []
    lines += [_COELIAC] if "family-coeliac" in keys else []
    lines.append("This is no diagnosis. Once they agree, come back and begin whenever you like.")
    return "\n".join(lines)
