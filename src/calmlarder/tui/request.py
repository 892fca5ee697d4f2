"""What is asked of tonight, from the settings that are kept and what the cook just chose."""

from typing import TYPE_CHECKING, Any

from calmlarder.tables.vocabulary import ALLERGENS, DIETS, Allergen, Diet, Sitting
from calmlarder.tui.kitchen import Kitchen

if TYPE_CHECKING:
    from calmlarder.compose.wanted import Wanted

SECONDS = 10  # the longest a screen lets the solver think


def diet_of(kitchen: Kitchen) -> Diet:
    """The diet that was set."""
    return next((diet for diet in DIETS if diet == kitchen.word("diet", DIETS, "omnivore")), "omnivore")


def avoided_of(kitchen: Kitchen) -> tuple[Allergen, ...]:
    """The allergens to leave out."""
    avoided = kitchen.words("avoid")
    return tuple(name for name in ALLERGENS if name in avoided)


def request_of(kitchen: Kitchen, sitting: Sitting = "dinner", people: int | None = None, **more: Any) -> "Wanted":
    """The request of an evening; `more` holds fields of it that the cook chose. Reads the store: in its own thread.

    The protein floor that was set holds for dinners; other sittings keep their own.
    """
    from calmlarder.compose.wanted import PROTEIN_FLOOR_G, Wanted

    floor = PROTEIN_FLOOR_G[sitting]
    eat = kitchen.number("people", 1) if people is None else people
    values: dict[str, Any] = {
        "today": kitchen.today,
        "profile": kitchen.profile(),
        "diet": diet_of(kitchen),
        "sitting": sitting,
        "people": eat,
        "protein_g": float(kitchen.number("protein_g", round(floor))) if sitting == "dinner" else floor,
        "avoid": avoided_of(kitchen),
        "without": kitchen.never(),
        "seconds": SECONDS,
        "eaten": kitchen.eaten(),
        "stacking": kitchen.stacking(eat),
        **more,
    }
    return Wanted(**values)
