"""What is asked of tonight, from the settings that are kept and what the cook just chose."""

from typing import TYPE_CHECKING, Any

from calmlarder.tables.vocabulary import Sitting
from calmlarder.tui.kitchen import Kitchen

if TYPE_CHECKING:
    from calmlarder.compose.request import DinnerRequest

SECONDS = 10  # the longest a screen lets the solver think


def request_of(
    kitchen: Kitchen,
    sitting: Sitting = "dinner",
    people: int | None = None,
    use: tuple[str, ...] = (),
    without: tuple[str, ...] = (),
    **more: Any,
) -> "DinnerRequest":
    """The request of an evening; `more` holds fields of it that the cook chose. Reads the store: in its own thread.

    The protein that was set is aimed at for dinners; other sittings keep their own. What must be in it is asked for
    on purpose, though it may be disliked.
    """
    from calmlarder.compose.request import PROTEIN_TARGET_G, DinnerRequest, protein_floor

    held = kitchen.settled()
    eat = held.people if people is None else people
    target = float(held.protein_g) if sitting == "dinner" else PROTEIN_TARGET_G[sitting]
    values: dict[str, Any] = {
        "today": kitchen.today,
        "profile": kitchen.profile(),
        "diet": held.diet,
        "sitting": sitting,
        "people": eat,
        "protein_g": target,
        "protein_floor_g": protein_floor(sitting, target),
        "avoid": held.avoid,
        "minutes": held.minutes,
        "use": use,
        "without": (*without, *(food for food in held.never if food not in use)),
        "disliked": tuple(food for food in held.disliked if food not in use),
        "tolerance": held.tolerance,
        "equipment": held.equipment,
        "seconds": SECONDS,
        "eaten": kitchen.eaten(),
        "stacking": kitchen.stacking(eat),
        **more,
    }
    return DinnerRequest(**values)
