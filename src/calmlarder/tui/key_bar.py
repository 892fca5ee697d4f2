"""All keys of a screen in one list (Ctrl+P), in the order in which they matter, and as a table for the help."""

from collections.abc import Callable, Iterator
from functools import partial
from typing import Any

from textual.app import SystemCommand
from textual.command import DiscoveryHit, Hit, Hits, Provider
from textual.content import Content
from textual.screen import ModalScreen, Screen

from calmlarder.tui.widgets.modal import Modal

_KEY_COLUMNS = 13  # of a key's name in the list of all keys

# What Textual gives to every screen.
_EVERYWHERE = {"command_palette", "help_quit", "focus_previous", "copy_text"}
_LEAVES = " (leaves this question)"
_OF_SCREEN = "screen."  # what a key asks of the screen that its widget is on
_ON = "focus_next"  # of every screen, too, and a key to be told where the screen itself names it


_CALLED = {
    "⏎": "Enter",
    "esc": "Esc",
    "space": "Space",
    "space ⏎": "Space or Enter",
    "⌫": "Backspace",
    "del": "Del",
    "tab": "Tab",
    "right": "→",
    "left": "←",
    "down": "↓",
    "up": "↑",
}


def keys_of(screen: Screen[Any]) -> Iterator[tuple[str, str]]:
    """Each key of a screen with what it does, in the order in which they matter; not those of every screen.

    Those of what has the focus are among them, where the line of keys shows them.
    """
    app = screen.app
    seen = set(_EVERYWHERE)
    for node, binding, enabled, _ in screen.active_bindings.values():
        action = _bare(binding.action)
        is_here = (node is screen and (action != _ON or binding.show)) or (node is screen.focused and binding.show)
        if is_here and enabled and binding.description and action not in seen:
            seen.add(action)
            yield _named(app.get_key_display(binding)), binding.tooltip or binding.description


def _bare(action: str) -> str:
    """Whoever it is asked of."""
    return action.removeprefix("app.").removeprefix(_OF_SCREEN)


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
    """A command for each thing that a key does here, with the key beside it.

    Over a question those of the screen below it follow: it is left for them, as by Esc.
    """
    yield from _commands_here(screen)
    stack = screen.app.screen_stack
    if isinstance(screen, ModalScreen) and screen in stack[1:]:
        for one in commands_of(stack[stack.index(screen) - 1]):
            run = partial(_leave_for, screen, one.callback)
            yield SystemCommand(f"{one.title}{'' if one.title.endswith(_LEAVES) else _LEAVES}", one.help, run)


async def _leave_for(screen: Screen[Any], run: Callable[[], Any]) -> None:
    """What a question does at Esc, and then this; not where it asks once more before it goes."""
    if isinstance(screen, Modal):
        screen.action_leave()
    else:
        screen.dismiss(None)
    if screen not in screen.app.screen_stack:
        await run()


def _commands_here(screen: Screen[Any]) -> Iterator[SystemCommand]:
    app = screen.app
    seen = {*_EVERYWHERE, _ON}
    for node, binding, enabled, _ in screen.active_bindings.values():
        action = _bare(binding.action)
        # What moves about in a field or a list has no place of its own.
        is_here = node is screen or node is app or binding.action.startswith(_OF_SCREEN)
        if action in seen or not binding.description or not is_here or not enabled:
            continue
        seen.add(action)
        run = partial(app.run_action, binding.action, default_namespace=node)
        yield SystemCommand(binding.tooltip or binding.description, _named(app.get_key_display(binding)), run)


# What a cook may call it who does not find our word: what it is called here, or what is nearest to it.
_NOTHING, _OR = "\0", "|"
_MOST_NEAREST, _NEAR = 3, 75.0  # commands, and how alike from 0 to 100, where none has the words: ours
_ALSO_SAID = {
    "tour": "help", "manual": "help", "label": "packet", "ingredients": "packet", "scan": "packet",
    "shop": "share|plan the next", "shopping": "share|plan the next", "buy": "share|plan the next",
    "cooked": "cooked|tonight|cook", "ate": "eaten", "bin": "thrown", "waste": "thrown",
    "print": "share", "people": "who", "guests": "who", "friend": "who", "revert": "undo", "reset": "start over",
    "timer": "time", "minutes": "time", "history": "days", "chart": "days", "symptoms": "gut",
    "eaten": "log|cook", "log": "cook", "dinner": "tonight|cook",
    "pasta": "kind of dish", "noodles": "kind of dish", "stew": "kind of dish", "pie": "kind of dish",
    "omelette": "kind of dish", "stir-fry": "kind of dish", "sandwich": "kind of dish", "craving": "kind of dish",
    "settings": "limits", "reintroduction": "challenges", "recipe": "fit",
}  # fmt: skip


_NEAREST = "nothing here has these words: the nearest"


class KeysByWords(Provider):
    """What the keys of a screen do, in their order; where words are typed, what has all of them.

    Textual's own search takes letters that stand apart for a word: `redo` found "A *re*cipe that somebo*d*y wr*o*te".
    """

    async def discover(self) -> Hits:
        """All of them."""
        for one in self.app.get_system_commands(self.screen):
            yield DiscoveryHit(_row(one.help, Content(one.title)), one.callback, text=one.title)

    async def search(self, query: str) -> Hits:
        """What begins with the words first, then what has words that begin so, then what has them anywhere."""
        sought = query.lower().split()
        matcher, found = self.matcher(query), False
        for one in self.app.get_system_commands(self.screen):
            title = one.title.lower()
            everything = f"{title} {one.help.lower()}"
            if not all(_is_said(word, everything) for word in sought):
                continue
            found = True
            words = everything.replace(":", " ").split()
            begins = all(any(there.startswith(word) for there in words) for word in sought)
            score = 3 if title.startswith(query.lower().strip()) else 2 if begins else 1
            yield Hit(score, _row(one.help, matcher.highlight(one.title)), one.callback, text=one.title)
        if not found:
            for one in _nearest(query, list(self.app.get_system_commands(self.screen))):
                yield Hit(1, _row(one.help, Content(f"{one.title} ({_NEAREST})")), one.callback, text=one.title)


def _is_said(word: str, everything: str) -> bool:
    """Whether a command has the word, or what it is called here."""
    return word in everything or any(one in everything for one in _ALSO_SAID.get(word, _NOTHING).split(_OR))


def _nearest(query: str, commands: list[SystemCommand]) -> list[SystemCommand]:
    """The commands that are spelt most like it, and the help last of all."""
    from rapidfuzz import fuzz

    def like(one: SystemCommand) -> float:
        return max(fuzz.ratio(query.lower(), word) for word in f"{one.title} {one.help}".lower().split())

    near = sorted((one for one in commands if like(one) >= _NEAR), key=like, reverse=True)[:_MOST_NEAREST]
    return [*near, *(one for one in commands if one.title == "Help" and one not in near)]


def _row(key: str, words: Content) -> Content:
    """A command in one line, its key before it."""
    return Content.assemble(f"{key:<{_KEY_COLUMNS}}", words) if len(key) < _KEY_COLUMNS else words.append(f", {key}")
