"""What challenge days say, in words and as plain values; and what a weight that falls is answered."""

from typing import Any

from calmlarder.history.felt import Felt
from calmlarder.reintroduction.posterior import Reckoning
from calmlarder.reintroduction.scores import STOP_REACTIONS

_CARE = "This is arithmetic and no diagnosis: go through it with a dietitian before you eat by it."


def reckoning_object(reckoning: Reckoning) -> dict[str, Any]:
    """Plain values; risks are shares of days, 0 to 1."""
    return {
        "group": reckoning.group,
        "doses_g": list(reckoning.doses_g),
        "risk": [
            {"dose_g": dose, "risk": round(risk, 4)}
            for dose, risk in zip(reckoning.doses_g, reckoning.risks, strict=True)
        ],
        "own_limit_g": reckoning.own_limit_g,
        "ambiguous": reckoning.ambiguous,
    }


def reckoning_text(reckoning: Reckoning, reactions: int) -> str:
    """The same in words; `reactions` is the number of days that brought one."""
    name = reckoning.group.replace("_", " ").replace("gos", "GOS")
    lines = [f"{name}: what these days say together"]
    lines += [
        f"  {dose:>5g} g  a reaction to it on {_days_of_100(risk)}"
        for dose, risk in zip(reckoning.doses_g, reckoning.risks, strict=True)
    ]
    is_found = reckoning.own_limit_g in reckoning.doses_g
    what = "estimated limit for one meal" if is_found else "the limit of elimination stays for now, at one meal"
    lines.append(f"  {what}: {reckoning.own_limit_g:g} g")
    if reactions >= STOP_REACTIONS:
        lines.append(f"  A challenge ends after {STOP_REACTIONS} reactions; eat no further dose of it now.")
    elif reckoning.ambiguous and reactions:
        lines.append("  Not clear yet: after three calm days without it eat the same dose again, at most twice.")
    elif reckoning.ambiguous:
        lines.append("  Not clear yet: more days of the ladder would say more.")
    return "\n".join([*lines, _CARE])


def _days_of_100(risk: float) -> str:
    days = round(100 * risk)
    if days < 1:
        return "fewer than 1 day of 100"
    return f"about {days} day{'' if days == 1 else 's'} of 100"


def weight_words(lost: str) -> str:
    """The answer to a weight that falls: calm, at once, and without a judgement."""
    return (
        f"Your weight went {lost}. If you did not mean to lose it, please see a doctor about it soon, before any more "
        "changes to what you eat. If you meant to, tell your dietitian: eating by limits takes more care then. Until "
        "you have been seen no challenge goes on; you lose nothing by that."
    )


def felt_line(felt: Felt) -> str:
    """A feeling in a line; of four scores each."""
    four = ""
    if felt.scores is not None:
        four = " (" + ", ".join(f"{name} {number}" for name, number in felt.scores.model_dump().items()) + ")"
    return f"{felt.at:%Y-%m-%d %H:%M}  {felt.who}  gut {felt.score}{four}{f': {felt.note}' if felt.note else ''}"
