"""In which measures and names a home reads: one question, where grams and names can be settled apart in the limits."""

from typing import Protocol, runtime_checkable

from calmlarder.household.household import Household
from calmlarder.household.settings import Settled

MANNERS = ("metric", "american")
TAKES_MANNER = "american: cups, ounces, °F; zucchini, not courgette"
_SETTINGS = {"metric": ("metric", "british"), "american": ("american", "american")}
_COMMANDS = {
    "american": "American measures and names: cups, ounces, °F, zucchini",
    "metric": "Metric measures and British names: grams, °C, courgette",
}


@runtime_checkable
class ReadsAnew(Protocol):
    """A screen that shows amounts and can show them in other measures at once."""

    def draw_anew(self) -> None:
        """What is shown, as it is read now."""
        ...


def manner_word(held: Settled) -> str:
    """What holds, by the measures."""
    return held.measures


def keep_manner(kitchen: Household, word: str) -> None:
    """Measures and names at once, as one action."""
    measures, names = _SETTINGS[word]
    with kitchen.store.as_one(f"measures and names: {word}"):
        kitchen.set("measures", measures)
        kitchen.set("names", names)


def manner_command(kitchen: Household) -> tuple[str, str]:
    """What is not read now and may be: the word for it, and the same as a command."""
    other = "metric" if kitchen.settled().measures == "american" else "american"
    return other, _COMMANDS[other]
