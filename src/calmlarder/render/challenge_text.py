"""What challenge days say, in words and as plain values; and what a weight that falls is answered."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.history.felt import Felt
from calmlarder.reintroduction.posterior import ChallengeDay, Reckoning
from calmlarder.reintroduction.scores import STOP_REACTIONS

if TYPE_CHECKING:
    from calmlarder.household.person import Person
    from calmlarder.household.warning_signs import Lost

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


def reckoning_text(reckoning: Reckoning, days: Sequence[ChallengeDay]) -> str:
    """The same in words, of the days it rests on."""
    reacted = [day.dose_g for day in days if day.result == "reaction"]
    name = reckoning.group.replace("_", " ").replace("gos", "GOS")
    lines = [f"{name}: what these days say together" if days else f"{name}: no day is given; before any"]
    lines += [
        f"  with {dose:>5g} g: {_days_of_100(risk)}"
        for dose, risk in zip(reckoning.doses_g, reckoning.risks, strict=True)
    ]
    is_found = reckoning.own_limit_g in reckoning.doses_g
    found = "not clear yet; for now, at one meal" if reckoning.ambiguous else "estimated limit for one meal"
    what = found if is_found else "the limit of elimination stays for now, at one meal"
    lines.append(f"  {what}: {reckoning.own_limit_g:g} g")
    if len(reacted) >= STOP_REACTIONS:
        lines.append(f"  A challenge ends after {STOP_REACTIONS} reactions; eat no further dose of it now.")
    elif reckoning.ambiguous and reacted:
        lines.append(
            f"  To know more: after three calm days without it eat the dose that brought the reaction "
            f"({reacted[0]:g} g) once more, at most twice."
        )
    elif reckoning.ambiguous:
        lines.append("  More days of the ladder would say more.")
    return "\n".join([*lines, _CARE])


def _days_of_100(risk: float) -> str:
    days = round(100 * risk)
    if days < 1:
        return "fewer than 1 of 100 days with a reaction to it"
    return f"about {days} of 100 days with a reaction to it"


def weight_words(lost: "Lost") -> str:
    """The answer to a weight that falls: calm, at once, and without a judgement."""
    stops = "Until you have been seen no challenge goes on; you lose nothing by that."
    if lost.is_urgent:
        return (
            f"Your weight went {lost.words}. If {lost.now.kg:g} kg is right, please see a doctor today. If it is a "
            f"slip, write the weight again. {stops}"
        )
    if lost.now.kg > lost.before.kg:
        return (
            f"You are up again from {lost.before.kg:g} kg, and still {lost.most.kg - lost.now.kg:.3g} kg under "
            f"{lost.most.on:%B}. If you did not mean to lose that and no doctor has seen you about it, please see one. "
            f"{stops}"
        )
    return (
        f"Your weight went {lost.words}. If you did not mean to lose it, please see a doctor about it soon, before any "
        "more changes to what you eat. If you meant to, tell your dietitian: eating by limits takes more care then. "
        f"{stops}"
    )


def light_words(person: "Person") -> str:
    """What somebody of so little weight thinks of first."""
    return (
        f"{person.weight_kg:g} kg is little for most adults. If that is under your usual weight, please see a doctor "
        "or dietitian before you eat by limits."
    )


def felt_line(felt: Felt) -> str:
    """A feeling in a line; of four scores each."""
    four = ""
    if felt.scores is not None:
        four = " (" + ", ".join(f"{name} {number}" for name, number in felt.scores.model_dump().items()) + ")"
    return f"{felt.at:%Y-%m-%d %H:%M}  {felt.who}  gut {felt.score}{four}{f': {felt.note}' if felt.note else ''}"
