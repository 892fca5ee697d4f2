"""All keys of a screen in one list to search (Ctrl+P): those below the screen, and those there is no room for."""

from collections.abc import Iterator
from functools import partial
from typing import Any

from textual.app import SystemCommand
from textual.screen import Screen

# What Textual gives to every screen.
_EVERYWHERE = {"command_palette", "help_quit", "focus_next", "focus_previous", "screen.copy_text"}


_CALLED = {
    "⏎": "Enter",
    "esc": "Esc",
    "space": "Space",
    "⌫": "Backspace",
    "del": "Del",
    "right": "→",
    "left": "←",
    "down": "↓",
    "up": "↑",
}


def keys_of(screen: Screen[Any]) -> Iterator[tuple[str, str]]:
    """Each key of a screen with what it does, in the order in which they matter; not those of every screen."""
    app = screen.app
    seen = set(_EVERYWHERE)
    for node, binding, enabled, _ in screen.active_bindings.values():
        if node is screen and enabled and binding.description and binding.action.removeprefix("app.") not in seen:
            seen.add(binding.action.removeprefix("app."))
            yield _named(app.get_key_display(binding)), binding.tooltip or binding.description


def _named(key: str) -> str:
    """A key as it is called: `^n` is Ctrl+N, `shift+f2` Shift+F2."""
    if key.startswith("^"):
        return f"Ctrl+{key[1:].upper()}"
    if key.startswith("shift+"):
        return f"Shift+{_named(key.removeprefix('shift+'))}"
    if key[:1] == "f" and key[1:].isdigit():
        return key.upper()
    return _CALLED.get(key, key)


def commands_of(screen: Screen[Any]) -> Iterator[SystemCommand]:
    """A command for each thing that a key does here, with the key beside it."""
    app = screen.app
    seen = set(_EVERYWHERE)
    for node, binding, enabled, _ in screen.active_bindings.values():
        action = binding.action.removeprefix("app.")
        # What moves about in a field or a list has no place of its own.
        if action in seen or not binding.description or not (node is screen or node is app) or not enabled:
            continue
        seen.add(action)
        run = partial(app.run_action, binding.action, default_namespace=node)
        yield SystemCommand(binding.tooltip or binding.description, f"key {app.get_key_display(binding)}", run)
