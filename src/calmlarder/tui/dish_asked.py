"""Which dish tonight: the kinds that are cooked at such a meal, by name, or words of a dish's own title."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from textual.screen import Screen

from calmlarder.problems import CannotGoOn
from calmlarder.tables.vocabulary import Sitting
from calmlarder.tui.choice import Choice

if TYPE_CHECKING:
    from calmlarder.patterns.asked_dish import Dish

_ANY = "any dish"
_OTHER = "or type a dish, such as risotto"


def ask_dish(
    screen: Screen[None],
    sitting: Sitting,
    now: "Dish | None",
    then: "Callable[[Dish | None], object]",
    question: str = "What kind of dish, tonight only?",
) -> None:
    """Asks, and gives the dish, or None for any; where the words name none it says so and asks again."""
    from calmlarder.patterns.asked_dish import dish_named, kinds_of
    from calmlarder.patterns.kinds import shipped_kinds
    from calmlarder.patterns.load import shipped_patterns

    patterns, kinds = shipped_patterns(), shipped_kinds()
    here = kinds_of([pattern for pattern in patterns if sitting in pattern.sittings], kinds)
    named = {f"{name} (now)" if name == (now.name if now else _ANY) else name: name
             for name in (_ANY, *(kind.name for kind in here))}  # fmt: skip

    def picked(answer: str | None) -> None:
        if answer is None:
            return
        name = named.get(answer) or _begun(answer, list(named.values())) or answer
        try:
            dish = None if name == _ANY else dish_named(name, patterns, kinds)
        except CannotGoOn as stop:
            ask_dish(screen, sitting, now, then, f"{stop.problems[0].what}: one of these, or words of a dish's title.")
            return
        if dish != now:
            then(dish)

    screen.app.push_screen(Choice(question, list(named), _OTHER), picked)


def _begun(answer: str, names: list[str]) -> str | None:
    """The one name that begins so: its first letters find it, as in other lists."""
    begun = [name for name in names if name.startswith(answer.casefold())]
    return begun[0] if len(begun) == 1 else None
