"""All keys of a screen in one list to search (Ctrl+P): those below the screen, and those there is no room for."""

from collections.abc import Iterator
from functools import partial
from typing import Any

from textual.app import SystemCommand
from textual.screen import Screen

# What Textual gives to every screen.
_EVERYWHERE = {"command_palette", "help_quit", "focus_next", "focus_previous", "screen.copy_text"}


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
        yield SystemCommand(binding.description, f"key {app.get_key_display(binding)}", run)
