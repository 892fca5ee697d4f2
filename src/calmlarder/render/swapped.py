"""Substitutes that are about to be shown, put through the check that shares nothing with their ranking."""

from collections.abc import Sequence
from pathlib import Path

from calmlarder.checks.swap import verify
from calmlarder.intake.plate import Serving
from calmlarder.render.swap_text import swap_object
from calmlarder.swaps.model import Answer


def swap_faults(answer: Answer, beside: Sequence[Serving], folders: Sequence[Path]) -> tuple[str, ...]:
    """What is wrong with the substitutes; nothing when all hold. `beside` is what lies on the plate besides."""
    asked = answer.asked
    request = {
        "profile": asked.profile.name,
        "diet": asked.diet,
        "avoid": asked.avoid,
        "beside": [{"food": one.food.id, "grams": float(one.grams)} for one in beside],
        **asked.sure.model_dump(),
    }
    return verify(swap_object(answer), request, folders)


def without_faulty(answer: Answer, folders: Sequence[Path]) -> tuple[Answer, tuple[str, ...]]:
    """The answer without the substitutes that fail their check, and what is wrong with those."""
    faults = swap_faults(answer, (), folders)
    if not faults:
        return answer, ()
    alone = [answer.model_copy(update={"substitutes": (one,)}) for one in answer.substitutes]
    held = tuple(one.substitutes[0] for one in alone if not swap_faults(one, (), folders))
    return answer.model_copy(update={"substitutes": held}), faults
