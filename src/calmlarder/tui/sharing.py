"""What is on the screen to pass on: as text to the clipboard, or as a file in the folder one started from."""

import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

from textual.screen import Screen

from calmlarder.household.sharing import ENDINGS, Format, written
from calmlarder.household.write_out import write_out
from calmlarder.problems import CannotGoOn
from calmlarder.tui.choice import Choice
from calmlarder.tui.errors import tell

if TYPE_CHECKING:
    from calmlarder.render.sheet import Sheet

_CLIPBOARD = "text, to the clipboard"
_FILES: dict[str, Format] = {
    "a page to read and print (HTML file)": "html",
    "Markdown file": "markdown",
    "recipe data (JSON-LD file)": "jsonld",
    "text file": "text",
}
_LONGEST_NAME = 60
_MOST_FILES = 1000  # of one name


def offer(screen: Screen[Any], sheet: "Sheet") -> None:
    """Ask in which form, and pass it on. What was eaten before and whose food it was stays here."""

    def chosen(name: str | None) -> None:
        if name == _CLIPBOARD:
            screen.app.copy_to_clipboard(written(sheet, "text"))
            screen.notify("copied as text, where this terminal lets programs copy")
        elif name is not None:
            _to_file(screen, sheet, _FILES[name])

    screen.app.push_screen(Choice("Share as what?", [_CLIPBOARD, *_FILES]), chosen)


def _to_file(screen: Screen[Any], sheet: "Sheet", form: Format) -> None:
    file = _free(sheet.title, ENDINGS[form])
    try:
        write_out(file, written(sheet, form), None, "share")
    except CannotGoOn as stop:
        tell(screen.app, stop)
        return
    screen.notify(f"written: {file.absolute()}", timeout=12, markup=False)


def _free(title: str, ending: str) -> Path:
    """A name after the title that no file here has."""
    name = re.sub(r"[^a-z0-9]+", "-", title.lower()).strip("-")[:_LONGEST_NAME] or "dinner"
    tries = [Path(f"{name}{ending}"), *(Path(f"{name}-{number}{ending}") for number in range(2, _MOST_FILES))]
    return next((one for one in tries if not one.exists() and not one.is_symlink()), tries[-1])
