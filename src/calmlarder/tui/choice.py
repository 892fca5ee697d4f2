"""One question over the screen: one of a few by key or mouse, or an answer in words."""

from collections.abc import Callable, Sequence
from typing import ClassVar

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.message import Message
from textual.widgets import Input, OptionList, Static

from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.marked_list import MarkedList
from calmlarder.tui.widgets.modal import Modal

_LONG = 6  # names, from which on it is said that they can be found by typing
_FIND = "its first letters find a name"
_NONE = "no name here begins so"
_MARK_FIRST = "Home marks the first answer, the arrows another; then Enter chooses it"
_MOVES = frozenset({"up", "down", "home", "end", "pageup", "pagedown"})


class Ask(Modal[str]):
    """Gives what was typed, or None."""

    ABOUT = "Type the answer, then Enter. Esc goes back, and nothing is changed."
    BINDINGS: ClassVar[list[BindingType]] = [Binding("enter", "answer", "Answer", priority=True)]

    def __init__(self, question: str, answer: str = "", problem: Callable[[str], str] = lambda _: "") -> None:
        """`answer` stands in the line already; `problem` is why an answer cannot be, and then it stays to be mended."""
        super().__init__()
        self._question, self._held, self._problem = question, answer, problem

    def compose(self) -> ComposeResult:
        """The question over a line."""
        with Vertical(id="choice"):
            yield Static(self._question, markup=False)
            yield Input(self._held, id="answer")
            yield Static("", id="ask-empty", markup=False)
        yield KeysLine()

    def action_answer(self) -> None:
        """Once the letters typed before Enter stand in the line: on a busy machine they come after it."""
        self.query_one(Input).call_later(self._answer)

    def _answer(self) -> None:
        """Give the words; where there are none, or they cannot be, say what to do."""
        if not self.is_current:
            return  # answered by an Enter before
        typed = self.query_one(Input).value.strip()
        problem = self._problem(typed) if typed else "type an answer, or Esc to go back"
        if problem:
            self.query_one("#ask-empty", Static).update(problem)
        else:
            self.dismiss(typed)


class Told(Modal[None]):
    """Says why there is nothing to choose from; letters typed for an answer end here, and are no keys."""

    ABOUT = "There is nothing to answer: Enter or Esc goes back."
    BINDINGS: ClassVar[list[BindingType]] = [Binding("enter", "leave", "Back", priority=True, show=False)]

    def __init__(self, words: str) -> None:
        super().__init__()
        self._words = words

    def compose(self) -> ComposeResult:
        """The words."""
        with Vertical(id="choice"):
            yield Static(self._words, markup=False)
        yield KeysLine()


class _Entered(Message):
    """Enter, on the way that the keys before it took."""


class _Names(MarkedList):
    """Hands each key on at once: where it bubbled to the screen, letters of the line beside could overtake it."""

    def __init__(self, names: Sequence[str], typed: Callable[[events.Key], None], *, over_a_line: bool) -> None:
        super().__init__(*map(Text, names))
        self.set_class(over_a_line, "-over-a-line")
        self._typed = typed

    def on_key(self, event: events.Key) -> None:
        """Before the arrows, which are bindings."""
        self._typed(event)


class Choice(Modal[str]):
    """Asks, and gives the chosen name or None."""

    ABOUT = (
        "The arrows move, the first letters of a name find it, Enter or a click chooses. Where there is a line below "
        "the list, what is typed goes there, for an answer that is not in it. Esc goes back, and nothing is changed."
    )
    BINDINGS: ClassVar[list[BindingType]] = [Binding("enter", "choose", "Choose", priority=True)]

    def __init__(
        self,
        question: str,
        names: Sequence[str],
        other: str = "",
        *,
        unmarked: bool = False,
        none_such: str = _NONE,
        marked: str = "",
    ) -> None:
        """With `other`, which says so, an answer that is none of the names may be typed.

        `unmarked`: the first name is under the bar as in every list, but Enter takes it only once an arrow was pressed,
        for a question whose first answer is no likelier than the others. `none_such` is said of letters that begin no
        word of a name. `marked` is the name under the bar at first, where that is not the first.
        """
        super().__init__()
        self._question = question
        self._names = names
        self._other = other
        self._is_meant, self._none_such = not unmarked, none_such  # whether what is under the bar was put there
        self._sought = ""  # what was typed to find a name
        self._first = names.index(marked) if marked in names else 0

    def compose(self) -> ComposeResult:
        """The question over the names."""
        with Vertical(id="choice"):
            yield Static(self._question, markup=False)
            # Above: a long list fills all below. What is found or not is said here, too.
            yield Static(_FIND if not self._other and len(self._names) > _LONG else "", id="ask-empty", markup=False)
            yield _Names(self._names, self._typed, over_a_line=bool(self._other))
            if self._other:
                yield Input(placeholder=self._other, select_on_focus=False, id="other")
        yield KeysLine()

    def on_mount(self) -> None:
        """Arrows work at once; where there is nothing to choose, typing."""
        self.query_one(OptionList if self._names else Input).focus()
        listed = self.query_one(OptionList)
        listed.display = bool(self._names)
        listed.highlighted = self._first if self._names else None
        self._say(str(self.query_one("#ask-empty", Static).content) if self._is_meant else _MARK_FIRST)

    def _say(self, words: str) -> None:
        said = self.query_one("#ask-empty", Static)
        said.update(words)
        said.display = bool(words)

    def _typed(self, event: events.Key) -> None:
        """What is typed on the list goes into the line, where there is one; else it finds a name."""
        self._is_meant = self._is_meant or event.key in _MOVES
        if self._other and event.is_printable and event.character:
            event.stop()
            typed = self.query_one(Input)
            typed.focus()
            typed.insert_text_at_cursor(event.character)
        elif not self._other and (event.key == "backspace" or (event.is_printable and event.character)):
            event.stop()
            self._find(self._sought[:-1] if event.key == "backspace" else f"{self._sought}{event.character}")

    def _find(self, sought: str) -> None:
        """The bar goes to the first name with a word that begins so; where no name has, it goes away.

        Else Enter would choose what stood under it before, which is not what was typed.
        """
        low = self._sought = sought.casefold().lstrip()
        found = next((n for n, name in enumerate(self._names) if f" {low}" in f" {name.casefold()}"), None)
        names = self.query_one(OptionList)
        names.highlighted = found
        if found is None:
            self._say(f"{low}: {self._none_such}; Backspace takes a letter back")
        else:
            self._say(f"found by: {low}" if low else _FIND * (len(self._names) > _LONG))

    def action_choose(self) -> None:
        """Enter, or a click on the key's name. It goes behind keys that are still on their way."""
        self.query_one(OptionList).post_message(_Entered())

    @on(_Entered)
    def _behind_the_keys(self) -> None:
        """Letters end in the list or the line, arrows only where the program looks up what they are bound to."""
        last = self.query_one(Input) if self._in_the_line else self.app
        last.call_later(self._choose)

    @property
    def _in_the_line(self) -> bool:
        return bool(self._other) and self.query_one(Input).has_focus

    def _choose(self) -> None:
        """Give what was typed, or the name under the bar."""
        if not self.is_current:
            return  # answered by an Enter before
        at = self.query_one(OptionList).highlighted
        if self._in_the_line:
            typed = self.query_one(Input).value.strip()
            if typed:
                self.dismiss(typed)
        elif at is not None and (self._is_meant or self._sought):
            self.dismiss(self._names[at])
        elif not self._sought:
            self._say(_MARK_FIRST)

    @on(OptionList.OptionSelected)
    def chosen(self, event: OptionList.OptionSelected) -> None:
        """A click on a name."""
        if self.is_current:
            self.dismiss(self._names[event.option_index])
