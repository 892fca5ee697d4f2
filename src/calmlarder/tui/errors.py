"""What cannot go on is told on the screen, which stays: another program may have changed the larder meanwhile."""

from collections.abc import Callable
from functools import wraps
from typing import Any, TypeVar

from textual.app import App
from textual.screen import Screen

from calmlarder.problems import CannotGoOn

_Result = TypeVar("_Result")


def tell(app: App[Any], stop: CannotGoOn) -> None:
    """Say what is wrong and what to do."""
    app.notify("\n".join(map(str, stop.problems)), severity="warning", timeout=8, markup=False)


def told(method: Callable[..., _Result]) -> Callable[..., _Result | None]:
    """For what answers a message on a screen (keys pass through the program itself)."""

    @wraps(method)
    def wrapped(screen: Screen[Any], *arguments: Any) -> _Result | None:
        try:
            return method(screen, *arguments)
        except CannotGoOn as stop:
            tell(screen.app, stop)
            return None

    return wrapped
